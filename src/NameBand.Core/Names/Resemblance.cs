using System.Globalization;
using System.Text;
using NameBand.Common;

namespace NameBand.Names;

/// <summary>
/// Finds names that a reader would take for each other. The base is the skeleton of UTS 39 (Unicode Security
/// Mechanisms, section 4): two texts with the same skeleton look alike. Here case, accents and blanks are
/// disregarded as well.
/// </summary>
internal static class Resemblance
{
    /// <summary>The skeleton of UTS 39: NFD, each character replaced by its prototype, NFD again.</summary>
    public static string Skeleton(string text) =>
        Mapped(text.Normalize(NormalizationForm.FormD)).Normalize(NormalizationForm.FormD);

    /// <summary>
    /// Two keys; names that agree in either one resemble each other. One folds case before it looks for look-alikes
    /// (ANNA and anna), the other after (Ida and 1da, whose capital I looks like a one and small i does not).
    /// </summary>
    public static (string FoldedFirst, string FoldedLast) Keys(string text)
    {
        string parts = text.Normalize(NormalizationForm.FormKD);
        return (Bare(Fold(Skeleton(Fold(parts))), text), Bare(Fold(Skeleton(parts)), text));
    }

    /// <summary>In what two resembling names differ, in words.</summary>
    public static Said DifferOnlyIn(string a, string b)
    {
        if (Fold(a) == Fold(b))
        {
            return "capital and small letters";
        }

        if (WithoutBlanks(a) == WithoutBlanks(b))
        {
            return "blanks";
        }

        string bareA = Bare(Fold(a.Normalize(NormalizationForm.FormD)), a);
        string bareB = Bare(Fold(b.Normalize(NormalizationForm.FormD)), b);
        return bareA == bareB ? "accents, blanks or capital letters" : "letters that look alike";
    }

    /// <summary>Accents, vowel points and tone marks of alphabets; not the vowel signs of Indic and South-East Asian scripts, nor
    /// kana's voicing marks, which make another letter.</summary>
    public static bool IsAccent(int code) => code
        is (>= 0x0300 and <= 0x036F) or (>= 0x0483 and <= 0x0487)
            or (>= 0x0591 and <= 0x05C7 and not 0x05BE and not 0x05C0 and not 0x05C3 and not 0x05C6)
        or (>= 0x0610 and <= 0x061A) or (>= 0x064B and <= 0x065F) or 0x0670 or (>= 0x06D6 and <= 0x06DC) or (>= 0x06DF and <= 0x06E4)
        or 0x06E7 or 0x06E8 or (>= 0x06EA and <= 0x06ED) or (>= 0x08D3 and <= 0x08FF and not 0x08E2)
        or (>= 0x1AB0 and <= 0x1AFF) or (>= 0x1DC0 and <= 0x1DFF) or (>= 0x20D0 and <= 0x20FF) or (>= 0xFE20 and <= 0xFE2F);

    /// <summary>Case disregarded: capital, then small, so that all forms of a letter meet (final sigma, long s, sharp s).</summary>
    public static string Fold(string text)
    {
        var folded = new StringBuilder(text.Length);
        foreach (var rune in text.EnumerateRunes())
        {
            if (rune.Value is 0x00DF or 0x1E9E)
            {
                folded.Append("ss");
            }
            else
            {
                Append(folded, rune.Value == 0x0131 ? new Rune('i') : Rune.ToLowerInvariant(Rune.ToUpperInvariant(rune)));
            }
        }

        return folded.ToString();
    }

    /// <summary>Without accents, blanks and joiners; a text of nothing else stays as it is.</summary>
    private static string Bare(string text, string whole)
    {
        var bare = new StringBuilder(text.Length);
        foreach (var rune in text.EnumerateRunes())
        {
            if (!IsAccent(rune.Value) && rune.Value != ' ' && !IsSelector(rune.Value))
            {
                Append(bare, rune);
            }
        }

        return bare.Length > 0 ? bare.ToString() : whole;
    }

    private static string WithoutBlanks(string text) => text.Replace(" ", "", StringComparison.Ordinal);

    private static bool IsSelector(int code) => code is Joiners.NonJoiner or Joiners.Joiner or 0x034F
        or (>= 0xFE00 and <= 0xFE0F) or (>= 0xE0100 and <= 0xE01EF) || CharUnicodeInfo.GetUnicodeCategory(code) == UnicodeCategory.Format;

    private static string Mapped(string decomposed)
    {
        var mapped = new StringBuilder(decomposed.Length);
        foreach (var rune in decomposed.EnumerateRunes())
        {
            if (UnicodeTables.Prototypes.TryGetValue(rune.Value, out string? prototype))
            {
                mapped.Append(prototype);
            }
            else
            {
                Append(mapped, rune);
            }
        }

        return mapped.ToString();
    }

    private static void Append(StringBuilder text, Rune rune)
    {
        Span<char> chars = stackalloc char[2];
        text.Append(chars[..rune.EncodeToUtf16(chars)]);
    }
}
