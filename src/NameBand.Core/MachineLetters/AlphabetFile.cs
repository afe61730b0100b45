using System.Globalization;
using System.Text;
using NameBand.Common;
using NameBand.MachineLetters.Alphabets;

namespace NameBand.MachineLetters;

/// <summary>
/// The measured alphabet as a file: <c>letter,width_mm,seconds</c>, and where they are known <c>low_mm,high_mm,how,height_mm</c>.
/// A blank is written as the word blank, the machine's gap as the word gap, its start as the word start.
/// </summary>
internal static class AlphabetFile
{
    public const string GapWord = "gap";
    public const string StartWord = "start";
    private const string Measured = "measured";
    private const string Estimated = "estimated";
    private const string Lacking = "lacking";

    // Widths outside this part of the letter height are no letter's.
    private const double LeastPart = 0.02;
    private const double MostPart = 4;

    private static readonly string[] Columns = ["letter", "width_mm", "seconds", "low_mm", "high_mm", "how", "height_mm"];

    /// <param name="heightMm">Letter height of rows that state none.</param>
    /// <param name="assumedHalfRangeMm">Half the range of a width that states none.</param>
    /// <returns>One alphabet for each height in the file, tallest first.</returns>
    public static Result<MeasuredAlphabets> Read(string folder, string name, double heightMm, double? gapMm, double assumedHalfRangeMm)
    {
        var table = CsvFile.Read(folder, name);
        return table.Value is null
            ? Result.Fail<MeasuredAlphabets>(table.Problems)
            : Read(table.Value, name, heightMm, gapMm, assumedHalfRangeMm) is var read
                ? read with { Problems = [.. table.Problems, .. read.Problems] }
                : null!;
    }

    internal static Result<MeasuredAlphabets> Read(
        CsvTable table, string name, double heightMm, double? gapMm, double assumedHalfRangeMm)
    {
        var problems = new List<Problem>();
        var header = SheetColumns.Find(table, Columns, needed: 2, name, problems);
        if (header is null)
        {
            return Result.Fail<MeasuredAlphabets>(problems);
        }

        var makers = new SortedDictionary<double, AlphabetMaker>();
        var stated = new Dictionary<double, int>();
        foreach (var row in table.Rows.Skip(1))
        {
            double? own = header.Number(row, "height_mm", 0.5, 200, problems);
            double height = own ?? heightMm;
            if (own is { } said)
            {
                stated.TryAdd(said, row.Line);
            }

            if (!makers.TryGetValue(height, out var maker))
            {
                makers[height] = maker = new AlphabetMaker(height, assumedHalfRangeMm);
            }

            ReadRow(row, header, maker, name, problems);
        }

        if (makers.Values.All(m => m.Letters.Count == 0) && problems.All(p => p.Severity != Severity.CannotUse))
        {
            problems.Add(Problem.CannotUse(
                new Where(name), "This alphabet has no letter in it.",
                "Run the verb measure on this job: it writes the lines to sew and turns what you measured into this file."));
        }

        return problems.Any(p => p.Severity == Severity.CannotUse)
            ? Result.Fail<MeasuredAlphabets>(problems)
            : Result.Of(
                new MeasuredAlphabets([.. makers.Values.Reverse().Select(m => m.Made(gapMm))])
                {
                    StatedHeightsMm =
                    [.. stated.OrderBy(s => s.Value).Select(s => (s.Key, s.Value))]
                },
                problems);
    }

