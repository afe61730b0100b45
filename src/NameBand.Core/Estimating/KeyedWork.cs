using System.Collections.Immutable;
using NameBand.Job;

namespace NameBand.Estimating;

/// <summary>The hours of names that are keyed in: keys and start marks in the place of hoops and needle paths.</summary>
internal static class KeyedWork
{
    /// <summary>A job whose strip is fed under the presser foot: nothing is hooped and no hooping is started.</summary>
    public static BandJob WithoutHoops(BandJob job) => job with
    {
        Machine = job.Machine with { SecondsToStart = 0 },
    };

    /// <param name="keys">Characters keyed in; the machine leaves a loose thread at each: our assumption.</param>
    /// <param name="machineSeconds">Measured time of the letters in this hooping; null: what the drawn stitches take at the
    /// machine's pace.</param>
    public static HoopingFigures Timed(HoopingFigures drawn, int keys, double? machineSeconds, MachineSettings machine)
    {
        double stitching = machineSeconds / 60 ?? drawn.StitchingMinutes;
        double breaks = HoopingMeter.ExpectedBreaks(drawn.Stitches, machine) * machine.SecondsPerBreak / 60;
        return drawn with
        {
            Jumps = 0,
            Trims = 0,
            Stops = 0,
            Snips = keys,
            StitchingMinutes = stitching,
            MachineMinutes = stitching + breaks + (machine.SecondsToStart / 60),
        };
    }

    /// <param name="keyed">What is keyed in of each name, by its number.</param>
    public static WayActs Acts(BandJob job, ImmutableDictionary<int, NameKeys> keyed) =>
        new(job.Letters.Hooped, MarkMethod.None) { Keyed = keyed };
}
