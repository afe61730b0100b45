using System.Collections.Immutable;
using NameBand.Common;

namespace NameBand.Cloth;

/// <summary>A column of satin, sewn without compensation, and what it measured afterwards.</summary>
/// <param name="IsLevel">Its stitches run across the strip, not along it.</param>
/// <param name="WidthMm">From hole to hole as sewn, and so the length of its stitches.</param>
public sealed record MeasuredColumn(
    string Label, bool IsLevel, double WidthMm, double LengthMm, double MeasuredWidthMm, double MeasuredLengthMm)
{
    /// <summary>How much narrower it came out on each side.</summary>
    public double NarrowerMm => (WidthMm - MeasuredWidthMm) / 2;

    /// <summary>How much longer at each end.</summary>
    public double LongerMm => (MeasuredLengthMm - LengthMm) / 2;
}

/// <summary>The compensation by which columns of a swatch would have come out as they were drawn: least squares.</summary>
/// <param name="AcrossFactor">
/// How much more stitches across the strip draw than those along it; null where only one direction was measured, or nothing grows.
/// </param>
/// <param name="WorstMm">What is left, on a side, of the column that suits the others least.</param>
public sealed record PullFit(double PullCompensationMm, double GrowingPart, double? AcrossFactor, double PushMm, double WorstMm)
{
    // A cloth that draws in four times as much one way as the other is not known to us: a column was misread. Our assumption.
    private const double LeastAcrossFactor = 0.25;
    private const double MostAcrossFactor = 4; // The same, the other way round.
    // Several times what docs/cloths.md has for any cloth, 0.35 and 0.12 mm: beyond it a reading is wrong. Our assumption.
    private const double MostPullMm = 1;
    private const double MostPushMm = 0.5;

    /// <param name="columns">At least two of unlike width.</param>
    public static PullFit Of(IReadOnlyList<MeasuredColumn> columns, Pull cloth)
    {
        // Narrower on a side by base + slope × growth: one base for all, a slope for each direction.
        var directions = columns.GroupBy(c => c.IsLevel).ToDictionary(g => g.Key, g => g.ToImmutableArray());
        double basis = Math.Max(0, directions.Values.Average(Intercept));
        var slopes = directions.ToDictionary(d => d.Key, d => Math.Max(0, Slope(d.Value, basis)));
        double growing = slopes.Values.Sum() / slopes.Keys.Sum(isLevel => Towards(cloth, isLevel));
        if (growing < Tolerance.RoundingMm)
        {
            basis = Math.Max(0, columns.Average(c => c.NarrowerMm));
        }

        double pull = Rounded(Math.Min(MostPullMm, basis + growing));
        double part = basis + growing > 0 ? Rounded(growing / (basis + growing)) : cloth.GrowingPart;
        double? across = slopes.Count == 2 && slopes.Values.All(s => s > Tolerance.RoundingMm)
            ? Rounded(Math.Clamp(slopes[true] / slopes[false], LeastAcrossFactor, MostAcrossFactor)) : null;
        var fitted = cloth with { GrowingPart = part };
        fitted = across is { } a ? fitted.WithAcross(a) : fitted;
        double push = columns.Average(c => c.LongerMm) / cloth.PushStraightFactor;
        return new PullFit(
            pull, part, across, Rounded(Math.Clamp(push, 0, MostPushMm)),
            columns.Max(c => Math.Abs(c.NarrowerMm - ForetoldMm(pull, fitted, c))));
    }

    /// <summary>How much narrower on each side a column would come out.</summary>
    public static double ForetoldMm(double pullMm, Pull pull, MeasuredColumn column) =>
        pullMm * (column.IsLevel ? pull.Factor(column.WidthMm, 0, 1) : pull.Factor(column.WidthMm, 1, 0));

    private static double Towards(Pull cloth, bool isLevel) => isLevel ? cloth.AcrossFactor : cloth.AlongFactor;

    private static double Intercept(ImmutableArray<MeasuredColumn> columns)
    {
        double meanGrown = columns.Average(c => Pull.GrownFactor(c.WidthMm));
        double meanNarrower = columns.Average(c => c.NarrowerMm);
        double spread = columns.Sum(c => Math.Pow(Pull.GrownFactor(c.WidthMm) - meanGrown, 2));
        double slope = columns.Sum(c => (Pull.GrownFactor(c.WidthMm) - meanGrown) * (c.NarrowerMm - meanNarrower)) / Math.Max(1e-9, spread);
        return meanNarrower - (slope * meanGrown);
    }

    private static double Slope(ImmutableArray<MeasuredColumn> columns, double basis) =>
        columns.Sum(c => Pull.GrownFactor(c.WidthMm) * (c.NarrowerMm - basis)) / columns.Sum(c => Math.Pow(Pull.GrownFactor(c.WidthMm), 2));

    private static double Rounded(double number) => Math.Round(number, 2);
}
