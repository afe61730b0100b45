using System.Collections.Immutable;
using NameBand.Common;
using NameBand.Job;

namespace NameBand.Output;

/// <summary>
/// A finished out folder that could not be put in its place, because another program had a file of the earlier one open, as Windows
/// forbids. It waits beside it, and the next command puts it there.
/// </summary>
internal static class OutWaiting
{
    private static readonly Said Close = "Close what shows files of that folder: a viewer, a spreadsheet, a window of the folder.";

    /// <summary>Leaves what was built to wait.</summary>
    /// <returns>What the person is told.</returns>
    public static RefusedEntryException Leave(OutSiblings at)
    {
        if (Directory.Exists(at.Next))
        {
            OutMending.Remove(at.Next);
        }

        Disk.Move(at.New, at.Next);
        Disk.FlushFolder(at.Parent);
        return new RefusedEntryException(Problem.CannotUse(
            new Where(at.Out),
            $"Another program has a file of the folder “{Path.GetFileName(at.Out)}” open. " +
            $"The new folder is finished and waits beside it.",
            $"{Close} The next command then puts the new one in its place."));
    }

    /// <summary>Puts what waits in its place, with what the person has put into the earlier one since. Needs the locks.</summary>
    public static ImmutableArray<Problem> Take(OutSiblings at)
    {
        if (!Directory.Exists(at.Next))
        {
            return [];
        }

        if (!OutMending.IsWhole(at, at.Next) || IsOlderThanLog(at))
        {
            OutMending.Remove(at.Next);
            return [Problem.Note(
                new Where(at.Out),
                "A finished folder waited to take the place of this one; it was sewn from this one since, so the other was taken away.",
                "Run make.")];
        }

        var notes = new List<Problem>();
        if (Directory.Exists(at.Out))
        {
            // From here on it is as if it had just been built: an exchange leaves the earlier one in its place.
            Disk.Move(at.Next, at.New);

            // What it has of hers are copies, and she may have changed the files since.
            foreach (string copy in OutManifest.Read(at.New).StateOf(at.New).Added)
            {
                Disk.RemoveFile(Path.Combine(at.New, copy));
            }

            notes.AddRange(new CarryOver(OutManifest.Read(at.Out), at.Out, at.New).Run());
            Disk.FlushTree(at.New);
            try
            {
                OutMending.PutInPlace(at, at.New);
            }
            catch (Exception e) when (Disk.IsHeld(e))
            {
                _ = Leave(at);
                return [Problem.NeedsPerson(
                    new Where(at.Out),
                    "A finished folder waits to take the place of this one, and another program still has a file of this one open.",
                    $"{Close} Then say the command again.")];
            }
        }
        else
        {
            Disk.Move(at.Next, at.Out);
            Disk.FlushFolder(at.Parent);
        }

        return OutMending.Clear(at, [.. notes, Problem.Note(
            new Where(at.Out), "The finished folder that waited has been put in its place.")]);
    }

    private static bool IsOlderThanLog(OutSiblings at) => at.Job is { } job && InnerFile.IsPlain(job, SewingLogFile.FileName)
        && WrittenAt(job, SewingLogFile.FileName) > WrittenAt(at.Next, OutPaths.Manifest);

    private static DateTime WrittenAt(string folder, string file) => File.GetLastWriteTimeUtc(Path.Combine(folder, file));
}
