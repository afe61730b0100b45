using NameBand.Stitching.Geometry;
using NameBand.Stitching.Shapes;

namespace NameBand.Stitching.Strokes;

/// <summary>
/// A dot, a comma or a square mark as one stroke across its whole extent: too stout for the triangulation to tell which
/// way its strokes run, and too small for columns that meet in it.
/// </summary>
internal static class CompactStroke
{
    /// <summary>A round or square mark is twice as wide as a long band with the same area and outline.</summary>
    private const double MostAcross = 2.7;
    private const double MostSlender = 2.3; // Widths: a longer mark is a stroke, as a hyphen is. Our assumption.

    /// <summary>Upright where that is hardly longer round, as the stem is that the mark stands beside.</summary>
    private const double UprightWorth = 1.06;

    /// <summary>A rectangle about a region is at least so much longer than this part of the region's extent level or upright.</summary>
    private const double LongestToExtent = 1.46;

    // The sides of the stroke; what lies before and after belongs to its ends.
    private const double SideFrom = 0.35;
    private const double SideTo = 0.65;

    /// <summary>Null where the region has holes, is longer than stated or is no such mark.</summary>
    public static Stroke? Of(Region region, double longestMm)
    {
        if (region.RingStarts.Length > 1 || IsLonger(region, LongestToExtent * longestMm))
        {
            return null;
        }

        var axis = Axis(region);
        var (along, across) = (Extent(region, axis), Extent(region, axis.Left));
        double length = along.To - along.From;
        double width = across.To - across.From;
        if (length > longestMm || length > MostSlender * width || width > MostAcross * region.StrokeWidth())
        {
            return null;
        }

        double from = along.From + (SideFrom * length);
        double to = along.From + (SideTo * length);
        var right = Side(region, along.First, along.Last, p => Vec.Dot(p, axis) >= from && Vec.Dot(p, axis) <= to);
        var left = Side(region, along.Last, along.First, p => Vec.Dot(p, axis) >= from && Vec.Dot(p, axis) <= to);
        if (right is null || left is null)
        {
            return null;
        }

        List<Vec> Points(int start, int end) => [.. region.Walk(start, end)!.Select(i => region.Points[i])];
        return new Stroke(
            [.. Enumerable.Reverse(Points(left.Value.First, left.Value.Last))], Points(right.Value.First, right.Value.Last),
            EndKind.Free, EndKind.Free, Points(left.Value.Last, right.Value.First), Points(right.Value.Last, left.Value.First), false);
    }

    /// <summary>The long direction of the smallest rectangle that has a side along a piece of outline; upright rather than that
    /// where it does not matter.</summary>
    private static Vec Axis(Region region)
    {
        var best = new Vec(1, 0);
        double least = Area(region, best);
        for (int i = 0; i < region.Points.Length; i++)
        {
            var side = (region.Points[region.Next[i]] - region.Points[i]).Unit();
            double area = UprightWorth * Area(region, side);
            if (side != default && area < least)
            {
                (best, least) = (side, area);
            }
        }

        var (along, across) = (Extent(region, best), Extent(region, best.Left));
        double ratio = (along.To - along.From) / Math.Max(1e-9, across.To - across.From);
        bool turn = ratio < 1 / UprightWorth || (ratio < UprightWorth && Math.Abs(best.X) < Math.Abs(best.Y));
        var axis = turn ? best.Left : best;
        return axis.X < 0 ? axis * -1 : axis;
    }

    private static bool IsLonger(Region region, double mm)
    {
        var (level, upright) = (Extent(region, new Vec(1, 0)), Extent(region, new Vec(0, 1)));
        return level.To - level.From > mm || upright.To - upright.From > mm;
    }

    private static double Area(Region region, Vec direction)
    {
        double from = double.PositiveInfinity, to = double.NegativeInfinity, low = double.PositiveInfinity, high = double.NegativeInfinity;
        foreach (var p in region.Points)
        {
            double along = Vec.Dot(p, direction);
            double across = Vec.Dot(p, direction.Left);
            from = Math.Min(from, along);
            to = Math.Max(to, along);
            low = Math.Min(low, across);
            high = Math.Max(high, across);
        }

        return (to - from) * (high - low);
    }

    private static (double From, double To, int First, int Last) Extent(Region region, Vec direction)
    {
        var (first, last) = (0, 0);
        for (int i = 1; i < region.Points.Length; i++)
        {
            double along = Vec.Dot(region.Points[i], direction);
            first = along < Vec.Dot(region.Points[first], direction) ? i : first;
            last = along > Vec.Dot(region.Points[last], direction) ? i : last;
        }

        return (Vec.Dot(region.Points[first], direction), Vec.Dot(region.Points[last], direction), first, last);
    }

    /// <summary>The first and the last point of a walk that lie between the ends; null where there are not two.</summary>
    private static (int First, int Last)? Side(Region region, int from, int to, Func<Vec, bool> isBetween)
    {
        var between = region.Walk(from, to)!.Where(i => isBetween(region.Points[i])).ToList();
        return between.Count < 2 ? null : (between[0], between[^1]);
    }
}
