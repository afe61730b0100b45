using NameBand.Common;

namespace NameBand.Output;

/// <summary>Takes what a person keeps in the earlier out folder over into the new one.</summary>
internal sealed class CarryOver(OutManifest earlier, string from, string to)
{
    private readonly HashSet<string> _done = new(StringComparer.Ordinal);
    private readonly List<string> _stuck = [];
    private readonly List<string> _odd = [];

    /// <summary>
    /// Gives every file of <paramref name="source"/> that is not ours a place in <paramref name="target"/>, leaving the
    /// earlier folder as it is. May be called again to catch what was added in the meantime. Tells of files whose
    /// names are taken by new ones of ours.
    /// </summary>
    /// <param name="source">Where the earlier folder lies now.</param>
    /// <param name="target">Where the new one lies now.</param>
    /// <exception cref="RefusedEntryException">A folder in it may not be looked into.</exception>
    public List<Problem> Run(string? source = null, string? target = null)
    {
        var notes = new List<Problem>();
        _stuck.Clear();
        _odd.Clear();
        CarryFolder(source ?? from, target ?? to, "", notes);
        return notes;
    }

    /// <summary>
    /// Once the new folder stands: moves what can neither be linked nor copied, such as another account's files that are
    /// closed to us, and names that are no text.
    /// </summary>
    /// <returns>What could not be moved and stays in the earlier folder.</returns>
    public List<string> MoveStuck(string source, string target)
    {
        var left = new List<string>();
        foreach (string name in _stuck)
        {
            try
            {
                Disk.MakeFolder(Path.GetDirectoryName(Path.Combine(target, name))!);
                Disk.Move(Path.Combine(source, name), Path.Combine(target, FreeName(target, name)));
            }
            catch (Exception e) when (e is IOException or UnauthorizedAccessException)
            {
                left.Add(name);
            }
        }

        left.AddRange(_odd.Where(below => OddNames.Move(Path.Combine(source, below), Path.Combine(target, below)) > 0)
            .Select(below => below + "/…"));
        return left;
    }

    /// <summary>
    /// Before a folder beside the out folder is removed: moves what is nowhere else into the out folder. A run that is
    /// cut off after the exchange may have left a person's file there.
    /// </summary>
    /// <returns>What could not be moved and stays in the folder.</returns>
    public List<string> Rescue()
    {
        _stuck.Clear();
        _odd.Clear();
        foreach (var entry in InnerFile.Walk(from))
        {
            // What is listed there and otherwise than it was written is no person's: of a half-built folder a power cut leaves parts.
            bool isLone = entry.Kind == EntryKind.File && EntryKinds.NamesOf(entry.Info.FullName) == 1
                && !earlier.Lists(entry.Name) && !earlier.IsOurs(from, entry.Name);
            if (isLone && EntryKinds.Of(Path.Combine(to, entry.Name)) == EntryKind.Nothing)
            {
                _stuck.Add(entry.Name);
            }
            else if (IsOdd(entry.Info, entry.Kind) && !_odd.Contains(Above(entry.Name)))
            {
                _odd.Add(Above(entry.Name));
            }
        }

        _odd.ForEach(below => Disk.MakeFolder(Path.Combine(to, below)));
        return MoveStuck(from, to);
    }

    private void CarryFolder(string source, string target, string below, List<Problem> notes)
    {
        foreach (var (relative, kind, entry) in EntriesOf(source, below))
        {
            if (IsOdd(entry, kind))
            {
                _odd.Add(below);
            }
            else if (kind == EntryKind.Folder)
            {
                if (!earlier.IsOurFolder(relative) && !File.Exists(Path.Combine(target, relative)))
                {
                    Disk.MakeFolder(Path.Combine(target, relative));
                }

                CarryFolder(source, target, relative, notes);
                CopyMode(entry.FullName, Path.Combine(target, relative));
            }
            else if (kind != EntryKind.Nothing && !_done.Contains(relative) && !IsOurs(source, relative))
            {
                if (TryCarry(source, entry, target, relative, notes))
                {
                    _done.Add(relative);
                }
                else
                {
                    _stuck.Add(relative);
                }
            }
        }
    }

    /// <summary>What may not be read is not ours.</summary>
    private bool IsOurs(string source, string relative)
    {
        try
        {
            return earlier.IsOurs(source, relative);
        }
        catch (UnauthorizedAccessException)
        {
            return false;
        }
    }

    private static IReadOnlyList<InnerEntry> EntriesOf(string source, string below)
    {
        try
        {
            return InnerFile.In(source, below);
        }
        catch (UnauthorizedAccessException)
        {
            throw new RefusedEntryException(Problem.CannotUse(
                new Where(below),
                $"The folder “{below}” in the out folder is closed to you, so what is in it cannot be taken over into the new one.",
                "Move it out of the out folder, or have its owner open it, and start again."));
        }
    }

    private static bool TryCarry(string source, FileSystemInfo file, string target, string relative, List<Problem> notes)
    {
        string place = FreeName(target, relative);
        string full = Path.Combine(target, place);
        Disk.MakeFolder(Path.GetDirectoryName(full)!);
        if (file.LinkTarget is { } link)
        {
            Disk.LinkTo(full, link);
        }
        else if (!Disk.TryLink(file.FullName, full))
        {
            try
            {
                InnerFile.Copy(source, relative, full);
            }
            catch (Exception e) when (e is UnauthorizedAccessException or RefusedEntryException)
            {
                return false;
            }
        }

        if (place != relative)
        {
            notes.Add(Problem.Note(
                new Where(relative),
                $"This file in the out folder was written or changed by hand; it is kept as “{place}”.",
                "Take over from it what you still need, then delete it."));
        }

        return true;
    }

    private static string FreeName(string target, string relative)
    {
        string place = relative;
        for (int n = 1; EntryKinds.Of(Path.Combine(target, place)) != EntryKind.Nothing; n++)
        {
            string kept = n == 1 ? " (kept)" : FormattableString.Invariant($" (kept {n})");
            place = Path.ChangeExtension(relative, null) + kept + Path.GetExtension(relative);
        }

        return place;
    }

    /// <summary>A name that is no text comes with a sign in the place of what cannot be read, and under that name there is
    /// nothing.</summary>
    private static bool IsOdd(FileSystemInfo entry, EntryKind kind) => kind == EntryKind.Nothing && entry.Name.Contains('\uFFFD');

    private static string Above(string name) => name.LastIndexOf('/') is >= 0 and var at ? name[..at] : "";

    private static void CopyMode(string from, string to)
    {
        if (Directory.Exists(to))
        {
            Disk.SetRightsAs(to, from);
        }
    }
}
