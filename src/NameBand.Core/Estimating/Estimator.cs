using System.Collections.Immutable;
using NameBand.Job;
using NameBand.Layout;

namespace NameBand.Estimating;

/// <summary>Adds up the hours, thread and cloth of a job from its layout and what its hoopings were found to take.</summary>
public static class Estimator
{
    /// <summary>Cloth and backing that reach past the sewing field on each side, to be held: common practice, no source.</summary>
    public const double HeldBesideFieldMm = 40;

    /// <summary>A pace set on a machine is the pace it is left at: it slows for corners and thread breaks, and never gains much.</summary>
    private static readonly (double Low, double High) MachineRange = (0.9, 1.3);

    private static readonly (double Low, double High) HandRange = (0.75, 1.35);

    /// <summary>Hooping and aligning takes 5 to 8 minutes where 6.5 are likely: common practice, no source.</summary>
    private static readonly (double Low, double High) HoopingRange = (5 / 6.5, 8 / 6.5);

    public static Estimate Make(BandJob job, StripPlan plan, ImmutableArray<HoopingFigures> hoopings) => new(
        hoopings,
        MachineWork(job.Machine, hoopings),
        HandWork(job.Hands, plan),
        hoopings.Sum(h => h.NeedleThreadM),
        hoopings.Sum(h => h.BobbinThreadM),
        ClothM2(job, plan),
        BackingM2(plan));

    private static ImmutableArray<WorkLine> MachineWork(MachineSettings machine, ImmutableArray<HoopingFigures> hoopings)
    {
        double stitches = hoopings.Sum(h => (double)h.Stitches);
        double jumps = hoopings.Sum(h => (double)h.Jumps);
        double trims = hoopings.Sum(h => (double)h.Trims);
        double stops = hoopings.Sum(h => (double)h.Stops);
        return
        [
            Line("stitching", stitches, "stitches", stitches / machine.StitchesPerMinute, MachineRange),
            Line("jumps", jumps, "jumps", jumps * machine.SecondsPerJump / 60, MachineRange),
            Line("cutting the thread", trims, "trims", trims * machine.SecondsPerTrim / 60, MachineRange),
            Line("changing the thread", stops, "stops", stops * machine.SecondsPerStop / 60, MachineRange),
            Line("starting a hooping", hoopings.Length, "hoopings", hoopings.Length * machine.SecondsToStart / 60, MachineRange),
        ];
    }

    private static ImmutableArray<WorkLine> HandWork(HandSettings hands, StripPlan plan)
    {
        double metres = plan.TotalLengthMm / 1000;
        int names = plan.NameCount;
        int joins = plan.Hem.Closed ? plan.Rounds.Length : 0;
        double rest = 1 + hands.RestAllowance;
        return
        [
            Line("hooping and setting straight", plan.Hoopings.Length, "hoopings", plan.Hoopings.Length * hands.HoopingMinutes * rest, HoopingRange),
            Line("clipping threads", names, "names", names * hands.ClippingMinutesPerName * rest, HandRange),
            Line("tearing the backing away", names, "names", names * hands.TearAwayMinutesPerName * rest, HandRange),
            Line("pressing", metres, "m", metres * hands.PressingMinutesPerMetre * rest, HandRange),
            Line("trimming to width", metres, "m", metres * hands.TrimmingMinutesPerMetre * rest, HandRange),
            Line("closing the rounds", joins, "joins", joins * hands.JoinMinutes * rest, HandRange),
            Line("turning both edges in", 2 * metres, "m", 2 * metres * hands.TurningInMinutesPerMetre * rest, HandRange),
            Line("pinning to the hem", metres, "m", metres * hands.PinningMinutesPerMetre * rest, HandRange),
            Line("sewing the lower edge down", metres, "m", metres * hands.SewingLowerEdgeMinutesPerMetre * rest, HandRange),
            Line("easing and sewing the upper edge down", metres, "m", metres * hands.SewingUpperEdgeMinutesPerMetre * rest, HandRange),
        ];
    }

    private static WorkLine Line(string work, double amount, string unit, double minutes, (double Low, double High) range) =>
        new(work, amount, unit, new Figure(minutes * range.Low, minutes, minutes * range.High));

    /// <summary>Names sewn before cutting need cloth as wide as the hoop holds; sewn after cutting, the strip's own width.</summary>
    private static double ClothM2(BandJob job, StripPlan plan)
    {
        double width = job.Strip.SewnBeforeCutting
            ? Math.Max(plan.FieldAcrossMm + (2 * HeldBesideFieldMm), plan.Hem.Strip.CutWidthMm)
            : plan.Hem.Strip.CutWidthMm;
        double overlap = plan.Hem.Closed ? plan.Hem.OverlapMm : 2 * plan.Hem.Strip.TurnInMm;
        return plan.Rounds.Sum(r => (plan.OnClothMm(r.LengthMm) + overlap + (2 * HeldBesideFieldMm)) * width) / 1e6;
    }

    private static double BackingM2(StripPlan plan) =>
        plan.Hoopings.Length * (plan.FieldAlongMm + (2 * HeldBesideFieldMm)) * (plan.FieldAcrossMm + (2 * HeldBesideFieldMm)) / 1e6;
}
