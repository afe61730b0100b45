using System.Collections.Immutable;
using NameBand.Cloth;
using NameBand.Common;
using NameBand.Load.Swatches;
using NameBand.Stitching;

namespace NameBand.Output.Swatches;

/// <summary>One hooping of a swatch as it is sewn.</summary>
internal sealed record SewnSwatch(SwatchHooping Hooping, NeedlePath Path, int Stitches, double Minutes);

/// <summary>What a swatch's files are written from.</summary>
/// <param name="ShorteningPart">What the job allows for.</param>
internal sealed record SwatchFacts(
    string Title, Fabric Fabric, string FaceName, double LetterHeightMm, double ShorteningPart, SwatchPlan Plan,
    ImmutableArray<SewnSwatch> Hoopings)
{
    /// <summary>The mark of the plan that it was made for.</summary>
    public required string PlanMark { get; init; }

    /// <summary>Its outline, such as <c>6 × 12 mm</c>.</summary>
    internal static Said InWords(SwatchColumn column) => Wording.Size($"{column.AlongMm:0.#}", $"{column.UpMm:0.#}");

    /// <summary>The sample's own figure, such as <c>spacing 0.34 mm</c>.</summary>
    internal static Said InWords(SwatchSample sample) => sample.Row switch
    {
        SwatchRow.Spacing => (Said)$"spacing {sample.SpacingMm:0.00} mm",
        SwatchRow.PullCompensation => $"compensation {sample.PullCompensationMm:0.00} mm",
        _ => $"letters {sample.LetterHeightMm:0.0} mm",
    };
}
