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
    }

    public bool Has(Vec p)
    {
        int x = (int)((p.X - _left) / _cell);
        int y = (int)((p.Y - _bottom) / _cell);
        return p.X >= _left && p.Y >= _bottom && x < _width && y < _height && _inside[(y * _width) + x];
    }

    public double CellMm => _cell;

    /// <summary>A cell for each of the map's, for <see cref="Cover"/> to write in.</summary>
    public byte[] EmptyCover() => new byte[_inside.Length];

    /// <summary>Marks the cells along the diagonals and sides of a thin piece of a column.</summary>
    public void Cover(byte[] cover, Vec a, Vec b, Vec c, Vec d, int column)
    {
        byte mark = (byte)(1 + (column % 127));
        double length = Math.Max((b - a).Length, (d - c).Length);
        int across = Math.Max(1, (int)Math.Ceiling(length / (0.7 * _cell)));
        double way = Math.Max((c - a).Length, (d - b).Length);
        int along = Math.Max(1, (int)Math.Ceiling(way / (0.7 * _cell)));
        for (int i = 0; i <= across; i++)
        {
            double t = (double)i / across;
            var from = Vec.Mix(a, b, t);
            var to = Vec.Mix(c, d, t);
            for (int j = 0; j < along; j++)
            {
                var p = Vec.Mix(from, to, (double)j / along);
                int x = (int)((p.X - _left) / _cell);
                int y = (int)((p.Y - _bottom) / _cell);
                if (p.X >= _left && p.Y >= _bottom && x < _width && y < _height)
                {
                    ref byte cell = ref cover[(y * _width) + x];
                    cell = cell == 0 || (cell & 127) == mark ? (byte)(mark | (cell & 128)) : (byte)(mark | 128);
                }
            }
        }
    }

    /// <summary>Parts of the region that no column covers, and that more than one does.</summary>
    public (double Bare, double Twice) Read(byte[] cover)
    {
        int all = 0;
        int bare = 0;
        int twice = 0;
        for (int i = 0; i < cover.Length; i++)
        {
            if (_inside[i])
            {
                all++;
                bare += cover[i] == 0 ? 1 : 0;
                twice += cover[i] >= 128 ? 1 : 0;
            }
        }

        return ((double)bare / Math.Max(1, all), (double)twice / Math.Max(1, all));
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
