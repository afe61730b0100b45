using System.Runtime.InteropServices;

namespace NameBand.Common;

/// <summary>Asks the system to put a folder's list of names on the disk, so that a file just made in it is still there after a power cut.</summary>
internal static partial class DiskFlush
{
    /// <summary>Best effort: not every file system can.</summary>
    public static void TryFolder(string folder)
    {
        if (OperatingSystem.IsWindows())
        {
            return;
        }

        int handle = Open(folder, 0);
        if (handle >= 0)
        {
            _ = Flush(handle);
            _ = Close(handle);
        }
    }

    [LibraryImport("libc", EntryPoint = "open", StringMarshalling = StringMarshalling.Utf8)]
    private static partial int Open(string path, int flags);

    [LibraryImport("libc", EntryPoint = "fsync")]
    private static partial int Flush(int handle);

    [LibraryImport("libc", EntryPoint = "close")]
    private static partial int Close(int handle);
}
