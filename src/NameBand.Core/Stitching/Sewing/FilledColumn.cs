using NameBand.Stitching.Columns;
using NameBand.Stitching.Geometry;
using NameBand.Stitching.Shapes;

namespace NameBand.Stitching.Sewing;

/// <summary>A column with what its crossings fill.</summary>
/// <param name="Cells">The cells of the region's map that it covers.</param>
/// <param name="Lean">How far its crossings are from square: the squared sine of the fault, times width, summed.</param>
/// <param name="Width">The widths of the same crossings, summed.</param>
internal sealed record FilledColumn(Column Column, int[] Cells, double Lean, double Width)
{
    public static FilledColumn Of(Column column, InsideMap inside)
    {
        double lean = 0;
        double sum = 0;
        var cells = inside.NewCover();
        double step = inside.CellMm;
        int count = (int)Math.Ceiling(column.Length / step) + 1;
        var before = column.CrossingAt(0);
        for (int i = 0; i < count; i++)
        {
            double at = column.Length * i / count;
            var crossing = column.CrossingAt(at);
            cells.Add(before.Left, before.Right, crossing.Left, crossing.Right);
            before = crossing;
            if (i % 3 == 0)
            {
                var across = crossing.Right - crossing.Left;
                double width = across.Length;
                var along = (column.MiddleAt(Math.Min(column.Length, at + 0.2)) - column.MiddleAt(Math.Max(0, at - 0.2))).Unit();
                double sine = width < 1e-6 ? 0 : Vec.Dot(across, along) / width;
                lean += sine * sine * width;
                sum += width;
            }
        }

        if (!column.Closed)
        {
            var last = column.CrossingAt(column.Length);
            cells.Add(before.Left, before.Right, last.Left, last.Right);
        }

        return new FilledColumn(column, cells.ToArray(), lean, sum);
    }
}
