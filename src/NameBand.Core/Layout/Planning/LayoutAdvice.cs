using NameBand.Common;
using NameBand.Job;
using NameBand.Lettering;

namespace NameBand.Layout.Planning;

/// <summary>Says in words what a finished layout leaves to wish for, and the smallest change that would mend it.</summary>
internal static class LayoutAdvice
{
    /// <summary>Sources say 5 to 6.4 mm, depending on who is asked (madeiramatters.net 2015-06; graphics-pro.com).</summary>
    public const double LeastFor40WeightMm = 6;
    private const string File = "job.json";

    public static IEnumerable<Problem> For(BandJob job, StripPlan plan, IReadOnlyList<LetteredName> names, Sizing sizing)
    {
        bool runsOver = plan.Fits.Any(f => f.RunsOver);
        Said roomier = names.Count == 0 ? "" : OneMoreRound(job, names, sizing);
        foreach (var fit in plan.Fits.Where(f => !f.Meets))
        {
            yield return HemFits.Told(fit, !roomier.IsEmpty ? roomier : "Use smaller letters, a narrower gap or a narrower face.");
        }

        if (plan.LetterHeightMm < LeastFor40WeightMm - Tolerance.Rounding && IsSewnWith40Weight(job))
        {
            yield return TooSmall($"Letters {plan.LetterHeightMm:0.0} mm high are too small for 40-weight thread: under {LeastFor40WeightMm:0} mm it no longer makes a letter.").Told(
                new Where(File, Key: "lettering"),
                runsOver || roomier.IsEmpty ? "Use another round, or a thinner thread and needle tried on a swatch first." : roomier);
        }

        double pastMm = PastZoneMm(plan);
        if (pastMm > SlightMm)
        {
            yield return Problem.NeedsPerson(
                new Where(File, Key: "lettering.height"),
                $"At letters {plan.LetterHeightMm:0.0} mm high the tallest accents and the deepest tails do not fit the strip together: ink reaches {pastMm:0.0#} mm past the sewing zone.",
                $"Letters {FittingZoneMm(plan, names, sizing):0.0} mm high fit it; or use a wider strip or a narrower margin.");
        }

        if (sizing.LongestSegmentMm < SegmentCutter.LeastMarkDistanceMm)
        {
            yield return Problem.Note(
                new Where(File, Key: "hoop.along"),
                $"The field holds {sizing.LongestSegmentMm:0} mm, so the two alignment marks of a hooping stand closer together than {SegmentCutter.LeastMarkDistanceMm:0} mm.",
                "Set each hooping straight by the ruled line itself, along the whole hoop.");
        }

        if (job.Strip.SewnBeforeCutting is false && job.Strip.TurnIn.Mm < -plan.MarkYMm - (plan.Hem.Strip.FinishedWidthMm / 2)
            + SegmentCutter.MarkArmMm)
        {
            yield return Problem.Note(
                new Where(File, Key: "strip.turnIn"),
                "The turn-in is too narrow to hold the alignment marks, so they fall beside the cut strip.",
                "Sew before cutting (\"sewn\": \"beforeCutting\"), or let the marks stand on the backing alone.");
        }
    }

    public static Verdict TooSmall(Said found) => new(Fact.Letters, null, VerdictKind.NeedsAPerson, found);

    /// <summary>Of finer thread smaller letters can be made; what is traced is sewn with what the maker takes.</summary>
    public static bool IsSewnWith40Weight(BandJob job) =>
        !job.Traits.IsFollowedByHand && (job.Stitches.Thread ?? ThreadSize.FortyWeight).Tex >= ThreadSize.FortyWeight.Tex - 1;

    /// <summary>Less than this is under a needle's own play and not worth anybody's time.</summary>
    private const double SlightMm = 0.05;

    /// <summary>How far ink reaches past the sewing zone at its worst; a given height may ask for more than there is.</summary>
    private static double PastZoneMm(StripPlan plan)
    {
        double half = plan.Hem.Strip.SewingZoneMm / 2;
        return plan.Rounds.SelectMany(r => r.Names).Select(n =>
        {
            double top = n.BaselineYMm + (n.Lettered.Ink.TopMm * plan.LetterHeightMm) + plan.PullCompensationMm;
            double bottom = n.BaselineYMm + (n.Lettered.Ink.BottomMm * plan.LetterHeightMm) - plan.PullCompensationMm;
            return Math.Max(top - half, -half - bottom);
        }).DefaultIfEmpty(0).Max();
    }

    private static double FittingZoneMm(StripPlan plan, IReadOnlyList<LetteredName> names, Sizing sizing)
    {
        var search = new HeightSearch(sizing, 0.1);
        int tenths = (int)Math.Floor((plan.LetterHeightMm * 10) + Tolerance.Rounding);
        while (tenths > 1 && search.Obstacle(names, tenths / 10.0) == HeightBound.SewingZone)
        {
            tenths--;
        }

        return tenths / 10.0;
    }

    /// <summary>What another round would allow; empty where the number of rounds is not to be chosen.</summary>
    private static Said OneMoreRound(BandJob job, IReadOnlyList<LetteredName> names, Sizing sizing)
    {
        if (sizing.Hem.FixedRounds is not { } rounds || sizing.Hem.MeasuredRoundsMm.Length > 0)
        {
            return "";
        }

        for (int more = rounds + 1; more <= rounds + 9; more++)
        {
            var wider = sizing with { Hem = sizing.Hem with { FixedRounds = more } };
            if (wider.Hem.RoundMm(more) <= wider.Hem.OverlapMm)
            {
                return "";
            }

            var search = new HeightSearch(
                wider, Math.Max(LeastFor40WeightMm, job.Lettering.Least.Mm), job.Lettering.Order == NameOrder.BestFit);
            var (height, _) = search.Largest(names);
            if (search.Obstacle(names, height) is null)
            {
                return $"With {more} rounds (\"strip\": {{ \"rounds\": {more} }}) all names fit at letters {height:0.0} mm high.";
            }
        }

        return "";
    }
}
