using NameBand.Common;
using NameBand.Job;

namespace NameBand.Layout.Pieces;

/// <summary>How many strips can lie side by side under one placing of the hoop.</summary>
internal static class Lanes
{
    /// <summary>Strips lie edge to edge, a cut width apart; only their ink and marks must lie in the field.</summary>
    public static int Most(BandJob job, Sizing sizing, double markYMm)
    {
        if (!job.Strip.SewnBeforeCutting || sizing.Hem.IsCurved || MarksReachNext(job, sizing, markYMm))
        {
            return 1;
        }

        double outside = Math.Max(sizing.Hem.Strip.SewingZoneMm / 2, -markYMm + SegmentCutter.MarkArmMm);
        double between = sizing.FieldAcrossMm - (2 * outside);
        return between < 0 ? 1 : 1 + (int)Math.Floor((between / job.Strip.CutWidth.Mm) + 1e-9);
    }

    /// <summary>Whether marks would be sewn into the finished width of the strip beside.</summary>
    private static bool MarksReachNext(BandJob job, Sizing sizing, double markYMm) =>
        -markYMm + SegmentCutter.MarkArmMm > job.Strip.CutWidth.Mm - (sizing.Hem.Strip.FinishedWidthMm / 2) + Sizing.SlightMm;

    public static int InUse(BandJob job, Sizing sizing, double markYMm)
    {
        int most = Most(job, sizing, markYMm);
        return Math.Min(job.Layout.Lanes ?? most, most);
    }

    /// <summary>Says so when more strips were wished for than the field holds.</summary>
    public static IEnumerable<Problem> Check(BandJob job, Sizing sizing, double markYMm)
    {
        int most = Most(job, sizing, markYMm);
        if (job.Layout.Lanes is not { } wished || wished <= most)
        {
            yield break;
        }

        if (sizing.Hem.IsCurved)
        {
            yield return Problem.NeedsPerson(
                new Where("job.json", Key: "strip.lanes"),
                "Curved strips are sewn one by one: their arcs do not lie side by side under one placing of the hoop.",
                "Write \"lanes\": 1, or \"shape\": \"straight\".");
            yield break;
        }

        if (!job.Strip.SewnBeforeCutting)
        {
            yield return Problem.NeedsPerson(
                new Where("job.json", Key: "strip.lanes"),
                "Strips that are cut before they are sewn cannot lie side by side on one cloth.",
                "Sew before cutting (\"sewn\": \"beforeCutting\"), or write \"lanes\": 1.");
            yield break;
        }

        if (MarksReachNext(job, sizing, markYMm))
        {
            yield return Problem.NeedsPerson(
                new Where("job.json", Key: "strip.lanes"),
                FormattableString.Invariant($"With turn-ins of {job.Strip.TurnIn.Mm:0.#} mm the alignment marks of one strip would lie within the finished width of the strip beside it; strips are laid one by one."),
                "Write \"lanes\": 1, or make the turn-ins wider.");
            yield break;
        }

        double needed = sizing.FieldAcrossMm + ((wished - most) * job.Strip.CutWidth.Mm);
        yield return Problem.NeedsPerson(
            new Where("job.json", Key: "strip.lanes"),
            FormattableString.Invariant($"{wished} strips side by side do not fit a field of {sizing.FieldAcrossMm:0} mm across; they are laid {most} side by side."),
            FormattableString.Invariant($"Write \"lanes\": {most}, or use a hoop of some {needed:0} mm across."));
    }
}
