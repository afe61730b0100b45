using NameBand.Stitching.Shapes;

namespace NameBand.Stitching.Strokes;

/// <summary>An inner edge across a stroke, seen by someone who walks along the stroke: ring points to the left and to the right.</summary>
internal readonly record struct Chord(int Left, int Right)
{
    public Chord Reversed => new(Right, Left);
}

/// <summary>A chain of chords between two triangles that are ends or junctions.</summary>
internal sealed class Arm(int from, int to, List<Chord> chords)
{
    public int From { get; } = from;

    public int To { get; } = to;

    public List<Chord> Chords { get; } = chords;
}

/// <summary>
/// The triangles of a region read as strokes: a triangle with one open edge is an end, with two a piece of a
/// stroke, with three a junction. Small spurs are closed off, the least deep first. This is the chordal axis transform
/// (L. Prasad, Morphological Analysis of Shapes, CNLS Newsletter 139, Los Alamos 1997; seen cited, not read).
/// </summary>
internal sealed class Skeleton
{
    private readonly Region _region;
    private readonly Triangulation _mesh;
    private readonly bool[] _open;
    private readonly int[] _degree;

    private Skeleton(Region region, Triangulation mesh)
    {
        _region = region;
        _mesh = mesh;
        _open = new bool[mesh.Corners.Length];
        _degree = new int[mesh.Count];
        for (int e = 0; e < _open.Length; e++)
        {
            _open[e] = mesh.Neighbours[e] >= 0;
            _degree[e / 3] += _open[e] ? 1 : 0;
        }
    }

    public List<Arm> Arms { get; } = [];

    /// <summary>Closed strokes without an end or a junction, such as o.</summary>
    public List<List<Chord>> Loops { get; } = [];

    public static Skeleton Of(Region region, Triangulation mesh, SpurRule rule)
    {
        var skeleton = new Skeleton(region, mesh);
        skeleton.CloseSpurs(rule);
        skeleton.FindArms();
        return skeleton;
    }

    /// <summary>Whether the same spurs of the same triangles are closed.</summary>
    public bool IsSameAs(Skeleton other) => _mesh == other._mesh && _open.AsSpan().SequenceEqual(other._open);

    public bool IsJunction(int triangle) => _degree[triangle] == 3;

    public (int A, int B, int C) CornersOf(int triangle) =>
        (_mesh.Corners[3 * triangle], _mesh.Corners[(3 * triangle) + 1], _mesh.Corners[(3 * triangle) + 2]);

    private void CloseSpurs(SpurRule rule)
    {
        var spurs = new List<(int End, int Mouth, double DepthMm)>();
        for (int t = 0; t < _mesh.Count; t++)
        {
            if (_degree[t] == 1)
            {
                spurs.Add(SpurOf(t, rule));
            }
        }

        while (true)
        {
            int best = -1;
            for (int i = 0; i < spurs.Count; i++)
            {
                if (spurs[i].DepthMm < (best < 0 ? double.PositiveInfinity : spurs[best].DepthMm))
                {
                    best = i;
                }
            }

            if (best < 0)
            {
                return;
            }

            int junction = spurs[best].Mouth / 3;
            Close(spurs[best].Mouth);
            spurs.RemoveAt(best);

            // Only what ended at the same junction now goes on to another one.
            for (int i = 0; i < spurs.Count; i++)
            {
                if (spurs[i].Mouth >= 0 && spurs[i].Mouth / 3 == junction)
                {
                    spurs[i] = SpurOf(spurs[i].End, rule);
                }
            }
        }
    }

    /// <summary>The spur that ends in a triangle; without end where it is not to be closed.</summary>
    private (int End, int Mouth, double DepthMm) SpurOf(int end, SpurRule rule)
    {
        int mouth = MouthOf(end);
        if (mouth < 0)
        {
            return (end, mouth, double.PositiveInfinity);
        }

        double width = (_region.Points[_mesh.Corners[mouth]] - _region.Points[_mesh.Corners[Triangulation.NextEdge(mouth)]]).Length;
        double depth = DepthBeyond(mouth, Math.Max(rule.MostDepth(width), ApexCut.MostTipPart * width));
        bool closes = !double.IsInfinity(depth) && (rule.Closes(depth, width) || IsApex(mouth, depth, rule.StrokeMm));
        return (end, mouth, closes ? depth : double.PositiveInfinity);
    }

