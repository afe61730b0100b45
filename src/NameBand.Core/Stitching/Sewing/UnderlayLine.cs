using NameBand.Stitching.Columns;
using NameBand.Stitching.Geometry;

namespace NameBand.Stitching.Sewing;

/// <summary>The line that underlay follows: a column's centre line, or one beside it.</summary>
internal static class UnderlayLine
{
    /// <summary>On the centre line, or so many parts of the way from it to the edge.</summary>
    public static Vec Beside(Column column, double at, double side)
    {
        var (left, right) = column.CrossingAt(at);
        return Vec.Mix(left, right, 0.5 + (side / 2));
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
