using System.Collections.Immutable;
using NameBand.Cloth;
using NameBand.Common;
using NameBand.Load.Swatches;

namespace NameBand.Reports;

/// <summary>What <see cref="Bander.Swatch"/> made.</summary>
/// <param name="Plan">Null when nothing could be made, and so is <paramref name="Folder"/>.</param>
/// <param name="Minutes">At the machine.</param>
public sealed record SwatchReport(
    ExitStatus Status, string Title, Said Cloth, SwatchPlan? Plan, int Stitches, double Minutes, string? Folder,
    ImmutableArray<Problem> Problems);

/// <summary>What the measured columns of a swatch say of the cloth.</summary>
/// <param name="Fit">Null when nothing can be said.</param>
/// <param name="Before">The cloth as the job allows for it.</param>
/// <param name="IsSet">Whether it was written into job.json.</param>
public sealed record PullReport(
    ExitStatus Status, ImmutableArray<MeasuredColumn> Columns, PullFit? Fit, Fabric? Before, bool IsSet, ImmutableArray<Problem> Problems);

/// <summary>What the length between a swatch's marks says.</summary>
/// <param name="ApartMm">Between the marks before sewing.</param>
/// <param name="ShorteningPart">What strip.shortening is to be.</param>
/// <param name="BeforePart">What the job allows for.</param>
/// <param name="IsSet">Whether it was written into job.json.</param>
public sealed record ShorteningReport(
    ExitStatus Status, double ApartMm, double MeasuredMm, double ShorteningPart, double BeforePart, bool IsSet,
    ImmutableArray<Problem> Problems);
