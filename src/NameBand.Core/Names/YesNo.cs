using System.Collections.Frozen;
using NameBand.Common;

namespace NameBand.Names;

/// <summary>What a word answers.</summary>
internal enum Answer
{
    Yes,
    No,

    /// <summary>Says by itself that the name is to be hidden, whatever was asked.</summary>
    Hide,

    /// <summary>Says by itself that the name may be shown.</summary>
    Show,
}

/// <summary>An answer to whether a name may be shown, in many languages; what is not known is for a person to read.</summary>
internal static class YesNo
{
    // A count: “yes, with my full name, please” is an answer; a longer text is a remark that a person has to read.
    private const int MostWords = 8;

    private static readonly FrozenSet<string> Yes = Set(ListWords.Of(nameof(Yes)));

    private static readonly FrozenSet<string> Hide = Set(ListWords.Of(nameof(Hide)));

    private static readonly FrozenSet<string> No = Set(ListWords.Of(nameof(No)));

    private static readonly FrozenSet<string> Show = Set(ListWords.Of(nameof(Show)));

    /// <summary>What a cell answers; null when it cannot be told, also where it is blank.</summary>
    public static Answer? Read(string cell)
    {
        string word = Plain(cell);
        return Hide.Contains(word) ? Answer.Hide
            : Show.Contains(word) ? Answer.Show
            : Yes.Contains(word) ? Answer.Yes
            : No.Contains(word) ? Answer.No
            : null;
    }

    /// <summary>Whether the answer asks for the name to be hidden; null when it cannot be told, also where it is blank.</summary>
    /// <param name="yesHides">What a plain yes means in the column; null: nobody has said. Words such as “private” or “public”
    /// mean the same in any.</param>
    public static bool? Hides(string cell, bool? yesHides) => Read(cell) switch
    {
        Answer.Hide => true,
        Answer.Show => false,
        Answer.Yes => yesHides,
        Answer.No => !yesHides,
        _ => null,
    };

    /// <summary>Whether it is a yes or a no, or begins with one: “No, thank you”.</summary>
    public static bool LooksLikeOne(string cell)
    {
        if (Read(cell) is not null)
        {
            return true;
        }

        string[] words = Plain(cell).Split(' ', StringSplitOptions.RemoveEmptyEntries);
        string first = words.Length is > 1 and <= MostWords ? words[0].TrimEnd(',', ';', ':') : "";
        return first.Length > 1 && !char.IsDigit(words[1][0]) && Read(first) is not null;
    }

    private static FrozenSet<string> Set(string words) => words.Split(',').Select(Plain).ToFrozenSet(StringComparer.Ordinal);

    private static string Plain(string cell)
    {
        string text = NameText.Clean(cell).Text;
        return string.Concat(Resemblance.Fold(PlainText.Normal(text, System.Text.NormalizationForm.FormKD))
            .EnumerateRunes().Where(r => !Resemblance.IsAccent(r.Value) && r.Value is not ('.' or '!' or '\'' or 0x2019 or 0xFE0F))
            .Select(r => r.ToString())).Trim();
    }
}
