using NameBand.Stitching.Geometry;

namespace NameBand.Stitching.Sewing;

/// <summary>The satin's needle holes of one piece, to ask how near the nearest one is.</summary>
internal sealed class HoleGrid(double cellMm)
{
    private readonly Dictionary<(int X, int Y), List<(Vec At, int Column)>> _cells = [];

    public void Add(Vec p, int column)
    {
        var cell = CellOf(p);
        if (!_cells.TryGetValue(cell, out var list))
        {
            _cells[cell] = list = [];
        }

        list.Add((p, column));
    }

    /// <summary>
    /// Distance to the nearest hole, at most the size of a cell; holes of other columns count as
    /// <paramref name="otherShare"/> times as far away.
    /// </summary>
    public double Nearest(Vec p, int column, double otherShare)
    {
        var (x, y) = CellOf(p);
        double best = cellMm;
        for (int i = x - 1; i <= x + 1; i++)
        {
            for (int j = y - 1; j <= y + 1; j++)
            {
                if (_cells.TryGetValue((i, j), out var list))
                {
                    foreach (var hole in list)
                    {
                        double distance = (hole.At - p).Length;
                        best = Math.Min(best, hole.Column == column ? distance : distance * otherShare);
                    }
                }
            }
        }

        return best;
    }

    private (int X, int Y) CellOf(Vec p) => ((int)Math.Floor(p.X / cellMm), (int)Math.Floor(p.Y / cellMm));
}
