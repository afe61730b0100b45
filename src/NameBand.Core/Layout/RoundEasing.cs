using NameBand.Common;
using NameBand.Garment;

namespace NameBand.Layout;

/// <summary>Whether the upper edge of each round can be eased in its gaps; said once, for the fresh plan and for one that goes on.</summary>
internal static class RoundEasing
{
    private const string File = "job.json";

    public static RoundEase Of(HemPlan hem, Round round) => hem.IsCurved
        ? RoundEase.CutToTheCurve(round.Number, round.LengthMm, hem.UpperEdgeShorterMm)
        : RoundEase.Judge(round.Number, round.LengthMm, hem.Strip.FinishedWidthMm, hem.TurnRad, Gaps(hem, round), hem.Ease);

    public static IEnumerable<Problem> Check(StripPlan plan)
    {
        foreach (var ease in plan.Easing.Where(e => e.Verdict != EaseVerdict.LiesFlat))
        {
            yield return ease.Verdict == EaseVerdict.CanBeEased
                ? ease.Judged().Told(new Where(Key: FormattableString.Invariant($"round {ease.Number}")), "Run a line of long stitches along the upper edge, draw it up between the names and press with steam before sewing it down.")
                : ease.Judged().Told(new Where(File, Key: FormattableString.Invariant($"strip, round {ease.Number}")), Mend(plan, ease));
        }
    }

    /// <summary>
    /// The blanks between neighbouring names. A long blank, such as one kept clear of a seam, eases its own neighbours
    /// and not the names at the other end of the round.
    /// </summary>
    private static RoundGaps Gaps(HemPlan hem, Round round)
    {
        var names = round.Names.OrderBy(n => n.StartMm).ToList();
        double sewn = round.NamesAndMotifs.Sum(n => n.WidthMm);
        if (names.Count < 2)
        {
            return new RoundGaps(Math.Max(0, round.LengthMm - sewn), round.LengthMm, Math.Max(0, round.LengthMm - sewn));
        }

        var blanks = names.Zip(names.Skip(1)).Select(p => p.Second.StartMm - p.First.EndMm).ToList();
        if (hem.Closed)
        {
            blanks.Add(names[0].StartMm + round.LengthMm - names[^1].EndMm);
        }

        double gaps = blanks.Sum(b => Math.Clamp(b, 0, 2 * round.GapMm));
        double motifs = sewn - names.Sum(n => n.WidthMm);
        return new RoundGaps(Math.Max(0, gaps - motifs), names.Sum(n => n.WidthMm) + gaps, round.GapMm);
    }

    private static string Mend(StripPlan plan, RoundEase ease)
    {
        string narrower = FormattableString.Invariant(
            $"With these gaps a finished strip of {Math.Floor(ease.WidestMm):0} mm can be eased; smaller letters on it leave wider gaps, and then it may be wider. ");
        string give = plan.Hem.Ease.IsBias ? "" : ", or on the bias, which gives twice as much (\"grain\": \"bias\")";
        return narrower + (plan.HasNeedlePaths
            ? $"Or have it cut to the curve, which needs no easing: \"strip\": {{ \"shape\": \"curved\" }}{give}."
            : $"Or take more rounds, so that the gaps are wider{give}.");
    }
}
