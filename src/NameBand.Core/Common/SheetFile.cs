using System.Collections.Immutable;
using System.Globalization;
using System.IO.Compression;
using System.Text;
using ExcelDataReader;
using ExcelNumberFormat;

namespace NameBand.Common;

/// <summary>One sheet of a workbook (ECMA-376), each cell as a spreadsheet shows it. No formula is run: what was worked out when
/// it was saved holds.</summary>
internal static class SheetFile
{
    /// <summary>Unpacked, a bigger workbook is none of names; a packed file can claim to be small and be huge.</summary>
    public const long MostUnpackedBytes = 50_000_000;

    // A row that claims to lie farther down has all the empty ones before it. ECMA-376 has no bound; this is what spreadsheets hold
    // (common practice, no source).
    private const int MostRowsOfASheet = 1 << 20;

    private static readonly Said SaveAnew = "Open it in your spreadsheet, save it again as .xlsx without a password, or save the sheet as CSV.";

    /// <param name="Sheet">The sheet that was read.</param>
    public sealed record Found(string Sheet, CsvTable Table)
    {
        /// <summary>All sheets of the workbook.</summary>
        public ImmutableArray<string> Sheets { get; init; } = [];
    }

    /// <param name="file">Relative to the folder.</param>
    /// <param name="sheet">Null: the first one.</param>
    public static Result<Found> Read(string folder, string file, string? sheet)
    {
        var bytes = InnerFile.Read(folder, file);
        if (bytes.Value is not { } packed)
        {
            return Result.Fail<Found>(bytes.Problems);
        }

        var where = new Where(File: file);
        if (packed.AsSpan().StartsWith((ReadOnlySpan<byte>)[0xD0, 0xCF, 0x11, 0xE0]))
        {
            return Fail(where, "This workbook has a password, or is of the old kind under a new name.", SaveAnew);
        }

        try
        {
            return IsHuge(packed)
                ? Fail(where, "Unpacked this workbook is bigger than 50 MB, which no list of names is.",
                    "Take out pictures and sheets that are not needed, or save the sheet as CSV.")
                : OfSheet(packed, where, sheet);
        }
        catch (Exception e) when (IsOfTheFile(e))
        {
            return Fail(where, "This workbook cannot be read: it is damaged, or another kind of file under this name.", SaveAnew);
        }
    }

    /// <summary>Whatever a spoilt workbook can make its reader stumble over; faults of the machine are none of it.</summary>
    private static bool IsOfTheFile(Exception e) =>
        e is not (OutOfMemoryException or UnauthorizedAccessException or StackOverflowException);

    private static bool IsHuge(byte[] packed)
    {
        using var archive = new ZipArchive(new MemoryStream(packed), ZipArchiveMode.Read);
        byte[] block = new byte[81920];
        long all = 0;
        foreach (var entry in archive.Entries)
        {
            using var content = entry.Open();
            for (int got = content.Read(block); got > 0; got = content.Read(block))
            {
                all += got;
                if (all > MostUnpackedBytes)
                {
                    return true;
                }
            }
        }

        return false;
    }

    private static Result<Found> OfSheet(byte[] packed, Where where, string? wanted)
    {
        // The reader asks for the code page of old files as it begins, also for new ones.
        Encoding.RegisterProvider(CodePagesEncodingProvider.Instance);
        using var reader =
            ExcelReaderFactory.CreateOpenXmlReader(
                new MemoryStream(packed), new ExcelReaderConfiguration { FallbackEncoding = Encoding.UTF8, LeaveOpen = false });
        var names = ImmutableArray.CreateBuilder<string>();
        Result<Found>? found = null;
        do
        {
            names.Add(reader.Name);
            if (found is null && (wanted is null || reader.Name == wanted))
            {
                found = Rows(reader, SheetFaults.Of(packed, reader.Name), where);
            }
        }
        while (reader.NextResult());

        if (found is null)
        {
            return Fail(
                where, $"It has no sheet “{PlainText.Short(wanted ?? "")}”, but {Listed(names)}.", "Write the name of one of them.");
        }

        found = found.Value is { } one ? found with { Value = one with { Sheets = names.ToImmutable() } } : found;
        return wanted is null && names.Count > 1 && found.Value is { } first
            ? found with
            {
                Problems = [.. found.Problems, Problem.Note(
                where, $"This workbook has {names.Count} sheets, {Listed(names)}; the first was read.",
                $"For another write {{ \"file\": \"{where.File}\", \"sheet\": \"{PlainText.Short(names.First(n => n != first.Sheet))}\" }} among the lists.")]
            }
            : found;
    }

