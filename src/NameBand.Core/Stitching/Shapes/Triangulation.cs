using NameBand.Stitching.Geometry;

namespace NameBand.Stitching.Shapes;

/// <summary>
/// The constrained Delaunay triangulation of a region: ears first, then edges are turned until no triangle's
/// circle holds a neighbour's far point: Lawson's flips (C. L. Lawson, Software for C1 Surface Interpolation, in Mathematical
/// Software III, 1977; from memory). Edge k of triangle t runs from corner k to corner k + 1.
/// </summary>
internal sealed class Triangulation
{
    private readonly Vec[] _points;

    private Triangulation(Region region, int[] corners)
    {
        _points = region.Points;
        Corners = corners;
        Neighbours = new int[corners.Length];
    }

    /// <summary>Three points for each triangle, counter-clockwise.</summary>
    public int[] Corners { get; }

    /// <summary>The edge on the other side (3 × triangle + k) of each edge, or -1 on the outline.</summary>
    public int[] Neighbours { get; }

    public int Count => Corners.Length / 3;

    /// <summary>Null when the region's rings cross.</summary>
    public static Triangulation? Of(Region region)
    {
        var triangles = EarClipper.Clip(region);
        if (triangles is null || triangles.Count == 0)
        {
            return null;
        }

        var made = new Triangulation(region, [.. triangles]);
        if (!made.Link())
        {
            return null;
        }

        made.TurnEdges();
        return made;
    }

    public static int NextEdge(int edge) => edge % 3 == 2 ? edge - 2 : edge + 1;

    public static int PreviousEdge(int edge) => edge % 3 == 0 ? edge + 2 : edge - 1;

    /// <summary>Finds each edge's twin among the edges that leave its far point; false where two edges are the same.</summary>
    private bool Link()
    {
        int[] firstFrom = new int[_points.Length];
        int[] nextFrom = new int[Corners.Length];
        int[] leadsTo = new int[Corners.Length];
        Array.Fill(firstFrom, -1);
        for (int e = 0; e < Corners.Length; e++)
        {
            leadsTo[e] = Corners[NextEdge(e)];
            if (Edge(firstFrom[Corners[e]], leadsTo[e], nextFrom, leadsTo) >= 0)
            {
                return false;
            }

            nextFrom[e] = firstFrom[Corners[e]];
            firstFrom[Corners[e]] = e;
        }

        for (int e = 0; e < Corners.Length; e++)
        {
            Neighbours[e] = Edge(firstFrom[leadsTo[e]], Corners[e], nextFrom, leadsTo);
        }

        return true;
    }

    /// <summary>Among the edges that leave a point the one that leads to another; -1 for none.</summary>
    private static int Edge(int edge, int to, int[] nextFrom, int[] leadsTo)
    {
        while (edge >= 0 && leadsTo[edge] != to)
        {
            edge = nextFrom[edge];
        }

        return edge;
    }

    private void TurnEdges()
    {
        var waiting = new Stack<int>();
        for (int e = Corners.Length - 1; e >= 0; e--)
        {
            if (Neighbours[e] > e)
            {
                waiting.Push(e);
            }
        }

        long left = 40L * Corners.Length;
        while (waiting.Count > 0 && left-- > 0)
        {
            int e = waiting.Pop();
            if (Neighbours[e] >= 0 && ShouldTurn(e))
            {
                Turn(e, waiting);
            }
        }
    }

    private bool ShouldTurn(int e)
    {
        int f = Neighbours[e];
        var a = _points[Corners[e]];
        var b = _points[Corners[NextEdge(e)]];
        var c = _points[Corners[PreviousEdge(e)]];
        var d = _points[Corners[PreviousEdge(f)]];
        if (Vec.Cross(a - c, d - c) <= 1e-12 || Vec.Cross(d - c, b - c) <= 1e-12)
        {
            return false;
        }

        var p = a - d;
        var q = b - d;
        var r = c - d;
        double inside = (Vec.Dot(p, p) * Vec.Cross(q, r)) + (Vec.Dot(q, q) * Vec.Cross(r, p)) + (Vec.Dot(r, r) * Vec.Cross(p, q));
        return inside > 1e-10;
    }

    /// <summary>Triangles (a b c) and (b a d) become (c a d) and (d b c).</summary>
    private void Turn(int e, Stack<int> waiting)
    {
        int f = Neighbours[e];
        int e1 = NextEdge(e);
        int e2 = PreviousEdge(e);
        int f1 = NextEdge(f);
        int f2 = PreviousEdge(f);
        int a = Corners[e];
        int b = Corners[f];
        int c = Corners[e2];
        int d = Corners[f2];
        int bc = Neighbours[e1];
        int ca = Neighbours[e2];
        int ad = Neighbours[f1];
        int db = Neighbours[f2];
        (Corners[e], Corners[e1], Corners[e2]) = (c, a, d);
        (Corners[f], Corners[f1], Corners[f2]) = (d, b, c);
        Join(e, ca);
        Join(e1, ad);
        Join(e2, f2);
        Join(f, db);
        Join(f1, bc);
        foreach (int edge in (ReadOnlySpan<int>)[e, e1, f, f1])
        {
            if (Neighbours[edge] >= 0)
            {
                waiting.Push(edge);
            }
        }
    }

    private void Join(int a, int b)
    {
        Neighbours[a] = b;
        if (b >= 0)
        {
            Neighbours[b] = a;
        }
    }
}
