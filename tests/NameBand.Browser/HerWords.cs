using System.Text.RegularExpressions;
using Microsoft.Playwright;
using Xunit;

namespace NameBand.Browser;

/// <summary>No key of a job, no file's name, no command: what is hers, such as names and her list, is not looked at.</summary>
internal static partial class HerWords
{
    public static async Task ExpectAsync(IPage page, string where, string within)
    {
        string said = Hers().Replace(string.Join('\n', await page.Locator(within).AllInnerTextsAsync()), "");
        var found = NotHers().Matches(said)
            .Select(m => said[Math.Max(0, m.Index - 40)..Math.Min(said.Length, m.Index + 40)].ReplaceLineEndings(" "));
        Assert.True(said.Length > 20 && !found.Any(), $"{where}: {string.Join(" | ", found)}");
    }

    /// <summary>Her list, and her folder, whose name is drawn by lot here.</summary>
    [GeneratedRegex(@"\bnames\.csv\b|\bnameband-test-\w+")]
    private static partial Regex Hers();

    [GeneratedRegex(
        @"\b\p{Ll}+\p{Lu}\p{Ll}|\b\w[\w-]*\.(json|csv|png|pdf|svg|iso|txt|md)\b|"
        + @"\b(hem|strip|lettering|hoop|machine|hands|letters|traced|columns|asking|plan|colours)\.[a-z]|\bJOB\b|--[a-z]")]
    private static partial Regex NotHers();
}
