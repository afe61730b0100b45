using System.Collections.Immutable;
using NameBand.Job;

namespace NameBand.Estimating;

/// <summary>The hours of names that are keyed in: keys and start marks in the place of hoops and needle paths.</summary>
public static class KeyedWork
{
    /// <summary>A job whose strip is fed under the presser foot: nothing is hooped and no hooping is started.</summary>
    public static BandJob WithoutHoops(BandJob job) => job with
    {
        Hands = job.Hands with { HoopingMinutes = 0 },
        Machine = job.Machine with { SecondsToStart = 0 },
    };

    /// <param name="machineSeconds">Measured time of the letters in this hooping; null: what the drawn stitches take at the machine's pace.</param>
    public static HoopingFigures Timed(HoopingFigures drawn, double? machineSeconds, MachineSettings machine)
    {
        double stitching = machineSeconds / 60 ?? drawn.StitchingMinutes;
        double breaks = HoopingMeter.ExpectedBreaks(drawn.Stitches, machine) * machine.SecondsPerBreak / 60;
        return drawn with
        {
            Jumps = 0,
            Trims = 0,
            Stops = 0,
            StitchingMinutes = stitching,
            MachineMinutes = stitching + breaks + (machine.SecondsToStart / 60),
        };
    }

    /// <summary>Adds keying in and finding the start marks, and takes out what is not done at all.</summary>
    /// <param name="pieces">What is keyed in at one go, each with its start mark.</param>
    /// <param name="keys">Characters keyed in, in all.</param>
    public static Estimate Add(Estimate estimate, BandJob job, int pieces, int keys)
    {
        double rest = 1 + job.Hands.RestAllowance;
        ImmutableArray<WorkLine> keying =
        [
            WorkRange.Hands.Line("keying in", keys, "characters", keys * job.Letters.SecondsPerKey / 60 * rest),
            WorkRange.Hands.Line("bringing the start mark under the needle", pieces, "marks", pieces * job.Letters.PositioningMinutes * rest),
        ];
        var hands = estimate.HandWork.Where(IsDone).ToList();
        return estimate with
        {
            MachineWork = [.. estimate.MachineWork.Where(IsDone)],
            HandWork = [.. hands.Take(1), .. keying, .. hands.Skip(1)],
        };
    }

    private static bool IsDone(WorkLine line) => line.Minutes.Likely > 0;
}
