using NameBand.Common;

namespace NameBand.Lettering.Outlines;

/// <summary>Whether two outlines meet: they overlap, or come nearer than any stitch could keep apart.</summary>
internal static class Touching
{
    /// <summary>Part of the letter height; 0.02 mm on a letter of 10 mm.</summary>
    private const double Near = 0.002;

    public static bool Meet(GlyphShape a, Point atA, GlyphShape b, Point atB)
    {
        var move = atB - atA;
        var boxB = b.Ink.Moved(move);
        if (!Overlap(a.Ink, boxB))
        {
            return false;
        }

        var shared = Shared(a.Ink, boxB);
        var edgesA = Edges(a.Outline, default, shared);
        var edgesB = Edges(b.Outline, move, shared);
        foreach (var (p, q) in edgesA)
        {
            foreach (var (r, s) in edgesB)
            {
                if (Distance(p, q, r, s) <= Near)
                {
                    return true;
                }
            }
        }

        return Inside(a.Outline, b.Outline.Rings[0].Points[0] + move) || Inside(b.Outline, a.Outline.Rings[0].Points[0] - move);
    }

    private static bool Inside(Outline outline, Point p) =>
        outline.Rings.Count(r => RingOrder.Holds(r.Points.AsSpan(), p)) % 2 == 1;

    private static bool Overlap(Box a, Box b) =>
        !a.IsEmpty && !b.IsEmpty && a.LeftMm <= b.RightMm + Near && b.LeftMm <= a.RightMm + Near
        && a.BottomMm <= b.TopMm + Near && b.BottomMm <= a.TopMm + Near;

    private static Box Shared(Box a, Box b) => new(
        Math.Max(a.LeftMm, b.LeftMm) - Near, Math.Max(a.BottomMm, b.BottomMm) - Near,
        Math.Min(a.RightMm, b.RightMm) + Near, Math.Min(a.TopMm, b.TopMm) + Near);

    private static List<(Point From, Point To)> Edges(Outline outline, Point move, Box within)
    {
        var edges = new List<(Point, Point)>();
        foreach (var ring in outline.Rings)
        {
            var points = ring.Points;
            for (int i = 0, j = points.Length - 1; i < points.Length; j = i++)
            {
                Point p = points[j] + move, q = points[i] + move;
                if (Math.Max(p.XMm, q.XMm) >= within.LeftMm && Math.Min(p.XMm, q.XMm) <= within.RightMm
                    && Math.Max(p.YMm, q.YMm) >= within.BottomMm && Math.Min(p.YMm, q.YMm) <= within.TopMm)
                {
                    edges.Add((p, q));
                }
            }
        }

        return edges;
    }

    private static double Distance(Point p, Point q, Point r, Point s)
    {
        if (Math.Min(p.XMm, q.XMm) > Math.Max(r.XMm, s.XMm) + Near || Math.Min(r.XMm, s.XMm) > Math.Max(p.XMm, q.XMm) + Near
            || Math.Min(p.YMm, q.YMm) > Math.Max(r.YMm, s.YMm) + Near || Math.Min(r.YMm, s.YMm) > Math.Max(p.YMm, q.YMm) + Near)
        {
            return double.PositiveInfinity;
        }

        bool cross = Side(p, q, r) > 0 != Side(p, q, s) > 0 && Side(r, s, p) > 0 != Side(r, s, q) > 0;
        return cross
            ? 0
            : Math.Min(Math.Min(ToSegment(p, r, s), ToSegment(q, r, s)), Math.Min(ToSegment(r, p, q), ToSegment(s, p, q)));
    }

    private static double Side(Point a, Point b, Point p) =>
        ((b.XMm - a.XMm) * (p.YMm - a.YMm)) - ((b.YMm - a.YMm) * (p.XMm - a.XMm));

    private static double ToSegment(Point p, Point a, Point b)
    {
        var along = b - a;
        double length = (along.XMm * along.XMm) + (along.YMm * along.YMm);
        double t = length > 0 ? Math.Clamp((((p.XMm - a.XMm) * along.XMm) + ((p.YMm - a.YMm) * along.YMm)) / length, 0, 1) : 0;
        return p.DistanceTo(a + (along * t));
    }
}
