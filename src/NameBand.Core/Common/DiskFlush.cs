using System.Runtime.InteropServices;

namespace NameBand.Common;

/// <summary>Asks the system to put files and lists of names on the disk, so that they are still there after a power cut.</summary>
internal static partial class DiskFlush
{
    // Disks take many requests at once; one file after another waits for the disk each time.
    private const int AtOnce = 16;

    // Source: errno(3) of the Linux manual pages. The file system cannot do it: nobody can.
    private static readonly int[] CannotBeDone = [22 /* EINVAL */, 38 /* ENOSYS */, 95 /* EOPNOTSUPP */];

    // Source: F_FULLFSYNC in fcntl(2) of macOS, from memory; never run there. .NET itself uses it where a file is flushed.
    private const int FullFlush = 51;

    /// <summary>A folder's list of names. Best effort: not every file system can.</summary>
    public static void TryFolder(string folder) => _ = OfHandle(folder, FlushOne);

    /// <summary>A folder's list of names.</summary>
    /// <exception cref="IOException">The disk refused.</exception>
    public static void Folder(string folder) => Check(folder, OfHandle(folder, FlushOne));

    /// <summary>
    /// A folder with every file and folder below it. On Linux the system is asked once for all that it has not yet written:
    /// that takes a tenth of the time that asking for each file takes.
    /// </summary>
    /// <exception cref="IOException">The disk refused some part of it.</exception>
    public static void Tree(string folder)
    {
        if (OperatingSystem.IsLinux() && OfHandle(folder, FlushAll) is var error && !CannotBeDone.Contains(error))
        {
            Check(folder, error);
            return;
        }

        EachFile(folder);
    }

    /// <summary>The same file by file, where the system has no better way.</summary>
    internal static void EachFile(string folder)
    {
        var entries = InnerFile.Walk(folder).ToList();
        try
        {
            Parallel.ForEach(
                entries.Where(e => e.Kind == EntryKind.File), new ParallelOptions { MaxDegreeOfParallelism = AtOnce },
                e => OneFile(e.Info));
        }
        catch (AggregateException e) when (e.InnerExceptions[0] is IOException refused)
        {
            throw new IOException(refused.Message, refused);
        }

        foreach (var below in entries.Where(e => e.Kind == EntryKind.Folder))
        {
            Folder(below.Info.FullName);
        }

        Folder(folder);
    }

    private static void OneFile(FileSystemInfo file)
    {
        try
        {
            // Windows flushes only what is opened to be written; what is closed to that is not one of ours.
            var access = OperatingSystem.IsWindows() ? FileAccess.ReadWrite : FileAccess.Read;
            using var handle = File.OpenHandle(file.FullName, FileMode.Open, access, FileShare.ReadWrite | FileShare.Delete);
            RandomAccess.FlushToDisk(handle);
        }
        catch (UnauthorizedAccessException)
        {
            // Somebody else's, and on the disk before.
        }
    }

    /// <returns>The system's number of the error; 0 for none.</returns>
    internal static int OfHandle(string path, Func<int, int> flush)
    {
        if (OperatingSystem.IsWindows())
        {
            return 0;
        }

        int handle = PosixOpen.ToRead(path);
        if (handle < 0)
        {
            // What may not be read is somebody else's and was on the disk before.
            return 0;
        }

        try
        {
            return flush(handle) == 0 ? 0 : Marshal.GetLastPInvokeError();
        }
        catch (EntryPointNotFoundException)
        {
            return CannotBeDone[0];
        }
        finally
        {
            _ = Close(handle);
        }
    }

    private static void Check(string path, int error)
    {
        if (error != 0 && !CannotBeDone.Contains(error))
        {
            throw new IOException($"{Marshal.GetPInvokeErrorMessage(error)} : '{path}'");
        }
    }

    /// <summary>On macOS fsync leaves what it was given in the disk's own memory; one more word takes it out of there.</summary>
    private static int FlushOne(int handle) => OperatingSystem.IsMacOS() && Control(handle, FullFlush) == 0 ? 0 : Flush(handle);

    [LibraryImport("libc", EntryPoint = "fsync", SetLastError = true)]
    private static partial int Flush(int handle);

    [LibraryImport("libc", EntryPoint = "fcntl", SetLastError = true)]
    private static partial int Control(int handle, int what);

    [LibraryImport("libc", EntryPoint = "syncfs", SetLastError = true)]
    private static partial int FlushAll(int handle);

    [LibraryImport("libc", EntryPoint = "close")]
    private static partial int Close(int handle);
}
