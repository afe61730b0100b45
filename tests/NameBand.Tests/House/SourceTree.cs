using System.Text.RegularExpressions;

namespace NameBand.Tests.House;

/// <summary>The tree of the sources as DEVELOPERS.md draws it: a folder on each line, two blanks deeper than the one it lies in.</summary>
internal static partial class SourceTree
{
    private const int Margin = 4;

    /// <summary>The folders that are drawn, each with its whole path.</summary>
    public static IEnumerable<string> Folders(string page)
    {
        string[] above = new string[8];
        foreach (Match line in Line().Matches(page[page.IndexOf("## The tree of src", StringComparison.Ordinal)..]))
        {
            int depth = (line.Groups[1].Length - Margin) / 2;
            above[depth] = line.Groups[2].Value;
            yield return string.Join('/', above[..(depth + 1)]);
        }
    }

    [GeneratedRegex(@"^((?:  ){2,})([A-Z]\w+|src/[\w.]+) {2,}\S", RegexOptions.Multiline)]
    private static partial Regex Line();
}
