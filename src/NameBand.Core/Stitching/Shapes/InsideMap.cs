using NameBand.Stitching.Geometry;

namespace NameBand.Stitching.Shapes;

/// <summary>A coarse picture of a region, to ask quickly whether a place lies inside it.</summary>
internal sealed class InsideMap
{
    private readonly double _cell;
    private readonly double _left;
    private readonly double _bottom;
    private readonly int _width;
    private readonly int _height;
    private readonly bool[] _inside;
    private readonly int _all;
    private int[]? _seenBy;
    private int _covers;

    public InsideMap(Region region, double cellMm)
    {
        double right = double.NegativeInfinity;
        double top = double.NegativeInfinity;
        _left = double.PositiveInfinity;
        _bottom = double.PositiveInfinity;
        foreach (var p in region.Points)
        {
            _left = Math.Min(_left, p.X);
            _bottom = Math.Min(_bottom, p.Y);
            right = Math.Max(right, p.X);
            top = Math.Max(top, p.Y);
        }

        _cell = Math.Max(cellMm, Math.Max(right - _left, top - _bottom) / 1500);
        _width = (int)((right - _left) / _cell) + 2;
        _height = (int)((top - _bottom) / _cell) + 2;
        _inside = new bool[_width * _height];
        Fill(region);
        _all = _inside.AsSpan().Count(true);
    }

    public bool Has(Vec p)
    {
        int x = (int)((p.X - _left) / _cell);
        int y = (int)((p.Y - _bottom) / _cell);
        return p.X >= _left && p.Y >= _bottom && x < _width && y < _height && _inside[(y * _width) + x];
    }

    public double CellMm => _cell;

    /// <summary>For one column, to gather the cells that it covers.</summary>
    public CellCover NewCover() => new(new Vec(_left, _bottom), _cell, _width, _height, _seenBy ??= new int[_inside.Length], ++_covers);

    /// <summary>Parts of the region that no column covers, and that more than one does.</summary>
    /// <param name="covers">Each column's cells, none of them twice.</param>
    public (double Bare, double Twice) Left(IEnumerable<int[]> covers)
    {
        byte[] times = new byte[_inside.Length];
        int once = 0;
        int twice = 0;
        foreach (int[] cells in covers)
        {
            foreach (int cell in cells)
            {
                if (_inside[cell] && times[cell] < 2)
                {
                    times[cell]++;
                    once += times[cell] == 1 ? 1 : 0;
                    twice += times[cell] == 2 ? 1 : 0;
                }
            }
        }

        double all = Math.Max(1, _all);
        return ((_all - once) / all, twice / all);
    }

    private void Fill(Region region)
    {
        var crossings = new List<double>[_height];
        for (int i = 0; i < region.Points.Length; i++)
        {
            var a = region.Points[i];
            var b = region.Points[region.Next[i]];
            if (a.Y > b.Y)
            {
                (a, b) = (b, a);
            }

            int from = Math.Max(0, (int)Math.Ceiling(((a.Y - _bottom) / _cell) - 0.5));
            for (int row = from; row < _height; row++)
            {
                double y = _bottom + ((row + 0.5) * _cell);
                if (y >= b.Y)
                {
                    break;
                }

                if (y >= a.Y)
                {
                    (crossings[row] ??= []).Add(a.X + ((b.X - a.X) * (y - a.Y) / (b.Y - a.Y)));
                }
            }
        }

        for (int row = 0; row < _height; row++)
        {
            if (crossings[row] is not { } xs)
            {
                continue;
            }

            xs.Sort();
            for (int k = 0; k + 1 < xs.Count; k += 2)
            {
                int from = Math.Max(0, (int)Math.Ceiling(((xs[k] - _left) / _cell) - 0.5));
                int to = Math.Min(_width - 1, (int)Math.Floor(((xs[k + 1] - _left) / _cell) - 0.5));
                for (int x = from; x <= to; x++)
                {
                    _inside[(row * _width) + x] = true;
                }
            }
        }
    }
}
