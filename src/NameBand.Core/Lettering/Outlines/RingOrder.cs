using NameBand.Common;

namespace NameBand.Lettering.Outlines;

/// <summary>Rings that do not cross, cleaned and turned: outer ones counter-clockwise, holes clockwise.</summary>
internal static class RingOrder
{
    /// <summary>Points nearer than this are one point (part of the letter height).</summary>
    private const double Nearest = 0.00005;

    /// <summary>A ring of less area than this is left over from uniting, not part of a letter (part of the letter height,
    /// squared).</summary>
    private const double LeastArea = 0.000002;

    private const int Votes = 5; // An odd count: a vertex that lies on the other ring may err, three of five do not.

    public static Outline Turn(IEnumerable<Point[]> rings)
    {
        var clean = new List<(Ring Ring, double Area, Box Box)>();
        foreach (var points in rings)
        {
            var ring = new Ring([.. WithoutRepeats(points)]);
            double area = SignedArea(ring.Points.AsSpan());
            if (Math.Abs(area) >= LeastArea)
            {
                clean.Add((ring, area, BoxOf(ring.Points)));
            }
        }

        var turned = new List<Ring>(clean.Count);
        for (int i = 0; i < clean.Count; i++)
        {
            int depth = 0;
            for (int j = 0; j < clean.Count; j++)
            {
                if (j != i && Math.Abs(clean[j].Area) > Math.Abs(clean[i].Area) && Covers(clean[j].Box, clean[i].Box)
                    && IsInside(clean[i].Ring, clean[j].Ring))
                {
                    depth++;
                }
            }

            bool hole = (depth & 1) == 1;
            turned.Add(hole == clean[i].Area < 0 ? clean[i].Ring : new Ring([.. clean[i].Ring.Points.Reverse()]));
        }

        return new Outline([.. turned]);
    }

    public static double SignedArea(ReadOnlySpan<Point> ring)
    {
        double twice = 0;
        for (int i = 0, j = ring.Length - 1; i < ring.Length; j = i++)
        {
            twice += (ring[j].XMm * ring[i].YMm) - (ring[i].XMm * ring[j].YMm);
        }

        return twice / 2;
    }

    /// <summary>Whether a point lies inside a ring (crossing count; on the edge: either).</summary>
    public static bool Holds(ReadOnlySpan<Point> ring, Point p)
    {
        bool inside = false;
        for (int i = 0, j = ring.Length - 1; i < ring.Length; j = i++)
        {
            if (ring[i].YMm > p.YMm != ring[j].YMm > p.YMm
                && p.XMm < ((ring[j].XMm - ring[i].XMm) * (p.YMm - ring[i].YMm) / (ring[j].YMm - ring[i].YMm)) + ring[i].XMm)
            {
                inside = !inside;
            }
        }

        return inside;
    }

    public static Box BoxOf(IEnumerable<Point> points)
    {
        var box = Box.Empty;
        foreach (var p in points)
        {
            box = box.Include(p);
        }

        return box;
    }

    /// <summary>Rings may touch in a point, so several points of the inner one vote.</summary>
    private static bool IsInside(Ring inner, Ring outer)
    {
        int inside = 0;
        for (int vote = 0; vote < Votes; vote++)
        {
            inside += Holds(outer.Points.AsSpan(), inner.Points[vote * inner.Points.Length / Votes]) ? 1 : 0;
        }

        return inside > Votes / 2;
    }

    private static bool Covers(Box outer, Box inner) =>
        outer.LeftMm <= inner.LeftMm + Nearest && outer.RightMm >= inner.RightMm - Nearest
        && outer.BottomMm <= inner.BottomMm + Nearest && outer.TopMm >= inner.TopMm - Nearest;

    private static List<Point> WithoutRepeats(Point[] points)
    {
        var kept = new List<Point>(points.Length);
        foreach (var p in points)
        {
            if (kept.Count == 0 || kept[^1].DistanceTo(p) > Nearest)
            {
                kept.Add(p);
            }
        }

        while (kept.Count > 1 && kept[^1].DistanceTo(kept[0]) <= Nearest)
        {
            kept.RemoveAt(kept.Count - 1);
        }

        return kept;
    }
}
