using System.Collections.Immutable;
using NameBand.Common;

namespace NameBand.Layout;

/// <summary>
/// The one ruler, as it lies along a stretch of a finished round: it counts along the flat cloth from the cut left end of
/// the piece that the stretch is sewn on.
/// </summary>
/// <param name="StartMm">Where the stretch begins along the finished round.</param>
/// <param name="OnClothMm">What the ruler reads there.</param>
/// <param name="BeforeMm">Cloth of the piece before it, for a seam or to be turned in.</param>
/// <param name="AfterMm">Cloth of the piece after its end.</param>
public sealed record ClothRuler(int Cloth, double StartMm, double EndMm, double OnClothMm, double BeforeMm, double AfterMm)
{
    /// <summary>The rulers of a round from its left end on, one for each piece of its strip.</summary>
    public static ImmutableArray<ClothRuler> Of(StripPlan plan, Round round)
    {
        var pieces = Pieces(plan, round);
        return pieces.IsEmpty ? [WithoutPieces(plan, round)] : [.. pieces.Select(p =>
            new ClothRuler(p.Cloth, p.StartMm, p.EndMm, p.OnClothMm, p.StartAllowanceMm, p.EndAllowanceMm))];
    }

    /// <summary>The ruler of those of a round that a place along it is read on.</summary>
    public static ClothRuler At(ImmutableArray<ClothRuler> rulers, double alongMm) =>
        rulers.LastOrDefault(r => r.StartMm <= alongMm + Tolerance.RoundingMm) ?? rulers[0];

    private static ImmutableArray<StripPiece> Pieces(StripPlan plan, Round round) =>
        [.. plan.Cloths.SelectMany(c => c.Pieces).Where(p => p.Round == round.Number).OrderBy(p => p.StartMm)];

    /// <summary>A plan that does not say what its strips are cut from still says where its hoopings lie.</summary>
    private static ClothRuler WithoutPieces(StripPlan plan, Round round)
    {
        var (before, after) = (plan.Hem.EndTurnInMm, plan.Hem.Closed ? plan.Hem.OverlapMm : plan.Hem.EndTurnInMm);
        foreach (var hooping in plan.Hoopings)
        {
            if (hooping.Segments.FirstOrDefault(s => s.Round.Number == round.Number) is { } hooped)
            {
                double zero = StripPlan.OnClothMm(hooping, hooped) - plan.OnClothMm(hooped.Segment.StartMm);
                return new ClothRuler(hooping.Cloth, 0, round.LengthMm, zero, before, after);
            }
        }

        return new ClothRuler(1, 0, round.LengthMm, before, before, after);
    }
}
