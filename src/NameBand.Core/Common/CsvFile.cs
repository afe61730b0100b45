using System.Collections.Immutable;
using System.Globalization;
using System.Runtime.InteropServices;
using System.Text;
using CsvHelper;

namespace NameBand.Common;

/// <summary>Reads a CSV of a person's making: encoding and separator are found, faults are told by line.</summary>
internal static class CsvFile
{
    // A bigger list is none of names; the limits keep a hostile file from filling the memory.
    public const int MostRows = 250_000;
    public const int MostColumns = 1_000;

    private const int RowsToJudgeBy = 500; // A count: enough for the separator to show, and read in a moment however long the list is.

    // Rarer characters first: they decide when two separators fit equally well.
    private static readonly char[] Separators = ['\t', ';', '|', ','];

    /// <param name="name">Relative to the folder, forward slashes.</param>
    public static Result<CsvTable> Read(string folder, string name)
    {
        var bytes = InnerFile.Read(folder, name);
        if (bytes.Value is null)
        {
            return Result.Fail<CsvTable>(bytes.Problems);
        }

        var where = new Where(File: name);
        var text = CsvEncoding.Decode(bytes.Value, where);
        if (text.Value is null)
        {
            return Result.Fail<CsvTable>(text.Problems);
        }

        var table = Parse(text.Value, where);
        return table with { Problems = [.. text.Problems, .. table.Problems] };
    }

    public static Result<CsvTable> Parse(string text, Where where)
    {
        var (said, start) = SaidSeparator(text);
        char separator = said ?? FindSeparator(text);
        int firstLine = CsvScan.CountLineBreaks(text.AsSpan(0, start)) + 1;
        string body = text[start..];
        var (counts, wrongQuote) = CsvScan.Walk(body, separator);
        if (wrongQuote is { } fault)
        {
            return Result.Fail<CsvTable>(Told(fault, where, firstLine - 1));
        }

        if (counts.Count > MostRows || counts.Any(n => n > MostColumns))
        {
            return Result.Fail<CsvTable>(Problem.CannotUse(where,
                $"This list has more than {Number(MostRows)} rows or {Number(MostColumns)} columns.", "Check that it is the right file."));
        }

        var rows = ImmutableArray.CreateBuilder<CsvRow>();
        using var reader = CsvReader.FromText(body, Options(separator));
        while (reader.Read())
        {
            string[] fields = reader.Current.ToArray();
            if (IsBlank(fields, reader.RawRecord))
            {
                continue;
            }

            int line = (int)reader.LineNumber + firstLine - 1;
            int breaks = CsvScan.CountLineBreaks(Encoding.UTF8.GetString(reader.RawRecord));
            rows.Add(new CsvRow(line, line + breaks, ImmutableCollectionsMarshal.AsImmutableArray(fields)));
        }

        return rows.Count == 0
            ? Result.Fail<CsvTable>(Problem.CannotUse(
                where, "This file holds only blanks.", "Save the list again as CSV; it needs at least one row with a name."))
            : Result.Of(new CsvTable(separator, rows.ToImmutable()));
    }

    private static CsvReaderOptions Options(char separator) => CsvReaderOptions.Default with
    {
        Separator = separator,
        HasHeader = false,
        TrimWhitespace = true,
        WhitespaceCharacters = " ",
        TrackLineNumbers = true,
        IncludeValuesInExceptions = false,
    };

    /// <summary>A first line such as <c>sep=;</c>, which spreadsheets write and read, and where the list starts after it.</summary>
    private static (char? Separator, int Start) SaidSeparator(string text)
    {
        if (!text.StartsWith("sep=", StringComparison.OrdinalIgnoreCase) || text.Length < 6
            || !Separators.Contains(text[4]) || text[5] is not ('\r' or '\n'))
        {
            return (null, 0);
        }

        return (text[4], text[5] == '\r' && text.Length > 6 && text[6] == '\n' ? 7 : 6);
    }

    /// <summary>
    /// The separator with which most rows have as many fields as the first; when the first row has but one field
    /// with all of them, the one that parts the most rows, and a comma when none does.
    /// </summary>
    private static char FindSeparator(string text)
    {
        char best = ',';
        var bestScore = (HasColumns: false, Share: 0.0, Fields: 0);
        foreach (char candidate in Separators)
        {
            var counts = CsvScan.Walk(text, candidate, RowsToJudgeBy).FieldCounts;
            if (counts.Count == 0)
            {
                continue;
            }

            bool columns = counts[0] > 1;
            double parted = counts.Count(n => n > 1);
            double share = (columns ? counts.Count(n => n == counts[0]) : parted) / counts.Count;
            var score = (columns, share, columns ? counts[0] : 1);
            if (share > 0 && score.CompareTo(bestScore) > 0)
            {
                (best, bestScore) = (candidate, score);
            }
        }

        return best;
    }

    private static bool IsBlank(string[] fields, ReadOnlySpan<byte> raw) =>
        fields.Length <= 1 && (fields.Length == 0 || fields[0].All(c => char.IsWhiteSpace(c) || c is '\uFEFF' or '\u200B'))
        && !raw.Contains((byte)'"');

    private static Problem Told(QuoteFault fault, Where where, int linesBefore)
    {
        int opened = fault.OpenedLine + linesBefore;
        int line = fault.Line + linesBefore;
        if (fault.NeverClosed)
        {
            return Problem.CannotUse(where with { Line = opened },
                "This line opens a quotation mark and never closes it, so all that follows would be one field.",
                "Close it or take it out; a quotation mark that belongs to the text is written twice.");
        }

        Said began = opened == line ? "" : (Said)$" (the field began in line {Number(opened)})";
        return Problem.CannotUse(where with { Line = line },
            $"More text follows after a closing quotation mark in this line{began}.",
            "Write the whole field in quotation marks, and twice those that belong to the text, as in \"\"\"Nan\"\" Berg\"; "
            + "or see whether one is missing further up.");
    }

    private static string Number(int number) => number.ToString(CultureInfo.InvariantCulture);
}