    private static Result<Found> Rows(IExcelDataReader reader, ImmutableDictionary<string, string> faults, Where where)
    {
        var rows = ImmutableArray.CreateBuilder<CsvRow>();
        int hidden = 0;

        // How wide the sheet is, is known before a row of it is read, and each row has room made for as many cells.
        while (reader.FieldCount > CsvFile.MostColumns || reader.Read())
        {
            if (reader.FieldCount > CsvFile.MostColumns || rows.Count > CsvFile.MostRows || reader.Depth >= MostRowsOfASheet)
            {
                return Fail(
                    where, $"This sheet has more than {CsvFile.MostRows:#,0} rows or {CsvFile.MostColumns:#,0} columns.",
                    "Check that it is the right one.");
            }

            ImmutableArray<string> cells = [.. Enumerable.Range(0, reader.FieldCount)
                .Select(i => faults.IsEmpty ? Shown(reader, i) : faults.GetValueOrDefault(At(i, reader.Depth + 1)) ?? Shown(reader, i))];
            if (cells.All(c => c.Length == 0))
            {
                continue;
            }

            hidden += reader.RowHeight == 0 ? 1 : 0;
            int line = reader.Depth + 1;
            rows.Add(new CsvRow(line, line, cells));
        }

        string sheet = reader.Name;
        if (rows.Count == 0)
        {
            return Fail(
                where, $"The sheet “{PlainText.Short(sheet)}” is empty.",
                "Name the sheet with the names, or save the list again; it needs at least one row with a name.");
        }

        // Blank cells at the end are none: a sheet is as wide as its widest row, and a row of a CSV as it was written.
        int header = rows[0].Fields.Length;
        while (header > 0 && rows[0].Fields[header - 1].Length == 0)
        {
            header--;
        }

        ImmutableArray<CsvRow> even = [.. rows.Select(r => r with { Fields = [.. r.Fields.Take(Math.Max(header, LastUsed(r) + 1))] })];
        var found = new Found(sheet, new CsvTable(',', even));
        return Result.Of(found, hidden == 0 ? [] : [Problem.Note(
            where, $"{(hidden == 1 ? "A row" : (Said)$"{hidden} rows")} of the sheet “{PlainText.Short(sheet)}” {(hidden == 1 ? (Said)"is" : "are")} hidden in the spreadsheet, by hand or by a filter, and {(hidden == 1 ? (Said)"is" : "are")} read all the same.",
            "Delete what should not be sewn, or leave it out.")]);
    }

    /// <summary>A cell's reference, columns counted A to Z, AA to AZ and so on (ECMA-376 part 1, 18.18.7).</summary>
    private static string At(int column, int row)
    {
        string letters = "";
        for (int n = column + 1; n > 0; n = (n - 1) / 26)
        {
            letters = (char)('A' + ((n - 1) % 26)) + letters;
        }

        return letters + row.ToString(CultureInfo.InvariantCulture);
    }

    private static int LastUsed(CsvRow row) => Array.FindLastIndex([.. row.Fields], f => f.Length > 0);

    /// <summary>A cell's text as a spreadsheet shows it, its number format applied; where a format is of no use, the bare value.</summary>
    private static string Shown(IExcelDataReader reader, int column)
    {
        object? value = reader.GetValue(column);
        switch (value)
        {
            case null:
                return "";
            case string text:
                return text.Trim(' ');
            case bool flag:
                return flag ? "TRUE" : "FALSE";
        }

        string bare = Convert.ToString(value, CultureInfo.InvariantCulture) ?? "";
        if (reader.GetNumberFormatString(column) is not { Length: > 0 } written)
        {
            return bare;
        }

        try
        {
            var format = new NumberFormat(written);
            return format.IsValid ? format.Format(value, CultureInfo.InvariantCulture).Trim(' ') : bare;
        }
        catch (Exception e) when (e is FormatException or OverflowException or ArgumentException or InvalidCastException)
        {
            return bare;
        }
    }

    private static Said Listed(IEnumerable<string> names) => Said.Join(", ", names.Take(6).Select(n => (Said)$"“{PlainText.Short(n, 40)}”"));

    private static Result<Found> Fail(Where where, Said found, Said mend) => Result.Fail<Found>(Problem.CannotUse(where, found, mend));
}
