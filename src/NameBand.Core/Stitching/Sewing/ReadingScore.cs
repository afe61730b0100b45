using NameBand.Stitching.Columns;
using NameBand.Stitching.Geometry;
using NameBand.Stitching.Shapes;

namespace NameBand.Stitching.Sewing;

/// <summary>How well columns fill a region: 0 for square rungs that cover everything once.</summary>
internal static class ReadingScore
{
    private const double BareWorth = 4;
    private const double TwiceWorth = 0.15;
    private const double ColumnWorth = 0.004;

    public static double Of(List<Column> columns, InsideMap inside)
    {
        double lean = 0;
        double area = 0;
        var by = inside.EmptyCover();
        double step = inside.CellMm;
        for (int c = 0; c < columns.Count; c++)
        {
            var column = columns[c];
            int count = (int)Math.Ceiling(column.Length / step) + 1;
            var before = column.RungAt(0);
            for (int i = 0; i < count; i++)
            {
                double at = column.Length * i / count;
                var rung = column.RungAt(at);
                inside.Cover(by, before.Left, before.Right, rung.Left, rung.Right, c);
                before = rung;
                if (i % 3 == 0)
                {
                    var across = rung.Right - rung.Left;
                    double width = across.Length;
                    var along = (column.MiddleAt(Math.Min(column.Length, at + 0.2)) - column.MiddleAt(Math.Max(0, at - 0.2))).Unit();
                    double sine = width < 1e-6 ? 0 : Vec.Dot(across, along) / width;
                    lean += sine * sine * width;
                    area += width;
                }
            }

            if (!column.Closed)
            {
                var last = column.RungAt(column.Length);
                inside.Cover(by, before.Left, before.Right, last.Left, last.Right, c);
            }
        }

        var (bare, twice) = inside.Read(by);
        return (lean / Math.Max(1e-9, area)) + (BareWorth * bare) + (TwiceWorth * twice) + (ColumnWorth * columns.Count);
    }
}
