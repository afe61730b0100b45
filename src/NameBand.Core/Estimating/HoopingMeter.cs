using NameBand.Cloth;
using NameBand.Job;
using NameBand.Stitching;

namespace NameBand.Estimating;

/// <summary>Counts what one hooping takes, from its needle path.</summary>
public static class HoopingMeter
{
    /// <summary>Thread left hanging at each cut, needle and bobbin alike: our assumption, a thumb's length.</summary>
    private const double TailMm = 40;

    public static HoopingFigures Measure(int number, NeedlePath path, Fabric fabric, MachineSettings machine)
    {
        int stitches = 0;
        int jumps = -1;
        int trims = 0;
        int stops = 0;
        double needleMm = TailMm;
        double bobbinMm = TailMm;
        var steps = path.Steps;
        for (int i = 0; i < steps.Length; i++)
        {
            switch (steps[i].Action)
            {
                case NeedleAction.Stitch:
                    stitches++;
                    if (i > 0 && steps[i - 1].Action == NeedleAction.Stitch)
                    {
                        var (needle, bobbin) = ThreadGeometry.Stitch(
                            steps[i].At.DistanceTo(steps[i - 1].At), fabric.ThicknessMm, ThreadGeometry.EmbroideryNeedlePart);
                        needleMm += needle;
                        bobbinMm += bobbin;
                    }

                    break;
                case NeedleAction.Jump:
                    jumps += i == 0 || steps[i - 1].Action != NeedleAction.Jump ? 1 : 0;
                    needleMm += i > 0 ? steps[i].At.DistanceTo(steps[i - 1].At) : 0;
                    break;
                case NeedleAction.Trim:
                    trims++;
                    needleMm += TailMm;
                    bobbinMm += TailMm;
                    break;
                case NeedleAction.Stop:
                    stops++;
                    break;
            }
        }

        jumps = Math.Max(jumps, 0);
        return new HoopingFigures(
            number, stitches, jumps, trims, stops, needleMm / 1000, bobbinMm / 1000,
            MachineMinutes(stitches, jumps, trims, stops, machine));
    }

    /// <summary>Minutes the machine runs or is waited for: stitches at the pace, and seconds for everything between.</summary>
    public static double MachineMinutes(int stitches, int jumps, int trims, int stops, MachineSettings machine) =>
        (stitches / machine.StitchesPerMinute)
        + (((jumps * machine.SecondsPerJump) + (trims * machine.SecondsPerTrim) + (stops * machine.SecondsPerStop) + machine.SecondsToStart) / 60);
}
