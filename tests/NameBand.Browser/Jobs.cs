using System.IO.Compression;
using System.Text;
using Microsoft.Playwright;
using NameBand.Tests;
using Xunit;

namespace NameBand.Browser;

/// <summary>Jobs to open on the page, each in a folder of its own.</summary>
internal static class Jobs
{
    private static readonly Lock Making = new();
    private static TemporaryFolder? _made;

    public static TemporaryFolder LanternWalk() => Sample("lantern-walk");

    /// <summary>The lantern walk with what <c>make</c> makes of it; made once.</summary>
    public static TemporaryFolder MadeLanternWalk()
    {
        lock (Making)
        {
            if (_made is null)
            {
                _made = LanternWalk();
                Assert.NotEqual(ExitStatus.CannotUse, Bander.Make(_made.FullPath).Status);
            }
        }

        var folder = new TemporaryFolder();
        foreach (string file in Directory.EnumerateFiles(_made.FullPath, "*", SearchOption.AllDirectories))
        {
            string copy = folder[Path.GetRelativePath(_made.FullPath, file)];
            Directory.CreateDirectory(Path.GetDirectoryName(copy)!);
            File.Copy(file, copy);
        }

        return folder;
    }

    /// <summary>One of the project's samples.</summary>
    public static TemporaryFolder Sample(string name)
    {
        var folder = new TemporaryFolder();
        foreach (string file in Directory.EnumerateFiles(Path.Combine(AppContext.BaseDirectory, "samples", name)))
        {
            File.Copy(file, folder[Path.GetFileName(file)]);
        }

        return folder;
    }

    /// <summary>A few names, quickly counted.</summary>
    public static TemporaryFolder Small(string list = "name\nOttilie Marsh\nBram Sedgewick\nNgozi Farrow\n") => new TemporaryFolder()
        .With("job.json", """{ "format": 1, "lists": ["names.csv"], "hem": { "length": "1.2 m" } }""")
        .With("names.csv", list);

    /// <summary>
    /// A workbook as a spreadsheet would write it (ECMA-376), with what makes lists difficult: a sheet before that of the names, a
    /// name that a formula made, a date, cells that are merged.
    /// </summary>
    public static FilePayload Workbook(string name, string sheet, params string[][] rows)
    {
        using var stream = new MemoryStream();
        using (var zip = new ZipArchive(stream, ZipArchiveMode.Create, leaveOpen: true))
        {
            void Add(string path, string xml)
            {
                using var part = new StreamWriter(zip.CreateEntry(path).Open());
                part.Write("<?xml version=\"1.0\" encoding=\"UTF-8\"?>" + xml);
            }

            const string Kind = "application/vnd.openxmlformats-officedocument.spreadsheetml";
            const string Main = "xmlns=\"http://schemas.openxmlformats.org/spreadsheetml/2006/main\"";
            const string Office = "http://schemas.openxmlformats.org/officeDocument/2006/relationships";
            const string Packed = "http://schemas.openxmlformats.org/package/2006/";
            string kinds = $"<Default Extension=\"rels\" ContentType=\"application/vnd.openxmlformats-package.relationships+xml\"/>"
                + $"<Default Extension=\"xml\" ContentType=\"{Kind}.sheet.main+xml\"/>";
            foreach (string part in (string[])["worksheets/sheet1", "worksheets/sheet2", "styles"])
            {
                kinds += $"<Override PartName=\"/xl/{part}.xml\" ContentType=\"application/vnd.openxmlformats-officedocument.spreadsheetml."
                    + $"{(part == "styles" ? "styles" : "worksheet")}+xml\"/>";
            }

            Add("[Content_Types].xml", $"<Types xmlns=\"{Packed}content-types\">{kinds}</Types>");
            Add("_rels/.rels", Relations(("officeDocument", "xl/workbook.xml")));
            Add("xl/_rels/workbook.xml.rels",
                Relations(("worksheet", "worksheets/sheet1.xml"), ("worksheet", "worksheets/sheet2.xml"), ("styles", "styles.xml")));
            Add("xl/workbook.xml",
                $"<workbook {Main} xmlns:r=\"{Office}\"><sheets><sheet name=\"Money\" sheetId=\"1\" r:id=\"r1\"/>"
                + $"<sheet name=\"{sheet}\" sheetId=\"2\" r:id=\"r2\"/></sheets></workbook>");

            // Format 15 is d-mmm-yy (18.8.30).
            Add("xl/styles.xml",
                $"<styleSheet {Main}><fonts><font/></fonts><fills><fill/></fills><borders><border/></borders>"
                + "<cellStyleXfs><xf/></cellStyleXfs>"
                + "<cellXfs><xf numFmtId=\"0\"/><xf numFmtId=\"15\" applyNumberFormat=\"1\"/></cellXfs></styleSheet>");
            Add("xl/worksheets/sheet1.xml",
                $"<worksheet {Main}><sheetData>{Row(["what", "sum"], 0)}{Row(["thread", "12"], 1)}</sheetData></worksheet>");
            Add("xl/worksheets/sheet2.xml",
                $"<worksheet {Main}><sheetData>{string.Concat(rows.Select(Row))}</sheetData>"
                + "<mergeCells><mergeCell ref=\"B2:B3\"/></mergeCells></worksheet>");

            string Relations(params (string Kind, string Target)[] all) => $"<Relationships xmlns=\"{Packed}relationships\">"
                + string.Concat(all.Select((r, i) => $"<Relationship Id=\"r{i + 1}\" Type=\"{Office}/{r.Kind}\" Target=\"{r.Target}\"/>"))
                + "</Relationships>";
        }

        return new()
        {
            Name = name,
            MimeType = "application/vnd.openxmlformats-officedocument.spreadsheetml.sheet",
            Buffer = stream.ToArray()
        };

        static string Row(string[] cells, int row) =>
            $"<row r=\"{row + 1}\">{string.Concat(cells.Select((text, i) => Cell(text, $"{(char)('A' + i)}{row + 1}")))}</row>";

        // Begun with = it is what a formula made; with # a day, counted as 18.17.4.1 has it; an empty one is no cell.
        static string Cell(string text, string at) => text switch
        {
            "" => "",
            ['=', .. var made] => $"<c r=\"{at}\" t=\"str\"><f>A2&amp;A3</f><v>{made}</v></c>",
            ['#', .. var day] => $"<c r=\"{at}\" s=\"1\"><v>{day}</v></c>",
            _ => $"<c r=\"{at}\" t=\"inlineStr\"><is><t>{text}</t></is></c>",
        };
    }

    public static FilePayload Upload(string name, string text) =>
        new() { Name = name, MimeType = "text/csv", Buffer = Encoding.UTF8.GetBytes(text) };
}
