using NameBand.Common;

namespace NameBand.Load;

/// <summary>Cloth covered by thread, on a grid fine enough for a mean over a letter. Counts the whole and one letter at a time.</summary>
internal sealed class ThreadCover
{
    private const double FineCellMm = 0.2;

    /// <summary>A hoop of a metre square still fits; a larger one is counted on a coarser grid.</summary>
    private const double MostCells = 25e6;

    private readonly double _threadMm;
    private readonly double _cellMm;
    private readonly Box _box;
    private readonly int _width;

    /// <summary>The letter that covered a cell last, 0 for bare cloth.</summary>
    private readonly int[] _coveredBy;
    private int _letter = 1;
    private int _cells;
    private int _letterCells;

    /// <param name="box">Holds every point that will be added.</param>
    public ThreadCover(Box box, double threadMm)
    {
        _threadMm = threadMm;
        _box = box;
        double area = (box.WidthMm + threadMm) * (box.HeightMm + threadMm);
        _cellMm = Math.Max(FineCellMm, Math.Sqrt(area / MostCells));
        _width = (int)((box.WidthMm + (2 * threadMm)) / _cellMm) + 2;
        _coveredBy = new int[_width * ((int)((box.HeightMm + (2 * threadMm)) / _cellMm) + 2)];
    }

    public double AreaMm2 => _cells * _cellMm * _cellMm;

    public double LetterMm2 => _letterCells * _cellMm * _cellMm;

    public void NextLetter()
    {
        _letter++;
        _letterCells = 0;
    }

    /// <summary>Marks the cells under one stitch.</summary>
    public void Add(Point from, Point to)
    {
        double length = from.DistanceTo(to);
        if (length < 1e-6)
        {
            return;
        }

        // A cell is marked when any point of it is met, so the thread is drawn narrower by one cell.
        double width = Math.Max(0, _threadMm - _cellMm);
        double inset = Math.Min(_cellMm / 2, length / 2) / length;
        int along = Math.Max(1, (int)Math.Ceiling(length / (_cellMm / 2)));
        int across = Math.Max(1, (int)Math.Ceiling(width / (_cellMm / 2)));

        var normal = new Point(-(to.YMm - from.YMm) / length, (to.XMm - from.XMm) / length);
        for (int i = 0; i <= along; i++)
        {
            var middle = from + ((to - from) * (inset + ((1 - (2 * inset)) * i / along)));
            for (int j = 0; j < across; j++)
            {
                Mark(middle + (normal * (width * (((j + 0.5) / across) - 0.5))));
            }
        }
    }

    private void Mark(Point p)
    {
        int x = (int)((p.XMm - _box.LeftMm + _threadMm) / _cellMm);
        int y = (int)((p.YMm - _box.BottomMm + _threadMm) / _cellMm);
        ref int cell = ref _coveredBy[(y * _width) + x];
        if (cell == _letter)
        {
            return;
        }

        _cells += cell == 0 ? 1 : 0;
        _letterCells++;
        cell = _letter;
    }
}
