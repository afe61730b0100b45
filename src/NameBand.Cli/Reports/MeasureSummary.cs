using NameBand.Cli.Commands;
using NameBand.Cli.Terminal;
using NameBand.Common;
using NameBand.Reports.Answers;

namespace NameBand.Cli.Reports;

/// <summary>What <c>measure</c> says: what to sew, or what the measured lines say of each letter.</summary>
internal sealed class MeasureSummary(Page page, MeasureAnswer answer, string jobAsGiven)
{
    private string Folder => jobAsGiven.TrimEnd('/', '\\');

    public void Print()
    {
        Said height = Length.FromMm(answer.HeightMm).InMillimetres();
        if (answer.Printed.Count > 0)
        {
            PrintSheet(height);
        }
        else if (answer.Letters is { } letters)
        {
            PrintAlphabet(height, letters);
        }
        else
        {
            page.Line($"The sheet {Folder}/{answer.Sheet} is there and no line of it is filled in yet.", tone: Tone.AttentionHeading);
        }

        var needing = answer.Problems.Where(p => p.Severity == Severity.NeedsPerson).ToList();
        if (needing.Count > 0 && answer.Letters is not null)
        {
            page.Gap();
            page.Line($"{Words.Count(needing.Count, "thing needs", "things need")} you", tone: Tone.AttentionHeading);
            page.Problems(needing, Tone.Attention);
        }

        foreach (var note in answer.Problems.Where(p => p.Severity == Severity.Note))
        {
            page.Gap();
            page.Line($"{note.Found} {note.Mend}");
        }

        if (answer.Alphabet is not null)
        {
            page.Gap();
            page.Line($"Written to {Folder}/{answer.Alphabet}. Next:");
            page.Command(2, MakeCommand.Verb, Folder);
        }
    }

    private void PrintSheet(Said height)
    {
        page.Line($"{Words.Count(answer.Lines, "line")} to sew at letters {height} high.", tone: Tone.Heading);
        page.Gap();
        page.Line($"1. Print {Folder}/{answer.Printed[0]}, or {answer.Printed[^1]} on American paper.", 2);
        page.Line("2. Key in and sew each line on the cloth of the strip, and measure it to half a millimetre; time it if you can.", 2);
        page.Line($"3. Copy what you measured into {Folder}/{answer.Sheet}, and run measure again.", 2);
    }

    private void PrintAlphabet(Said height, IReadOnlyList<ToldLetter> letters)
    {
        int estimated = letters.Count(l => l.Estimated);
        Said marked = estimated == 0 ? "" : (Said)$"; {estimated} of them estimated, marked ~";
        page.Line($"{Words.Count(letters.Count, "letter")} at {height}{marked}.", tone: Tone.Heading);
        Said how = answer.ReadingErrorIsFound == true ? "as your lines show" : "as assumed";
        page.Line($"The gap is {answer.GapMm:0.0} mm ({answer.GapLowMm:0.0} to {answer.GapHighMm:0.0}). One reading is out by "
            + $"{answer.ReadingErrorMm:0.0} mm, {how}; each range holds 19 times in 20.");
        page.Gap();
        foreach (var row in letters.Chunk(4))
        {
            page.Verbatim(string.Concat(row.Select(Cell)).TrimEnd());
        }

        if (answer.Lacking is { Count: > 0 } lacking)
        {
            page.Gap();
            page.Line($"Your machine has no {string.Join(" ", lacking)}.");
        }
    }

    private static string Cell(ToldLetter letter)
    {
        string mark = letter.Estimated ? "~" : " ";
        string shown = letter.Letter == " " ? "␣" : letter.Letter;
        double half = Math.Max(letter.HighMm - letter.WidthMm, letter.WidthMm - letter.LowMm);
        return ((Said)$" {shown,2} {mark}{letter.WidthMm,5:0.0} ± {half:0.0} mm").ToString();
    }
}
