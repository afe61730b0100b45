using NameBand.Stitching.Geometry;

namespace NameBand.Stitching.Shapes;

/// <summary>The cells of a map that thin pieces of a column cover.</summary>
/// <param name="seenBy">For each cell the number of the last cover that it was added to; shared by all covers of a map.</param>
/// <param name="number">Of this cover, from 1.</param>
internal sealed class CellCover(Vec corner, double cellMm, int width, int height, int[] seenBy, int number)
{
    private const double SampleCells = 0.7; // Under a cell's side over the root of two: no cell between two samples is missed.

    private readonly double _cellsPerMm = 1 / cellMm;
    private int[] _cells = new int[256];
    private int _count;

    /// <summary>Adds the cells of the piece between the crossing from a to b and the one from c to d.</summary>
    public void Add(Vec a, Vec b, Vec c, Vec d)
    {
        (a, b, c, d) = (InCells(a), InCells(b), InCells(c), InCells(d));
        int across = Math.Max(1, (int)Math.Ceiling(Math.Max((b - a).Length, (d - c).Length) / SampleCells));
        int along = Math.Max(1, (int)Math.Ceiling(Math.Max((c - a).Length, (d - b).Length) / SampleCells));
        double stepAcross = 1.0 / across;
        double stepAlong = 1.0 / along;
        Room(_count + ((across + 1) * along));
        for (int i = 0; i <= across; i++)
        {
            var p = Vec.Mix(a, b, i * stepAcross);
            var step = (Vec.Mix(c, d, i * stepAcross) - p) * stepAlong;
            for (int j = 0; j < along; j++)
            {
                Add(p);
                p += step;
            }
        }
    }

    public int[] ToArray() => _cells[.._count];

    private void Room(int count)
    {
        if (count > _cells.Length)
        {
            Array.Resize(ref _cells, Math.Max(count, 2 * _cells.Length));
        }
    }

    private Vec InCells(Vec p) => (p - corner) * _cellsPerMm;

    private void Add(Vec p)
    {
        int x = (int)p.X;
        int y = (int)p.Y;
        if (p.X >= 0 && p.Y >= 0 && x < width && y < height)
        {
            ref int seen = ref seenBy[(y * width) + x];
            if (seen != number)
            {
                seen = number;
                _cells[_count++] = (y * width) + x;
            }
        }
    }
}
