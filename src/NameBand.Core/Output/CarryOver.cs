using NameBand.Common;

namespace NameBand.Output;

/// <summary>Takes what a person keeps in the earlier out folder over into the new one.</summary>
internal sealed class CarryOver(OutManifest earlier, string from, string to)
{
    private readonly HashSet<string> _done = new(StringComparer.Ordinal);

    /// <summary>
    /// Gives every file of <paramref name="from"/> that is not ours a place in <paramref name="to"/>, leaving the
    /// earlier folder as it is. May be called again to catch what was added in the meantime. Tells of files whose
    /// names are taken by new ones of ours.
    /// </summary>
    /// <param name="source">Where the earlier folder lies now.</param>
    /// <param name="target">Where the new one lies now.</param>
    public List<Problem> Run(string? source = null, string? target = null)
    {
        var notes = new List<Problem>();
        CarryFolder(source ?? from, target ?? to, "", notes);
        return notes;
    }

    private void CarryFolder(string source, string target, string below, List<Problem> notes)
    {
        foreach (var entry in new DirectoryInfo(Path.Combine(source, below)).EnumerateFileSystemInfos()
            .OrderBy(e => e.Name, StringComparer.Ordinal))
        {
            string relative = below.Length == 0 ? entry.Name : $"{below}/{entry.Name}";
            if (entry is DirectoryInfo && entry.LinkTarget is null)
            {
                if (!earlier.IsOurFolder(relative) && !File.Exists(Path.Combine(target, relative)))
                {
                    Directory.CreateDirectory(Path.Combine(target, relative));
                }

                CarryFolder(source, target, relative, notes);
                CopyMode(entry.FullName, Path.Combine(target, relative));
            }
            else if (!_done.Contains(relative) && !earlier.IsOurs(source, relative))
            {
                CarryFile(entry, target, relative, notes);
                _done.Add(relative);
            }
        }
    }

    private static void CarryFile(FileSystemInfo file, string target, string relative, List<Problem> notes)
    {
        string place = relative;
        for (int n = 1; Exists(Path.Combine(target, place)); n++)
        {
            string kept = n == 1 ? " (kept)" : FormattableString.Invariant($" (kept {n})");
            place = Path.ChangeExtension(relative, null) + kept + Path.GetExtension(relative);
        }

        string full = Path.Combine(target, place);
        Directory.CreateDirectory(Path.GetDirectoryName(full)!);
        if (file.LinkTarget is { } link)
        {
            File.CreateSymbolicLink(full, link);
        }
        else if (!FolderRename.TryLink(file.FullName, full))
        {
            File.Copy(file.FullName, full);
            File.SetLastWriteTimeUtc(full, file.LastWriteTimeUtc);
        }

        if (place != relative)
        {
            notes.Add(Problem.Note(
                new Where(relative),
                $"This file in the out folder was written or changed by hand; it is kept as “{place}”.",
                "Take over from it what you still need, then delete it."));
        }
    }

    private static bool Exists(string path) => File.Exists(path) || Directory.Exists(path) || new FileInfo(path).LinkTarget is not null;

    private static void CopyMode(string from, string to)
    {
        if (!OperatingSystem.IsWindows() && Directory.Exists(to))
        {
            File.SetUnixFileMode(to, File.GetUnixFileMode(from));
        }
    }
}
