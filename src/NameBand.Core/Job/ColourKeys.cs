using System.Collections.Immutable;

namespace NameBand.Job;

/// <summary>The keys of the colours of cloth and thread; what they mean: docs/job-file.md.</summary>
internal static class ColourKeys
{
    public static readonly TextKey Cloth = new("colours.cloth", null, "undyed cotton");
    public static readonly TextKey Thread = new("colours.thread", null, "indigo");
    public static readonly TextKey Bobbin = new("colours.bobbin", null, "not said");

    public static readonly ImmutableArray<JobKey> All = [Cloth, Thread, Bobbin];
}
