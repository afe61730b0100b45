using System.Collections.Immutable;
using NameBand.Cloth;

namespace NameBand.Load.Swatches;

/// <summary>
/// The steps of a swatch: each row changes one thing and holds the job's own figure among its steps. How wide the steps
/// are is our assumption: what a person can tell apart at arm's length.
/// </summary>
internal static class SwatchLadder
{
    private static readonly double[] SpacingParts = [0.85, 1, 1.15, 1.3];
    private static readonly double[] CompensationStepsMm = [-0.1, 0, 0.1, 0.2];
    private static readonly double[] HeightParts = [0.8, 1, 1.25];

    /// <param name="least">Only the step before the job's own figure and the one after it.</param>
    public static ImmutableArray<ImmutableArray<SwatchSample>> Rows(Fabric fabric, double letterHeightMm, double leastHeightMm, bool least)
    {
        var own = (fabric.SpacingMm, fabric.PullCompensationMm, letterHeightMm);
        var spacings = Steps(SpacingParts, least).Select(p => Hundredths(fabric.SpacingMm * p)).Distinct();
        var pulls = Steps(CompensationStepsMm, least).Select(s => Math.Max(0, Hundredths(fabric.PullCompensationMm + s))).Distinct();
        var heights = Steps(HeightParts, least).Select(p => Math.Max(leastHeightMm, Math.Round(letterHeightMm * p, 1))).Distinct();
        return
        [
            Row(SwatchRow.Spacing, 'A', spacings.Select(s => (s, own.PullCompensationMm, own.letterHeightMm)), own),
            Row(SwatchRow.PullCompensation, 'B', pulls.Select(p => (own.SpacingMm, p, own.letterHeightMm)), own),
            Row(SwatchRow.Height, 'C', heights.Select(h => (own.SpacingMm, own.PullCompensationMm, h)), own),
        ];
    }

    private static IEnumerable<double> Steps(double[] all, bool least) => least ? all.Take(3) : all;

    private static ImmutableArray<SwatchSample> Row(
        SwatchRow row, char letter, IEnumerable<(double Spacing, double Pull, double Height)> steps,
        (double Spacing, double Pull, double Height) own) =>
    [
        .. steps.Select((s, i) => new SwatchSample(
            row, FormattableString.Invariant($"{letter}{i + 1}"), s.Spacing, s.Pull, s.Height,
            Near(s.Spacing, own.Spacing) && Near(s.Pull, own.Pull) && Near(s.Height, own.Height))),
    ];

    private static bool Near(double a, double b) => Math.Abs(a - b) < 0.0051;

    private static double Hundredths(double mm) => Math.Round(mm, 2);
}
