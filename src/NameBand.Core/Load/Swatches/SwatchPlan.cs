using System.Collections.Immutable;
using NameBand.Common;

namespace NameBand.Load.Swatches;

/// <summary>What changes along a row of samples; all else is as the job has it.</summary>
public enum SwatchRow
{
    Spacing,
    PullCompensation,
    Height,
}

/// <summary>The word, sewn in one way.</summary>
/// <param name="Label">Sewn beside it: A, B or C for what changes, and a number.</param>
/// <param name="IsJobs">Whether this is how the job would sew it.</param>
public sealed record SwatchSample(
    SwatchRow Row, string Label, double SpacingMm, double PullCompensationMm, double LetterHeightMm, bool IsJobs);

/// <param name="At">Left edge of the word's width on its base line.</param>
/// <param name="LabelAt">Left end of the label's base line.</param>
public sealed record PlacedSample(SwatchSample Sample, Point At, double WidthMm, Point LabelAt);

/// <summary>One placing of the swatch's cloth in the hoop. Origin: left end of the field that may be used, at half its height.</summary>
/// <param name="LeftMarkMm">Middle of the left cross; the right one lies <see cref="SwatchPlan.MarksApartMm"/> farther.</param>
public sealed record SwatchHooping(int Number, ImmutableArray<PlacedSample> Samples, double LeftMarkMm, double MarkYMm)
{
    /// <summary>Columns to be measured; none where the field has no room for them.</summary>
    public ImmutableArray<PlacedColumn> Columns { get; init; } = [];
}

/// <summary>What the swatch has on it and where.</summary>
/// <param name="Word">Not a word of anybody's name.</param>
/// <param name="MarksApartMm">Between the middles of the two crosses, on flat cloth before it is sewn.</param>
/// <param name="Field">What of the hoop may be used, in the coordinates of the needle paths.</param>
public sealed record SwatchPlan(
    string Word, double MarksApartMm, Box Field, ImmutableArray<SwatchHooping> Hoopings)
{
    /// <summary>The field is too small for all steps, or for all in one hooping.</summary>
    public bool IsShort { get; init; }

    public IEnumerable<SwatchColumn> Columns => Hoopings.SelectMany(h => h.Columns).Select(c => c.Column);

    public IEnumerable<SwatchSample> Samples => Hoopings.SelectMany(h => h.Samples).Select(s => s.Sample);
}
