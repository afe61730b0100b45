using System.Collections.Immutable;
using NameBand.Common;
using NameBand.Garment;
using NameBand.Lettering;

namespace NameBand.Layout.Resuming;

/// <summary>Puts latecomers into free room and moves nobody.</summary>
internal sealed class GapInserter(
    Sizing sizing, double heightMm, double[] hemsMm, SettledBaseline baseline, ImmutableArray<StripCloth> cloths,
    ImmutableArray<int> groupOfRound)
{
    /// <summary>Room that was kept free is what latecomers are for.</summary>
    private readonly HemPlan _hem = sizing.Hem.WithNothingKeptFree();
    private readonly double _gap = sizing.GapMm(heightMm);
    private readonly ImmutableArray<StripPiece> _pieces = [.. cloths.SelectMany(c => c.Pieces)];

    /// <summary>All blocks with the latecomers in blocks of their own or at the end of one; null when they do not all fit.</summary>
    public ImmutableArray<KeptBlock>? Place(ImmutableArray<KeptBlock> kept, IReadOnlyList<LetteredName> newcomers) =>
        Place(kept, newcomers, inTheMiddle: true) ?? Place(kept, newcomers, inTheMiddle: false);

    /// <param name="inTheMiddle">
    /// A latecomer stands in the widest room, between two names in the middle of it, unless close to the first one it spares a hooping;
    /// else in the first room that holds it, close to the name before, which leaves most for the next.
    /// </param>
    private ImmutableArray<KeptBlock>? Place(ImmutableArray<KeptBlock> kept, IReadOnlyList<LetteredName> newcomers, bool inTheMiddle)
    {
        var blocks = kept.ToList();
        int order = kept.SelectMany(b => b.Names).Select(n => n.Order).DefaultIfEmpty(0).Max();
        int number = kept.Select(b => b.Segment).Concat(kept.Select(b => b.Hooping)).DefaultIfEmpty(0).Max();
        foreach (var newcomer in newcomers)
        {
            double widthMm = sizing.WidthMm(newcomer, heightMm);
            double SpareMm(FreeStretch s) => s.OfferMm(_gap, sizing.Hem.Closed) - widthMm - _gap;
            var roomy = KeptSegments.Stretches(blocks, hemsMm, _hem, cloths)
                .Where(s => groupOfRound[s.Round - 1] == newcomer.Standing.OwnRounds && SpareMm(s) >= -Tolerance.RoundingMm);
            if ((inTheMiddle ? roomy.MaxBy(SpareMm) : roomy.FirstOrDefault()) is not { } stretch)
            {
                return null;
            }

            order++;
            var placed = At(stretch.StartMm + stretch.Ends(_gap, sizing.Hem.Closed).Left);
            int neighbour = blocks.FindIndex(b => CanTake(b, stretch, placed, blocks));
            if (inTheMiddle && stretch is { AfterName: true, BeforeName: true } && (neighbour < 0 || newcomer.IsInOneRun))
            {
                placed = At(placed.StartMm + (Math.Max(SpareMm(stretch), 0) / 2));
            }

            if (neighbour >= 0)
            {
                blocks[neighbour] = Grown(blocks[neighbour], placed);
            }
            else
            {
                number++;
                blocks.Add(Grown(new KeptBlock(stretch.Round, number, number, placed.StartMm, placed.WidthMm, IsSewn: false, []), placed));
            }

            PlacedName At(double startMm) => new(newcomer, startMm, widthMm, baseline.For(newcomer), order);
        }

        return [.. blocks];
    }

    /// <summary>An unsewn hooping of one segment takes a latecomer at its right end, where the field has the room.</summary>
    private bool CanTake(KeptBlock block, FreeStretch stretch, PlacedName newcomer, List<KeptBlock> all) =>
        !block.IsSewn && block.Round == stretch.Round && stretch.AfterName
        && Math.Abs(block.LastMm - stretch.StartMm) < Tolerance.RoundingMm
        && all.Count(b => b.Hooping == block.Hooping) == 1
        && block.Names[0].Lettered.Way == newcomer.Lettered.Way && SegmentCutter.FitsField(block.Names[0], newcomer, sizing);

    private KeptBlock Grown(KeptBlock block, PlacedName newcomer)
    {
        ImmutableArray<PlacedName> names = [.. block.Names, newcomer];
        var piece = StripPiece.At(_pieces, block.Round, names[0].StartMm);
        var (start, length) = SegmentCutter.Extent(
            names[0], names[^1], piece?.StartMm ?? 0, Math.Max(piece?.EndMm ?? hemsMm[block.Round - 1], names[^1].EndMm), sizing);
        return block with
        {
            Names = names,
            StartMm = start,
            LengthMm = length,
            ClothStartMm = null,
            Motifs = [.. block.Motifs.Where(m => m.StartMm >= start - Tolerance.RoundingMm
                && m.EndMm <= start + length + Tolerance.RoundingMm)],
        };
    }
}
