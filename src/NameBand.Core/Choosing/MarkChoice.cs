using System.Collections.Immutable;
using NameBand.Job;

namespace NameBand.Choosing;

/// <summary>
/// Chooses how hoopings are set in place where the job leaves it free. Crosses stand in the same places whichever way they are
/// made, so that it only costs work: a pencil is at hand, and so is the printer that prints the sheets.
/// </summary>
internal static class MarkChoice
{
    public static bool IsFree(BandJob job) => job.Holding.AreMarksFree && job.Traits.FollowsCoordinates;

    /// <summary>Those of which one costs least; the one that the plan before had, where it chose.</summary>
    public static ImmutableArray<MarkMethod> ToTry(BandJob job, MarkMethod? kept)
    {
        if (!IsFree(job))
        {
            return [job.Holding.Marks];
        }

        var met = job.Hands.PaperMarksMinutes < job.Hands.DrawnMarksMinutes ? MarkMethod.Paper : MarkMethod.Drawn;

        // Sewn ones take their stitches besides, by the segment.
        return kept is { } before ? [before]
            : HoopingMinutes(job, MarkMethod.Sewn) >= HoopingMinutes(job, met) ? [met] : [met, MarkMethod.Sewn];
    }

    /// <summary>What they take in each hooping, hands and machine, but for the stitches of sewn ones.</summary>
    public static double HoopingMinutes(BandJob job, MarkMethod marks)
    {
        double stop = job.Machine.SecondsPerStop / 60;
        double rest = 1 + job.Hands.RestAllowance;
        return marks switch
        {
            MarkMethod.Sewn => ((stop + job.Hands.MarksOutMinutes) * rest) + stop,
            MarkMethod.Drawn => job.Hands.DrawnMarksMinutes * rest,
            MarkMethod.Paper => job.Hands.PaperMarksMinutes * rest,
            _ => 0,
        };
    }

    public static double LeastHoopingMinutes(BandJob job) =>
        new[] { MarkMethod.Drawn, MarkMethod.Paper, MarkMethod.Sewn }.Min(m => HoopingMinutes(job, m));
}
