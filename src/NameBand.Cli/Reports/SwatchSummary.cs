using System.Globalization;
using NameBand.Cli.Terminal;
using NameBand.Common;
using NameBand.Load.Swatches;
using NameBand.Reports;

namespace NameBand.Cli.Reports;

/// <summary>What <c>swatch</c> says: what is on it, or what the measured length makes of the shortening.</summary>
internal static class SwatchSummary
{
    public static void Print(Page page, SwatchReport report, string job, string? outFolder)
    {
        var plan = report.Plan!;
        string folder = (outFolder ?? Path.Combine(job, "swatch")).TrimEnd('/', '\\');
        page.Line($"{report.Title}: a swatch on {report.Cloth}", tone: Tone.Heading);
        page.Gap();
        page.Facts(
        [
            ("Word", $"“{plan.Word}”: of the commonest letters on your list those with the longest strokes; nobody's name", Tone.Plain),
            ("A", Steps(plan, SwatchRow.Spacing, s => s.SpacingMm, "0.00", "between rungs"), Tone.Plain),
            ("B", Steps(plan, SwatchRow.PullCompensation, s => s.PullCompensationMm, "0.00", "pull compensation"), Tone.Plain),
            ("C", Steps(plan, SwatchRow.Height, s => s.LetterHeightMm, "0.0", "letter height"), Tone.Plain),
            ("Marks", string.Create(CultureInfo.InvariantCulture, $"two crosses {plan.MarksApartMm:0}{Words.Tie}mm apart"), Tone.Plain),
            ("Time", $"about {Words.Duration(report.Minutes)} at the machine, {Words.Count(report.Stitches, "stitch", "stitches")} in {Words.Count(plan.Hoopings.Length, "hooping")}", Tone.Plain),
        ]);
        if (!report.Problems.IsEmpty)
        {
            page.Gap();
            page.Notes(report.Problems);
        }

        page.Gap();
        page.Line($"It is in {folder}. Print swatch-a4.pdf, or swatch-letter.pdf on American paper, sew, press, measure from cross to cross, and say it: {Command(job, outFolder)} --measured {(plan.MarksApartMm * 0.992).ToString("0.#", CultureInfo.InvariantCulture)}");
    }

    public static void Print(Page page, ShorteningReport report, string job, string? outFolder)
    {
        string part = report.ShorteningPart.ToString("0.####", CultureInfo.InvariantCulture);
        string before = report.BeforePart.ToString("0.####", CultureInfo.InvariantCulture);
        page.Line(
            string.Create(CultureInfo.InvariantCulture, $"Of {report.ApartMm:0}{Words.Tie}mm {report.MeasuredMm:0.##}{Words.Tie}mm are left: the shortening is {part}, or {report.ShorteningPart * 100:0.##}{Words.Tie}%."),
            tone: Tone.Heading);
        page.Line(string.Create(CultureInfo.InvariantCulture, $"Half a millimetre misread makes it {0.5 / report.ApartMm:0.####} more or less."));
        page.Gap();
        page.Line(
            report.IsSet
                ? report.ShorteningPart == report.BeforePart ? "job.json had that figure already." : $"job.json now has it; it was {before}. Run make {Quoted(job)} again."
                : $"job.json reckons with {before}. To write it there: {Command(job, outFolder)} --measured {report.MeasuredMm.ToString("0.##", CultureInfo.InvariantCulture)} --set");
    }

    /// <summary>The command as it was given: the swatch is looked for where it was made.</summary>
    private static string Command(string job, string? outFolder) =>
        $"swatch {Quoted(job)}" + (outFolder is null ? "" : $" --out {Quoted(outFolder)}");

    private static string Quoted(string path) => path.Contains(' ') ? $"\"{path}\"" : path;

    private static string Steps(SwatchPlan plan, SwatchRow row, Func<SwatchSample, double> figure, string form, string what) =>
        $"{Wording.List([.. plan.Samples.Where(s => s.Row == row).Select(s => figure(s).ToString(form, CultureInfo.InvariantCulture))])}{Words.Tie}mm {what}";
}
