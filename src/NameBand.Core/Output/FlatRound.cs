using System.Collections.Immutable;
using NameBand.Layout;

namespace NameBand.Output;

/// <summary>A piece of a round's strip as it lies: from where to where, and where its ruler has its zero.</summary>
internal sealed record FlatPiece(int Cloth, double FromMm, double ToMm, double ZeroMm);

/// <summary>A name on a flat round.</summary>
/// <param name="LeftMm">Where its width begins.</param>
/// <param name="OnClothMm">What the ruler of its cloth reads there.</param>
internal sealed record FlatName(PlacedName Name, double LeftMm, double OnClothMm);

/// <summary>What one hooping sews of a round.</summary>
internal sealed record FlatHooped(Hooping Hooping, double FromMm, double ToMm, ImmutableArray<FlatName> Names);

/// <summary>
/// A whole round as it lies on flat cloth, its pieces end to end: 0 is where the finished round begins. Every name stands
/// where the ruler of its own cloth reads its place.
/// </summary>
internal sealed record FlatRound(double LengthMm, ImmutableArray<FlatPiece> Pieces, ImmutableArray<FlatHooped> Hooped)
{
    public double CutLeftMm => Pieces[0].FromMm;

    public double CutRightMm => Pieces[^1].ToMm;

    public bool IsInPieces => Pieces.Length > 1;

    public IEnumerable<FlatName> Names => Hooped.SelectMany(h => h.Names);

    public static FlatRound Of(StripPlan plan, Round round)
    {
        var rulers = ClothRuler.Of(plan, round);
        double Zero(ClothRuler ruler) => plan.OnClothMm(ruler.StartMm) - ruler.OnClothMm;
        var hooped = ImmutableArray.CreateBuilder<FlatHooped>();
        foreach (var hooping in plan.Hoopings)
        {
            foreach (var lying in hooping.Segments.Where(s => s.Round.Number == round.Number))
            {
                var items = lying.Segment.NamesAndMotifs.ToList();
                double zero = Zero(ClothRuler.At(rulers, items.Count > 0 ? items[0].StartMm : lying.Segment.StartMm));
                FlatName Placed(PlacedName name) =>
                    plan.OnClothMm(hooping, lying, name) is var at ? new FlatName(name, zero + at, at) : default;
                ImmutableArray<FlatName> names = [.. items.Select(Placed)];
                double start = zero + StripPlan.OnClothMm(hooping, lying);
                double finish = zero + plan.EndOnClothMm(hooping, lying);
                hooped.Add(lying.Segment.Names.IsEmpty
                    ? new FlatHooped(hooping, start, finish, names)
                    : new FlatHooped(
                        hooping, Placed(lying.Segment.Names.MinBy(n => n.StartMm)!).LeftMm, Right(Placed(lying.Segment.LastName!)), names));
            }
        }

        // Only the cut ends of the whole round are drawn: what is taken up by a join lies behind it.
        double end = Math.Max(plan.OnClothMm(round.LengthMm), hooped.SelectMany(h => h.Names).Select(Right).DefaultIfEmpty(0).Max());
        ImmutableArray<FlatPiece> pieces =
        [
            .. rulers.Select((r, i) => new FlatPiece(
                r.Cloth, i == 0 ? Math.Min(0, plan.OnClothMm(r.StartMm)) - r.BeforeMm : plan.OnClothMm(r.StartMm),
                i < rulers.Length - 1 ? plan.OnClothMm(rulers[i + 1].StartMm) : end + r.AfterMm, Zero(r))),
        ];
        return new FlatRound(plan.OnClothMm(round.LengthMm), pieces, hooped.ToImmutable());
    }

    private static double Right(FlatName name) => name.LeftMm + name.Name.WidthMm;
}
