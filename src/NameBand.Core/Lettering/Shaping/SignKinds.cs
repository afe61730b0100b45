using System.Globalization;
using System.Text;
using NameBand.Common;

namespace NameBand.Lettering.Shaping;

/// <summary>What a character is, where that decides whether and how it is lettered.</summary>
internal static class SignKinds
{
    private const int EmojiStyle = 0xFE0F; // U+FE0F, variation selector 16: the sign before it is drawn as a picture (UTS 51).

    private static readonly Lazy<CodePointRanges> Pictures = new(() => CodePointRanges.Read("picture-signs.txt"));

    /// <summary>
    /// Whether a grapheme cluster is a pictograph: it holds a character that Unicode calls Extended_Pictographic or
    /// shows as an emoji, or it asks for emoji style. The three marks of ownership © ® ™ are letters all the same.
    /// </summary>
    public static bool IsPicture(ReadOnlySpan<char> cluster)
    {
        foreach (var rune in cluster.EnumerateRunes())
        {
            bool mark = rune.Value is '©' or '®' or '™';
            if (rune.Value == EmojiStyle || (rune.Value > '~' && !mark && Pictures.Value.Find(rune.Value) >= 0))
            {
                return true;
            }
        }

        return false;
    }

    /// <summary>
    /// Default_Ignorable_Code_Point of Unicode 15.0: joiners, direction marks, variation selectors and other
    /// characters that leave no ink by themselves.
    /// </summary>
    public static bool IsIgnorable(int codePoint) => codePoint switch
    {
        < 0xAD => false,
        0xAD or 0x34F or 0x61C or 0x115F or 0x1160 or 0x17B4 or 0x17B5 => true,
        >= 0x180B and <= 0x180F => true,
        >= 0x200B and <= 0x200F => true,
        >= 0x202A and <= 0x202E => true,
        >= 0x2060 and <= 0x206F => true,
        0x3164 or 0xFEFF or 0xFFA0 => true,
        >= 0xFE00 and <= 0xFE0F => true,
        >= 0xFFF0 and <= 0xFFF8 => true,
        >= 0x1BCA0 and <= 0x1BCA3 => true,
        >= 0x1D173 and <= 0x1D17A => true,
        >= 0xE0000 and <= 0xE0FFF => true,
        _ => false,
    };

    /// <summary>
    /// Whether a cluster holds half a character or U+FFFD, the sign programs put where they could not read one: a face
    /// may well have a picture for it, but it is nobody's name.
    /// </summary>
    public static bool IsUnreadable(ReadOnlySpan<char> cluster)
    {
        foreach (var rune in cluster.EnumerateRunes())
        {
            if (rune == Rune.ReplacementChar)
            {
                return true;
            }
        }

        return false;
    }

    /// <summary>Whether a character ought to leave ink.</summary>
    public static bool IsVisible(Rune rune) =>
        !Rune.IsWhiteSpace(rune) && !IsIgnorable(rune.Value)
        && Rune.GetUnicodeCategory(rune) is not (UnicodeCategory.Control or UnicodeCategory.Format);
}
