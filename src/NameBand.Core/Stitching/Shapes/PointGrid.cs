using NameBand.Stitching.Geometry;

namespace NameBand.Stitching.Shapes;

/// <summary>The points of a region that are still part of its outline, by the square they lie in.</summary>
internal sealed class PointGrid
{
    private const int MostCells = 64; // A side: 4096 squares, as many as the most points a region has.

    private readonly int[] _first;
    private readonly int[] _next;
    private readonly int[] _times;
    private readonly Vec[] _points;
    private readonly Vec _corner;
    private readonly double _cellsPerMm;
    private readonly int _columns;
    private readonly int _rows;

    public PointGrid(Vec[] points)
    {
        _points = points;
        var (lowest, highest) = (points[0], points[0]);
        foreach (var p in points)
        {
            lowest = new Vec(Math.Min(lowest.X, p.X), Math.Min(lowest.Y, p.Y));
            highest = new Vec(Math.Max(highest.X, p.X), Math.Max(highest.Y, p.Y));
        }

        int most = Math.Clamp((int)Math.Sqrt(points.Length), 4, MostCells);
        _corner = lowest;
        _cellsPerMm = most / Math.Max(1e-6, Math.Max(highest.X - lowest.X, highest.Y - lowest.Y));
        _columns = (int)((highest.X - lowest.X) * _cellsPerMm) + 1;
        _rows = (int)((highest.Y - lowest.Y) * _cellsPerMm) + 1;
        _first = new int[_columns * _rows];
        _next = new int[points.Length];
        _times = new int[points.Length];
        _first.AsSpan().Fill(-1);
        for (int i = 0; i < points.Length; i++)
        {
            ref int first = ref _first[Index(points[i])];
            _next[i] = first;
            first = i;
            _times[i] = 1;
        }
    }

    public int First(int column, int row) => _first[(row * _columns) + column];

    /// <summary>The next point of the same cell; -1 after the last one.</summary>
    public int Next(int point) => _next[point];

    public (int Column, int Row) CellOf(Vec p) => (
        Math.Clamp((int)((p.X - _corner.X) * _cellsPerMm), 0, _columns - 1),
        Math.Clamp((int)((p.Y - _corner.Y) * _cellsPerMm), 0, _rows - 1));

    /// <summary>The outline comes to a point once more: a bridge starts there.</summary>
    public void Repeat(int point) => _times[point]++;

    /// <summary>The outline comes to a point once less; when never any more, the point is gone.</summary>
    public void Remove(int point)
    {
        if (--_times[point] > 0)
        {
            return;
        }

        ref int at = ref _first[Index(_points[point])];
        while (at != point)
        {
            at = ref _next[at];
        }

        at = _next[point];
    }

    private int Index(Vec p)
    {
        var (column, row) = CellOf(p);
        return (row * _columns) + column;
    }
}
