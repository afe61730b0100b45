using System.Globalization;
using NameBand.Cli.Commands;
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
        Said hoopings = Words.Count(answer.Hoopings, "hooping");
        Said stitches = Words.Count(answer.Stitches, "stitch", "stitches");
        page.Facts(
        [
            ("Word", $"“{answer.Word}”: of the commonest letters on your list those with the longest strokes; nobody's name", Tone.Plain),
            ("A", Steps(answer, "spacing", s => $"{s.SpacingMm:0.00}", "between crossings on one side"), Tone.Plain),
            ("B", Steps(answer, "pullCompensation", s => $"{s.PullCompensationMm:0.00}", "pull compensation"), Tone.Plain),
            ("C", Steps(answer, "height", s => $"{s.LetterHeightMm:0.0}", "letter height"), Tone.Plain),
            .. answer.Columns.Count > 0
                ? new[] { (answer.Columns[0].Label[..1], Columns(answer), Tone.Plain) }
                : [],
            ("Marks", $"two crosses {answer.MarksApartMm:0}{Words.Tie}mm apart", Tone.Plain),
            ("Time", $"about {Words.Duration(answer.Minutes)} at the machine, {stitches} in {hoopings}", Tone.Plain),
        ]);
        if (answer.Problems.Count > 0)
        {
            page.Gap();
            page.Notes(answer.Problems);
        }

        page.Gap();
        string likely = Written(answer.MarksApartMm * 0.992, "0.#");
        page.Line(
            $"It is in {folder}. Print swatch-a4.pdf, or swatch-letter.pdf on American paper. "
            + $"Sew it, press it, and measure from cross to cross. "
            + $"Then write what you measured:");
        Command(page, job, outFolder, "--measured", likely);
        if (answer.Columns.Count > 0)
        {
            string sizes = string.Join(
                ' ', answer.Columns.Select(c => $"{Written(c.WidthMm - 0.3, "0.0")}x{Written(c.LengthMm + 0.1, "0.0")}"));
            page.Line("Measure the columns too, and write the width and the length of each:");
            Command(page, job, outFolder, "--columns", $"\"{sizes}\"");
        }
    }

    private static Said Columns(SwatchAnswer answer)
    {
        var widths = answer.Columns.Select(c => c.WidthMm).Distinct().Order().Select(w => (Said)$"{w:0.0}");
        return $"columns {Wording.List([.. widths])}{Words.Tie}mm wide, upright and level, to be measured";
    }

    public static void Print(Page page, PullAnswer answer, string job, string? outFolder)
    {
        if (answer is not
            { PullCompensationMm: { } pull, PullGrowthPart: { } growth, PushMm: { } push, WorstMm: { } worst, Before: { } before })
        {
            return;
        }

        page.Line($"Your cloth draws in {Mm(pull)} on each side of a column 2{Words.Tie}mm wide.", tone: Tone.Heading);
        page.Gap();
        Said across = answer.PullAcrossFactor is { } factor
            ? (Said)$" Stitches across the strip draw {Number(factor)} times as hard as those along it." : "";
        page.Line(
            $"{Number(100 * growth)}{Words.Tie}% of that grows with the length of the stitches; the rest is the same at any width.{across} "
            + $"Ends grow by {Mm(push)}.");
        page.Gap();
        page.Facts([.. answer.Columns.Select(c => (
            Said.Plain(c.Label),
            (Said)($"{Mm(c.NarrowerMm)} narrower on each side, {Mm(c.LongerMm)} longer at each end; "
                + $"job.json allows for {Mm(c.AllowedMm)}"),
            Tone.Plain))]);
        page.Gap();
        page.Line(
            $"One column is {Mm(worst)} off what these figures foretell of it, the others less. "
            + $"A tenth of a millimetre misread makes 0.05{Words.Tie}mm.");
        Said acrossBefore = answer.PullAcrossFactor is null ? "" : (Said)$", {Number(before.PullAcrossFactor)} times across the strip";
        page.Line(answer.IsSet
            ? "job.json now has these figures. What is sewn stays as it is. To make the rest by them:"
            : (Said)($"job.json allows for {Mm(before.PullCompensationMm)}, "
                + $"{Number(100 * before.PullGrowthPart)}{Words.Tie}% of it growing{acrossBefore}, and {Mm(before.PushMm)} at ends. "
                + $"To write yours there:"));
        if (answer.IsSet)
        {
            page.Command(2, MakeCommand.Verb, Quoted(job));
        }
        else
        {
            Command(page, job, outFolder, "--columns", $"\"{Sizes(answer)}\"", "--set");
        }
    }

    private static string Sizes(PullAnswer answer) => string.Join(
        ' ', answer.Columns.Select(c => $"{Written(c.MeasuredWidthMm, "0.##")}x{Written(c.MeasuredLengthMm, "0.##")}"));

    private static Said Mm(double mm) => $"{mm:0.##}{Words.Tie}mm";

    private static Said Number(double number) => $"{number:0.##}";

    /// <summary>As a command takes it.</summary>
    private static string Written(double number, string form) => number.ToString(form, CultureInfo.InvariantCulture);

    public static void Print(Page page, ShorteningAnswer answer, string job, string? outFolder)
    {
        page.Line(
            $"Of {answer.ApartMm:0}{Words.Tie}mm {answer.MeasuredMm:0.##}{Words.Tie}mm are left: the shortening is {answer.Shortening:0.####}, or {answer.Shortening * 100:0.##}{Words.Tie}%.",
            tone: Tone.Heading);
        page.Line($"Misreading by half a millimetre changes it by {0.5 / answer.ApartMm:0.####}.");
        page.Gap();
        switch (answer.IsSet, answer.Shortening == answer.BeforePart)
        {
            case (true, true):
                page.Line("job.json had that figure already.");
                break;
            case (true, false):
                page.Line($"job.json now has it; it was {answer.BeforePart:0.####}. Make the job again:");
                page.Command(2, MakeCommand.Verb, Quoted(job));
                break;
            default:
                page.Line($"job.json allows for {answer.BeforePart:0.####}. To write it there:");
                Command(page, job, outFolder, "--measured", Written(answer.MeasuredMm, "0.##"), "--set");
                break;
        }
    }

    /// <summary>The command as it was given: the swatch is looked for where it was made.</summary>
    private static void Command(Page page, string job, string? outFolder, params string[] more) => page.Command(
        2, [SwatchCommand.Verb, Quoted(job), .. outFolder is null ? [] : new[] { "--out", Quoted(outFolder) }, .. more]);

    private static string Quoted(string path) => path.Contains(' ') ? $"\"{path}\"" : path;

    private static Said Steps(SwatchAnswer answer, string changes, Func<ToldSample, Said> figure, Said what)
    {
        var steps = answer.Samples.Where(s => s.Changes == changes).Select(figure);
        return $"{Wording.List([.. steps])}{Words.Tie}mm {what}";
    }
}
