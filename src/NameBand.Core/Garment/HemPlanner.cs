using NameBand.Common;
using NameBand.Job;

namespace NameBand.Garment;

/// <summary>Finds the length of every round and the widths of the strip from what the job says of the garment.</summary>
public static class HemPlanner
{
    private const string File = "job.json";

    public static Result<HemPlan> Plan(BandJob job)
    {
        var problems = new List<Problem>();
        var strip = new StripWidths(job.Strip.CutWidth.Mm, job.Strip.TurnIn.Mm, job.Strip.Margin.Mm);
        double step = job.Strip.RoundStep?.Mm ?? strip.FinishedWidthMm + JobDefaults.BetweenRounds.Mm;
        double turn = 2 * Math.PI * (job.Hem.Skirt?.Turn ?? job.Hem.Turn ?? 0);
        bool perRound = job.Hem.Lengths.Length > 1;

        var hem = new HemPlan(
            EdgeMm(job.Hem), turn, job.Hem.Closed, job.Hem.Overlap.Mm, Tolerance(job.Hem), job.Strip.Lift.Mm, step,
            job.Strip.Rounds, perRound ? [.. job.Hem.Lengths.Select(l => l.Mm)] : [], strip,
            Runs(job.Strip.Side, job.Strip.ReadBy))
        {
            Side = job.Strip.Side,
            ReadBy = job.Strip.ReadBy,
            KeepClear = [.. job.Layout.KeepClear.Select(c => new ClearZone(c.At.Mm, c.Width.Mm)), .. ClosingBlank(job, strip)],
            JoinBlankMm = job.Layout.IsJoinedDiagonally ? JoinBlankMm(job, strip) : 0,
            AskedPieceMm = job.Layout.Piece?.Mm,
            StartMm = job.Layout.Start.Mm,
            CentreFrontMm = job.Layout.CentreFront?.Mm,
            CentreBackMm = job.Layout.CentreBack?.Mm,
            KeepFreeMm = job.KeepFree.Mm,
            KeepFreePart = job.HasMoreToCome ? JobDefaults.MoreToComePart : 0,
            IsCurved = job.Layout.IsCurved,
            EndMarginMm = job.Hem.Closed ? 0 : strip.MarginMm,
            Ease = new EaseRule(job.Layout.LiesFlatPart, job.Layout.EaseLimitPart, job.Layout.EasedPart, job.Layout.IsBias)
            {
                HasTucks = job.Layout.HasTucks,
            },
        };

        if (job.Hem.Skirt is null && job.Hem.Turn is null && !perRound && hem.LiftMm > 0)
        {
            problems.Add(Problem.Note(
                new Where(File, Key: JobKeys.HemTurn.Path),
                "The hem was measured, but not what part of a circle it is cut from, so the round is taken to be as long as the hem.",
                "Add \"circlePart\" to hem: 0.75 for a three-quarter circle, 0 for a straight edge. "
                + "On a full circle each millimetre up makes the round 6.3 mm shorter."));
        }

        if (step < strip.FinishedWidthMm && (hem.FixedRounds ?? 2) > 1)
        {
            problems.Add(Problem.NeedsPerson(
                new Where(File, Key: "strip.roundStep"),
                $"The rounds stand {step:0.#} mm apart, but a finished strip is {strip.FinishedWidthMm:0.#} mm wide, so each lies over the one below.",
                $"Make the step {strip.FinishedWidthMm:0.#} mm or more."));
        }

        if (hem.Closed && GarmentMiddles.On(hem, hem.EdgeLengthMm).IsAtFront(0))
        {
            problems.Add(Problem.Note(
                new Where(File, Key: "hem.centreFront"),
                "The strip's ends meet at centre front, where a join shows most.",
                "Let them meet at the back or at a side, and measure hem.centreFront from there."));
        }

        CheckRounds(hem, problems);
        if (!problems.Any(p => p.Severity == Severity.CannotUse))
        {
            HemPlaces.Check(hem, problems);
            CurvedStrips.Check(job, hem, problems);
            HemPlaces.CheckJoins(job, hem, problems);
        }

        return problems.Any(p => p.Severity == Severity.CannotUse)
            ? Result.Fail<HemPlan>(problems)
            : Result.Of(hem, problems);
    }

    /// <summary>
    /// The way names run round, seen from above. Someone who stands before a garment reads towards its wearer's left,
    /// which is counter-clockwise; turning the letters upside down, or reading from inside, turns it about.
    /// </summary>
    public static RunDirection Runs(GarmentSide side, Reader readBy) =>
        (side == GarmentSide.Outside) == (readBy == Reader.Viewer) ? RunDirection.CounterClockwise : RunDirection.Clockwise;

    /// <summary>The slant of a seam at 45° runs along the strip for as much as it is wide; on both sides of it names keep clear.</summary>
    private static double JoinBlankMm(BandJob job, StripWidths strip) => strip.FinishedWidthMm + (2 * job.Layout.JoinClear.Mm);

    /// <summary>The blank where the ends of a closed strip meet, which is a place kept clear at its starting end.</summary>
    private static IEnumerable<ClearZone> ClosingBlank(BandJob job, StripWidths strip)
    {
        double width = job.Layout.ClosingBlank?.Mm ?? (job.Layout.IsJoinedDiagonally ? JoinBlankMm(job, strip) : 0);
        return job.Hem.Closed && width > 0 ? [new ClearZone(0, width)] : [];
    }

    private static HemTolerance Tolerance(HemSettings hem) => new(hem.Tolerance.Mm, hem.TolerancePart);

    /// <summary>Length of a skirt's finished hem.</summary>
    public static double EdgeMm(SkirtSettings skirt) =>
        PartCircle.FromWaist(skirt.Turn, skirt.Waist.Mm).ArcMm(skirt.Length.Mm) - skirt.TakenUp.Mm;

    private static double EdgeMm(HemSettings hem) => hem.Skirt is { } skirt ? EdgeMm(skirt) : hem.Lengths[0].Mm;

    private static void CheckRounds(HemPlan hem, List<Problem> problems)
    {
        if (hem.EdgeLengthMm <= 0)
        {
            problems.Add(Problem.CannotUse(
                new Where(File, Key: "hem.skirt.takenUp"),
                "Seams and placket take up more than the whole hem, so nothing is left to go round.",
                "Make \"takenUp\" the length the hem loses to its seams and placket, a few centimetres."));
            return;
        }

        for (int k = 1; k <= (hem.FixedRounds ?? 1); k++)
        {
            if (hem.RoundMm(k) > 0 && hem.RoundMm(k) <= hem.OverlapMm)
            {
                problems.Add(Problem.CannotUse(
                    new Where(File, Key: "hem.overlap"),
                    $"The ends of round {k} are to lie over each other by {hem.OverlapMm:0.#} mm, which is the whole round ({hem.RoundMm(k):0.#} mm).",
                    "Make the overlap shorter: an inch is usual."));
                return;
            }

            if (hem.RoundMm(k) <= 0)
            {
                problems.Add(Problem.CannotUse(
                    new Where(File, Key: "strip.rounds"),
                    $"Round {k} would lie so high up the garment that nothing is left of it.",
                    k == 1 ? "Check hem, turn and lift."
                    : (Said)$"Ask for {k - 1} rounds at most, or make the round step smaller."));
                return;
            }
        }
    }
}
