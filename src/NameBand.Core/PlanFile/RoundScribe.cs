using System.Collections.Immutable;
using NameBand.Common;
using NameBand.Estimating;
using NameBand.Garment;
using NameBand.Job;
using NameBand.Layout;
using NameBand.Stitching;

namespace NameBand.PlanFile;

/// <summary>Puts a round with its segments and names into the records of plan.json.</summary>
internal static class RoundScribe
{
    public static IReadOnlyList<WrittenRound> Of(StripPlan plan, Estimate estimate, PlanOrigin? origin)
    {
        var minutes = estimate.Names.ToDictionary(n => n.Order, n => Thousandths.Mm(estimate.OwnMinutes(n)));
        var placesMm = plan.Hoopings.SelectMany(h => h.Segments.Select(s => (s.Segment.Number, OnClothMm: StripPlan.OnClothMm(h, s))))
            .ToDictionary(p => p.Number, p => p.OnClothMm);
        return [.. plan.Rounds.Select(r => Of(plan, r, placesMm, minutes, origin))];
    }

    private static WrittenRound Of(
        StripPlan plan, Round round, Dictionary<int, double> placesMm, Dictionary<int, decimal> minutes, PlanOrigin? origin)
    {
        var ease = RoundEasing.Of(plan, round);
        var curve = StripCurve.Of(plan.Hem, round.Number);
        var made = origin?.Rounds.GetValueOrDefault(round.Number);
        return new WrittenRound
        {
            Number = round.Number,
            LengthMm = Thousandths.Mm(round.LengthMm),
            HemMm = Thousandths.Mm(round.HemMm),
            GapMm = Thousandths.Mm(round.GapMm),
            UpperEdgeShorterMm = Thousandths.Mm(ease.ShorterMm),
            UpperEdgeShorterPercent = ease.LengthMm > 0 ? Thousandths.Mm(100 * ease.Part) : 0,
            UpperEdgeGapsPercent = Thousandths.Mm(100 * ease.GapsPart),
            UpperEdge = Word(ease.Verdict),
            Tucks = OrNone(RoundTucks.Of(plan, round).Select(Tuck)),
            RadiusMm = curve is null ? null : Thousandths.Mm(curve.RadiusMm),
            UpperEdgeMm = curve is null
                ? null : Thousandths.Mm(round.LengthMm * (curve.RadiusMm - plan.Hem.Strip.FinishedWidthMm) / curve.RadiusMm),
            MadeFrom = made?.MadeFrom,
            ProofPrint = made?.ProofPrint,
            Mark = SheetMarks.Of(plan, round),
            Segments = new Lazily<WrittenSegment>(
                round.Segments.Length, i => Segment(plan, round.Segments[i], placesMm[round.Segments[i].Number], (minutes, origin))),
        };
    }

    private static WrittenSegment Segment(
        StripPlan plan, Segment segment, double onClothMm, (Dictionary<int, decimal> Minutes, PlanOrigin? Origin) known) => new()
        {
            Number = segment.Number,
            StartMm = Thousandths.Mm(segment.StartMm),
            LengthMm = Thousandths.Mm(segment.LengthMm),
            ClothStartMm = Thousandths.Mm(segment.ClothStartMm),
            OnClothMm = Thousandths.Mm(onClothMm),
            Names = [.. segment.Names.Where(n => n.IsOfList).Select(n => Name(plan, n, known))],
            Headings = OrNone(segment.Names.Where(n => n.IsHeading && !n.IsGone).Select(n => Name(plan, n, known))),
            Motifs = OrNone(segment.Motifs.Select(Motif)),
            Gone = OrNone(segment.Names.Where(n => n.IsGone).Select(n => Name(plan, n, known))),
        };

    private static IReadOnlyList<T>? OrNone<T>(IEnumerable<T> entries) =>
        entries.ToImmutableArray() is { IsEmpty: false } some ? some : null;

    private static WrittenName Name(StripPlan plan, PlacedName name, (Dictionary<int, decimal> Minutes, PlanOrigin? Origin) known) => new()
    {
        Order = name.Order,
        Text = name.Lettered.Name.Text,
        List = name.Lettered.Name.Row.List,
        Line = name.Lettered.Name.Row.Line,
        StartMm = Thousandths.Mm(name.StartMm),
        WidthMm = Thousandths.Mm(name.WidthMm),
        Minutes = known.Minutes.TryGetValue(name.Order, out decimal minutes) ? minutes : null,
        PlannedStartMm = name.PlannedMm is { } planned ? Thousandths.Mm(planned.StartMm) : null,
        PlannedWidthMm = name.PlannedMm is { } laid ? Thousandths.Mm(laid.WidthMm) : null,
        OnBaseLineMm = plan.Hem.IsCurved ? Thousandths.Mm(name.WidthMm - (2 * plan.InsetMm(name))) : null,
        BaselineYMm = Thousandths.Mm(name.BaselineYMm),
        OnLine = name.Line > 0 ? name.Line : null,
        Way = JobKeys.WordOf(name.Lettered.Way),
        Style = known.Origin is { } origin && origin.Styles.TryGetValue(name.Order, out var style) ? Word(style) : null,
        Group = name.Lettered.Standing.Group,
        LetterHeightMm = name.Lettered.Standing is { Group: not null } or { HeightFactor: not 1 }
            ? Thousandths.Mm(plan.LetterHeightMm * name.Lettered.Standing.HeightFactor) : null,
        Face = name.Lettered.Name.Wish?.Face is null ? null : name.Lettered.Standing.Face,
    };

    private static WrittenTuck Tuck(PlacedTuck tuck) => new()
    {
        Number = tuck.Number,
        AtMm = Thousandths.Mm(tuck.AtMm),
        OnClothMm = Thousandths.Mm(tuck.OnClothMm),
        WidthMm = Thousandths.Mm(tuck.WidthMm),
        After = tuck.After.Order,
        Before = tuck.Before.Order,
    };

    private static WrittenMotif Motif(PlacedName motif) => new()
    {
        Text = motif.Lettered.Name.Text,
        StartMm = Thousandths.Mm(motif.StartMm),
        WidthMm = Thousandths.Mm(motif.WidthMm),
        BaselineYMm = Thousandths.Mm(motif.BaselineYMm),
    };

    /// <summary>The style that a word of plan.json means; null for none.</summary>
    internal static NameStyle? StyleOf(string? word) =>
        Enum.GetValues<NameStyle>().Where(s => Word(s) == word).Select(s => (NameStyle?)s).FirstOrDefault();

    private static string Word(NameStyle style) => style == NameStyle.Run ? "run" : "satin";

    private static string Word(EaseVerdict verdict) => verdict switch
    {
        EaseVerdict.LiesFlat => "liesFlat",
        EaseVerdict.CanBeEased => "canBeEased",
        EaseVerdict.WithTucks => "withTucks",
        EaseVerdict.WantsShaping => "wantsShaping",
        _ => throw new ArgumentOutOfRangeException(nameof(verdict), verdict, "No such verdict."),
    };
}
