using System.Collections.Immutable;
using NameBand.Layout.Pieces;

namespace NameBand.Layout.Resuming;

/// <summary>
/// Cuts names that were set out again into hoopings, on the cloths as they are cut: strips that lie side by side share
/// hoopings, and no hooping reaches over a join or over a name that is sewn already.
/// </summary>
internal sealed class Rehooping(Sizing sizing, double[] hemsMm, ImmutableArray<StripCloth> cloths)
{
    private sealed record Share(StripPiece Piece, ImmutableArray<PlacedName> Names);

    public IEnumerable<KeptBlock> Cut(ImmutableArray<KeptBlock> sewn, IReadOnlyList<(int Round, PlacedName Name)> placed)
    {
        var segments = new Numbers(sewn.Select(b => b.Segment));
        var hoopings = new Numbers(sewn.Select(b => b.Hooping));
        var pieces = cloths.SelectMany(c => c.Pieces).ToList();
        var byPiece = placed.ToLookup(p => PieceOf(pieces, p.Round, p.Name.StartMm));
        var unclothed = byPiece.Select(g => g.Key).Where(p => p.Number == 0).OrderBy(p => p.Round).Select(p => new[] { p });
        var clothed = cloths.OrderBy(c => c.Number)
            .SelectMany(c => sizing.LanesBeside >= c.Lanes ? [[.. c.Pieces]] : c.Pieces.Select(p => new[] { p }));
        foreach (var lanes in clothed.Concat(unclothed))
        {
            var all = lanes.OrderBy(p => p.Lane).Select(p => new Share(p, [.. byPiece[p].Select(n => n.Name).OrderBy(n => n.StartMm)]))
                .ToList();
            foreach (var run in all.SelectMany(l => Unhooped(l, sewn)))
            {
                var (start, length) = Extent(run, [run]);
                yield return new KeptBlock(run.Piece.Round, segments.Next(), hoopings.Next(), start, length, IsSewn: false, run.Names);
            }

            var beside = all.Select(l => l with { Names = [.. l.Names.Where(n => !n.Lettered.IsInOneRun)] }).ToList();
            foreach (var cut in new HoopingSearch(
                [.. beside.Zip(all).Select(l => LaneOf(l.First, l.Second, sewn))], sizing.HoopingOnClothMm).Cut())
            {
                var shares = cut.Select(c => new Share(beside[c.Lane].Piece, beside[c.Lane].Names.Slice(c.First, c.Count))).ToList();
                int hooping = hoopings.Next();
                foreach (var share in shares)
                {
                    var (start, length) = Extent(share, shares);
                    yield return new KeptBlock(share.Piece.Round, segments.Next(), hooping, start, length, IsSewn: false, share.Names);
                }
            }
        }
    }

    private StripPiece PieceOf(List<StripPiece> pieces, int round, double atMm) =>
        StripPiece.At(pieces, round, atMm) ?? new StripPiece(0, round, 0, hemsMm[round - 1], 0, 1, 0, 0, 0);

    /// <summary>Names that need no hoop, each run of neighbours for itself.</summary>
    private static IEnumerable<Share> Unhooped(Share lane, ImmutableArray<KeptBlock> sewn)
    {
        if (!lane.Names.Any(n => n.Lettered.IsInOneRun))
        {
            return [];
        }

        PlacedName[] beside = [.. Lying(lane.Piece, sewn).Concat(lane.Names).OrderBy(n => n.StartMm)];
        var own = new HashSet<PlacedName>(lane.Names, ReferenceEqualityComparer.Instance);
        return beside.Zip(NameRuns.Of(beside)).Where(p => p.First.Lettered.IsInOneRun && own.Contains(p.First))
            .GroupBy(p => p.Second, p => p.First).Select(g => new Share(lane.Piece, [.. g]));
    }

    private static IEnumerable<PlacedName> Lying(StripPiece piece, ImmutableArray<KeptBlock> sewn) =>
        sewn.Where(b => b.Round == piece.Round).SelectMany(b => b.Names);

    /// <summary>Names of one piece: a segment holds those next to each other with nothing sewn, or sewn otherwise, between them.</summary>
    /// <param name="all">The names that are not hooped too.</param>
    private HoopingLane LaneOf(Share lane, Share all, ImmutableArray<KeptBlock> sewn)
    {
        var (piece, names) = (lane.Piece, lane.Names);
        double[] lying = [.. Lying(piece, sewn).Select(n => n.StartMm)];
        int[] runs = [.. NameRuns.Of(all.Names).Where((_, i) => !all.Names[i].Lettered.IsInOneRun)];
        double[] left = [.. names.Select(n => OnClothMm(piece, n.StartMm))];
        return new HoopingLane(
            left, [.. names.Select(n => OnClothMm(piece, n.EndMm))], sizing.HoopingOnClothMm,
            (first, last) => runs[first] == runs[last] && SegmentCutter.FitsField(names[first], names[last], sizing)
                && !Array.Exists(lying, l => l > names[first].StartMm && l < names[last].StartMm));
    }

    private (double StartMm, double LengthMm) Extent(Share share, List<Share> shares)
    {
        double from = share.Piece.StartMm;
        double to = Math.Max(share.Piece.EndMm, share.Names[^1].EndMm);
        if (shares.Count > 1)
        {
            double left = shares.Min(s => OnClothMm(s.Piece, s.Names[0].StartMm));
            double right = shares.Max(s => OnClothMm(s.Piece, s.Names[^1].EndMm));
            double slack = Math.Max(0, sizing.HoopingOnClothMm - (right - left)) / 2;
            from = Math.Max(from, Finished(share.Piece, left - slack));
            to = Math.Min(to, Finished(share.Piece, right + slack));
        }

        return SegmentCutter.Extent(share.Names[0], share.Names[^1], from, to, sizing);
    }

    private double OnClothMm(StripPiece piece, double startMm) => piece.OnClothMm + sizing.Flat.OnClothMm(startMm - piece.StartMm);

    private double Finished(StripPiece piece, double onClothMm) => piece.StartMm + sizing.Flat.FinishedMm(onClothMm - piece.OnClothMm);

    /// <summary>Numbers from 1 that are not taken yet.</summary>
    private sealed class Numbers(IEnumerable<int> taken)
    {
        private readonly HashSet<int> _taken = [.. taken];
        private int _last;

        public int Next()
        {
            while (!_taken.Add(++_last))
            {
            }

            return _last;
        }
    }
}
