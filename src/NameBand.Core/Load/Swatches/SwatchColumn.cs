using System.Collections.Immutable;
using NameBand.Common;

namespace NameBand.Load.Swatches;

/// <summary>A plain column of satin whose width and length are measured after sewing: it is sewn without compensation.</summary>
/// <param name="IsLevel">It lies along the strip, so that its stitches run across it; else it stands upright.</param>
public sealed record SwatchColumn(string Label, double WidthMm, double LengthMm, bool IsLevel)
{
    // Widths of a stem of small letters and of large ones, three times apart so that the growth of pull shows, and long enough to be
    // measured at three places (docs/swatch.md). Our assumption.
    private const double NarrowMm = 1.5;
    private const double WideMm = 4.5;
    private const double LongMm = 9;

    /// <summary>A narrow and a wide one in both directions: what draws the cloth in, and how that grows, comes from no fewer.</summary>
    public static ImmutableArray<SwatchColumn> All { get; } =
    [
        new("D1", NarrowMm, LongMm, false), new("D2", WideMm, LongMm, false),
        new("D3", NarrowMm, LongMm, true), new("D4", WideMm, LongMm, true),
    ];

    /// <summary>The tallest of them.</summary>
    public static double TallestMm => LongMm;

    public double AlongMm => IsLevel ? LengthMm : WidthMm;

    public double UpMm => IsLevel ? WidthMm : LengthMm;
}

/// <param name="At">Its lower left corner.</param>
/// <param name="LabelAt">Left end of the label's base line.</param>
public sealed record PlacedColumn(SwatchColumn Column, Point At, Point LabelAt);

/// <summary>What of a column's outline is sewn, from its outermost thread to the other.</summary>
internal sealed record SewnColumn(string Label, bool IsLevel, double WidthMm, double LengthMm);
