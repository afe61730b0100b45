using System.Globalization;
using System.Text;
using NameBand.Common;
using NameBand.Names;

namespace NameBand.Output;

/// <summary>What needs a person, as it stands at the head of read-me-first.txt.</summary>
internal static class ReadMeNeeds
{
    private const int Columns = 84; // A plain text is read in any window, and printed upright on A4 in type of 10 point.
    private const int MostRows = 20; // Held rows: the file is to be read, and plan.json has all of them.

    /// <summary>Empty when nothing does.</summary>
    public static string Text(Needs needs)
    {
        if (needs.Count == 0)
        {
            return "";
        }

        Said heading = "\nBefore anything else\n--------------------\nSettle this, and run make again.\n\n";
        var text = new StringBuilder(heading.ToString());
        int number = 0;
        foreach (var problem in needs.OfJob.Concat(needs.OfRows.Take(MostRows)))
        {
            number++;
            string label = string.Create(CultureInfo.InvariantCulture, $"{number,2}. ");
            var place = problem.Where.InWords;
            Said said = $"{(place.IsEmpty ? "The job" : place)}: {problem.Found} {problem.Mend}";
            Append(text, label, said.ToString().TrimEnd());
        }

        if (needs.OfRows.Length > MostRows)
        {
            int more = needs.OfRows.Length - MostRows;
            Said rest = Said.Plural(
                more, $"\nAnd {more} more rows are held; plan.json has them all, under problems.\n",
                $"\nAnd {more} more rows are held; plan.json has them all, under problems.\n");
            text.Append(rest.ToString());
        }

        return text.ToString();
    }

    private static void Append(StringBuilder text, string label, string sentences)
    {
        int column = 0;
        foreach (string word in PlainText.OneLine(sentences).Split(' ', StringSplitOptions.RemoveEmptyEntries))
        {
            if (column > 0 && column + 1 + word.Length > Columns)
            {
                text.Append('\n');
                column = 0;
                label = new string(' ', label.Length);
            }

            text.Append(column == 0 ? label : " ").Append(word);
            column += word.Length + (column == 0 ? label.Length : 1);
        }

        text.Append('\n');
    }
}