    /// <summary>The junction's edge through which one enters the spur that ends in this triangle; -1 when there is no junction.</summary>
    private int MouthOf(int end)
    {
        int triangle = end;
        int cameBy = -1;
        while (true)
        {
            int edge = -1;
            for (int k = 0; k < 3; k++)
            {
                int e = (3 * triangle) + k;
                if (_open[e] && e != cameBy)
                {
                    edge = e;
                }
            }

            if (edge < 0)
            {
                return -1;
            }

            int twin = _mesh.Neighbours[edge];
            triangle = twin / 3;
            cameBy = twin;
            if (_degree[triangle] == 3)
            {
                return twin;
            }

            if (_degree[triangle] == 1)
            {
                return -1;
            }
        }
    }

    /// <summary>How far the outline reaches beyond a mouth; without end where that is more than stated.</summary>
    private double DepthBeyond(int mouth, double most)
    {
        int u = _mesh.Corners[mouth];
        int v = _mesh.Corners[Triangulation.NextEdge(mouth)];
        var a = _region.Points[u];
        var b = _region.Points[v];
        double depth = 0;
        int at = u;
        while (at != v)
        {
            depth = Math.Max(depth, _region.Points[at].DistanceToSegment(a, b));
            at = _region.Next[at];
            if (at == u || depth >= most)
            {
                return double.PositiveInfinity;
            }
        }

        return depth;
    }

    /// <summary>The tip above two legs that are alike is no stroke that either of them goes on into: it is parted at the corner
    /// later.</summary>
    private bool IsApex(int mouth, double depth, double strokeMm)
    {
        var (one, other) = (_mesh.Corners[mouth], _mesh.Corners[Triangulation.NextEdge(mouth)]);
        return depth < ApexCut.MostTipPart * (_region.Points[other] - _region.Points[one]).Length
            && ApexCut.IsCrotch(_region, _mesh.Corners[Triangulation.PreviousEdge(mouth)], (one, other), strokeMm);
    }

    private void Close(int mouth)
    {
        int twin = _mesh.Neighbours[mouth];
        _open[mouth] = false;
        _degree[mouth / 3]--;
        _open[twin] = false;
        int triangle = twin / 3;
        _degree[triangle] = 0;
        int edge = twin;
        while (true)
        {
            int next = -1;
            for (int k = 0; k < 3; k++)
            {
                int e = (3 * triangle) + k;
                if (_open[e] && e != edge)
                {
                    next = e;
                }
            }

            _degree[triangle] = 0;
            if (next < 0)
            {
                return;
            }

            _open[next] = false;
            edge = _mesh.Neighbours[next];
            _open[edge] = false;
            triangle = edge / 3;
        }
    }

    private void FindArms()
    {
        var seen = new bool[_open.Length];
        for (int t = 0; t < _mesh.Count; t++)
        {
            if (_degree[t] is not (1 or 3))
            {
                continue;
            }

            for (int k = 0; k < 3; k++)
            {
                int edge = (3 * t) + k;
                if (_open[edge] && !seen[edge])
                {
                    Arms.Add(Follow(t, edge, seen));
                }
            }
        }

        for (int t = 0; t < _mesh.Count; t++)
        {
            for (int k = 0; k < 3 && _degree[t] == 2; k++)
            {
                int edge = (3 * t) + k;
                if (_open[edge] && !seen[edge] && !seen[_mesh.Neighbours[edge]])
                {
                    Loops.Add(Follow(t, edge, seen).Chords);
                }
            }
        }
    }

    private Arm Follow(int from, int edge, bool[] seen)
    {
        var chords = new List<Chord>();
        int first = edge;
        while (true)
        {
            int twin = _mesh.Neighbours[edge];
            seen[edge] = true;
            seen[twin] = true;
            chords.Add(new Chord(_mesh.Corners[Triangulation.NextEdge(edge)], _mesh.Corners[edge]));
            int triangle = twin / 3;
            if (_degree[triangle] != 2)
            {
                return new Arm(from, triangle, chords);
            }

            int a = Triangulation.NextEdge(twin);
            edge = _open[a] ? a : Triangulation.PreviousEdge(twin);
            if (edge == first)
            {
                return new Arm(from, triangle, chords);
            }
        }
    }
}

/// <summary>Which spurs are too shallow to be strokes of their own.</summary>
/// <param name="DepthToMouth">A spur less deep than this part of its mouth's width is closed.</param>
/// <param name="DepthMm">A spur less deep than this is closed.</param>
/// <param name="StrokeMm">Usual width of a stroke here: a mouth that lies aslant counts for no more than a little over this.</param>
internal readonly record struct SpurRule(double DepthToMouth, double DepthMm, double StrokeMm)
{
    public bool Closes(double depthMm, double mouthMm) => depthMm < MostDepth(mouthMm);

    public double MostDepth(double mouthMm) => Math.Max(DepthMm, DepthToMouth * Math.Min(mouthMm, 1.15 * StrokeMm));
}
