using System.Collections.Immutable;
using NameBand.Job;

namespace NameBand.Estimating;

/// <summary>The hours of names that are followed along a template: length of line over pace.</summary>
internal static class TracedWork
{
    /// <summary>A run's figures, its stitches drawn along the lines, at the pace of free motion; by hand the machine does
    /// nothing.</summary>
    public static HoopingFigures Timed(HoopingFigures drawn, double lineMm, TracedSettings traced)
    {
        double minutes = traced.ByHand ? 0 : lineMm / traced.PaceMmPerMinute;
        return drawn with
        {
            Jumps = 0,
            Trims = 0,
            Stops = 0,
            Snips = traced.ByHand ? 0 : drawn.Snips,
            StitchingMinutes = minutes,
            MachineMinutes = minutes,
        };
    }

    /// <param name="lineMm">Length of the lines that are followed, by run.</param>
    public static WayActs Acts(ImmutableDictionary<int, double> lineMm) =>
        new(IsHooped: false, MarkMethod.None) { IsTraced = true, TracedMm = lineMm };
}
