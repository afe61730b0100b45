using NameBand.Common;
using NameBand.Stitching.Geometry;

namespace NameBand.Stitching.Shapes;

/// <summary>Turns an outline in mm into regions whose points lie evenly, with every true corner kept.</summary>
internal static class RegionSampler
{
    private const double ClosestMm = 0.003; // Three times what a needle file rounds: nearer points are one.
    // An eighth of a thread's width squared: a smaller ring is a speck, and a smaller hole closes under the thread.
    private const double LeastRingAreaMm2 = 0.02;
    private const double CornerRad = 25 * Math.PI / 180; // Vertices that turn more are kept (docs/stitching.md). Our assumption.
    // Points where the outline turns back on itself are dropped (docs/stitching.md). Our assumption.
    private const double SpikeRad = 172 * Math.PI / 180;
    // Eighteen steps for a circle, so that small bowls stay round. Our assumption.
    private const double TurnPerStepRad = 20 * Math.PI / 180;
    // Counts: triangles take a time that may grow with the square of the points. An outline of more points is read more coarsely, one of
    // more corners as if it had none. Our choice.
    private const int MostPoints = 4000;
    private const int MostCorners = 1000;

    public static List<Region> Sample(Outline outline, double stepMm)
    {
        var outers = new List<(List<Vec> Ring, List<IReadOnlyList<Vec>> Holes, double Area)>();
        var holes = new List<List<Vec>>();
        double length = outline.Rings.Sum(r => PerimeterMm(r));
        double step = Math.Max(stepMm, length / MostPoints);
        foreach (var ring in outline.Rings)
        {
            var points = Cleaned(ring);
            double area = SignedArea(points);
            if (points.Count < 3 || !double.IsFinite(area) || Math.Abs(area) < LeastRingAreaMm2)
            {
                continue;
            }

            var sampled = WithoutSpikes(Resample(points, step), 0.12 * step);
            if (sampled.Count < 3)
            {
                continue;
            }

            if (area > 0)
            {
                outers.Add((sampled, [], area));
            }
            else
            {
                holes.Add(sampled);
            }
        }

        foreach (var hole in holes)
        {
            int home = -1;
            for (int i = 0; i < outers.Count; i++)
            {
                if (Contains(outers[i].Ring, hole[0]) && (home < 0 || outers[i].Area < outers[home].Area))
                {
                    home = i;
                }
            }

            if (home >= 0)
            {
                outers[home].Holes.Add(hole);
            }
        }

        return [.. outers.Select(o => new Region([o.Ring, .. o.Holes]))];
    }

    private static double PerimeterMm(Ring ring)
    {
        double length = 0;
        for (int i = 0, j = ring.Points.Length - 1; i < ring.Points.Length; j = i++)
        {
            double side = ring.Points[j].DistanceTo(ring.Points[i]);
            length += double.IsFinite(side) ? side : 0;
        }

        return length;
    }

    private static List<Vec> Cleaned(Ring ring)
    {
        var points = new List<Vec>(ring.Points.Length);
        foreach (var p in ring.Points)
        {
            var v = Vec.From(p);
            if (points.Count == 0 || (v - points[^1]).Length > ClosestMm)
            {
                points.Add(v);
            }
        }

        while (points.Count > 1 && (points[0] - points[^1]).Length <= ClosestMm)
        {
            points.RemoveAt(points.Count - 1);
        }

        return points;
    }

    /// <summary>Drops points that hardly move on and points where the ring turns right back.</summary>
    private static List<Vec> WithoutSpikes(List<Vec> ring, double least)
    {
        var kept = new List<Vec>(ring.Count);
        foreach (var p in ring)
        {
            while (kept.Count > 1 && Math.Abs(Vec.Angle(kept[^1] - kept[^2], p - kept[^1])) > SpikeRad)
            {
                kept.RemoveAt(kept.Count - 1);
            }

            if (kept.Count == 0 || (p - kept[^1]).Length > least)
            {
                kept.Add(p);
            }
        }

        while (kept.Count > 3 && (kept[0] - kept[^1]).Length <= least)
        {
            kept.RemoveAt(kept.Count - 1);
        }

        return kept;
    }

    private static List<Vec> Resample(List<Vec> ring, double step)
    {
        int n = ring.Count;
        var corners = new List<int>();
        for (int i = 0; i < n; i++)
        {
            if (Math.Abs(TurnAt(ring, i)) > CornerRad)
            {
                corners.Add(i);
            }
        }

        if (corners.Count is 0 or > MostCorners)
        {
            corners = [0];
        }

        var sampled = new List<Vec>();
        for (int c = 0; c < corners.Count; c++)
        {
            AddStretch(ring, corners[c], corners[(c + 1) % corners.Count], step, sampled);
        }

        return sampled;
    }

    /// <summary>Adds the points from one corner up to, not including, the next one.</summary>
    private static void AddStretch(List<Vec> ring, int from, int to, double step, List<Vec> sampled)
    {
        int n = ring.Count;
        double length = 0;
        double turn = 0;
        int i = from;
        do
        {
            int next = (i + 1) % n;
            length += (ring[next] - ring[i]).Length;
            if (next != to)
            {
                turn += Math.Abs(TurnAt(ring, next));
            }

            i = next;
        }
        while (i != to);

        int parts = Math.Max(1, (int)Math.Ceiling(Math.Max(length / step, Math.Min(turn / TurnPerStepRad, length / (step * 0.3)))));
        if (from == to)
        {
            parts = Math.Max(parts, 6);
        }

        double each = length / parts;
        double done = 0;
        double wanted = 0;
        int left = parts;
        i = from;
        do
        {
            int next = (i + 1) % n;
            double side = (ring[next] - ring[i]).Length;
            while (left > 0 && wanted <= done + side + 1e-12)
            {
                sampled.Add(Vec.Mix(ring[i], ring[next], side < 1e-12 ? 0 : (wanted - done) / side));
                wanted += each;
                left--;
            }

            done += side;
            i = next;
        }
        while (i != to && left > 0);
    }

    private static double TurnAt(List<Vec> ring, int i)
    {
        int n = ring.Count;
        return Vec.Angle(ring[i] - ring[(i + n - 1) % n], ring[(i + 1) % n] - ring[i]);
    }

    private static double SignedArea(List<Vec> ring)
    {
        double twice = 0;
        for (int i = 0, j = ring.Count - 1; i < ring.Count; j = i++)
        {
            twice += Vec.Cross(ring[j], ring[i]);
        }

        return twice / 2;
    }

    private static bool Contains(List<Vec> ring, Vec p)
    {
        bool inside = false;
        for (int i = 0, j = ring.Count - 1; i < ring.Count; j = i++)
        {
            var a = ring[i];
            var b = ring[j];
            if ((a.Y > p.Y) != (b.Y > p.Y) && p.X < ((b.X - a.X) * (p.Y - a.Y) / (b.Y - a.Y)) + a.X)
            {
                inside = !inside;
            }
        }

        return inside;
    }
}
