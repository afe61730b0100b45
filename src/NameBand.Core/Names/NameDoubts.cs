using System.Collections.Frozen;
using NameBand.Common;

namespace NameBand.Names;

/// <summary>Texts that stand in a name column and are perhaps no name to sew.</summary>
internal static class NameDoubts
{
    private static readonly FrozenSet<string> Placeholders = ListWords.Of(nameof(Placeholders))
        .Split(',').Select(HeaderWords.Key).ToFrozenSet(StringComparer.Ordinal);

    /// <summary>What to ask about the text, or null when nothing is odd about it.</summary>
    public static Said? Of(NameText name)
    {
        string text = name.Text;
        if (name.IsTooLong)
        {
            return $"{name.Length.ToString(System.Globalization.CultureInfo.InvariantCulture)} characters are more than a name has";
        }

        if (name.IsBroken)
        {
            return "a character of the name could not be read (shown as \uFFFD); write the name as its owner does";
        }

        if (LooksLikeMail(text))
        {
            return "this looks like a mail address: should it be sewn?";
        }

        if (Placeholders.Contains(HeaderWords.Key(text)))
        {
            return "this may stand for no name, or for somebody who would rather not be named";
        }

        return !text.EnumerateRunes().Any(System.Text.Rune.IsLetter) ? "there is no letter in this name"
            : HeaderWords.IsTotal(text) ? "this looks like a total and not like a name"
            : null;
    }

    private static bool LooksLikeMail(string text)
    {
        int at = text.IndexOf('@');
        return at > 0 && text.IndexOf('.', at) is var dot && dot > at + 1 && dot < text.Length - 1
            && !text.AsSpan(at + 1).Contains(' ');
    }
}
