using NameBand.Common;
using NameBand.Stitching.Columns;

namespace NameBand.Stitching.Sewing;

/// <summary>From where to where a part reaches in each row: whether a thread that leaves it would lie over it.</summary>
internal sealed class Reach
{
    // A thread's width along and a hair more up: no thread slips between two places or two rows.
    private const double RowMm = 0.5;
    private const double StepMm = 0.4;

    private readonly double _bottomMm;
    private readonly float[] _left;
    private readonly float[] _right;

    public Reach(IReadOnlyList<Column> columns)
    {
        var points = new List<Point>();
        foreach (var column in columns)
        {
            int steps = Math.Max(1, (int)(column.Length / StepMm));
            for (int k = 0; k <= steps; k++)
            {
                var (left, right) = column.CrossingAt(column.Length * Math.Min((double)k / steps, 1 - 1e-9));
                points.Add(left.ToPoint());
                points.Add(right.ToPoint());
            }
        }

        _bottomMm = points.Min(p => p.YMm);
        int rows = Row(points.Max(p => p.YMm)) + 1;
        _left = new float[rows];
        _right = new float[rows];
        _left.AsSpan().Fill(float.PositiveInfinity);
        _right.AsSpan().Fill(float.NegativeInfinity);
        foreach (var p in points)
        {
            int row = Row(p.YMm);
            _left[row] = Math.Min(_left[row], (float)p.XMm);
            _right[row] = Math.Max(_right[row], (float)p.XMm);
        }
    }

    /// <summary>How much of a straight thread from a last hole lies between the outermost edges of the part, in mm.</summary>
    public double OverMm(Point from, Point to)
    {
        double length = from.DistanceTo(to);
        int parts = Math.Max(1, (int)Math.Ceiling(length / 0.2));
        int over = 0;
        for (int i = 0; i < parts; i++)
        {
            var p = from + ((to - from) * ((i + 0.5) / parts));
            int row = Row(p.YMm);
            over += row >= 0 && row < _left.Length && p.XMm > _left[row] && p.XMm < _right[row] ? 1 : 0;
        }

        return length * over / parts;
    }

    private int Row(double yMm) => (int)Math.Floor((yMm - _bottomMm) / RowMm);
}
