using NameBand.Stitching.Columns;
using NameBand.Stitching.Strokes;

namespace NameBand.Stitching.Sewing;

/// <summary>The ends of columns: what they are, and how much shorter a free one is sewn.</summary>
internal static class ColumnEnd
{
    // How much shorter a free end is sewn, in mm and for dots as a part of their length: the last thread lies half its width past its
    // holes. Our assumption.
    private const double InsetMm = 0.12;
    private const double DotInsetPart = 0.04;
    // Widths: only longer columns are pushed out at their ends (docs/cloths.md, our assumption).
    private const double LongEnoughWidths = 3.5;
    private const double MostInsetPart = 0.2; // A fifth at each end: a short column keeps more than half of its length.

    public static bool Is(Column column, double at) => !column.Closed && (at <= 1e-9 || at >= column.Length - 1e-9);

    public static bool IsFree(Column column, double at) => Is(column, at) && KindAt(column, at) == EndKind.Free;

    public static EndKind KindAt(Column column, double at) => at <= 1e-9 ? column.Stroke.Start : column.Stroke.End;

    /// <summary>Long columns are pushed out at their ends by their own stitches.</summary>
    public static double FreeInsetMm(Column column, double at, SatinSettings settings)
    {
        double inset = Math.Min(InsetMm, DotInsetPart * column.Length);
        if (column.Length <= LongEnoughWidths * column.WidthMm)
        {
            return inset;
        }

        var (left, right) = column.CrossingAt(at);
        return inset + settings.PushMm(right - left);
    }

    /// <summary>A place as far inside an end as stated.</summary>
    public static double Inside(Column column, double at, double insetMm, int sign) =>
        at + (sign * Math.Min(insetMm, MostInsetPart * column.Length));

    /// <summary>Where on the root column the last hole lies of a way out at a place.</summary>
    public static double LastPlace(Column column, double at, SatinSettings settings) =>
        Is(column, at) ? Inside(column, at, FreeInsetMm(column, at, settings), at <= 1e-9 ? 1 : -1) : at;
}
