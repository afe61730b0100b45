using NameBand.Stitching.Geometry;

namespace NameBand.Stitching.Sewing;

/// <summary>The satin's needle holes of one piece, to ask how near the nearest one is.</summary>
internal sealed class HoleGrid(double cellMm)
{
    private const int Cells = 1024; // A power of two: letters have some hundred holes, so that few cells share a place.

    private readonly List<(Vec At, int Column, int Next)> _holes = new(256);

    /// <summary>
    /// For each cell its last hole, counted from 1. Cells far apart share a place: a hole of another cell is either as near as
    /// one of the cell's
    /// own could be, or too far to count.
    /// </summary>
    private readonly int[] _last = new int[Cells];

    public void Add(Vec p, int column)
    {
        ref int last = ref _last[PlaceOf(Cell(p.X), Cell(p.Y))];
        _holes.Add((p, column, last));
        last = _holes.Count;
    }

    /// <summary>
    /// Distance to the nearest hole, at most the size of a cell; holes of other columns count as
    /// <paramref name="otherShare"/> times as far away.
    /// </summary>
    public double Nearest(Vec p, int column, double otherShare)
    {
        var (x, y) = (Cell(p.X), Cell(p.Y));
        double best = cellMm;
        for (int i = x - 1; i <= x + 1; i++)
        {
            for (int j = y - 1; j <= y + 1; j++)
            {
                for (int k = _last[PlaceOf(i, j)]; k > 0;)
                {
                    var (at, own, next) = _holes[k - 1];
                    double distance = (at - p).Length;
                    best = Math.Min(best, own == column ? distance : distance * otherShare);
                    k = next;
                }
            }
        }

        return best;
    }

    private int Cell(double mm) => (int)Math.Floor(mm / cellMm);

    private static int PlaceOf(int x, int y) => ((x * 31) ^ (y * 57)) & (Cells - 1);
}
