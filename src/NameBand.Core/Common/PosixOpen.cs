using System.Runtime.InteropServices;

namespace NameBand.Common;

/// <summary>Opens a file or folder as the system itself does, without the hold that .NET asks for even to read.</summary>
internal static partial class PosixOpen
{
    // Source: O_CLOEXEC in open(2) of Linux (fcntl.h, octal 02000000) and of macOS (from memory; never run there). A program
    // that is started meanwhile would otherwise keep what is open here for as long as it lives, and its disk busy.
    private static readonly int NotForChildren = OperatingSystem.IsMacOS() ? 0x1000000 : 0x80000;

    /// <returns>The system's handle; below zero where it may not be read.</returns>
    public static int ToRead(string path) => Open(path, NotForChildren);

    [LibraryImport("libc", EntryPoint = "open", StringMarshalling = StringMarshalling.Utf8)]
    private static partial int Open(string path, int flags);
}
