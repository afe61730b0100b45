using System.Collections.Immutable;
using NameBand.Common;
using NameBand.Stitching;

namespace NameBand.Load;

/// <summary>A place on the map.</summary>
/// <param name="PenetrationsPerMm2">Needle holes over the cloth under thread, near the place.</param>
/// <param name="ThreadPerMm2">Millimetres of needle thread on each mm² of cloth under thread, near the place.</param>
public readonly record struct LoadSpot(Point At, double PenetrationsPerMm2, double ThreadPerMm2);

/// <summary>
/// The load of a hooping place by place, on a grid: needle holes and thread within 2 mm of each place, over the cloth that
/// thread covers there, which is how the cloth's limit is stated. Alignment marks are not counted.
/// </summary>
public sealed class LoadMap
{
    public const double CellMm = 0.5; // A quarter of the reach: the disc about a place is then some fifty cells, round enough for a mean.

    /// <summary>Wide enough for a mean over several strokes' edges, small enough to tell one letter from the next.</summary>
    private const double ReachMm = 2;

    /// <summary>Places with less thread than this about them are not judged, as a dot is not.</summary>
    private const double LeastCoveredMm2 = 2;

    private const int ReachCells = (int)(ReachMm / CellMm); // The reach in what the map is counted in.

    private readonly int[] _holes;
    private readonly double[] _threadMm;
    private readonly double[] _coveredMm2;

    private LoadMap(Box box)
    {
        Left = box.LeftMm - ReachMm;
        Bottom = box.BottomMm - ReachMm;
        Columns = (int)((box.WidthMm + (2 * ReachMm)) / CellMm) + 2;
        Rows = (int)((box.HeightMm + (2 * ReachMm)) / CellMm) + 2;
        _holes = new int[Columns * Rows];
        _threadMm = new double[Columns * Rows];
        _coveredMm2 = new double[Columns * Rows];
    }

    public int Columns { get; }

    public int Rows { get; }

    private double Left { get; }

    private double Bottom { get; }

    /// <summary>Null when nothing but marks is sewn.</summary>
    /// <param name="threadMm">Width of the thread.</param>
    public static LoadMap? Of(NeedlePath path, double threadMm)
    {
        var box = path.Steps.Where(IsSewn).Aggregate(Box.Empty, (b, s) => b.Include(s.At));
        if (box.IsEmpty)
        {
            return null;
        }

        var map = new LoadMap(box);
        var cover = new HashSet<(int X, int Y)>();
        for (int i = 0; i < path.Steps.Length; i++)
        {
            if (!IsSewn(path.Steps[i]))
            {
                continue;
            }

            map._holes[map.Cell(path.Steps[i].At)]++;
            if (i > 0 && IsSewn(path.Steps[i - 1]))
            {
                map.Lay(path.Steps[i - 1].At, path.Steps[i].At, threadMm, cover);
            }
        }

        return map;
    }

    /// <summary>The middle of a cell.</summary>
    public Point At(int column, int row) => new(Left + ((column + 0.5) * CellMm), Bottom + ((row + 0.5) * CellMm));

    /// <summary>Whether thread lies in a cell.</summary>
    public bool IsCovered(int column, int row) => _coveredMm2[(row * Columns) + column] > 0;

    public LoadSpot Spot(int column, int row)
    {
        int holes = 0;
        double thread = 0;
        double covered = 0;
        for (int y = Math.Max(0, row - ReachCells); y <= Math.Min(Rows - 1, row + ReachCells); y++)
        {
            for (int x = Math.Max(0, column - ReachCells); x <= Math.Min(Columns - 1, column + ReachCells); x++)
            {
                if (((x - column) * (x - column)) + ((y - row) * (y - row)) > ReachCells * ReachCells)
                {
                    continue;
                }

                int cell = (y * Columns) + x;
                holes += _holes[cell];
                thread += _threadMm[cell];
                covered += _coveredMm2[cell];
            }
        }

        return covered < LeastCoveredMm2
            ? new LoadSpot(At(column, row), 0, 0) : new LoadSpot(At(column, row), holes / covered, thread / covered);
    }

    /// <summary>The places with the most holes, the worst first, no two nearer than <paramref name="apartMm"/>.</summary>
    public ImmutableArray<LoadSpot> Worst(int count, double apartMm)
    {
        var spots = new List<LoadSpot>();
        for (int row = 0; row < Rows; row++)
        {
            for (int column = 0; column < Columns; column++)
            {
                if (IsCovered(column, row) && Spot(column, row) is { PenetrationsPerMm2: > 0 } spot)
                {
                    spots.Add(spot);
                }
            }
        }

        var worst = ImmutableArray.CreateBuilder<LoadSpot>();
        foreach (var spot in spots.OrderByDescending(s => s.PenetrationsPerMm2).ThenBy(s => s.At.XMm).ThenBy(s => s.At.YMm))
        {
            if (worst.Count < count && worst.All(w => w.At.DistanceTo(spot.At) >= apartMm))
            {
                worst.Add(spot);
            }
        }

        return worst.ToImmutable();
    }

    private static bool IsSewn(NeedleStep step) => step.Action == NeedleAction.Stitch && step.Kind != StitchKind.Mark;

    private int Cell(Point p) =>
        (Math.Clamp((int)((p.YMm - Bottom) / CellMm), 0, Rows - 1) * Columns) + Math.Clamp((int)((p.XMm - Left) / CellMm), 0, Columns - 1);

    /// <summary>Thread is laid in pieces of a tenth of a millimetre; what it covers is counted in squares of as much.</summary>
    private void Lay(Point from, Point to, double threadMm, HashSet<(int X, int Y)> cover)
    {
        const double FineMm = 0.1; // A quarter of a thread's width, so that a stitch's edge is known to an eighth.
        double length = from.DistanceTo(to);
        if (length < 1e-6)
        {
            return;
        }

        int pieces = Math.Max(1, (int)Math.Ceiling(length / FineMm));
        int across = Math.Max(1, (int)Math.Round(threadMm / FineMm));
        var side = new Point(-(to.YMm - from.YMm) / length, (to.XMm - from.XMm) / length);
        for (int i = 0; i < pieces; i++)
        {
            var middle = from + ((to - from) * ((i + 0.5) / pieces));
            _threadMm[Cell(middle)] += length / pieces;
            for (int j = 0; j < across; j++)
            {
                var p = middle + (side * (threadMm * (((j + 0.5) / across) - 0.5)));
                if (cover.Add(((int)Math.Floor(p.XMm / FineMm), (int)Math.Floor(p.YMm / FineMm))))
                {
                    _coveredMm2[Cell(p)] += FineMm * FineMm;
                }
            }
        }
    }
}
