using NameBand.Common;

namespace NameBand.Load;

/// <summary>Cloth covered by thread, on a grid fine enough for a mean over a letter.</summary>
internal sealed class ThreadCover(double threadMm)
{
    private const double CellMm = 0.2;

    private readonly HashSet<(int X, int Y)> _cells = [];

    public double AreaMm2 => _cells.Count * CellMm * CellMm;

    public void Clear() => _cells.Clear();

    /// <summary>Marks the cells under one stitch.</summary>
    public void Add(Point from, Point to)
    {
        double length = from.DistanceTo(to);
        if (length < 1e-6)
        {
            return;
        }

        // A cell is marked when any point of it is met, so the thread is drawn narrower by one cell.
        double width = Math.Max(0, threadMm - CellMm);
        double inset = Math.Min(CellMm / 2, length / 2) / length;
        int along = Math.Max(1, (int)Math.Ceiling(length / (CellMm / 2)));
        int across = Math.Max(1, (int)Math.Ceiling(width / (CellMm / 2)));

        var normal = new Point(-(to.YMm - from.YMm) / length, (to.XMm - from.XMm) / length);
        for (int i = 0; i <= along; i++)
        {
            var middle = from + ((to - from) * (inset + ((1 - (2 * inset)) * i / along)));
            for (int j = 0; j < across; j++)
            {
                var p = middle + (normal * (width * (((j + 0.5) / across) - 0.5)));
                _cells.Add(((int)Math.Floor(p.XMm / CellMm), (int)Math.Floor(p.YMm / CellMm)));
            }
        }
    }
}
