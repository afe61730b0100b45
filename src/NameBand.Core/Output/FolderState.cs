using System.Collections.Immutable;

namespace NameBand.Output;

/// <summary>How the files of a folder of ours stand beside the list that was written with them, each by its place in the folder.</summary>
/// <param name="Listed">How many files the list has; null where there is no list, or none that can be read.</param>
/// <param name="Gone">Listed, and not there.</param>
/// <param name="Spoiled">Empty or full of NULs, as a power cut leaves them; no person writes that.</param>
/// <param name="Changed">Others that are not as they were written.</param>
/// <param name="Added">There, and not listed: a person's own.</param>
internal sealed record FolderState(
    int? Listed, ImmutableArray<string> Gone, ImmutableArray<string> Spoiled, ImmutableArray<string> Changed, ImmutableArray<string> Added)
{
    public static FolderState WithoutList { get; } = new(null, [], [], [], []);
}
