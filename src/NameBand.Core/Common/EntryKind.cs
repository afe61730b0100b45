using System.Buffers.Binary;
using System.Runtime.InteropServices;

namespace NameBand.Common;

/// <summary>What stands under a name, the name itself looked at and not what a link leads to.</summary>
internal enum EntryKind
{
    Nothing,
    File,
    Folder,
    Link,

    /// <summary>A pipe, a socket or a device: opening one may wait for ever.</summary>
    Special,
}

/// <summary>Asks the system what stands under a name.</summary>
internal static partial class EntryKinds
{
    // Source: statx(2) and inode(7) of the Linux manual pages; the layout is the same on every processor.
    private const int CurrentFolder = -100;
    private const int NotFollowed = 0x100;
    private const uint KindAndLinks = 0x1 | 0x4;
    private const int AnswerBytes = 256;
    private const int LinksAt = 16;
    private const int ModeAt = 28;
    private const int KindMask = 0xF000;
    private const int FolderMode = 0x4000;
    private const int FileMode = 0x8000;
    private const int LinkMode = 0xA000;

    public static EntryKind Of(string path) => Ask(path) is { } answer ? answer.Kind : OfAttributes(path);

    /// <summary>How many names the file has; null where the system does not say.</summary>
    public static int? NamesOf(string path) => Ask(path)?.Names;

    /// <returns>Null where the system has no such question, or no answer.</returns>
    private static (EntryKind Kind, int Names)? Ask(string path)
    {
        if (!OperatingSystem.IsLinux())
        {
            return null;
        }

        byte[] answer = new byte[AnswerBytes];
        try
        {
            if (Statx(CurrentFolder, path, NotFollowed, KindAndLinks, answer) != 0)
            {
                return null;
            }
        }
        catch (EntryPointNotFoundException)
        {
            return null;
        }

        int mode = BinaryPrimitives.ReadUInt16LittleEndian(answer.AsSpan(ModeAt)) & KindMask;
        var kind = mode switch
        {
            FolderMode => EntryKind.Folder,
            FileMode => EntryKind.File,
            LinkMode => EntryKind.Link,
            _ => EntryKind.Special,
        };
        return (kind, (int)BinaryPrimitives.ReadUInt32LittleEndian(answer.AsSpan(LinksAt)));
    }

    private static EntryKind OfAttributes(string path)
    {
        try
        {
            var attributes = File.GetAttributes(path);

            // Windows marks more than links so: a file that lies in a cloud's folder, for one.
            if (attributes.HasFlag(FileAttributes.ReparsePoint) && (new FileInfo(path).LinkTarget ?? new DirectoryInfo(path).LinkTarget)
                is not null)
            {
                return EntryKind.Link;
            }

            return attributes.HasFlag(FileAttributes.Directory) ? EntryKind.Folder
                : attributes.HasFlag(FileAttributes.Device) ? EntryKind.Special : EntryKind.File;
        }
        catch (Exception e) when (e is FileNotFoundException or DirectoryNotFoundException or PathTooLongException)
        {
            return EntryKind.Nothing;
        }
    }

    [LibraryImport("libc", EntryPoint = "statx", StringMarshalling = StringMarshalling.Utf8)]
    private static partial int Statx(int folder, string path, int flags, uint mask, [Out] byte[] answer);
}
