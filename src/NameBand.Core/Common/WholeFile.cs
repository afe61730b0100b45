namespace NameBand.Common;

/// <summary>
/// Puts a file in its place whole: written beside it, confirmed by the disk, then renamed. What it is written in bears
/// one and the same name in every folder, so that a killed process leaves at most one such file there, which the next
/// writer takes away. For the one writer of a folder: the holder of its lock.
/// </summary>
internal static class WholeFile
{
    public const string Unfinished = ".nameband-unfinished";

    /// <exception cref="IOException">The machine could not write; what was there is as it was, and nothing lies beside it.</exception>
    /// <exception cref="UnauthorizedAccessException">The same.</exception>
    public static void Put(string path, ReadOnlySpan<byte> content)
    {
        string folder = Path.GetDirectoryName(Path.GetFullPath(path))!;
        string beside = Path.Combine(folder, Unfinished);
        try
        {
            if (EntryKinds.Of(beside) is not (EntryKind.Nothing or EntryKind.File))
            {
                // Nothing of ours is a link or a pipe: what it leads to is somebody's, and is not written to.
                Disk.RemoveFile(beside);
            }

            using (var file = Disk.Open(beside, FileMode.Create, FileAccess.Write, FileShare.None))
            {
                file.Write(content);
                file.Flush(flushToDisk: true);
            }

            if (EntryKinds.Of(path) == EntryKind.File)
            {
                Disk.SetRightsAs(beside, path);
            }

            Disk.MoveOver(beside, path);
        }
        finally
        {
            Sweep(folder);
        }

        Disk.TryFlushFolder(folder);
    }

    /// <summary>Takes away what a killed process left of a file it was writing in a folder.</summary>
    public static void Sweep(string folder)
    {
        try
        {
            Disk.RemoveFile(Path.Combine(folder, Unfinished));
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            // It stays until the next writer.
        }
    }
}
