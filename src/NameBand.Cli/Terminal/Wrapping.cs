using System.Text;
using Spectre.Console;

namespace NameBand.Cli.Terminal;

/// <summary>Breaks text into lines at blanks, by the cells a terminal gives to each character.</summary>
internal static class Wrapping
{
    /// <summary>Lines of at most <paramref name="width"/> cells; a single word that is wider stands on a line of its own.</summary>
    public static IEnumerable<string> Wrap(string text, int width)
    {
        var line = new StringBuilder();
        int cells = 0;
        foreach (string word in text.Split(' ', StringSplitOptions.RemoveEmptyEntries))
        {
            int wordCells = Cells(word);
            if (cells > 0 && cells + 1 + wordCells > width)
            {
                yield return Untied(line);
                line.Clear();
                cells = 0;
            }

            if (cells > 0)
            {
                line.Append(' ');
                cells++;
            }

            line.Append(word);
            cells += wordCells;
        }

        yield return Untied(line);
    }

    private static string Untied(StringBuilder line) => line.Replace(Words.Tie, ' ').ToString();

    public static int Cells(string text) => text.GetCellWidth();

    public static string PadTo(string text, int cells) => text + new string(' ', Math.Max(0, cells - Cells(text)));
}
