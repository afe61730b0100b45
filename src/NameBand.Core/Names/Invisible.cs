using System.Globalization;
using NameBand.Common;

namespace NameBand.Names;

/// <summary>Characters that leave no mark on the cloth, and those that turn into a blank.</summary>
internal static class Invisible
{
    /// <summary>Every blank of Unicode, tabs and line breaks among them, and the blank Braille pattern.</summary>
    public static bool IsBlank(int code) =>
        code is (>= 0x09 and <= 0x0D) or 0x85 or 0x2800 || CharUnicodeInfo.GetUnicodeCategory(code)
            is UnicodeCategory.SpaceSeparator or UnicodeCategory.LineSeparator or UnicodeCategory.ParagraphSeparator;

    public static bool IsLineBreak(int code) => code is 0x0A or 0x0B or 0x0C or 0x0D or 0x85 or 0x2028 or 0x2029;

    /// <summary>Never part of how a name looks, wherever it stands.</summary>
    public static bool IsAlways(int code) => code switch
    {
        Joiners.NonJoiner or Joiners.Joiner => false,
        // Signs that enclose the digits after them (Arabic, Syriac, Kaithi) are format characters that show.
        (>= 0x0600 and <= 0x0605) or 0x06DD or 0x070F or 0x0890 or 0x0891 or 0x08E2 or 0x110BD or 0x110CD => false,
        // Egyptian quadrat controls place the signs.
        >= 0x13430 and <= 0x13455 => false,
        // Hangul fillers that are used as a blank, Khmer vowels that Unicode advises against.
        0x3164 or 0xFFA0 or 0x17B4 or 0x17B5 => true,
        0x2065 or (>= 0xFFF0 and <= 0xFFF8) or 0xFFFC or (>= 0xE0000 and <= 0xE00FF) or (>= 0xE01F0 and <= 0xE0FFF) => true,
        _ when (code & 0xFFFE) == 0xFFFE || code is >= 0xFDD0 and <= 0xFDEF => true,
        _ => CharUnicodeInfo.GetUnicodeCategory(code) is UnicodeCategory.Control or UnicodeCategory.Format,
    };

    /// <summary>Of use only beside certain characters, and not beside these.</summary>
    public static bool IsUseless(IReadOnlyList<int> text, int i)
    {
        int code = text[i];
        int before = i > 0 ? text[i - 1] : -1;
        int after = i + 1 < text.Count ? text[i + 1] : -1;
        return code switch
        {
            Joiners.NonJoiner or Joiners.Joiner => !Joiners.IsNeeded(text, i),
            0x034F => !(IsMark(before) && IsMark(after)),
            0x115F or 0x1160 => !(IsJamo(before) || IsJamo(after)),
            (>= 0x180B and <= 0x180D) or 0x180F => before is not (>= 0x1820 and <= 0x18AA),
            >= 0xFE00 and <= 0xFE0F => !TakesVariation(before),
            >= 0xE0100 and <= 0xE01EF => !IsHan(before),
            _ => false,
        };
    }

    public static Said Describe(int code)
    {
        string number = "U+" + code.ToString("X4", CultureInfo.InvariantCulture);
        Said? word = code switch
        {
            0x00AD => "soft hyphen",
            0x061C or 0x200E or 0x200F or (>= 0x202A and <= 0x202E) or (>= 0x2066 and <= 0x2069) => "writing direction mark",
            0x200B => "zero width space",
            0x200C => "zero width non-joiner",
            0x200D => "zero width joiner",
            0x2060 => "word joiner",
            0xFEFF => "byte order mark",
            (>= 0xFE00 and <= 0xFE0F) or (>= 0xE0100 and <= 0xE01EF) => "variation selector",
            >= 0xE0000 and <= 0xE007F => "tag",
            _ => CharUnicodeInfo.GetUnicodeCategory(code) == UnicodeCategory.Control ? "control character" : null,
        };
        return word is null ? Said.Plain(number) : $"{word} {number}";
    }

    private static bool TakesVariation(int before) =>
        IsHan(before) || Joiners.IsPictograph(Math.Max(before, 0)) || before is (>= 0x1000 and <= 0x109F) or (>= 0xA840 and <= 0xA877);

    private static bool IsHan(int code) =>
        code is (>= 0x2E80 and <= 0x2FDF) or 0x3005 or 0x3007 or (>= 0x3400 and <= 0x4DBF) or (>= 0x4E00 and <= 0x9FFF)
            or (>= 0xF900 and <= 0xFAFF) or (>= 0x20000 and <= 0x3FFFD);

    private static bool IsJamo(int code) => code is >= 0x1100 and <= 0x11FF and not (0x115F or 0x1160);

    private static bool IsMark(int code) => code >= 0 && CharUnicodeInfo.GetUnicodeCategory(code)
        is UnicodeCategory.NonSpacingMark or UnicodeCategory.SpacingCombiningMark or UnicodeCategory.EnclosingMark;
}
