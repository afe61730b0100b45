using System.Collections.Immutable;
using NameBand.Common;

namespace NameBand.Output;

/// <summary>
/// Puts right what a run that was cut off (power, kill) left beside an out folder: keeps the folder that its manifest shows
/// to be whole. Needs the locks to be held.
/// </summary>
internal static class OutMending
{
    public static bool IsNeeded(OutSiblings at) => IsInterrupted(at) || Directory.Exists(at.Next);

    private static bool IsInterrupted(OutSiblings at) => Directory.Exists(at.New) || Directory.Exists(at.Old);

    /// <exception cref="IOException">What was left cannot be moved or removed; nothing of the person's is lost.</exception>
    public static ImmutableArray<Problem> Mend(OutSiblings at)
    {
        if (!IsInterrupted(at))
        {
            return OutWaiting.Take(at);
        }

        var mended = MendCutOff(at);
        return mended.Any(p => p.Severity == Severity.CannotUse) ? mended : [.. mended, .. OutWaiting.Take(at)];
    }

    private static ImmutableArray<Problem> MendCutOff(OutSiblings at)
    {
        if (Directory.Exists(at.Old) && IsEmptyFolder(at.Out))
        {
            Disk.RemoveEmptyFolder(at.Out);
        }

        if (Directory.Exists(at.Old) && EntryKinds.Of(at.Out) == EntryKind.Nothing)
        {
            // Cut off between the two renames: the earlier one takes its place again, unless the new one alone is whole.
            Disk.Move(!IsWhole(at, at.Old) && IsWhole(at, at.New) ? at.New : at.Old, at.Out);
            Disk.FlushFolder(at.Parent);
        }

        return Directory.Exists(at.Out) && Spoiled(at, at.Out) is { } fault ? MendSpoiled(at, fault) : Clear(at, [Problem.Note(
            new Where(at.Out),
            "An earlier run was interrupted. What it left half done has been cleared away; the out folder is whole.")]);
    }

    private static ImmutableArray<Problem> MendSpoiled(OutSiblings at, string fault)
    {
        if (OutManifest.Format(at.Out, at.Kind) is null && !OutManifest.IsSpoiledOurs(at.Out, at.Kind) && Directory.Exists(at.Old))
        {
            return [Problem.CannotUse(
                new Where(at.Out),
                $"An interrupted run left the earlier out folder as {Path.GetFileName(at.Old)}, and something else now stands in its place.",
                $"Look at both. Move away what stands at {Path.GetFileName(at.Out)} and start again: the earlier one then comes back by "
                    + $"itself.")];
        }

        foreach (string other in new[] { at.New, at.Old }.Where(o => IsWhole(at, o)))
        {
            var notes = new CarryOver(OutManifest.Read(at.Out), at.Out, other).Run();
            Disk.FlushTree(other);
            PutInPlace(at, other);
            return Clear(at, [.. notes, Problem.Note(
                new Where(at.Out),
                $"An earlier run was interrupted and left this folder spoiled ({fault} is not as it was written), as a power cut does. The whole one that lay beside it has been put in its place.",
                "Run make to see whether it is the newest one.")]);
        }

        return Clear(at, [Problem.Note(
            new Where(at.Out), $"An earlier run was interrupted, and no out folder is whole any more: {fault} is not as it was written.",
            "Run make: it makes the spoiled files again.")]);
    }

    /// <summary>Whether a folder is one of ours, and every file in it as its manifest says.</summary>
    public static bool IsWhole(OutSiblings at, string folder) =>
        Directory.Exists(folder) && OutManifest.Format(folder, at.Kind) is not null && OutManifest.Read(folder).Fault(folder) is null;

    /// <summary>What a power cut spoiled in a folder; null when nothing was. What a person changed does not count.</summary>
    private static string? Spoiled(OutSiblings at, string folder) =>
        OutManifest.Format(folder, at.Kind) is null ? at.Kind.File
        : InnerFile.IsPlain(folder, OutPaths.Manifest) ? OutManifest.Read(folder).Spoiled(folder) : null;

    public static void PutInPlace(OutSiblings at, string whole)
    {
        if (!Disk.TryExchange(whole, at.Out))
        {
            string aside = whole == at.New ? at.Old : at.New;
            if (Directory.Exists(aside))
            {
                Remove(aside);
            }

            Disk.Move(at.Out, aside);
            Disk.Move(whole, at.Out);
        }

        Disk.FlushFolder(at.Parent);
    }

    /// <summary>Removes what lies beside the out folder, which stands.</summary>
    public static ImmutableArray<Problem> Clear(OutSiblings at, ImmutableArray<Problem> notes)
    {
        foreach (string folder in new[] { at.New, at.Old }.Where(Directory.Exists))
        {
            if (Directory.Exists(at.Out) && new CarryOver(OutManifest.Read(folder), folder, at.Out).Rescue() is [var left, ..])
            {
                return [Problem.CannotUse(
                    new Where(folder), $"An interrupted run left “{left}” here, which is not ours and cannot be moved into the out folder.",
                    $"Move it away by hand, then delete the folder {Path.GetFileName(folder)}.")];
            }

            Remove(folder);
        }

        return notes;
    }

    /// <summary>Removes a folder with all that is in it; links in it are removed, not followed.</summary>
    public static void Remove(string folder)
    {
        try
        {
            Disk.RemoveTree(folder);
        }
        catch (Exception e) when (e is UnauthorizedAccessException or IOException && Directory.Exists(folder))
        {
            // A folder that was carried over may be closed to writing even for its owner.
            Disk.OpenToRemoval(folder);
            Disk.RemoveTree(folder);
        }
    }

    public static bool IsEmptyFolder(string folder) =>
        EntryKinds.Of(folder) == EntryKind.Folder && InnerFile.In(folder).Count == 0;
}
