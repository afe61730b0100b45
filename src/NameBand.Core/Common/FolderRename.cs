using System.Runtime.InteropServices;

namespace NameBand.Common;

/// <summary>Renaming of folders, with the exchange of two names in one step where the system has it.</summary>
internal static partial class FolderRename
{
    private const int CurrentFolder = -100; // AT_FDCWD of fcntl.h on Linux (from memory).
    private const int CurrentFolderOnMac = -2; // AT_FDCWD of fcntl.h on macOS (from memory).

    // The same number on Linux (renameat2) and on macOS (renameatx_np, there RENAME_SWAP).
    private const uint ExchangeNames = 2;

    /// <summary>
    /// Exchanges the names of two folders on one volume in one step that cannot be seen half done.
    /// False when this system or this file system has no such step; nothing is changed then.
    /// </summary>
    public static bool TryExchange(string one, string other)
    {
        try
        {
            return OperatingSystem.IsLinux() ? Rename(CurrentFolder, one, CurrentFolder, other, ExchangeNames) == 0
                : OperatingSystem.IsMacOS() && RenameOnMac(CurrentFolderOnMac, one, CurrentFolderOnMac, other, ExchangeNames) == 0;
        }
        catch (EntryPointNotFoundException)
        {
            return false;
        }
    }

    /// <summary>Gives a file a second name, so that nothing need be copied; false when that cannot be done here.</summary>
    public static bool TryLink(string file, string secondName)
    {
        if (OperatingSystem.IsWindows())
        {
            return false;
        }

        try
        {
            return Link(file, secondName) == 0;
        }
        catch (EntryPointNotFoundException)
        {
            return false;
        }
    }

    [LibraryImport("libc", EntryPoint = "renameat2", StringMarshalling = StringMarshalling.Utf8)]
    private static partial int Rename(int oneBase, string one, int otherBase, string other, uint flags);

    // Source: the manual page renameatx_np(2) of macOS, from memory; never run there.
    [LibraryImport("libc", EntryPoint = "renameatx_np", StringMarshalling = StringMarshalling.Utf8)]
    private static partial int RenameOnMac(int oneBase, string one, int otherBase, string other, uint flags);

    [LibraryImport("libc", EntryPoint = "link", StringMarshalling = StringMarshalling.Utf8)]
    private static partial int Link(string file, string secondName);
}
