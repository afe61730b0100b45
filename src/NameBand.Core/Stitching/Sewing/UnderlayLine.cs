using NameBand.Stitching.Columns;
using NameBand.Stitching.Geometry;

namespace NameBand.Stitching.Sewing;

/// <summary>The line that underlay follows: a column's centre line, or one beside it.</summary>
internal static class UnderlayLine
{
    /// <summary>Underlay along an edge lies so far inside it: common practice, no source.</summary>
    private const double InsideEdgeMm = 0.5;
    private const double MostAsideMm = 2.5; // A zigzag of 5 mm from side to side: its stitches stay under the longest.

    /// <summary>On the centre line, or beside it: on the one side of it or the other as far as the line inside the edge, or a
    /// part of that.</summary>
    public static Vec Beside(Column column, double at, double side)
    {
        var (left, right) = column.CrossingAt(at);
        if (side == 0)
        {
            return Vec.Mix(left, right, 0.5);
        }

        double half = (right - left).Length / 2;
        double off = side * Math.Max(half / 2, half - InsideEdgeMm);
        return Vec.Mix(left, right, 0.5 + (half < 1e-9 ? 0 : off / (2 * half)));
    }

    /// <summary>A zigzag from side to side, inside the lines along the edges and never in long stitches.</summary>
    public static Vec Zigzag(Column column, double at, int sign)
    {
        var (left, right) = column.CrossingAt(at);
        double half = (right - left).Length / 2;
        double off = sign * Math.Min(MostAsideMm, 0.6 * half);
        return Vec.Mix(left, right, 0.5 + (half < 1e-9 ? 0 : off / (2 * half)));
    }

    /// <summary>How far the line runs beside a stitch that spans it.</summary>
    public static double Off(Column column, double from, double to, double side)
    {
        var (a, b) = (Beside(column, from, side), Beside(column, to, side));
        double off = 0;
        for (int i = 1; i < 4; i++)
        {
            off = Math.Max(off, Beside(column, from + ((to - from) * i / 4), side).DistanceToSegment(a, b));
        }

        return off;
    }
}
