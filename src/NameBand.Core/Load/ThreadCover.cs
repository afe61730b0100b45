using NameBand.Common;

namespace NameBand.Load;

/// <summary>Cloth covered by thread, on a grid fine enough for a mean over a letter. Counts the whole and one letter at a time.</summary>
internal sealed class ThreadCover
{
    private const double FineCellMm = 0.2; // Half a thread's width.

    /// <summary>A hoop of a metre square still fits; a larger one is counted on a coarser grid.</summary>
    private const double MostCells = 25e6;

    private readonly double _threadMm;
    private readonly double _cellMm;
    private readonly Box _box;
    private readonly int _width;

    private readonly Cell[] _grid;
    private int _stitch;
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
        _grid = new Cell[_width * ((int)((box.HeightMm + (2 * threadMm)) / _cellMm) + 2)];
    }

    public double CellMm => _cellMm;

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

        _stitch = _stitch == ushort.MaxValue ? 1 : _stitch + 1;

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
        ref var cell = ref _grid[(y * _width) + x];
        if (cell.Stitch != _stitch)
        {
            cell.Stitch = (ushort)_stitch;
            cell.Stitches++;
        }

        if (cell.Letter == _letter)
        {
            return;
        }

        _cells += cell.Letter == 0 ? 1 : 0;
        _letterCells++;
        cell.Letter = _letter;
    }

    /// <summary>Middles of the cells that the most stitches meet, of equals the lower left ones.</summary>
    public Point[] Thickest(int count)
    {
        var thickest = new List<int>();
        for (int i = 0; i < _grid.Length; i++)
        {
            int stitches = _grid[i].Stitches;
            if (stitches == 0 || (thickest.Count == count && stitches <= _grid[thickest[^1]].Stitches))
            {
                continue;
            }

            int at = thickest.FindIndex(t => _grid[t].Stitches < stitches);
            thickest.Insert(at < 0 ? thickest.Count : at, i);
            if (thickest.Count > count)
            {
                thickest.RemoveAt(count);
            }
        }

        return [.. thickest.Select(i => new Point(
            _box.LeftMm - _threadMm + (((i % _width) + 0.5) * _cellMm), _box.BottomMm - _threadMm + (((i / _width) + 0.5) * _cellMm)))];
    }

    private struct Cell
    {
        /// <summary>The letter that covered it last, 0 for bare cloth.</summary>
        public int Letter;

        /// <summary>The stitch that met it last, and how many have.</summary>
        public ushort Stitch;
        public ushort Stitches;
    }
}
