using NameBand.Common;
using NameBand.Stitching.Sewing;

namespace NameBand.Load;

/// <summary>Where the stitches ask most of the cloth.</summary>
/// <param name="HolesPerMm2">Needle holes, locks included, in the densest disc of 1 mm diameter, over its area.</param>
/// <param name="Layers">Most layers of thread at any place.</param>
public readonly record struct WorstSpot(double HolesPerMm2, int Layers)
{
    /// <summary>Middles of discs are sought on this lattice: a hole more could lie in a disc between.</summary>
    private const double LatticeMm = 0.1;

    private const double CellMm = 0.25; // Half the radius: few cells for each disc, few holes in each cell.

    /// <summary>A disc whose middle lies in a cell or beside it reaches no farther than so many cells.</summary>
    private const int Reach = 4;

    /// <summary>Discs are sought about so many cells, those with the most holes in and around them.</summary>
    private const int MostTried = 96;

    /// <summary>The densest disc, over the holes of a path.</summary>
    /// <param name="box">Holds every hole.</param>
    /// <param name="cellMm">Cells no smaller than this, so that the grid of a very large hoop stays small.</param>
    public static double DensestPerMm2(IReadOnlyList<Point> holes, Box box, double cellMm = CellMm)
    {
        if (holes.Count == 0)
        {
            return 0;
        }

        var grid = new Grid(holes, box, Math.Max(cellMm, CellMm));
        int most = 1;
        foreach (int cell in grid.Fullest(MostTried))
        {
            most = Math.Max(most, grid.DensestAbout(cell));
        }

        return most / (Math.PI * LockedRun.DiscRadiusMm * LockedRun.DiscRadiusMm);
    }

    /// <summary>The holes, cell by cell, with bare cells all round.</summary>
    private sealed class Grid
    {
        private readonly double _cellMm;
        private readonly int _across;
        private readonly Box _box;

        /// <summary>Where the holes of a cell begin in <see cref="_holes"/>.</summary>
        private readonly int[] _from;
        private readonly Point[] _holes;

        public Grid(IReadOnlyList<Point> holes, Box box, double cellMm)
        {
            (_box, _cellMm) = (box, cellMm);
            _across = (int)(box.WidthMm / cellMm) + 1 + (2 * Reach);
            _from = new int[(_across * ((int)(box.HeightMm / cellMm) + 1 + (2 * Reach))) + 1];
            foreach (var hole in holes)
            {
                _from[CellOf(hole) + 1]++;
            }

            for (int i = 1; i < _from.Length; i++)
            {
                _from[i] += _from[i - 1];
            }

            _holes = new Point[holes.Count];
            int[] next = _from[..^1];
            foreach (var hole in holes)
            {
                _holes[next[CellOf(hole)]++] = hole;
            }
        }

        /// <summary>Cells with the most holes in about a disc round their middle; of equals the lower left ones.</summary>
        public int[] Fullest(int count)
        {
            var found = new List<(int Holes, int Cell)>();
            int before = -1;
            foreach (var hole in _holes)
            {
                int cell = CellOf(hole);
                if (cell != before)
                {
                    found.Add((Around(cell), cell));
                }

                before = cell;
            }

            // A count, not a sort: there are thousands of cells and few different numbers.
            int[] with = new int[found.Max(f => f.Holes) + 1];
            foreach (var (holes, _) in found)
            {
                with[holes]++;
            }

            int least = with.Length - 1;
            for (int sum = with[least]; least > 1 && sum < count; sum += with[least])
            {
                least--;
            }

            return [.. found.Where(f => f.Holes >= least).OrderByDescending(f => f.Holes).Take(count).Select(f => f.Cell)];
        }

        /// <summary>Holes in the densest disc whose middle lies in a cell or within half a cell of it.</summary>
        public int DensestAbout(int cell)
        {
            Span<Point> near = stackalloc Point[128];
            int count = 0;
            for (int y = -Reach; y <= Reach; y++)
            {
                int row = cell + (y * _across);
                for (int i = _from[row - Reach]; i < _from[row + Reach + 1] && count < near.Length; i++)
                {
                    near[count++] = _holes[i];
                }
            }

            near = near[..count];
            double left = _box.LeftMm + (((cell % _across) - Reach - 0.5) * _cellMm);
            double bottom = _box.BottomMm + (((cell / _across) - Reach - 0.5) * _cellMm);
            int most = 0;
            for (double x = 0; x <= 2 * _cellMm; x += LatticeMm)
            {
                for (double y = 0; y <= 2 * _cellMm; y += LatticeMm)
                {
                    most = Math.Max(most, Within(near, left + x, bottom + y));
                }
            }

            return most;
        }

        private static int Within(ReadOnlySpan<Point> holes, double xMm, double yMm)
        {
            int within = 0;
            foreach (var hole in holes)
            {
                double dx = hole.XMm - xMm;
                double dy = hole.YMm - yMm;
                within += (dx * dx) + (dy * dy) <= LockedRun.DiscRadiusMm * LockedRun.DiscRadiusMm ? 1 : 0;
            }

            return within;
        }

        /// <summary>Three rows of three cells, and one more beyond the middle of each side.</summary>
        private int Around(int cell) =>
            Holes(cell - 2, cell + 2) + Holes(cell - _across - 1, cell - _across + 1) + Holes(cell + _across - 1, cell + _across + 1)
            + Holes(cell - (2 * _across), cell - (2 * _across)) + Holes(cell + (2 * _across), cell + (2 * _across));

        private int Holes(int first, int last) => _from[last + 1] - _from[first];

        private int CellOf(Point p) =>
            ((Reach + (int)((p.YMm - _box.BottomMm) / _cellMm)) * _across) + Reach + (int)((p.XMm - _box.LeftMm) / _cellMm);
    }
}
