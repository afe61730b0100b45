using DocumentFormat.OpenXml;
using DocumentFormat.OpenXml.Packaging;
using DocumentFormat.OpenXml.Spreadsheet;

namespace NameBand.Tests.NamesRoom;

/// <summary>Workbooks written by the Open XML SDK, which knows nothing of what reads ours.</summary>
internal static class Workbooks
{
    public static byte[] Of(params (string Sheet, Row[] Rows)[] sheets) =>
        Of([.. sheets.Select(s => (s.Sheet, s.Rows, Array.Empty<string>()))]);

    /// <summary>Cells that are one, such as <c>A2:A3</c>, hold what the first of them holds.</summary>
    public static byte[] Of(params (string Sheet, Row[] Rows, string[] Merged)[] sheets)
    {
        using var stream = new MemoryStream();
        using (var file = SpreadsheetDocument.Create(stream, SpreadsheetDocumentType.Workbook))
        {
            var book = file.AddWorkbookPart();
            book.Workbook = new Workbook(new Sheets());
            AddStyles(book);
            for (uint i = 0; i < sheets.Length; i++)
            {
                var part = book.AddNewPart<WorksheetPart>();
                part.Worksheet = new Worksheet(new SheetData(sheets[i].Rows.Select(r => r.CloneNode(true))));
                if (sheets[i].Merged.Length > 0)
                {
                    part.Worksheet.Append(new MergeCells(sheets[i].Merged.Select(m => new MergeCell { Reference = m })));
                }

                book.Workbook.Sheets!.Append(new Sheet { Id = book.GetIdOfPart(part), SheetId = i + 1, Name = sheets[i].Sheet });
            }
        }

        return stream.ToArray();
    }

    /// <summary>A row of texts; an empty one is no cell at all.</summary>
    public static Row Texts(uint number, params string[] texts) =>
        new(texts.Select((t, i) => (Text: t, Cell: Text(At(i, number), t))).Where(c => c.Text.Length > 0)
            .Select(c => c.Cell))
        { RowIndex = number };

    public static Row Cells(uint number, params Cell[] cells) => new(cells.Select((c, i) =>
    {
        c.CellReference = At(i, number);
        return c;
    }))
    { RowIndex = number };

    public static Cell Text(string at, string text) =>
        new(new InlineString(new Text(text) { Space = SpaceProcessingModeValues.Preserve }))
        {
            CellReference = at,
            DataType = CellValues.InlineString
        };

    /// <param name="format">Number of a built-in format: ECMA-376 part 1, 18.8.30.</param>
    public static Cell Number(string value, uint format = 0) =>
        new(new CellValue(value)) { StyleIndex = (uint)Array.IndexOf(Formats, format) };

    public static Cell Formula(string formula, string? cached) =>
        cached is null
            ? new(new CellFormula(formula)) : new(new CellFormula(formula), new CellValue(cached)) { DataType = CellValues.String };

    public static Cell Error(string error) => new(new CellValue(error)) { DataType = CellValues.Error };

    private static readonly uint[] Formats = [0, 1, 2, 3, 9, 10, 15, 20];

    private static string At(int column, uint row) => FormattableString.Invariant($"{(char)('A' + column)}{row}");

    private static void AddStyles(WorkbookPart book) => book.AddNewPart<WorkbookStylesPart>().Stylesheet = new Stylesheet(
        new Fonts(new Font()), new Fills(new Fill()), new Borders(new Border()), new CellStyleFormats(new CellFormat()),
        new CellFormats(Formats.Select(f => new CellFormat { NumberFormatId = f, ApplyNumberFormat = true })));
}
