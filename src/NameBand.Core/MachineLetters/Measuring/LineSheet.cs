using System.Collections.Immutable;
using System.Globalization;
using System.Text;
using NameBand.Common;
using NameBand.MachineLetters.Alphabets;

namespace NameBand.MachineLetters.Measuring;

/// <summary>
/// The sheet of lines to sew and measure, <c>line,key_in,length_mm,seconds,sew</c>: we write what is keyed in and which lines are
/// sewn at one go, the maker
/// fills in lengths and times. A line the machine cannot sew gets the word none as its length.
/// </summary>
internal static class LineSheet
{
    public const string Lacking = "none";
    private const double LongestMm = 1000; // A metre: no line to sew is so long, a unit was mistaken.
    private static readonly string[] Columns = ["line", "key_in", "length_mm", "seconds", "sew"];

    /// <summary>The sheet's name inside the job's folder, with the letter height in it.</summary>
    public static string Name(double heightMm) =>
        string.Create(CultureInfo.InvariantCulture, $"measure-{heightMm:0.##}mm.csv");

    public static string Write(IEnumerable<KeyInLine> lines)
    {
        var text = new StringBuilder(CsvText.Row(Columns)).Append(CsvText.LineEnd);
        foreach (var line in lines)
        {
            string length = line.CannotBeKeyed ? Lacking : Number(line.LengthMm);
            text.Append(CsvText.Row([line.Number.ToString(CultureInfo.InvariantCulture), Letters.Shown(line.Text), length,
                Number(line.Seconds), line.Run == 0 ? "" : line.Run.ToString(CultureInfo.InvariantCulture)]))
                .Append(CsvText.LineEnd);
        }

        return text.ToString();
    }

    /// <summary>Lines not filled in come back without a length; that is no fault, only unfinished.</summary>
    public static Result<LineSet> Read(string folder, string name)
    {
        var table = CsvFile.Read(folder, name);
        if (table.Value is null)
        {
            return Result.Fail<LineSet>(table.Problems);
        }

        var read = Read(table.Value, name);
        return read with { Problems = [.. table.Problems, .. read.Problems] };
    }

    internal static Result<LineSet> Read(CsvTable table, string name)
    {
        var problems = new List<Problem>();
        var header = SheetColumns.Find(table, Columns, needed: 3, name, problems);
        if (header is null)
        {
            return Result.Fail<LineSet>(problems);
        }

        var lines = ImmutableArray.CreateBuilder<KeyInLine>();
        var rows = ImmutableArray.CreateBuilder<int>();
        foreach (var row in table.Rows.Skip(1))
        {
            if (ReadRow(row, header, lines, name, problems) is { } line)
            {
                lines.Add(line);
                rows.Add(row.Line);
            }
        }

        return problems.Any(p => p.Severity == Severity.CannotUse)
            ? Result.Fail<LineSet>(problems)
            : Result.Of(new LineSet(lines.ToImmutable(), rows.ToImmutable()), problems);
    }

    private static KeyInLine? ReadRow(
        CsvRow row, SheetColumns header, IReadOnlyList<KeyInLine> before, string name, List<Problem> problems)
    {
        var where = new Where(name, row.Line);
        string text = CsvText.ReadBack(header.Text(row, "key_in")).Replace(Letters.ShownBlank, Letters.Blank, StringComparison.Ordinal)
            .Trim();
        if (text.Length == 0)
        {
            problems.Add(Problem.CannotUse(
                where, "This line does not say what was keyed in.", "Write it in the column key_in, or take the line out."));
            return null;
        }

        int number = int.TryParse(header.Text(row, "line"), NumberStyles.None, CultureInfo.InvariantCulture, out int n) ? n : 0;
        if (number <= 0 || before.Any(l => l.Number == number))
        {
            problems.Add(Problem.CannotUse(
                where, number <= 0 ? "This line has no number."
                    : (Said)$"Line number {number} appears here a second time.",
                "Number the lines 1, 2, 3 … as on the printed sheet."));
            return null;
        }

        string measured = header.Text(row, "length_mm");
        bool lacks = measured is "-" or "–" or "—" || measured.Equals(Lacking, StringComparison.OrdinalIgnoreCase);
        double? length = lacks ? null : header.Number(row, "length_mm", 0.1, LongestMm, problems);
        double? seconds = header.Number(row, "seconds", 0.1, 3600, problems);
        int run = int.TryParse(header.Text(row, "sew"), NumberStyles.None, CultureInfo.InvariantCulture, out int r) ? r : 0;
        return new KeyInLine(number, text, length, seconds) { CannotBeKeyed = lacks, Run = run };
    }

    private static string Number(double? value) => value?.ToString("0.##", CultureInfo.InvariantCulture) ?? "";
}

/// <param name="Rows">The line of the file on which each stands.</param>
internal sealed record LineSet(ImmutableArray<KeyInLine> Lines, ImmutableArray<int> Rows)
{
    public IEnumerable<(KeyInLine Line, int Row)> Unfilled =>
        Lines.Zip(Rows).Where(p => p.First.LengthMm is null && !p.First.CannotBeKeyed);
}
