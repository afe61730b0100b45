using System.Text;
using System.Text.RegularExpressions;

namespace NameBand.Tests.CommonRoom;

/// <summary>What a file may be called on every system it may be copied to.</summary>
internal static partial class NamesEverywhere
{
    /// <summary>Of a name on Linux' and macOS' disks, in bytes; NTFS bears as many UTF-16 units.</summary>
    private const int LongestName = 255;

    /// <summary>
    /// Source: Microsoft, "Naming Files, Paths, and Namespaces": characters, endings and devices that Windows keeps for itself, with
    /// any ending after them; NAME_MAX of limits.h on Linux.
    /// </summary>
    public static bool Is(string name) =>
        name.Length > 0 && name == name.Trim() && !Kept().IsMatch(name) && !name.Any(char.IsSurrogate)
        && Encoding.UTF8.GetByteCount(name) <= LongestName;

    [GeneratedRegex("""[<>:"/\\|?*\x00-\x1f\x7f]|[ .]$|^(?i:con|prn|aux|nul|conin\$|conout\$|com[0-9¹²³]|lpt[0-9¹²³]) *(\.|$)""")]
    private static partial Regex Kept();
}
