using System.Collections.Immutable;
using NameBand.Garment;

namespace NameBand.Layout;

/// <summary>A tapered tuck of a round at its place.</summary>
/// <param name="Number">From 1 at the round's starting end.</param>
/// <param name="AtMm">Its middle, along the finished round.</param>
/// <param name="OnClothMm">The same, counted from the cut left end of its piece of flat cloth.</param>
/// <param name="WidthMm">What it takes out of the upper edge.</param>
/// <param name="After">The name on its left.</param>
/// <param name="Before">The name on its right.</param>
internal sealed record PlacedTuck(int Number, double AtMm, double OnClothMm, double WidthMm, PlacedName After, PlacedName Before);

/// <summary>Finds the gaps of a round that can hold a tapered tuck, and says where the tucks lie that are wanted.</summary>
internal static class RoundTucks
{
    /// <summary>The tucks of a round from its starting end; none where none are wanted.</summary>
    public static ImmutableArray<PlacedTuck> Of(StripPlan plan, Round round)
    {
        if (RoundEasing.Of(plan, round).Tucked is not { } tucks)
        {
            return [];
        }

        var names = InPlace(round);
        var pieces = plan.Cloths.SelectMany(c => c.Pieces).ToList();
        return [.. tucks.Gaps.Select((g, i) => new PlacedTuck(
            i + 1, g.MiddleMm, OnClothMm(plan, pieces, round, g.MiddleMm), tucks.WidthMm, names[g.After], names[g.After + 1]))];
    }

    /// <summary>Names from left to right; not the segments' order where what is sewn has drifted.</summary>
    internal static ImmutableArray<PlacedName> InPlace(Round round) => round.Places;

    /// <summary>Gaps between names without a motif, a join, or a place that is kept clear; the ends of the strip meet in none of
    /// them.</summary>
    internal static ImmutableArray<OpenGap> Gaps(StripPlan plan, Round round, ImmutableArray<PlacedName> names)
    {
        double[] joins =
            [.. plan.Cloths.SelectMany(c => c.Pieces).Where(p => p.Round == round.Number && p.StartMm > 0).Select(p => p.StartMm)];
        double scale = plan.Hem.EdgeLengthMm > 0 ? round.LengthMm / plan.Hem.EdgeLengthMm : 1;
        PlacedName[] motifs = [.. round.Segments.SelectMany(s => s.Motifs).OrderBy(m => m.StartMm)];
        int motif = 0;
        var gaps = ImmutableArray.CreateBuilder<OpenGap>();
        for (int i = 0; i + 1 < names.Length; i++)
        {
            double from = names[i].EndMm;
            double to = names[i + 1].StartMm;
            while (motif < motifs.Length && motifs[motif].EndMm <= from)
            {
                motif++;
            }

            bool isOpen = to > from
                && !joins.Any(j => j > from && j < to)
                && (motif == motifs.Length || motifs[motif].StartMm >= to)
                && !plan.Hem.KeepClear.Any(z => (z.AtMm * scale) - (z.WidthMm / 2) < to && (z.AtMm * scale) + (z.WidthMm / 2) > from);
            if (isOpen)
            {
                gaps.Add(new OpenGap(i, (from + to) / 2, to - from));
            }
        }

        return gaps.ToImmutable();
    }

    private static double OnClothMm(StripPlan plan, List<StripPiece> pieces, Round round, double atMm) =>
        StripPiece.At(pieces, round.Number, atMm) is { } piece
            ? piece.OnClothMm + plan.OnClothMm(atMm - piece.StartMm) : plan.OnClothMm(atMm);
}
