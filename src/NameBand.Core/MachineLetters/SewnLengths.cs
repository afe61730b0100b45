using System.Collections.Immutable;
using System.Globalization;
using NameBand.Common;
using NameBand.MachineLetters.Alphabets;

namespace NameBand.MachineLetters;

/// <summary>A length that was read of something keyed in and sewn.</summary>
/// <param name="Number">The name's number on the sheet; null: not said.</param>
/// <param name="Name">As the list has it; empty where only what was keyed is said.</param>
/// <param name="Keyed">What was keyed, in the order in which it reads.</param>
/// <param name="LengthMm">From the first letter's left edge to the last one's right edge.</param>
/// <param name="Blank">Where its first word ended and its second began, from the same edge.</param>
/// <param name="HeightMm">Letter height it was sewn at; null: the plan's.</param>
/// <param name="SpacingMm">Gap the machine was set to; null: the plan's.</param>
/// <param name="IsScrap">Sewn on a scrap: the length counts, the name is not sewn.</param>
internal sealed record SewnLength(
    int? Number, string Name, ImmutableArray<string> Keyed, double LengthMm, BlankPlace? Blank, double? HeightMm,
    double? SpacingMm, bool IsScrap, int FileLine)
{
    /// <summary>Of a name, and not of a part of it.</summary>
    public bool IsWhole { get; init; } = true;
}

/// <summary>Where a blank lies in a sewn name, from the name's left edge.</summary>
/// <param name="EndMm">Where the word before it ends.</param>
/// <param name="BeginMm">Where the word behind it begins.</param>
internal readonly record struct BlankPlace(double EndMm, double BeginMm);

/// <summary>
/// Reads lengths.csv, in which measured lengths stand: the columns of key-in.csv, of which <c>name</c> (or <c>key_in</c>) and
/// <c>measured_mm</c> are needed. So a copy of the sheet’s own table with its blanks filled in will do. No file is no length.
/// </summary>
internal sealed record SewnLengths(ImmutableArray<SewnLength> All)
{
    public const string FileName = "lengths.csv";
    public const string ScrapWord = "scrap";

    /// <summary>Stands in the column part of what is sewn between names.</summary>
    public const string MotifWord = "motif";

    /// <summary>In the column sewn_on: this length was told by mistake and does not count. Its line stays.</summary>
    public static readonly string TakenBackWord = ((Said)"taken back").English;
    private const double LongestMm = 2000; // Two metres: no name is so long, a unit was mistaken.
    private static readonly string[] Columns =
        ["measured_mm", "name", "key_in", "order", "part", "blank_mm", "size_mm", "gap_mm", "sewn_on", "turn"];

    public static SewnLengths None { get; } = new([]);

    /// <param name="forward">The first letter is sewn first; else what is keyed reads backwards.</param>
    public static Result<SewnLengths> Read(string folder, bool forward)
    {
        if (!InnerFile.IsThere(folder, FileName))
        {
            return Result.Of(None);
        }

        var table = CsvFile.Read(folder, FileName);
        if (table.Value is null)
        {
            return Result.Fail<SewnLengths>(table.Problems);
        }

        var read = Read(table.Value, forward);
        return read with { Problems = [.. table.Problems, .. read.Problems] };
    }

    internal static Result<SewnLengths> Read(CsvTable table, bool forward)
    {
        var problems = new List<Problem>();
        if (SheetColumns.Find(table, Columns, needed: 1, FileName, problems) is not { } header)
        {
            return Result.Fail<SewnLengths>(problems);
        }

        var lengths = ImmutableArray.CreateBuilder<SewnLength>();
        foreach (var row in table.Rows.Skip(1).Where(r => header.Text(r, "measured_mm").Length > 0 && header.Text(r, "part") != MotifWord
            && !IsTakenBack(header.Text(r, "sewn_on"))))
        {
            if (ReadRow(row, header, forward, problems) is { } length)
            {
                lengths.Add(length);
            }
        }

        return problems.Any(p => p.Severity == Severity.CannotUse)
            ? Result.Fail<SewnLengths>(problems)
            : Result.Of(new SewnLengths(lengths.ToImmutable()), problems);
    }

