using NameBand.Job;

namespace NameBand.Estimating;

/// <summary>
/// How long the machine takes for one stitch. A usual stitch takes 60 / pace seconds; a long one takes longer, because
/// the hoop has farther to go between two penetrations, and so does a very short one. See docs/times.md.
/// </summary>
public static class Pace
{
    /// <summary>Seconds for one stitch of <paramref name="lengthMm"/>.</summary>
    public static double SecondsPerStitch(double lengthMm, MachineSettings machine) =>
        60 / machine.StitchesPerMinute * Factor(lengthMm, machine);

    /// <summary>Time of a stitch as a multiple of a usual one's: 1 or more.</summary>
    public static double Factor(double lengthMm, MachineSettings machine)
    {
        if (lengthMm < machine.ShortBelowMm)
        {
            return machine.ShortFactor;
        }

        return 1 + (machine.SlowPerMm * Math.Max(0, lengthMm - machine.SlowAboveMm));
    }
}
