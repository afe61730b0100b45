using NameBand.Stitching.Shapes;

namespace NameBand.Stitching.Sewing;

/// <summary>How well columns fill a region: 0 for square crossings that cover everything once.</summary>
internal static class ReadingScore
{
    // What a reading costs beside its lean: ground left bare far more than ground covered twice, which is only thicker, and each column a
    // little, for it has two ends. Our assumption.
    private const double BareWorth = 4;
    private const double TwiceWorth = 0.15;
    private const double ColumnWorth = 0.004;

    public static double Of(List<FilledColumn> columns, InsideMap inside)
    {
        double lean = columns.Sum(c => c.Lean);
        double area = columns.Sum(c => c.Width);
        var (bare, twice) = inside.Left(columns.Select(c => c.Cells));
        return (lean / Math.Max(1e-9, area)) + (BareWorth * bare) + (TwiceWorth * twice) + (ColumnWorth * columns.Count);
    }
}
