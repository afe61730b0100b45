using System.Collections.Immutable;
using NameBand.Common;
using NameBand.Output;
using NameBand.Reports;

namespace NameBand.Pipeline;

/// <summary>A folder of ours that is looked over.</summary>
/// <param name="Part">How it is called in the answer.</param>
/// <param name="Verb">The command that writes it again.</param>
internal sealed record CheckedFolder(string FullPath, OutKind Kind, Said Part, string Verb)
{
    public string Name => Path.GetFileName(Path.TrimEndingDirectorySeparator(FullPath));
}

/// <summary>Holds a folder that a command has made against the list of its files.</summary>
internal static class FolderChecking
{
    /// <param name="Told">The files of which it is told that they are not as they were written.</param>
    public sealed record Found(CheckedPart Part, ImmutableArray<Problem> Problems, ImmutableHashSet<string> Told);

    /// <summary>Whether a command has made it: a folder of that name may be her own.</summary>
    public static bool IsOurs(CheckedFolder folder) =>
        Directory.Exists(folder.FullPath)
        && (InnerFile.IsThere(folder.FullPath, OutPaths.Manifest) || OutManifest.Format(folder.FullPath, folder.Kind) is not null);

    public static Found Of(CheckedFolder folder)
    {
        var state = OutManifest.Read(folder.FullPath).StateOf(folder.FullPath);
        var problems = new List<Problem>();
        Said again = $"Run {folder.Verb}: it writes them again.";
        Tell(state.Gone, "is gone", "are gone", again);
        Tell(state.Spoiled, "is empty or spoiled, as a power cut leaves files", "are empty or spoiled, as a power cut leaves files", again);
        var wrong = state.Changed.Where(f => !IsHers(folder, f)).ToImmutableArray();
        Tell(wrong, $"is not as {folder.Verb} wrote it", $"are not as {folder.Verb} wrote them",
            $"Run {folder.Verb}, which writes them again, before you " +
            $"{(folder.Kind == OutKind.Plan || folder.Kind == OutKind.Swatch ? (Said)"sew from them" : "pass them on")}.");
        var noted = state.Changed.RemoveAll(f => wrong.Contains(f));
        if (noted.Length > 0)
        {
            problems.Add(Problem.Note(new Where(folder.Name),
                $"{Listed(folder.Name, noted)} {(noted.Length > 1 ? (Said)"were" : "was")} changed by hand since {folder.Verb} wrote " +
                $"{(noted.Length > 1 ? (Said)"them" : "it")}; {folder.Verb} keeps what is yours."));
        }

        if (state.Listed is null)
        {
            problems.Add(Problem.NeedsPerson(
                new Where($"{folder.Name}/{OutPaths.Manifest}"),
                "The list of the files is missing or cannot be read, so NameBand does not know whether they are whole.",
                $"Run {folder.Verb}: it writes files and list again."));
        }

        ImmutableHashSet<string> told = [.. state.Gone, .. state.Spoiled, .. wrong];
        return new Found(PartOf(folder, state, told.Count), [.. problems], told);

        void Tell(ImmutableArray<string> files, Said one, Said many, Said mend)
        {
            if (!files.IsEmpty)
            {
                problems.Add(Problem.NeedsPerson(
                    new Where(folder.Name), $"{Listed(folder.Name, files)} {(files.Length > 1 ? many : one)}.", mend));
            }
        }
    }

    /// <summary>The first few files, each with its folder.</summary>
    public static Said Listed(string folder, IReadOnlyList<string> files)
    {
        string[] shown = [.. files.Take(Few.Examples).Select(f => $"{folder}/{f}")];
        return Wording.List(files.Count > Few.Examples ? [.. shown, $"{files.Count - Few.Examples} more"] : shown);
    }

    /// <summary>Sheets and letters at the top are written in by hand, and kept; what is shown to everybody is as it was made.</summary>
    private static bool IsHers(CheckedFolder folder, string file) =>
        folder.Kind != OutKind.Public && file != folder.Kind.File && !file.Contains('/', StringComparison.Ordinal);

    private static CheckedPart PartOf(CheckedFolder folder, FolderState state, int wrong) => new(
        folder.Part, state.Listed is not null && wrong == 0, state.Listed is not { } all ? "without a list"
        : wrong == 0 ? (Said)($"{Wording.Count(all, "file")} as they were written" +
            $"{(state.Added.IsEmpty ? "" : (Said)$", and {Wording.Count(state.Added.Length, "file")} of your own")}")
        : $"{wrong} of {all} {(wrong == 1 ? (Said)"is not as it was" : "are not as they were")} written");
}
