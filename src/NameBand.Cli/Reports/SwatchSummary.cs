using System.Globalization;
using NameBand.Cli.Terminal;
using NameBand.Common;
using NameBand.Reports.Answers;

namespace NameBand.Cli.Reports;

/// <summary>What <c>swatch</c> says: what is on it, or what the measured length makes of the shortening.</summary>
internal static class SwatchSummary
{
    public static void Print(Page page, SwatchAnswer answer, string job, string? outFolder)
    {
        string folder = (outFolder ?? Path.Combine(job, "swatch")).TrimEnd('/', '\\');
        page.Line($"{answer.Title}: a swatch on {answer.Cloth}", tone: Tone.Heading);
        page.Gap();
        string hoopings = Words.Count(answer.Hoopings, "hooping");
        string stitches = Words.Count(answer.Stitches, "stitch", "stitches");
        page.Facts(
        [
            ("Word", $"“{answer.Word}”: of the commonest letters on your list those with the longest strokes; nobody's name", Tone.Plain),
            ("A", Steps(answer, "spacing", s => s.SpacingMm, "0.00", "between crossings on one side"), Tone.Plain),
            ("B", Steps(answer, "pullCompensation", s => s.PullCompensationMm, "0.00", "pull compensation"), Tone.Plain),
            ("C", Steps(answer, "height", s => s.LetterHeightMm, "0.0", "letter height"), Tone.Plain),
            ("Marks", string.Create(CultureInfo.InvariantCulture, $"two crosses {answer.MarksApartMm:0}{Words.Tie}mm apart"), Tone.Plain),
            ("Time", $"about {Words.Duration(answer.Minutes)} at the machine, {stitches} in {hoopings}", Tone.Plain),
        ]);
        if (answer.Problems.Count > 0)
        {
            page.Gap();
            page.Notes(answer.Problems);
        }

        page.Gap();
        string likely = (answer.MarksApartMm * 0.992).ToString("0.#", CultureInfo.InvariantCulture);
        page.Line(
            $"It is in {folder}. Print swatch-a4.pdf, or swatch-letter.pdf on American paper. "
            + "Sew it, press it, and measure from cross to cross. "
            + "Then write what you measured:");
        page.Verbatim($"  nameband {Command(job, outFolder)} --measured {likely}");
    }

    public static void Print(Page page, ShorteningAnswer answer, string job, string? outFolder)
    {
        string part = answer.Shortening.ToString("0.####", CultureInfo.InvariantCulture);
        string percent = (answer.Shortening * 100).ToString("0.##", CultureInfo.InvariantCulture);
        string before = answer.BeforePart.ToString("0.####", CultureInfo.InvariantCulture);
        string apart = answer.ApartMm.ToString("0", CultureInfo.InvariantCulture);
        string measured = answer.MeasuredMm.ToString("0.##", CultureInfo.InvariantCulture);
        string misread = (0.5 / answer.ApartMm).ToString("0.####", CultureInfo.InvariantCulture);
        page.Line(
            $"Of {apart}{Words.Tie}mm {measured}{Words.Tie}mm are left: the shortening is {part}, or {percent}{Words.Tie}%.",
            tone: Tone.Heading);
        page.Line($"Half a millimetre misread makes it {misread} more or less.");
        page.Gap();
        page.Line((answer.IsSet, answer.Shortening == answer.BeforePart) switch
        {
            (true, true) => "job.json had that figure already.",
            (true, false) => $"job.json now has it; it was {before}. Run make {Quoted(job)} again.",
            _ => $"job.json allows for {before}. To write it there: {Command(job, outFolder)} --measured {measured} --set",
        });
    }

    /// <summary>The command as it was given: the swatch is looked for where it was made.</summary>
    private static string Command(string job, string? outFolder) =>
        $"swatch {Quoted(job)}" + (outFolder is null ? "" : $" --out {Quoted(outFolder)}");

    private static string Quoted(string path) => path.Contains(' ') ? $"\"{path}\"" : path;

    private static string Steps(SwatchAnswer answer, string changes, Func<ToldSample, double> figure, string form, string what)
    {
        var steps = answer.Samples.Where(s => s.Changes == changes).Select(s => figure(s).ToString(form, CultureInfo.InvariantCulture));
        return $"{Wording.List([.. steps])}{Words.Tie}mm {what}";
    }
}
