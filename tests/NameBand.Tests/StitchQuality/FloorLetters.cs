using System.Globalization;
using System.Text;
using NameBand.MachineLetters.Alphabets;

namespace NameBand.Tests.StitchQuality;

/// <summary>The letters whose stitches are held to the floors.</summary>
internal static class FloorLetters
{
    public const string Basic = "ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789&'-.,()!?@";

    /// <summary>Letters and digits of English and the signs of names, then the letters of Latin-1, Latin Extended-A, Greek and
    /// Cyrillic.</summary>
    public static IReadOnlyList<string> All { get; } =
    [
        .. Basic.Select(c => c.ToString()),
        .. Letters(0xC0, 0xFF), .. Letters(0x100, 0x17F), .. Letters(0x386, 0x3CE), .. Letters(0x400, 0x45F), "Ґ", "ґ",
    ];

    private static IEnumerable<string> Letters(int first, int last) =>
        Enumerable.Range(first, last - first + 1).Select(c => new Rune(c))
            .Where(r => Rune.GetUnicodeCategory(r) is UnicodeCategory.UppercaseLetter or UnicodeCategory.LowercaseLetter)
            .Select(r => r.ToString());
}