    internal static bool IsTakenBack(string sewnOn) => sewnOn.Trim().EndsWith(TakenBackWord, StringComparison.OrdinalIgnoreCase);

    private static SewnLength? ReadRow(CsvRow row, SheetColumns header, bool forward, List<Problem> problems)
    {
        var where = new Where(FileName, row.Line);
        string name = PlainText.Normal(CsvText.ReadBack(header.Text(row, "name")));
        string keyed = CsvText.ReadBack(header.Text(row, "key_in")).Replace(Letters.ShownBlank, Letters.Blank, StringComparison.Ordinal)
            .Trim();
        bool isPart = header.Text(row, "part").Length > 0;
        if ((isPart ? keyed : name + keyed).Trim().Length == 0)
        {
            problems.Add(Problem.CannotUse(
                where, "This length does not say of what it is.", "Write the name into the column name, as the list has it."));
            return null;
        }

        // A name sewn at one go is its letters in the order in which they read; a part is what was keyed.
        IReadOnlyList<string> letters = isPart || name.Length == 0
            ? (forward ? Letters.Of(keyed) : [.. Letters.Of(keyed).Reverse()])
            : Letters.Of(name.Trim());
        double? length = header.Number(row, "measured_mm", 0.5, LongestMm, problems);
        double? height = header.Number(row, "size_mm", 2, 100, problems);
        double? spacing = header.Number(row, "gap_mm", 0, 50, problems);
        var (blank, isSound) = Blank(header.Text(row, "blank_mm"), letters, length, where, problems);
        if (length is not { } mm || !isSound)
        {
            return null;
        }

        int? number = int.TryParse(header.Text(row, "order"), NumberStyles.None, CultureInfo.InvariantCulture, out int n) ? n : null;
        bool isScrap = header.Text(row, "sewn_on").Equals(ScrapWord, StringComparison.OrdinalIgnoreCase);
        return new SewnLength(number, name, [.. letters], mm, blank, height, spacing, isScrap, row.Line) { IsWhole = !isPart };
    }

    /// <summary>Two places, as in <c>31, 38</c> or <c>31 mm; 38 mm</c>; decimals may have a comma where a blank or a semicolon
    /// parts the two.</summary>
    internal static (BlankPlace? Blank, bool IsSound) Blank(
        string text, IReadOnlyList<string> letters, double? lengthMm, Where where, List<Problem> problems)
    {
        if (text.Trim().Length == 0)
        {
            return (null, true);
        }

        string plain = text.Replace("mm", " ", StringComparison.OrdinalIgnoreCase);
        string[] parts =
            plain.Split(plain.Contains(';', StringComparison.Ordinal) ? ";" : plain.Contains(", ", StringComparison.Ordinal) ? ", " : null,
            StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries);
        parts = parts is [var both] && both.Count(c => c == ',') == 1 ? both.Split(',') : parts;
        double[] places = [.. parts.Select(p => double.TryParse(
            p.Trim().TrimEnd(',').Replace(',', '.'), NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out double mm)
            ? mm : double.NaN)];
        if (places.Length != 2 || places.Any(double.IsNaN) || !letters.Skip(1).SkipLast(1).Contains(Letters.Blank))
        {
            problems.Add(Problem.CannotUse(
                where, letters.Contains(Letters.Blank)
                    ? (Said)$"“{PlainText.Short(text)}” does not say where the first word ended and the second began."
                    : "A name of one word has no blank to be measured.",
                "Write both places in millimetres from the name’s left edge, such as 31, 38, or leave it empty."));
            return (null, false);
        }

        if (places[0] <= 0 || places[1] <= places[0] || (lengthMm is { } length && places[1] >= length))
        {
            problems.Add(Problem.CannotUse(
                where, $"“{PlainText.Short(text)}” cannot be right: the first word ends before the second begins, and both lie within the length.",
                "Measure both from the left edge of the name’s first letter."));
            return (null, false);
        }

        return (new BlankPlace(places[0], places[1]), true);
    }
}
