using NameBand.Common;
using NameBand.Job;
using NameBand.Layout.Pieces;
using NameBand.Lettering;

namespace NameBand.Layout.Planning;

/// <summary>Says what was found out about the order, the gaps and the strips side by side.</summary>
internal static class LayoutNotes
{
    private const string File = "job.json";
    private const double WorthSayingMm = 20; // Two centimetres of blank strip are seen; less looks like a wide gap. Our assumption.

    public static IEnumerable<Problem> For(BandJob job, StripPlan plan, Sizing sizing)
    {
        if (plan.BestFit is { } fit)
        {
            yield return Problem.Note(new Where(File, Key: "lettering.order"), InWords(fit));
        }

        foreach (var problem in Lanes.Check(job, sizing, plan.MarkYMm).Concat(BlankLeft(job, plan, sizing))
            .Concat(TooLongForBias(job, plan)).Concat(CurvedPieces.Check(job, plan))
            .Concat(sizing.AreMotifsLater ? [] : WithoutMotif(plan, sizing.Motif)))
        {
            yield return problem;
        }
    }

    private static Said InWords(BestFitProof fit)
    {
        Said bound = $"no order with gaps of at least {fit.GapMm:0.0} mm can do with fewer than {fit.Bound} (pattern program {fit.PatternHoopings:0.00})";
        return fit.IsProven
            ? (Said)$"In best-fit order the names take {fit.Hoopings} hoopings, and {bound}: proven best."
            : $"In best-fit order the names take {fit.Hoopings} hoopings; {bound}, so at most {fit.Hoopings - fit.Bound} might still be saved.";
    }

    /// <summary>How many gaps have no motif, and what would give them one.</summary>
    /// <param name="widest">The widest of its motifs; null: it has none.</param>
    public static IEnumerable<Problem> WithoutMotif(StripPlan plan, LetteredName? widest)
    {
        var (gaps, motifs) = plan.Gaps;
        if (widest is not { } motif || motifs >= gaps)
        {
            yield break;
        }

        double narrowest = MotifGaps.NarrowestMm(motif, plan.LetterHeightMm, plan.PullCompensationMm);
        int narrow = plan.Rounds.Where(r => r.GapMm < narrowest - Tolerance.RoundingMm).Sum(r => r.Gaps);
        yield return Problem.Note(
            new Where(File, Key: "lettering.motif"),
            $"Of {gaps} gaps between names, {motifs} have a motif; {(
                narrow > 0
                    ? (Said)$"{narrow} are narrower than the {narrowest:0.0} mm it needs with clear space on both sides."
                    : "at the others a hooping, a run or a piece ends and has no room for it, or nothing is to be sewn there.")}",
            narrow > 0
                ? (Said)$"Write \"gap\": \"{Math.Ceiling(narrowest * 10) / 10:0.0} mm\", or take smaller letters."
                : plan.HasSeveralWays ? "Between two names that go different ways none is sewn: sew one there by hand if it is missed."
                : plan.Hoopings.Any(h => h.HasNeedlePath) ? "A longer hoop takes more of them." : "Sew one there by hand if it is missed.");
    }

    /// <summary>A strip on the bias is no longer than cloth of that width lets it be.</summary>
    private static IEnumerable<Problem> TooLongForBias(BandJob job, StripPlan plan)
    {
        if (!job.Layout.IsBias || plan.Cloths.IsEmpty)
        {
            yield break;
        }

        var longest = plan.Cloths.MaxBy(c => c.LengthMm)!;
        double width = job.Shop.ClothWidthMm * (1 - job.Shop.ClothShrinkagePart);
        double most = CutPlan.LongestOnBiasMm(width, longest.WidthMm);
        if (longest.LengthMm <= most + Tolerance.RoundingMm)
        {
            yield break;
        }

        var piece = longest.Pieces.MaxBy(p => p.LengthMm)!;
        double around = longest.LengthMm - plan.OnClothMm(piece.LengthMm);
        double mended = Math.Floor(plan.Flat.FinishedMm(most - around) / 10) * 10;
        yield return Problem.NeedsPerson(
            new Where(File, Key: "strip.grain"),
            $"On the bias, cloth {width:0} mm wide gives strips of at most {most:0} mm, and {longest.LengthMm:0} mm are needed in one.",
            mended >= 200
                ? (Said)$"Sew in pieces: \"piece\": \"{mended:0} mm\" in the group “strip”, or use wider cloth."
                : "Use wider cloth, or cut the strips along the selvedge (\"grain\": \"straight\").");
    }

    /// <summary>Where the widest gap allowed leaves some of a round blank: what would fill it.</summary>
    private static IEnumerable<Problem> BlankLeft(BandJob job, StripPlan plan, Sizing sizing)
    {
        if (sizing.MostGapMm is not { } most || !job.Lettering.Spread)
        {
            yield break;
        }

        foreach (var round in plan.Rounds.Where(r => r.Names.Any()))
        {
            int count = round.Places.Length;
            double room = FreeInterval.Of(plan.Hem, round.Number).Sum(s => s.LengthMm);
            double used = round.Places.Sum(n => n.WidthMm) + (count * Math.Max(most, sizing.GapMm(plan.LetterHeightMm)));
            bool isLastAsNeeded = plan.Hem.FixedRounds is null && round.Number == plan.Rounds.Length;
            if (room - used < WorthSayingMm || isLastAsNeeded)
            {
                continue;
            }

            double gap = (room - round.Places.Sum(n => n.WidthMm)) / count;
            double ink = PlacesAlong.Of(round.Names).Sum(p => p.Max(n => n.Lettered.Ink.WidthMm));
            double taller = (room - (count * (most + (2 * plan.PullCompensationMm)))) / ink;
            Said letters = plan.Bound == HeightBound.Given
                ? (Said)$", or letters {Math.Floor(taller * 10) / 10:0.0} mm high"
                : "";
            yield return Problem.NeedsPerson(
                new Where(File, Key: "lettering.mostGap"),
                $"With gaps of at most {most:0.#} mm, {room - used:0} mm of round {round.Number} stay blank.",
                $"Allow gaps of {Math.Ceiling(gap * 10) / 10:0.0} mm{letters}, or let more names share the round.");
        }
    }
}
