using System.Collections.Immutable;
using NameBand.Common;
using NameBand.Garment;
using NameBand.Job;

namespace NameBand.Layout.Pieces;

/// <summary>How many strips can lie side by side under one placing of the hoop.</summary>
internal static class Lanes
{
    /// <summary>Strips lie edge to edge, a cut width apart; only their ink and marks must lie in the field.</summary>
    public static int Most(BandJob job, Sizing sizing, double markYMm)
    {
        if (!job.Strip.SewnBeforeCutting || MarksReachNext(job, sizing, markYMm))
        {
            return 1;
        }

        if (sizing.Hem.IsCurved)
        {
            return job.IsHooped && AreFlatEnough(sizing.Hem) ? MostNested(sizing.Hem, sizing.FieldAcrossMm, sizing.MarkReachMm) : 1;
        }

        return Math.Max(1, Held(job, sizing, markYMm, sizing.FieldAcrossMm));
    }

    /// <summary>Of curved strips so many lie on one cloth: each moves those above it farther aside at the ends.</summary>
    private const int MostCurved = 3;

    /// <summary>From its middle a piece may turn so far: beyond a quarter of a circle nothing nests.</summary>
    private const double MostHalfRad = 1.2;

    /// <summary>
    /// How many curved strips a field may hold: nowhere do they lie closer than they are wide. Most fields hold fewer, and only towards the
    /// ends of pieces as many.
    /// </summary>
    public static int MostNested(HemPlan hem, double acrossMm, double markReachMm)
    {
        double between = acrossMm - (hem.Strip.SewingZoneMm / 2) - markReachMm;
        return Math.Clamp(1 + (int)Math.Floor((between / hem.Strip.CutWidthMm) + Tolerance.Rounding), 1, MostCurved);
    }

    private static bool AreFlatEnough(HemPlan hem) =>
        Enumerable.Range(1, hem.FixedRounds ?? 1).All(r => (hem.LongestPieceMm(r) ?? 0) / 2 / hem.RadiusMm(r) <= MostHalfRad);

    /// <summary>How many strips beside each other have ink and marks in a field; 0 where not even one has.</summary>
    private static int Held(BandJob job, Sizing sizing, double markYMm, double acrossMm)
    {
        double outside = Math.Max(sizing.Hem.Strip.SewingZoneMm / 2, -markYMm + SegmentCutter.MarkArmMm);
        double between = acrossMm - (2 * outside);
        return between < 0 ? 0 : 1 + (int)Math.Floor((between / job.Strip.CutWidth.Mm) + Tolerance.Rounding);
    }

    /// <summary>The frames that hold a strip with its marks, each with its field.</summary>
    public static ImmutableArray<(Frame Frame, CoverField Field)> Smaller(BandJob job, Sizing sizing, double markYMm, LaneChoice? choice) =>
        [
            .. from smaller in choice?.Smaller ?? []
               let lanes = Math.Min(Held(job, sizing, markYMm, smaller.Frame.Across.Mm), Most(job, sizing, markYMm))
               let held = sizing with { FieldAlongMm = smaller.Frame.Along.Mm, FieldAcrossMm = smaller.Frame.Across.Mm }
               where lanes > 0
               select (smaller.Frame, new CoverField(Math.Min(held.HoopingOnClothMm, sizing.HoopingOnClothMm), lanes, smaller.WorkPart)),
        ];

    /// <summary>Whether marks would be sewn into the finished width of the strip beside.</summary>
    private static bool MarksReachNext(BandJob job, Sizing sizing, double markYMm) =>
        -markYMm + SegmentCutter.MarkArmMm > job.Strip.CutWidth.Mm - (sizing.Hem.Strip.FinishedWidthMm / 2) + Tolerance.RoundingMm;

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

        if (!job.Strip.SewnBeforeCutting)
        {
            yield return Problem.NeedsPerson(
                new Where("job.json", Key: LayoutKeys.Lanes.Path),
                "Strips that are cut before they are sewn cannot lie side by side on one cloth.",
                "Sew before cutting (\"sewn\": \"beforeCutting\"), or write \"stripsSideBySide\": 1.");
            yield break;
        }

        if (MarksReachNext(job, sizing, markYMm))
        {
            yield return Problem.NeedsPerson(
                new Where("job.json", Key: LayoutKeys.Lanes.Path),
                $"With turn-ins of {job.Strip.TurnIn.Mm:0.#} mm the alignment marks of one strip would lie within the finished width of the strip beside it; strips are laid one by one.",
                "Write \"stripsSideBySide\": 1, or make the turn-ins wider.");
            yield break;
        }

        double needed = sizing.FieldAcrossMm + ((wished - most) * job.Strip.CutWidth.Mm);
        yield return Problem.NeedsPerson(
            new Where("job.json", Key: LayoutKeys.Lanes.Path),
            $"{wished} strips side by side do not fit a field of {sizing.FieldAcrossMm:0} mm across; they are laid {most} side by side.",
            $"Write \"stripsSideBySide\": {most}, or use a hoop of about {needed:0} mm across.");
    }
}
