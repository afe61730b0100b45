using NameBand.Stitching.Geometry;

namespace NameBand.Stitching.Shapes;

/// <summary>
/// Cuts a region into triangles: holes are joined to the outer ring by bridges, then ears are cut off one by one.
/// Points on straight edges are kept, so every ring point becomes a corner of some triangle. That there is always an ear to cut:
/// G. H. Meisters, Polygons Have Ears, American Mathematical Monthly 82, 1975 (from memory).
/// </summary>
internal sealed class EarClipper
{
    private readonly Region _region;
    private readonly int[] _vertex;
    private readonly Vec[] _at;
    private readonly PointGrid _grid;
    private readonly int[] _next;
    private readonly int[] _previous;
    private int _count;

    private EarClipper(Region region)
    {
        _region = region;
        int room = region.Points.Length + (2 * region.RingStarts.Length);
        _vertex = new int[room];
        _at = new Vec[room];
        region.Points.CopyTo(_at, 0);
        _grid = new PointGrid(region.Points);
        _next = new int[room];
        _previous = new int[room];
        _count = region.Points.Length;
        for (int i = 0; i < _count; i++)
        {
            _vertex[i] = i;
            _next[i] = region.Next[i];
            _previous[i] = region.Previous[i];
        }
    }

    /// <summary>Three ring points for each triangle, counter-clockwise; null when the rings cross themselves or each other.</summary>
    public static List<int>? Clip(Region region)
    {
        var clipper = new EarClipper(region);
        return clipper.JoinHoles() ? clipper.CutEars() : null;
    }

    private Vec At(int node) => _at[node];

    /// <summary>Positive when the three nodes turn left.</summary>
    private double Turn(int a, int b, int c) => Vec.Cross(At(b) - At(a), At(c) - At(b));

    private bool JoinHoles()
    {
        var starts = new List<int>();
        for (int r = 1; r < _region.RingStarts.Length; r++)
        {
            int start = _region.RingStarts[r];
            int leftmost = start;
            for (int i = _next[start]; i != start; i = _next[i])
            {
                if (At(i).X < At(leftmost).X || (At(i).X == At(leftmost).X && At(i).Y < At(leftmost).Y))
                {
                    leftmost = i;
                }
            }

            starts.Add(leftmost);
        }

        starts.Sort((a, b) => At(a).X != At(b).X ? At(a).X.CompareTo(At(b).X) : At(a).Y.CompareTo(At(b).Y));
        foreach (int hole in starts)
        {
            int bridge = FindBridge(hole, _region.RingStarts[0]);
            if (bridge < 0)
            {
                return false;
            }

            Split(bridge, hole);
        }

        return true;
    }

    private int FindBridge(int hole, int outer)
    {
        var h = At(hole);
        double reach = double.NegativeInfinity;
        int best = -1;
        int p = outer;
        do
        {
            var a = At(p);
            var b = At(_next[p]);
            if (h.Y <= a.Y && h.Y >= b.Y && a.Y != b.Y)
            {
                double x = a.X + ((h.Y - a.Y) * (b.X - a.X) / (b.Y - a.Y));
                if (x <= h.X && x > reach)
                {
                    reach = x;
                    best = a.X < b.X ? p : _next[p];
                }
            }

            p = _next[p];
        }
        while (p != outer);

        if (best < 0)
        {
            return -1;
        }

        var m = At(best);
        var edge = new Vec(reach, h.Y);
        int stop = best;
        double least = double.PositiveInfinity;
        p = best;
        do
        {
            var a = At(p);
            bool within = h.Y < m.Y ? InTriangle(h, m, edge, a) : InTriangle(edge, m, h, a);
            if (h.X >= a.X && a.X >= m.X && h.X != a.X && within)
            {
                double slope = Math.Abs(h.Y - a.Y) / (h.X - a.X);
                if (SeesInward(p, hole) && (slope < least || (slope == least && (a.X > At(best).X || SectorWithin(best, p)))))
                {
                    best = p;
                    least = slope;
                }
            }

            p = _next[p];
        }
        while (p != stop);
        return best;
    }

