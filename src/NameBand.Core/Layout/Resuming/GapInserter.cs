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
    public ImmutableArray<KeptBlock>? Place(ImmutableArray<KeptBlock> kept, IReadOnlyList<LetteredName> newcomers)
    {
        var blocks = kept.ToList();
        int order = kept.SelectMany(b => b.Names).Select(n => n.Order).DefaultIfEmpty(0).Max();
        int number = kept.Select(b => b.Segment).Concat(kept.Select(b => b.Hooping)).DefaultIfEmpty(0).Max();
        foreach (var newcomer in newcomers)
        {
            double width = sizing.WidthMm(newcomer, heightMm);
            if (KeptSegments.Stretches(blocks, hemsMm, _hem, cloths)
                .FirstOrDefault(s =>
                    groupOfRound[s.Round - 1] == newcomer.Standing.OwnRounds
                    && s.OfferMm(_gap, sizing.Hem.Closed) >= width + _gap - Tolerance.RoundingMm) is not { } stretch)
            {
                return null;
            }

            double start = stretch.StartMm + stretch.Ends(_gap, sizing.Hem.Closed).Left;
            var placed = new PlacedName(newcomer, start, width, baseline.For(newcomer), ++order);
            int neighbour = blocks.FindIndex(b => CanTake(b, stretch, placed, blocks));
            if (neighbour >= 0)
            {
                blocks[neighbour] = Grown(blocks[neighbour], placed);
            }
            else
            {
                number++;
                blocks.Add(Grown(new KeptBlock(stretch.Round, number, number, start, width, IsSewn: false, []), placed));
            }
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
