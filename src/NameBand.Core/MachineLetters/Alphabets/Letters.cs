using System.Globalization;
using NameBand.Common;

namespace NameBand.MachineLetters.Alphabets;

/// <summary>A name as the letters one keys in: what a reader takes for one letter, accents with it.</summary>
internal static class Letters
{
    public const string Blank = " ";

    /// <summary>How a blank is shown on sheets.</summary>
    public const string ShownBlank = "␣";

    /// <summary>How a blank is written in a file's letter column, where a plain blank would be lost.</summary>
    public const string BlankWord = "blank";

    public static IReadOnlyList<string> Of(string text)
    {
        var letters = new List<string>(text.Length);
        var walk = StringInfo.GetTextElementEnumerator(PlainText.Normal(text));
        while (walk.MoveNext())
        {
            letters.Add(Key(walk.GetTextElement()));
        }

        return letters;
    }

    /// <summary>
    /// What is pressed for a letter. A machine has one apostrophe and one hyphen: pressing them for the typographer's is no
    /// other spelling.
    /// </summary>
    public static string Key(string letter) => letter switch
    {
        "’" or "‘" or "ʼ" or "′" => "'",
        "‐" or "‑" => "-",
        _ => string.IsNullOrWhiteSpace(letter) ? Blank : letter,
    };

    /// <summary>A text with its blanks made visible.</summary>
    public static string Shown(string text) => text.Replace(Blank, ShownBlank, StringComparison.Ordinal);
}
