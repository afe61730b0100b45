using System.IO.Compression;
using System.Text;
using CsCheck;
using NameBand.Common;
using NameBand.Job;
using NameBand.Names;
using Xunit;

namespace NameBand.Tests.NamesRoom;

/// <summary>Lists in workbooks (.xlsx).</summary>
public class WorkbookTests
{
    private static readonly byte[] Friends = Workbooks.Of(
        ("Friends", [
            Workbooks.Texts(1, "Name", "May we show it?", "Paid"),
            Workbooks.Texts(2, "Ottilie Marshall", "yes"),
            Workbooks.Texts(5, "Bram Sedgewick", "no"),
            Workbooks.Texts(6, "Zdeněk Holub", "yes"),
        ]),
        ("Crew", [Workbooks.Texts(1, "Name"), Workbooks.Texts(2, "Ngozi Farrow-Bell")]));

    [Fact]
    public void The_first_sheet_is_read_row_by_row_and_rows_are_known_by_its_name()
    {
        using var folder = new TemporaryFolder();
        var read = Lists.Read(folder.With("names.xlsx", Friends), null, null, "names.xlsx");

        Assert.Equal("2 placed Ottilie Marshall\n5 leftOut Bram Sedgewick\n6 placed Zdeněk Holub", Lists.Table(read));
        Assert.All(read.Value!.Rows, r => Assert.Equal("names.xlsx#Friends", r.Row.List));
        Assert.Contains(
            read.Problems,
            p => p.Severity == Severity.Note && p.Found.English.Contains("has 2 sheets, “Friends”, “Crew”", StringComparison.Ordinal));
    }

    [Fact]
    public void Another_sheet_is_named_beside_a_list_as_text()
    {
        using var folder = new TemporaryFolder();
        folder.With("names.xlsx", Friends).With("late.csv", "Name\nSolveig Brunt\n");
        var read = Lists.Read(folder, null, null, "names.xlsx#Crew", "late.csv");

        Assert.Equal("2 placed Ngozi Farrow-Bell\n2 placed Solveig Brunt", Lists.Table(read));
        Assert.Equal(["names.xlsx#Crew", "late.csv"], read.Value!.Rows.Select(r => r.Row.List));
        Assert.Contains("no sheet “Crows”", Lists.Refused(Lists.Read(folder, null, null, "names.xlsx#Crows")).Found.English);
    }

    [Fact]
    public void Job_json_names_a_sheet_in_either_form()
    {
        using var folder = new TemporaryFolder();
        folder.With("names.xlsx", Friends);
        foreach (string lists in (string[])["""["names.xlsx#Crew"]""", """[{ "file": "names.xlsx", "sheet": "Crew" }]"""])
        {
            folder.With("job.json", $$"""{ "format": 1, "lists": {{lists}}, "hem": { "length": "1 m" } }""");
            Assert.Equal("names.xlsx#Crew", Assert.Single(JobReader.Read(folder.FullPath).Value!.Lists));
        }

        folder.With("job.json", """{ "format": 1, "lists": [{ "file": "names.csv", "leaf": "Crew" }], "hem": { "length": "1 m" } }""");
        Assert.Contains(JobReader.Read(folder.FullPath).Problems, p => p.Found.English.Contains("“leaf”", StringComparison.Ordinal));
    }

