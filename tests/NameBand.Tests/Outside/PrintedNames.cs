using System.Text;
using NameBand.MachineLetters.Alphabets;
using Xunit;

namespace NameBand.Tests.Outside;

/// <summary>Looks for names in a printed sheet with poppler (Debian poppler-utils), which nobody here made.</summary>
internal static class PrintedNames
{
    /// <summary>
    /// Poppler puts right-to-left text into reading order, so names are found as their owners write them; only the letters
    /// inside a right-to-left ligature it turns round, so there the letters of a line are looked for whatever their order.
    /// </summary>
    public static void AreAllIn(string pdf, IReadOnlyCollection<string> names)
    {
        Assert.NotEmpty(names);
        string read = OutsideTool.Run("pdftotext", ["-enc", "UTF-8", pdf, "-"]);
        string text = Plain(read);
        var lines = read.Split('\n').Select(Letters).ToList();
        Assert.All(names, name =>
        {
            if (name.Any(c => c is >= '\u0590' and <= '\u08FF'))
            {
                Assert.True(lines.Exists(l => Holds(l, Letters(name))), $"{name} is not on {Path.GetFileName(pdf)}.");
            }
            else
            {
                Assert.Contains(Plain(name), text, StringComparison.Ordinal);
            }
        });
    }

    private static bool Holds(string line, string letters) =>
        letters.GroupBy(c => c)
            .All(g => line.Count(c => c == g.Key) >= g.Count()) && line.Count(c => c is >= '\u0590' and <= '\u08FF') == letters.Length;

    private static string Letters(string line) => new([.. Plain(line).Where(char.IsLetter).Order()]);

    private static string Plain(string text) => new([.. text.Normalize(NormalizationForm.FormKC).Where(char.IsLetterOrDigit)]);
}
