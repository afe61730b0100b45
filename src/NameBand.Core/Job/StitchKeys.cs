using System.Collections.Immutable;

namespace NameBand.Job;

/// <summary>The keys of what a swatch decides; what they mean: docs/swatch.md.</summary>
internal static class StitchKeys
{
    public static readonly TextKey Thread = new("thread", ThreadSize.FortyWeight.Name);
    public static readonly LengthKey Spacing = new("stitches.spacing", null, 0.2, 1.5, "that of the cloth and the thread");
    public static readonly LengthKey PullCompensation = new("stitches.pullCompensation", null, 0, 1, "that of the cloth");

    public static readonly NumberKey PullGrowth = new("stitches.pullGrowth", null, 0, 1, "that of the cloth");
    public static readonly NumberKey PullAcross = new("stitches.pullAcross", null, 0.25, 4, "that of the cloth");
    public static readonly LengthKey Push = new("stitches.push", null, 0, 0.5, "that of the cloth");

    public static readonly ImmutableArray<JobKey> All = [Thread, Spacing, PullCompensation, PullGrowth, PullAcross, Push];
}