    /// <summary>Formats by their numbers: ECMA-376 part 1 (5th edition), 18.8.30, "numFmts": 0 General, 1 "0", 2 "0.00", 3
    /// "#,##0", 9 "0%", 10 "0.00%", 15 "d-mmm-yy", 20 "h:mm".</summary>
    [Theory]
    [InlineData("30", 0, "30")]
    [InlineData("12.5", 0, "12.5")]
    [InlineData("29.6", 1, "30")]
    [InlineData("8", 2, "8.00")]
    [InlineData("1250", 3, "1,250")]
    [InlineData("0.25", 9, "25%")]
    [InlineData("0.256", 10, "25.60%")]
    [InlineData("45627", 15, "1-Dec-24")] // 45627 days from the epoch of 18.17.4.1: 1 December 2024.
    [InlineData("0.75", 20, "18:00")]
    public void A_number_is_what_the_spreadsheet_shows(string value, uint format, string shown)
    {
        var table = Table(
            Workbooks.Cells(1, Workbooks.Text("A1", "Name"), Workbooks.Text("B1", "Paid")),
            Workbooks.Cells(2, Workbooks.Text("A2", "Anna"), Workbooks.Number(value, format)));

        Assert.Equal($"Anna|{shown}", string.Join('|', table.Rows[1].Fields));
    }

    [Fact]
    public void Formulas_are_not_run_and_what_was_worked_out_holds()
    {
        var table = Table(
            Workbooks.Texts(1, "Name", "Whole"),
            Workbooks.Cells(2, Workbooks.Text("A2", "Anna"), Workbooks.Formula("A2&\" Berg\"", "Anna Berg")),
            Workbooks.Cells(3, Workbooks.Text("A3", "Bo"), Workbooks.Formula("WEBSERVICE(\"http://lantern.example\")", null)));

        Assert.Equal("Anna|Anna Berg", string.Join('|', table.Rows[1].Fields));
        Assert.Equal("Bo", table.Rows[2].Fields[0]);
        Assert.True(table.Rows[2].Fields.Length == 1 || table.Rows[2].Fields[1].Length == 0);
    }

    /// <summary>A cell that could not be worked out is no empty one: a name must not vanish behind it.</summary>
    [Fact]
    public void A_name_that_could_not_be_worked_out_is_asked_about()
    {
        using var folder = new TemporaryFolder();
        var book = Workbooks.Of(("Names",
            [Workbooks.Texts(1, "Name", "Paid"), Workbooks.Cells(2, Workbooks.Error("#N/A"), Workbooks.Number("30")),
            Workbooks.Texts(3, "Anna", "30")]));
        var read = Lists.Read(folder.With("names.xlsx", book), null, null, "names.xlsx");

        Assert.Equal(RowOutcome.Held, Assert.Single(read.Value!.Rows, r => r.Row.Line == 2).Outcome);
    }

    [Fact]
    public void Hidden_rows_are_read_and_told()
    {
        using var folder = new TemporaryFolder();
        var hidden = Workbooks.Texts(3, "Bram Sedgewick");
        hidden.Hidden = true;
        var book = Workbooks.Of(("Names", [Workbooks.Texts(1, "Name"), Workbooks.Texts(2, "Anna Berg"), hidden]));
        var read = Lists.Read(folder.With("names.xlsx", book), null, null, "names.xlsx");

        Assert.Equal("2 placed Anna Berg\n3 placed Bram Sedgewick", Lists.Table(read));
        Assert.Contains(read.Problems, p => p.Found.English.StartsWith("A row of the sheet “Names” is hidden", StringComparison.Ordinal));
    }

    /// <summary>One cell over two rows names one person, who paid twice: the second row is told of, and no name is lost.</summary>
    [Fact]
    public void A_name_in_a_cell_over_two_rows_is_sewn_once()
    {
        using var folder = new TemporaryFolder();
        var book = Workbooks.Of(("Names",
            [
                Workbooks.Texts(1, "Name", "Paid"), Workbooks.Texts(2, "Anna Berg", "30"), Workbooks.Texts(3, "", "20"),
                Workbooks.Texts(4, "Jo Weir", "30"),
            ],
            ["A2:A3"]));
        var read = Lists.Read(folder.With("names.xlsx", book), null, null, "names.xlsx");

        Assert.Equal("2 placed Anna Berg\n3 leftOut\n4 placed Jo Weir", Lists.Table(read));
    }

