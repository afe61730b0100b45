using System.Collections.Immutable;

namespace NameBand.Layout.Resuming;

/// <summary>
/// Cuts names that were set out again into hoopings, on the cloths as they are cut: strips that lie side by side share
/// hoopings, and no hooping reaches over a join or over a name that is sewn already.
/// </summary>
internal sealed class Rehooping(Sizing sizing, double[] hemsMm, ImmutableArray<StripCloth> cloths)
{
    /// <summary>Names of one piece, next to each other with nothing sewn between them.</summary>
    private sealed record Run(StripPiece Piece, ImmutableArray<PlacedName> Names);

    private sealed record Share(StripPiece Piece, ImmutableArray<PlacedName> Names);

    public IEnumerable<KeptBlock> Cut(ImmutableArray<KeptBlock> sewn, IReadOnlyList<(int Round, PlacedName Name)> placed)
    {
        var segments = new Numbers(sewn.Select(b => b.Segment));
        var hoopings = new Numbers(sewn.Select(b => b.Hooping));
        var pieces = cloths.SelectMany(c => c.Pieces).ToList();
        var byPiece = placed.ToLookup(p => PieceOf(pieces, p.Round, p.Name.StartMm));
        var unclothed = byPiece.Select(g => g.Key).Where(p => p.Number == 0).OrderBy(p => p.Round).Select(p => new[] { p });
        var beside = cloths.OrderBy(c => c.Number).SelectMany(c => sizing.Hem.Lanes >= c.Lanes ? [[.. c.Pieces]] : c.Pieces.Select(p => new[] { p }));
        foreach (var lanes in beside.Concat(unclothed))
        {
            var runs = lanes.OrderBy(p => p.Lane).Select(p => new Queue<Run>(Runs(p, [.. byPiece[p].Select(n => n.Name).OrderBy(n => n.StartMm)], sewn))).ToList();
            while (runs.Exists(q => q.Count > 0))
            {
                var shares = Next(runs);
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
        pieces.Where(p => p.Round == round).OrderBy(p => p.StartMm).LastOrDefault(p => p.StartMm <= atMm + Sizing.SlightMm)
        ?? new StripPiece(0, round, 0, hemsMm[round - 1], 0, 1, 0, 0, 0);

    private static IEnumerable<Run> Runs(StripPiece piece, ImmutableArray<PlacedName> names, ImmutableArray<KeptBlock> sewn)
    {
        double[] lying = [.. sewn.Where(b => b.Round == piece.Round).SelectMany(b => b.Names).Select(n => n.StartMm)];
        int first = 0;
        for (int i = 1; i <= names.Length; i++)
        {
            if (i == names.Length || Array.Exists(lying, l => l > names[i - 1].StartMm && l < names[i].StartMm))
            {
                yield return new Run(piece, names[first..i]);
                first = i;
            }
        }
    }

    /// <summary>A hooping begins at the leftmost name not yet sewn and takes of every lane what fits.</summary>
    private List<Share> Next(List<Queue<Run>> lanes)
    {
        double left = lanes.Where(q => q.Count > 0).Min(q => OnClothMm(q.Peek().Piece, q.Peek().Names[0].StartMm));
        var shares = new List<Share>();
        foreach (var lane in lanes.Where(q => q.Count > 0))
        {
            var run = lane.Peek();
            int count = 0;
            while (count < run.Names.Length
                && SegmentCutter.FitsField(run.Names[0], run.Names[count], sizing)
                && OnClothMm(run.Piece, run.Names[count].StartMm) + run.Names[count].WidthMm - left <= sizing.HoopingOnClothMm + Sizing.SlightMm)
            {
                count++;
            }

            // A name that alone is as long as the field is sewn all the same.
            count = count == 0 && OnClothMm(run.Piece, run.Names[0].StartMm) <= left ? 1 : count;
            if (count == 0)
            {
                continue;
            }

            shares.Add(new Share(run.Piece, run.Names[..count]));
            lane.Dequeue();
            if (count < run.Names.Length)
            {
                var later = lane.ToArray();
                lane.Clear();
                lane.Enqueue(run with { Names = run.Names[count..] });
                Array.ForEach(later, lane.Enqueue);
            }
        }

        return shares;
    }

    private (double StartMm, double LengthMm) Extent(Share share, List<Share> shares)
    {
        double from = share.Piece.StartMm;
        double to = Math.Max(share.Piece.EndMm, share.Names[^1].EndMm);
        if (shares.Count > 1)
        {
            double left = shares.Min(s => OnClothMm(s.Piece, s.Names[0].StartMm));
            double right = shares.Max(s => OnClothMm(s.Piece, s.Names[^1].StartMm) + s.Names[^1].WidthMm);
            double slack = Math.Max(0, sizing.HoopingOnClothMm - (right - left)) / 2;
            from = Math.Max(from, Finished(share.Piece, left - slack));
            to = Math.Min(to, Finished(share.Piece, right + slack));
        }

        return SegmentCutter.Extent(share.Names[0], share.Names[^1], from, to, sizing);
    }

    private double OnClothMm(StripPiece piece, double startMm) => piece.OnClothMm + ((startMm - piece.StartMm) / (1 - sizing.Shortening));

    private double Finished(StripPiece piece, double onClothMm) => piece.StartMm + ((onClothMm - piece.OnClothMm) * (1 - sizing.Shortening));

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
