using System.Collections.Immutable;
using NameBand.Common;

namespace NameBand.Output;

/// <summary>Puts right what a run that was cut off (power, kill) left beside an out folder. Needs the locks to be held.</summary>
internal static class OutMending
{
    public static bool IsNeeded(OutSiblings at) => Directory.Exists(at.New) || Directory.Exists(at.Old);

    /// <exception cref="IOException">What was left cannot be moved or removed; nothing of the person's is lost.</exception>
    public static ImmutableArray<Problem> Mend(OutSiblings at)
    {
        if (!IsNeeded(at))
        {
            return [];
        }

        if (Directory.Exists(at.Old))
        {
            if (IsEmptyFolder(at.Out))
            {
                Directory.Delete(at.Out);
            }

            if (!Directory.Exists(at.Out) && !File.Exists(at.Out))
            {
                // Cut off between the two renames: the earlier one takes its place again.
                Directory.Move(at.Old, at.Out);
            }
            else if (!Directory.Exists(at.New) && OutManifest.Format(at.Out, at.Kind) is not null)
            {
                // Cut off after both renames: the new one stands, the earlier one only has to go.
                Remove(at.Old);
            }
            else
            {
                return [Problem.CannotUse(
                    new Where(at.Out),
                    $"An interrupted run left the earlier out folder as {Path.GetFileName(at.Old)}, and something else now stands in its place.",
                    $"Look into both. Move away what stands at {Path.GetFileName(at.Out)} and start again: the earlier one then comes back by itself.")];
            }
        }

        // Before an exchange this is half-built, after it the earlier folder: either way the out folder is whole without it.
        if (Directory.Exists(at.New))
        {
            Remove(at.New);
        }

        return [Problem.Note(
            new Where(at.Out),
            "An earlier run was interrupted. What it left half done has been cleared away; the out folder is whole.")];
    }

    /// <summary>Removes a folder with all that is in it; links in it are removed, not followed.</summary>
    public static void Remove(string folder)
    {
        try
        {
            Directory.Delete(folder, recursive: true);
        }
        catch (Exception e) when (e is UnauthorizedAccessException or IOException && Directory.Exists(folder))
        {
            // A folder that was carried over may be closed to writing even for its owner.
            Open(folder);
            Directory.Delete(folder, recursive: true);
        }
    }

    public static bool IsEmptyFolder(string folder) =>
        Directory.Exists(folder) && !Directory.EnumerateFileSystemEntries(folder).Any();

    private static void Open(string folder)
    {
        if (OperatingSystem.IsWindows())
        {
            foreach (string file in Directory.EnumerateFiles(folder, "*", SearchOption.AllDirectories))
            {
                File.SetAttributes(file, FileAttributes.Normal);
            }

            return;
        }

        File.SetUnixFileMode(folder, File.GetUnixFileMode(folder) | UnixFileMode.UserRead | UnixFileMode.UserWrite | UnixFileMode.UserExecute);
        foreach (var below in new DirectoryInfo(folder).EnumerateDirectories())
        {
            if (below.LinkTarget is null)
            {
                Open(below.FullName);
            }
        }
    }
}
