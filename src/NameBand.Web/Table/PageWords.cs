using System.Collections.Frozen;
using System.Text.RegularExpressions;
using NameBand.Common;
using NameBand.Job;

namespace NameBand.Web.Table;

/// <summary>
/// What the program says, in the words of the page: a key is called as its field is, a file as what is in it. Whoever works here
/// needs to know neither.
/// </summary>
internal static partial class PageWords
{
    private static readonly (string File, Said Called)[] Files =
    [
        (JobReader.FileName, "the job"), ("corrections.csv", "your decisions"), ("approvals.csv", "the owners’ answers"),
        ("workshop.json", "your workshop"),
        ("sewing-log.csv", "the sewing log"), ("plan.json", "the plan"), ("drift.csv", "the measured lengths"),
        ("letters.csv", "the measured letters"), ("proofs-read.csv", "the names you read"),
    ];

    private static readonly FrozenDictionary<string, JobKeyCard> Cards =
        JobKeyCard.All.ToFrozenDictionary(c => c.Path, StringComparer.Ordinal);

    private static readonly FrozenDictionary<string, Said> ByLastWord = JobKeyCard.All.Where(c => c.Path.Contains('.'))
        .GroupBy(c => c.Path.Split('.')[^1]).ToFrozenDictionary(g => g.Key, g => KeyLabels.Of(g.First()), StringComparer.Ordinal);

    /// <summary>What was found and what to do.</summary>
    public static Said Of(Problem problem) => Of(problem.Mend.IsEmpty ? problem.Found : $"{problem.Found} {problem.Mend}", problem.Where.Key);

    /// <param name="key">The key that the text is about; null: none.</param>
    public static Said Of(Said said, string? key = null) => said.Changed((text, _) => Of(text, key));

    /// <param name="key">The key that the text is about; null: none.</param>
    public static string Of(string text, string? key = null)
    {
        foreach (var (file, called) in Files)
        {
            text = text.Replace(file, called.ToString(), StringComparison.Ordinal);
        }

        text = Dotted()
            .Replace(text, m => IsTold(m) ? m.Value : Cards.TryGetValue(m.Value, out var card) ? $"“{KeyLabels.Of(card)}”" : m.Value);
        text = Quoted().Replace(text, m => $"“{Called(m.Groups[1].Value, key)}”");
        return Camel().Replace(text, m => IsTold(m) ? m.Value : KeyLabels.Said(m.Value).ToString());
    }

    /// <summary>What stands between these marks is hers, such as a name: it stays as she wrote it.</summary>
    private static bool IsTold(Match match) => match.Value[0] == '“';

    /// <summary>A key by its last word is the one beside that which the text is about, where there are several of it.</summary>
    private static Said Called(string word, string? key)
    {
        string beside = key is null || !key.Contains('.') ? word : key[..(key.LastIndexOf('.') + 1)] + word;
        return Cards.TryGetValue(beside, out var card) && card.Path.Contains('.') ? KeyLabels.Of(card)
            : word.Any(char.IsAsciiLetterUpper) || !ByLastWord.TryGetValue(word, out var label) ? KeyLabels.Said(word) : label;
    }

    [GeneratedRegex(@"“[^”]*”|(?<![\w.])[a-z][A-Za-z]*(?:\.[a-z][A-Za-z]*)+(?![\w])", RegexOptions.CultureInvariant)]
    private static partial Regex Dotted();

    [GeneratedRegex("\"([A-Za-z]+)\"", RegexOptions.CultureInvariant)]
    private static partial Regex Quoted();

    [GeneratedRegex(@"“[^”]*”|\b[a-z]+(?:[A-Z][a-z]+)+\b", RegexOptions.CultureInvariant)]
    private static partial Regex Camel();
}