    [Fact]
    public void What_is_no_workbook_or_too_much_of_one_is_refused_in_words()
    {
        Refused([0xD0, 0xCF, 0x11, 0xE0, 0xA1, 0xB1, 0x1A, 0xE1], "has a password");
        Refused("Name\nAnna\n"u8.ToArray(), "This workbook cannot be read");
        Refused(Friends[..(Friends.Length / 2)], "This workbook cannot be read");
        Refused(Workbooks.Of(("Empty", [])), "is empty");
        Refused(Bomb(), "bigger than 50 MB");
    }

    /// <summary>A reference of a few signs claims a row or a column so far off that room for all before it takes gigabytes, and passing
    /// them minutes.</summary>
    [Theory]
    [InlineData("\"A6\"", "\"ZZZZZZ6\"")]
    [InlineData("r=\"6\"", "r=\"2000000000\"")]
    public void A_cell_that_claims_to_lie_far_off_is_refused_before_room_is_made_for_it(string was, string claims)
    {
        byte[] book = Changed(Friends, was, claims);
        long before = GC.GetAllocatedBytesForCurrentThread();

        Refused(book, "has more than 250,000 rows or 1,000 columns");

        Assert.InRange(GC.GetAllocatedBytesForCurrentThread() - before, 0, 1_000_000_000);
    }

    [Fact]
    public void A_spoilt_workbook_is_read_or_refused() =>
        Gen.Select(Gen.Int[0, Friends.Length - 1], Gen.Byte, Gen.Int[0, 8]).Array[1, 20].Sample(
        changes =>
        {
            byte[] bytes = [.. Friends];
            foreach (var (at, value, _) in changes)
            {
                bytes[at] = value;
            }

            using var folder = new TemporaryFolder();
            var read = Lists.Read(folder.With("names.xlsx", bytes), null, null, "names.xlsx");
            Assert.True(read.Value is not null || read.Problems.Any(p => p.Severity == Severity.CannotUse));
        }, iter: 200, seed: "0000Q1ZXhd6a");

    private static CsvTable Table(params DocumentFormat.OpenXml.Spreadsheet.Row[] rows)
    {
        using var folder = new TemporaryFolder();
        folder.With("names.xlsx", Workbooks.Of(("Names", rows)));
        var read = ListFile.Read(folder.FullPath, "names.xlsx");
        Assert.True(read.Value is not null, string.Join("\n", read.Problems));
        return read.Value.Table;
    }

    private static void Refused(byte[] book, string found)
    {
        using var folder = new TemporaryFolder();
        var problem = Lists.Refused(Lists.Read(folder.With("names.xlsx", book), null, null, "names.xlsx"));
        Assert.Contains(found, problem.Found.English);
        Assert.NotEmpty(problem.Mend.English);
    }

    /// <summary>The workbook with a part of its first sheet written otherwise.</summary>
    private static byte[] Changed(byte[] book, string was, string written)
    {
        using var stream = new MemoryStream();
        stream.Write(book);
        using (var archive = new ZipArchive(stream, ZipArchiveMode.Update, leaveOpen: true))
        {
            var part = archive.Entries.First(e => e.FullName.StartsWith("xl/worksheets/", StringComparison.Ordinal));
            using var content = part.Open();
            string text = new StreamReader(content).ReadToEnd();
            Assert.Contains(was, text, StringComparison.Ordinal);
            byte[] changed = Encoding.UTF8.GetBytes(text.Replace(was, written, StringComparison.Ordinal));
            content.SetLength(0);
            content.Write(changed);
        }

        return stream.ToArray();
    }

    /// <summary>60 MB of zeros, packed into a few kilobytes.</summary>
    private static byte[] Bomb()
    {
        using var stream = new MemoryStream();
        using (var archive = new ZipArchive(stream, ZipArchiveMode.Create, leaveOpen: true))
        {
            using var entry = archive.CreateEntry("xl/worksheets/sheet1.xml").Open();
            entry.Write(new byte[60_000_000]);
        }

        return stream.ToArray();
    }
}
