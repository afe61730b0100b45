using System.Collections.Immutable;
using NameBand.Common;
using NameBand.Garment;

namespace NameBand.Layout;

/// <summary>Whether the upper edge of each round can be eased in its gaps; said once, for the fresh plan and for one that goes
/// on.</summary>
internal static class RoundEasing
{
    private const string File = "job.json";

    public static RoundEase Of(StripPlan plan, Round round)
    {
        var hem = plan.Hem;
        return hem.IsCurved
            ? RoundEase.CutToTheCurve(round.Number, round.LengthMm, hem.UpperEdgeShorterMm)
            : RoundEase.Judge(round.Number, round.LengthMm, hem.Strip.FinishedWidthMm, hem.TurnRad, Gaps(plan, round), hem.Ease);
    }

    /// <param name="mends">What would mend it where the upper edge cannot be sewn down; none where they were not looked for.</param>
    public static IEnumerable<Problem> Check(StripPlan plan, ImmutableArray<EaseMend> mends)
    {
        bool isTold = false;
        foreach (var ease in plan.Easing.Where(e => e.Verdict != EaseVerdict.LiesFlat))
        {
            var place = Where.Of(null, $"round {ease.Number}");
            yield return ease.Verdict switch
            {
                EaseVerdict.CanBeEased => ease.Judged().Told(place, EasingSteps),
                EaseVerdict.WithTucks => ease.Judged().Told(place, TuckSteps),
                _ => ease.Judged()
                .Told(Where.Of(File, $"strip, round {ease.Number}"),
                    isTold ? "What mends it stands with the round before." : Mend(plan, mends)),
            };
            isTold |= ease.Verdict == EaseVerdict.WantsShaping;
        }
    }

    public static readonly Said EasingSteps =
        "Run a line of long stitches along the upper edge, draw it up between the names and press with steam before sewing it down.";

    public static readonly Said TuckSteps =
        "Fold the tucks when both edges are turned in, before you pin the strip: the work packet has the place of each. Lay them all to one side, so that none reaches under a name; ease what is left between the names.";

    /// <summary>
    /// The blanks between neighbouring names. A long blank, such as one kept clear of a seam, eases its own neighbours
    /// and not the names at the other end of the round.
    /// </summary>
    private static RoundGaps Gaps(StripPlan plan, Round round)
    {
        var names = RoundTucks.InPlace(round);
        double motifs = round.Segments.Sum(s => s.Motifs.Sum(m => m.WidthMm));
        double sewn = names.Sum(n => n.WidthMm) + motifs;
        if (names.Length < 2)
        {
            return new RoundGaps(Math.Max(0, round.LengthMm - sewn), round.LengthMm, Math.Max(0, round.LengthMm - sewn));
        }

        var blanks = names.Zip(names.Skip(1)).Select(p => p.Second.StartMm - p.First.EndMm).ToList();
        if (plan.Hem.Closed)
        {
            blanks.Add(names[0].StartMm + round.LengthMm - names[^1].EndMm);
        }

        double gaps = blanks.Sum(b => Math.Clamp(b, 0, 2 * round.GapMm));
        return new RoundGaps(Math.Max(0, gaps - motifs), names.Sum(n => n.WidthMm) + gaps, round.GapMm)
        {
            Open = plan.Hem.TurnRad > 0 ? RoundTucks.Gaps(plan, round, names) : [],
        };
    }

    private static Said Mend(StripPlan plan, ImmutableArray<EaseMend> mends)
    {
        Said wider = "Smaller letters, more rounds or fewer names leave wider gaps, which can be eased by more.";
        return mends.IsEmpty ? wider
            : (Said)$"{(mends.Length == 1 ? (Said)"This mends it" : "Any one of these mends it")}: {Said.Join(" ", mends.Select((m, i) => (Said)$"({i + 1}) {m.Text}"))} {wider}";
    }
}
