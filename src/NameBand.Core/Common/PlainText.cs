using System.Globalization;
using System.Text;

namespace NameBand.Common;

/// <summary>Makes text from a stranger's file fit to be shown in a message or a terminal.</summary>
public static class PlainText
{
    /// <summary>
    /// On one line: control characters, line ends and the invisible marks that turn the direction of text become
    /// blanks; half characters become U+FFFD. Joiners that scripts need are kept.
    /// </summary>
    public static string OneLine(string text)
    {
        var line = new StringBuilder(text.Length);
        foreach (var rune in text.EnumerateRunes())
        {
            line.Append(IsUnsafe(rune) ? " " : rune.ToString());
        }

        return line.ToString().Trim();
    }

    /// <summary>As <see cref="OneLine"/>, cut after <paramref name="longest"/> characters with an ellipsis.</summary>
    public static string Short(string text, int longest = 40)
    {
        string line = OneLine(text);
        if (line.Length <= longest)
        {
            return line;
        }

        int end = char.IsHighSurrogate(line[longest - 1]) ? longest - 1 : longest;
        return line[..end] + "…";
    }

    /// <summary>Half characters become U+FFFD, so that the text can be written anywhere and reads back the same.</summary>
    public static string Whole(string text) =>
        text.AsSpan().IndexOfAnyInRange('\uD800', '\uDFFF') < 0 ? text : string.Concat(text.EnumerateRunes());

    /// <summary>
    /// In a normal form, for comparing. What no text may hold (half a character, the code of a swapped byte order mark)
    /// becomes U+FFFD first, where normalising would throw.
    /// </summary>
    public static string Normal(string text, NormalizationForm form = NormalizationForm.FormC)
    {
        const char NoCharacter = '\uFFFE';
        return text.AsSpan().IndexOfAnyInRange('\uD800', '\uDFFF') < 0 && !text.Contains(NoCharacter)
            ? text.Normalize(form)
            : Whole(text).Replace(NoCharacter, '\uFFFD').Normalize(form);
    }

    private static bool IsUnsafe(Rune rune) => Rune.GetUnicodeCategory(rune) switch
    {
        UnicodeCategory.Control or UnicodeCategory.LineSeparator or UnicodeCategory.ParagraphSeparator => true,
        UnicodeCategory.Format => rune.Value is not (0x200C or 0x200D),
        _ => false,
    };
}
