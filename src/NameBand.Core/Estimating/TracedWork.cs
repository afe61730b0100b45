using System.Collections.Immutable;
using NameBand.Job;

namespace NameBand.Estimating;

/// <summary>The hours of names that are followed along a template: length of line over pace.</summary>
public static class TracedWork
{
    /// <summary>Printing, taping together and pinning a template, in minutes a metre: common practice, no source.</summary>
    private const double TemplateMinutesPerMetre = 6;

    /// <summary>Paces differ more than machines do: a steady hand follows twice as fast as a careful one.</summary>
    private static readonly WorkRange Following = new(0.6, 1.8, "how fast a line can be followed depends on the hand that follows it");

    /// <summary>A run's figures, its stitches drawn along the lines, at the pace of free motion; by hand the machine does nothing.</summary>
    public static HoopingFigures Timed(HoopingFigures drawn, double lineMm, TracedSettings traced)
    {
        double minutes = traced.ByHand ? 0 : lineMm / traced.PaceMmPerMinute;
        return drawn with { Jumps = 0, Trims = 0, Stops = 0, StitchingMinutes = minutes, MachineMinutes = minutes };
    }

    /// <param name="lineMm">Length of all lines that are followed.</param>
    public static Estimate Add(Estimate estimate, BandJob job, double stripM, double lineMm)
    {
        double rest = 1 + job.Hands.RestAllowance;
        var hands = estimate.HandWork.Where(IsDone).ToList();
        var more = new List<WorkLine>
        {
            WorkRange.Hands.Line("printing and pinning the template", stripM, "m", stripM * TemplateMinutesPerMetre * rest),
        };
        if (job.Traced.ByHand)
        {
            more.Add(Following.Line("sewing the lines by hand", lineMm / 1000, "m of line", lineMm / job.Traced.PaceMmPerMinute * rest));
        }

        ImmutableArray<WorkLine> machine = job.Traced.ByHand
            ? []
            : [Following.Line("following the lines free-motion", lineMm / 1000, "m of line", lineMm / job.Traced.PaceMmPerMinute),
                .. estimate.MachineWork.Where(w => w.Unit == "bobbins" && IsDone(w))];
        return estimate with { MachineWork = machine, HandWork = [.. hands.Take(1), .. more, .. hands.Skip(1)] };
    }

    private static bool IsDone(WorkLine line) => line.Minutes.Likely > 0;
}
