using System.Collections.Immutable;
using NameBand.Job;
using NameBand.Layout;

namespace NameBand.Estimating;

/// <summary>
/// The work of hands, line by line, in the order it is done. A rest allowance is added to each, because a person
/// tires; none is added to the machine's own time.
/// </summary>
internal static class HandWorkLines
{
    public static ImmutableArray<WorkLine> For(BandJob job, StripPlan plan, SewingLog? log)
    {
        var hands = job.Hands;
        double metres = plan.TotalLengthMm / 1000;
        int hoopings = plan.Hoopings.Length;
        int names = plan.Rounds.Sum(r => r.Names.Count());
        int joins = plan.Joins;
        double rest = 1 + hands.RestAllowance;
        int patchJoins = PatchJoins(plan, log);
        return
        [
            WorkRange.Hands.Line("cutting the cloth and ruling the base line", metres, "m", metres * hands.CuttingMinutesPerMetre * rest),
            WorkRange.Hooping.Line("hooping and setting straight", hoopings, "hoopings", hoopings * hands.HoopingMinutes * rest) with { IsAtTheHoop = true },
            WorkRange.Hands.Line("clipping threads", names, "names", names * hands.ClippingMinutesPerName * rest) with { IsAtTheHoop = true },
            WorkRange.Hands.Line("tearing the backing away", names, "names", names * hands.TearAwayMinutesPerName * rest) with { IsAtTheHoop = true },
            WorkRange.Hands.Line("checking each name against the list", names, "names", names * hands.CheckingMinutesPerName * rest),
            WorkRange.Hands.Line("pressing", metres, "m", metres * hands.PressingMinutesPerMetre * rest),
            WorkRange.Hands.Line("trimming to width", metres, "m", metres * hands.TrimmingMinutesPerMetre * rest),
            WorkRange.Hands.Line("joining pieces and closing the rounds", joins, "joins", joins * hands.JoinMinutes * rest),
            .. patchJoins == 0
                ? Array.Empty<WorkLine>()
                : [WorkRange.Hands.Line("letting patch pieces into the strip", patchJoins, "joins", patchJoins * hands.JoinMinutes * rest)],
            WorkRange.Hands.Line("turning both edges in", 2 * metres, "m", 2 * metres * hands.TurningInMinutesPerMetre * rest),
            WorkRange.Hands.Line("pinning to the hem", metres, "m", metres * hands.PinningMinutesPerMetre * rest),
            WorkRange.Hands.Line("sewing the lower edge down", metres, "m", metres * hands.SewingLowerEdgeMinutesPerMetre * rest),
            WorkRange.Easing.Line("easing and sewing the upper edge down", metres, "m", metres * hands.SewingUpperEdgeMinutesPerMetre * rest),
        ];
    }

    /// <summary>A patch piece is let into its strip with a join at each end; one hooped over several strips, into each of them.</summary>
    private static int PatchJoins(StripPlan plan, SewingLog? log)
    {
        var patched = log?.Patched ?? [];
        return 2 * plan.Hoopings.Where(h => patched.Contains(h.Number)).Sum(h => h.Segments.Length);
    }
}
