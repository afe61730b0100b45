using System.Globalization;
using NameBand.Cli.Terminal;
using NameBand.Common;
using NameBand.MachineLetters;
using NameBand.Reports;

namespace NameBand.Cli.Reports;

/// <summary>What <c>measure</c> says: what to sew, or what the measured lines say of each letter.</summary>
internal sealed class MeasureSummary(Page page, MeasureReport report, string jobAsGiven)
{
    private string Folder => jobAsGiven.TrimEnd('/', '\\');

    public void Print()
    {
        string height = Length.FromMm(report.HeightMm).InMillimetres();
        if (report.Printed.Length > 0)
        {
            PrintSheet(height);
        }
        else if (report.Alphabet is { } alphabet)
        {
            PrintAlphabet(height, alphabet);
        }
        else
        {
            page.Line($"The sheet {Folder}/{report.Sheet} is there and no line of it is filled in yet.", tone: Tone.AttentionHeading);
        }

        var needing = report.Problems.Where(p => p.Severity == Severity.NeedsPerson).ToList();
        if (needing.Count > 0 && report.Alphabet is not null)
        {
            page.Gap();
            page.Line($"{Words.Count(needing.Count, "thing needs", "things need")} you", tone: Tone.AttentionHeading);
            page.Problems(needing, Tone.Attention);
        }

        foreach (var note in report.Problems.Where(p => p.Severity == Severity.Note))
        {
            page.Gap();
            page.Line($"{note.Found} {note.Mend}");
        }

        if (report.AlphabetFile is not null)
        {
            page.Gap();
            page.Line($"Written to {Folder}/{report.AlphabetFile}. Next: make {Folder}");
        }
    }

    private void PrintSheet(string height)
    {
        page.Line($"{Words.Count(report.Lines, "line")} to sew at letters {height} high.", tone: Tone.Heading);
        page.Gap();
        page.Line($"1. Print {Folder}/{report.Printed[0]}, or {report.Printed[^1]} on American paper.", 2);
        page.Line("2. Key in and sew each line on the cloth of the strip, and measure it to half a millimetre; time it if you can.", 2);
        page.Line($"3. Copy what you measured into {Folder}/{report.Sheet}, and run measure again.", 2);
    }

    private void PrintAlphabet(string height, Alphabet alphabet)
    {
        int estimated = alphabet.Letters.Values.Count(l => l.Origin == WidthOrigin.Estimated);
        string marked = estimated == 0 ? "" : $"; {estimated} of them estimated, marked ~";
        page.Line($"{Words.Count(alphabet.Letters.Count, "letter")} at {height}{marked}.", tone: Tone.Heading);
        string how = report.ErrorIsFound ? "as your lines show" : "as assumed";
        page.Line(string.Create(CultureInfo.InvariantCulture,
            $"The gap is {alphabet.Gap.WidthMm:0.0} mm ({alphabet.Gap.LowMm:0.0} to {alphabet.Gap.HighMm:0.0}). One reading is out by {report.ReadingErrorMm:0.0} mm, {how}; each range holds 19 times in 20."));
        page.Gap();
        foreach (var row in alphabet.Letters.Values.Chunk(4))
        {
            page.Verbatim(string.Concat(row.Select(Cell)).TrimEnd());
        }

        if (alphabet.Lacking.Count > 0)
        {
            page.Gap();
            page.Line($"Your machine has no {string.Join(" ", alphabet.Lacking)}.");
        }
    }

    private static string Cell(MachineLetter letter)
    {
        string mark = letter.Origin == WidthOrigin.Estimated ? "~" : " ";
        string shown = letter.Letter == " " ? "␣" : letter.Letter;
        double half = Math.Max(letter.HighMm - letter.WidthMm, letter.WidthMm - letter.LowMm);
        return string.Create(CultureInfo.InvariantCulture, $" {shown,2} {mark}{letter.WidthMm,5:0.0} ± {half:0.0} mm");
    }
}