    public static string Write(MeasuredAlphabets alphabets)
    {
        var text = new StringBuilder(CsvText.Row(Columns)).Append(CsvText.LineEnd);
        foreach (var alphabet in alphabets.BySize)
        {
            void Row(string word, MachineLetter? letter, string how) => text.Append(CsvText.Row(
                [word, Mm(letter?.WidthMm), Tenths(letter?.Seconds), Mm(letter?.LowMm), Mm(letter?.HighMm), how, Mm(alphabet.HeightMm)]))
                .Append(CsvText.LineEnd);

            foreach (var (letter, found) in alphabet.Letters)
            {
                Row(letter == Letters.Blank ? Letters.BlankWord : letter, found, How(found));
            }

            foreach (string letter in alphabet.Lacking)
            {
                Row(letter, null, Lacking);
            }

            Row(GapWord, alphabet.Gap, How(alphabet.Gap));
            if (alphabet.StartSeconds > 0)
            {
                text.Append(CsvText.Row([StartWord, "", Tenths(alphabet.StartSeconds), "", "", "", Mm(alphabet.HeightMm)]))
                    .Append(CsvText.LineEnd);
            }
        }

        return text.ToString();
    }

    private static void ReadRow(CsvRow row, SheetColumns header, AlphabetMaker maker, string name, List<Problem> problems)
    {
        string written = CsvText.ReadBack(header.Text(row, "letter"));
        var where = new Where(name, row.Line);
        bool isGap = string.Equals(written, GapWord, StringComparison.OrdinalIgnoreCase);
        bool isStart = string.Equals(written, StartWord, StringComparison.OrdinalIgnoreCase);
        string letter = isGap ? "" : LetterOf(written);
        if (!isGap && !isStart && Letters.Of(letter).Count != 1)
        {
            problems.Add(Problem.CannotUse(
                where, written.Length == 0 ? "This line has no letter." : (Said)$"“{PlainText.Short(written)}” is not one letter.",
                "Write one letter in the letter column, or the word blank for a blank."));
            return;
        }

        double? seconds = header.Number(row, "seconds", 0, 3600, problems);
        if (isStart)
        {
            maker.StartSeconds = seconds ?? 0;
            return;
        }

        if (maker.Line(letter) is { } earlier)
        {
            problems.Add(Problem.CannotUse(
                where, $"The letter “{PlainText.Short(written)}” appears here a second time; the first is in line "
                    + $"{earlier.ToString(CultureInfo.InvariantCulture)}.",
                "Keep the line that is right."));
            return;
        }

        maker.Saw(letter, row.Line);
        if (string.Equals(header.Text(row, "how"), Lacking, StringComparison.OrdinalIgnoreCase))
        {
            maker.Lacking.Add(letter);
            return;
        }

        if (header.Text(row, "width_mm").Length == 0)
        {
            problems.Add(Problem.CannotUse(
                where, $"The letter “{PlainText.Short(written)}” has no width.",
                "Fill in its width in millimetres, or take the line out: then its width is estimated."));
            return;
        }

        double least = isGap ? 0 : LeastPart * maker.HeightMm;
        if (header.Number(row, "width_mm", least, MostPart * maker.HeightMm, problems) is not { } width)
        {
            return;
        }

        double? low = header.Number(row, "low_mm", 0, 1000, problems);
        double? high = header.Number(row, "high_mm", 0, 1000, problems);
        var origin = string.Equals(header.Text(row, "how"), Estimated, StringComparison.OrdinalIgnoreCase)
            ? WidthOrigin.Estimated : WidthOrigin.Measured;
        maker.Add(letter, width, low, high, seconds, origin);
    }

    private static string LetterOf(string written) =>
        string.Equals(written, Letters.BlankWord, StringComparison.OrdinalIgnoreCase)
        || string.Equals(written, "space", StringComparison.OrdinalIgnoreCase) || written == Letters.ShownBlank
            ? Letters.Blank
            : written.Length == 0 ? "" : Letters.Key(PlainText.Normal(written));

    private static string How(MachineLetter letter) => letter.Origin == WidthOrigin.Measured ? Measured : Estimated;

    private static string Mm(double? mm) => mm?.ToString("0.00", CultureInfo.InvariantCulture) ?? "";

    private static string Tenths(double? value) => value?.ToString("0.0", CultureInfo.InvariantCulture) ?? "";
}