    private static bool InTriangle(Vec a, Vec b, Vec c, Vec p)
    {
        double u = Vec.Cross(b - a, p - a);
        double v = Vec.Cross(c - b, p - b);
        double w = Vec.Cross(a - c, p - c);
        return (u >= 0 && v >= 0 && w >= 0) || (u <= 0 && v <= 0 && w <= 0);
    }

    private bool SeesInward(int a, int b) => Turn(_previous[a], a, _next[a]) > 0
        ? Turn(a, b, _next[a]) <= 0 && Turn(a, _previous[a], b) <= 0
        : Turn(a, b, _previous[a]) > 0 || Turn(a, _next[a], b) > 0;

    private bool SectorWithin(int m, int p) => Turn(_previous[m], m, _previous[p]) > 0 && Turn(_next[p], m, _next[m]) > 0;

    private void Split(int a, int b)
    {
        int a2 = _count++;
        int b2 = _count++;
        _vertex[a2] = _vertex[a];
        _vertex[b2] = _vertex[b];
        (_at[a2], _at[b2]) = (_at[a], _at[b]);
        _grid.Repeat(_vertex[a]);
        _grid.Repeat(_vertex[b]);
        int afterA = _next[a];
        int beforeB = _previous[b];
        (_next[a], _previous[b]) = (b, a);
        (_next[a2], _previous[afterA]) = (afterA, a2);
        (_next[b2], _previous[a2]) = (a2, b2);
        (_next[beforeB], _previous[b2]) = (b2, beforeB);
    }

    private List<int>? CutEars()
    {
        var triangles = new List<int>(3 * _count);
        int left = _count;
        int node = _region.RingStarts[0];
        int misses = 0;
        bool lenient = false;
        while (left > 2)
        {
            int before = _previous[node];
            int after = _next[node];
            if (IsEar(before, node, after, lenient))
            {
                triangles.Add(_vertex[before]);
                triangles.Add(_vertex[node]);
                triangles.Add(_vertex[after]);
                _next[before] = after;
                _previous[after] = before;
                _grid.Remove(_vertex[node]);
                left--;
                misses = 0;
                lenient = false;
                node = _next[after];
            }
            else
            {
                node = after;
                if (++misses > left)
                {
                    if (lenient)
                    {
                        return null;
                    }

                    lenient = true;
                    misses = 0;
                }
            }
        }

        return triangles;
    }

    private bool IsEar(int a, int b, int c, bool lenient)
    {
        var pa = At(a);
        var pb = At(b);
        var pc = At(c);
        if (Vec.Cross(pb - pa, pc - pb) <= 1e-12)
        {
            return false;
        }

        double left = Math.Min(pa.X, Math.Min(pb.X, pc.X));
        double right = Math.Max(pa.X, Math.Max(pb.X, pc.X));
        double bottom = Math.Min(pa.Y, Math.Min(pb.Y, pc.Y));
        double top = Math.Max(pa.Y, Math.Max(pb.Y, pc.Y));
        double slack = lenient ? 1e-9 : -1e-12;
        var (from, to) = (_grid.CellOf(new Vec(left, bottom)), _grid.CellOf(new Vec(right, top)));
        for (int row = from.Row; row <= to.Row; row++)
        {
            for (int column = from.Column; column <= to.Column; column++)
            {
                for (int v = _grid.First(column, row); v >= 0; v = _grid.Next(v))
                {
                    var q = _at[v];
                    if (q.X < left || q.X > right || q.Y < bottom || q.Y > top || v == _vertex[a] || v == _vertex[b] || v == _vertex[c])
                    {
                        continue;
                    }

                    if (Vec.Cross(pb - pa, q - pa) >= slack && Vec.Cross(pc - pb, q - pb) >= slack && Vec.Cross(pa - pc, q - pc) >= slack)
                    {
                        return false;
                    }
                }
            }
        }

        return true;
    }
}
