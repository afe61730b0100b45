using System.Collections.Immutable;
using System.Text.RegularExpressions;
using NameBand.Common;

namespace NameBand.Web.Table;

/// <summary>What each key means, in the words of docs/job-file.md, which travels with the program.</summary>
internal static partial class KeyMeanings
{
    private static readonly ImmutableDictionary<string, string> Meanings = Read();

    /// <summary>All of them, in English: translators find them among the program's own texts.</summary>
    public static IEnumerable<string> All => Meanings.Values;

    public static Said Of(string path) => Meanings.TryGetValue(path, out string? meaning) ? Said.OfKey(meaning) : Said.Nothing;

    private static ImmutableDictionary<string, string> Read()
    {
        using var stream = typeof(KeyMeanings).Assembly.GetManifestResourceStream("NameBand.Web.job-file.md")!;
        using var reader = new StreamReader(stream);
        var found = ImmutableDictionary.CreateBuilder<string, string>(StringComparer.Ordinal);
        while (reader.ReadLine() is { } line)
        {
            string[] cells = line.Split(" | ");
            if (line.StartsWith("| `", StringComparison.Ordinal) && cells.Length >= 4)
            {
                found[cells[0].Trim('|', ' ', '`')] = Plain(string.Join(" | ", cells[3..]).TrimEnd('|', ' '));
            }
        }

        return found.ToImmutable();
    }

    /// <summary>
    /// Without the marks of the page it stands on, without commands, and without where to read on: pages that a browser has not got.
    /// </summary>
    private static string Plain(string text) =>
        Link().Replace(ReadOn().Replace(text, ""), "$1").Replace("`", "", StringComparison.Ordinal)
            .Replace("\\|", "|", StringComparison.Ordinal);

    [GeneratedRegex(@"\[([^\]]*)\]\([^)]*\)")]
    private static partial Regex Link();

    [GeneratedRegex(@" See \[[^\]]*\]\([^)]*\)\.| \(\[[^\]]*\]\([^)]*\)\)| \(the command [^)]*\)")]
    private static partial Regex ReadOn();
}
