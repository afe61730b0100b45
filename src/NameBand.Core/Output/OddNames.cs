using System.Runtime.InteropServices;
using System.Text;

namespace NameBand.Output;

/// <summary>
/// Moves what bears a name that is no text: Linux lets any bytes but a slash and a NUL be a name, .NET knows only names in
/// UTF-8, and cannot open or move the others.
/// </summary>
internal static unsafe partial class OddNames
{
    // Source: getdents64(2) of the Linux manual pages, whose record readdir hands on where files have 64-bit numbers.
    private const int NameAt = 19;
    private const int CurrentFolder = -100;
    private const uint NeverOverAnother = 1;

    private static readonly UTF8Encoding Strict = new(false, throwOnInvalidBytes: true);

    /// <summary>Moves them from one folder into another on the same disk.</summary>
    /// <returns>How many could not be moved.</returns>
    public static int Move(string from, string to)
    {
        int left = 0;
        foreach (byte[] name in In(from))
        {
            byte[] one = Joined(from, name);
            byte[] other = Joined(to, name);
            fixed (byte* oneAt = one, otherAt = other)
            {
                left += Rename(CurrentFolder, oneAt, CurrentFolder, otherAt, NeverOverAnother) == 0 ? 0 : 1;
            }
        }

        return left;
    }

    private static List<byte[]> In(string folder)
    {
        var names = new List<byte[]>();
        if (!OperatingSystem.IsLinux() || !Environment.Is64BitProcess)
        {
            return names;
        }

        nint open = OpenFolder(folder);
        if (open == 0)
        {
            return names;
        }

        try
        {
            for (byte* entry = Next(open); entry is not null; entry = Next(open))
            {
                byte[] name = MemoryMarshal.CreateReadOnlySpanFromNullTerminated(entry + NameAt).ToArray();
                if (!IsText(name))
                {
                    names.Add(name);
                }
            }
        }
        finally
        {
            _ = CloseFolder(open);
        }

        return names;
    }

    private static bool IsText(byte[] name)
    {
        try
        {
            _ = Strict.GetCharCount(name);
            return true;
        }
        catch (DecoderFallbackException)
        {
            return false;
        }
    }

    private static byte[] Joined(string folder, byte[] name) => [.. Encoding.UTF8.GetBytes(folder), (byte)'/', .. name, 0];

    [LibraryImport("libc", EntryPoint = "opendir", StringMarshalling = StringMarshalling.Utf8)]
    private static partial nint OpenFolder(string folder);

    [LibraryImport("libc", EntryPoint = "readdir")]
    private static partial byte* Next(nint folder);

    [LibraryImport("libc", EntryPoint = "closedir")]
    private static partial int CloseFolder(nint folder);

    [LibraryImport("libc", EntryPoint = "renameat2")]
    private static partial int Rename(int oneBase, byte* one, int otherBase, byte* other, uint flags);
}
