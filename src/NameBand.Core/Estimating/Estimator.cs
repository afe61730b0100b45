using System.Collections.Immutable;
using NameBand.Job;
using NameBand.Layout;

namespace NameBand.Estimating;

/// <summary>Adds up the hours and thread of a job from its layout and what its hoopings were found to take.</summary>
public static class Estimator
{
    /// <summary>Cloth and backing that reach past the sewing field on each side, to be held: common practice, no source.</summary>
    public const double HeldBesideFieldMm = 40;

    /// <summary>
    /// The whole job's figures. The hoopings come back in <see cref="Estimate.Hoopings"/> with the bobbin changes that
    /// fall to each of them added to their minutes, so that they sum to the machine's total.
    /// </summary>
    /// <param name="log">What was sewn so far, and in which order; null for nothing.</param>
    public static Estimate Make(BandJob job, StripPlan plan, ImmutableArray<HoopingFigures> hoopings, SewingLog? log = null)
    {
        var (changes, bobbins) = BobbinRun.Follow(InSewingOrder(hoopings, log), job.Bobbin);
        var bobbinsOf = changes.ToLookup(c => c.Hooping, c => c.Bobbins);
        ImmutableArray<HoopingFigures> timed = [.. hoopings.Select(h => WithBobbins(h, bobbinsOf[h.Number].Sum(), job.Machine))];
        return new Estimate(
            timed,
            MachineWork(job.Machine, timed),
            HandWorkLines.For(job, plan, log),
            timed.Sum(h => h.NeedleThreadM),
            timed.Sum(h => h.BobbinThreadM))
        {
            BobbinChanges = [.. changes.Select(c => c with { IsPast = log is not null && log.IsSewn(c.Hooping) })],
            Bobbins = bobbins,
        };
    }

    /// <summary>
    /// What is sewn in the order the log has it, spoiled ones too, for they took thread from the bobbin; then the rest by
    /// number. A spoiled one is taken for as long as its hooping is now.
    /// </summary>
    private static IEnumerable<HoopingFigures> InSewingOrder(ImmutableArray<HoopingFigures> hoopings, SewingLog? log)
    {
        if (log is null)
        {
            return hoopings;
        }

        var known = hoopings.ToDictionary(h => h.Number);
        return log.Sewings.Where(known.ContainsKey).Select(h => known[h]).Concat(hoopings.Where(h => !log.IsSewn(h.Number)));
    }

    private static HoopingFigures WithBobbins(HoopingFigures figures, int bobbins, MachineSettings machine) => figures with
    {
        BobbinChanges = bobbins,
        MachineMinutes = figures.MachineMinutes + (bobbins * machine.SecondsPerBobbin / 60),
    };

    private static ImmutableArray<WorkLine> MachineWork(MachineSettings machine, ImmutableArray<HoopingFigures> hoopings)
    {
        double stitches = hoopings.Sum(h => (double)h.Stitches);
        double jumps = hoopings.Sum(h => (double)h.Jumps);
        double trims = hoopings.Sum(h => (double)h.Trims);
        double stops = hoopings.Sum(h => (double)h.Stops);
        double bobbins = hoopings.Sum(h => (double)h.BobbinChanges);
        double breaks = HoopingMeter.ExpectedBreaks(stitches, machine);
        return
        [
            WorkRange.Pace.Line("stitching", stitches, "stitches", hoopings.Sum(h => h.StitchingMinutes)),
            WorkRange.Pace.Line("jumps", jumps, "jumps", jumps * machine.SecondsPerJump / 60),
            WorkRange.Pace.Line("cutting the thread", trims, "trims", trims * machine.SecondsPerTrim / 60),
            WorkRange.Waiting.Line("changing the thread", stops, "stops", stops * machine.SecondsPerStop / 60),
            WorkRange.Waiting.Line("changing the bobbin", bobbins, "bobbins", bobbins * machine.SecondsPerBobbin / 60),
            WorkRange.Breaks.Line("thread breaks", breaks, "breaks", breaks * machine.SecondsPerBreak / 60),
            WorkRange.Waiting.Line("starting a hooping", hoopings.Length, "hoopings", hoopings.Length * machine.SecondsToStart / 60),
        ];
    }

    /// <summary>Lengths in mm of the cloths that are hooped, each with its spare ends.</summary>
    public static IEnumerable<double> BandLengthsMm(StripPlan plan) =>
        plan.Cloths.IsEmpty ? plan.Rounds.Select(r => BandLengthMm(plan, r)) : plan.Cloths.Select(c => c.LengthMm);

    /// <summary>Width in mm of the cloth that one round is sewn on: names sewn before cutting need it as wide as the hoop holds, after cutting the strip's own.</summary>
    public static double BandWidthMm(BandJob job, StripPlan plan) => job.Strip.SewnBeforeCutting
        ? Math.Max(plan.FieldAcrossMm + (2 * HeldBesideFieldMm), plan.Cloths.Select(c => c.WidthMm).DefaultIfEmpty(plan.Hem.Strip.CutWidthMm).Max())
        : plan.Hem.Strip.CutWidthMm;

    /// <summary>Length in mm of the cloth that one round is sewn on, in one piece.</summary>
    private static double BandLengthMm(StripPlan plan, Round round) =>
        plan.OnClothMm(round.LengthMm) + (plan.Hem.Closed ? plan.Hem.OverlapMm : 2 * plan.Hem.Strip.TurnInMm) + (2 * HeldBesideFieldMm);

    public static double BackingPieceLengthMm(StripPlan plan) => plan.FieldAlongMm + (2 * HeldBesideFieldMm);

    public static double BackingPieceWidthMm(StripPlan plan) => plan.FieldAcrossMm + (2 * HeldBesideFieldMm);
}
