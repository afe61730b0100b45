using System.Collections.Immutable;
using NameBand.Common;
using NameBand.Layout.Pieces;

namespace NameBand.Layout.Resuming;

/// <summary>Whether what was planned can still be sewn as it was planned.</summary>
internal sealed class AsPlanned(Sizing sizing, double[] hemsMm, ImmutableArray<StripCloth> cloths)
{
    /// <summary>What is read back from a plan stands on thousandths of a millimetre.</summary>
    private const double ReadBackMm = 0.002;

    /// <summary>Whether everything unsewn lies clear of all else and of what is kept clear. A strip may run over its hem's end.</summary>
    public bool IsClear(ImmutableArray<KeptBlock> blocks)
    {
        foreach (var round in blocks.GroupBy(b => b.Round))
        {
            var stretches = FreeInterval.Of(sizing.Hem.WithNothingKeptFree(), round.Key);
            double end = stretches.Max(s => s.EndMm);
            double hem = hemsMm[round.Key - 1];
            bool reachesHem = end >= hem - sizing.Hem.EndMarginMm - Tolerance.RoundingMm;
            double runsOverFrom = reachesHem ? stretches.MaxBy(s => s.EndMm)!.StartMm : hem;
            bool IsAllowed(PlacedName n) => n.StartMm >= runsOverFrom - ReadBackMm
                || stretches.Any(s => n.StartMm >= s.StartMm - ReadBackMm && n.EndMm <= s.EndMm + ReadBackMm);
            var items = round.SelectMany(b => b.Sewn.Select(n => (Name: n, b.IsSewn))).OrderBy(i => i.Name.StartMm).ToList();
            var (furthest, isFurthestSewn) = (double.NegativeInfinity, true);
            foreach (var (name, isSewn) in items)
            {
                if ((name.StartMm < furthest - ReadBackMm && !(isSewn && isFurthestSewn)) || (!isSewn && !IsAllowed(name)))
                {
                    return false;
                }

                (furthest, isFurthestSewn) = name.EndMm > furthest ? (name.EndMm, isSewn) : (furthest, isFurthestSewn);
            }
        }

        return true;
    }

    /// <summary>
    /// The blocks, with unsewn hoopings cut anew that are too long for the field, or whose names go different ways now; the
    /// same where all fit. No name moves.
    /// </summary>
    public ImmutableArray<KeptBlock> FittedToField(ImmutableArray<KeptBlock> blocks)
    {
        var tooLong = blocks.GroupBy(b => b.Hooping).Where(h => h.Any(b => !b.IsSewn) && !(FitsField([.. h]) && GoOneWay(h)))
            .SelectMany(h => h).ToList();
        if (tooLong.Count == 0)
        {
            return blocks;
        }

        ImmutableArray<KeptBlock> rest = [.. blocks.Except(tooLong)];
        var motifs = tooLong.SelectMany(b => b.Motifs.Select(m => (b.Round, Motif: m))).ToLookup(p => p.Round, p => p.Motif);
        var cut = new Rehooping(sizing, hemsMm, cloths).Cut(rest, [.. tooLong.SelectMany(b => b.Names.Select(n => (b.Round, n)))]);
        return [.. rest,
            .. cut.Select(b => b with { Motifs = [.. motifs[b.Round].Where(m => m.StartMm > b.FirstMm && m.EndMm < b.LastMm)] })];
    }

    private static bool GoOneWay(IEnumerable<KeptBlock> hooping) =>
        hooping.SelectMany(b => b.Names).Select(n => (n.Lettered.Way, n.Lettered.IsInOneRun)).Distinct().Count() == 1;

    private bool FitsField(ImmutableArray<KeptBlock> hooping)
    {
        if (hooping.All(b => b.Names.All(n => n.Lettered.IsInOneRun)))
        {
            return true;
        }

        var pieces = cloths.SelectMany(c => c.Pieces).ToList();
        if (sizing.Hem.IsCurved && hooping.Length > 1)
        {
            return IsNested(hooping, pieces);
        }

        double left = hooping.Min(b => OnClothMm(b, b.StartMm));
        double right = hooping.Max(b => OnClothMm(b, b.StartMm + b.LengthMm));
        return right - left <= sizing.HoopingOnClothMm + ReadBackMm;

        double OnClothMm(KeptBlock block, double atMm) => StripPiece.At(pieces, block.Round, block.FirstMm) is { } piece
            ? piece.OnClothMm + sizing.Flat.OnClothMm(atMm - piece.StartMm)
            : sizing.Flat.OnClothMm(atMm);
    }

    /// <summary>Whether the segments of curved strips beside each other lie in one field still.</summary>
    private bool IsNested(ImmutableArray<KeptBlock> hooping, List<StripPiece> pieces)
    {
        var lying = hooping.Select(b => (Block: b, Piece: StripPiece.At(pieces, b.Round, b.FirstMm))).ToList();
        if (lying.Exists(l => l.Piece is null) || cloths.FirstOrDefault(c => c.Number == lying[0].Piece!.Cloth) is not { } cloth)
        {
            return false;
        }

        var nest = PieceEnds.Nest(sizing, cloth.Pieces);
        return nest.Extent([.. lying.Select(l => new ArcSpan(l.Piece!.Lane - 1, Angle(l, l.Block.FirstMm), Angle(l, l.Block.LastMm)))],
            ArcField.Of(sizing, 1)) is not null;

        double Angle((KeptBlock Block, StripPiece? Piece) lies, double atMm) =>
            nest.AngleRad(lies.Piece!.Lane - 1, sizing.Flat.OnClothMm(atMm - lies.Piece.StartMm));
    }
}
