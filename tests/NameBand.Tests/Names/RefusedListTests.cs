using System.Text;
using CsCheck;
using NameBand.Common;
using NameBand.Names;
using Xunit;

namespace NameBand.Tests.NamesRoom;

/// <summary>Lists that cannot be used: never an exception, always the file, the fault and the mend.</summary>
public class RefusedListTests
{
    public static TheoryData<string, byte[], string> Useless => new()
    {
        { "empty", [], "empty" },
        { "blanks", "\r\n  \r\n\t\r\n"u8.ToArray(), "only blanks" },
        { "mark only", [0xEF, 0xBB, 0xBF], "only blanks" },
        { "header only", "Name,Mail\r\n"u8.ToArray(), "no names in it" },
        { "spreadsheet", [0x50, 0x4B, 3, 4, 20, 0, 6, 0, 8, 0], "spreadsheet" },
        { "old spreadsheet", [0xD0, 0xCF, 0x11, 0xE0, 0xA1, 0xB1, 0x1A, 0xE1], "spreadsheet" },
        { "picture", [0x89, 0x50, 0x4E, 0x47, 0x0D, 0x0A, 0x1A, 0x0A], "picture" },
        { "pdf", "%PDF-1.7 ..."u8.ToArray(), "PDF" },
        { "packed", [0x1F, 0x8B, 8, 0], "packed" },
        { "page", "<!DOCTYPE html><html><table>"u8.ToArray(), "web page" },
        { "rtf", @"{\rtf1\ansi Anna}"u8.ToArray(), "formatted text" },
        { "nul", "Name\nAn\0na\n"u8.ToArray(), "not text" },
        { "noise", Noise(), "not text" },
        { "controls", [.. Enumerable.Repeat((byte)7, 50), .. "Name\nAnna\n"u8], "not text" },
    };

    [Theory]
    [MemberData(nameof(Useless))]
    public void It_is_refused_with_its_name_and_what_to_do(string what, byte[] bytes, string found)
    {
        var problem = Lists.Refused(Lists.ReadBytes(bytes));

        Assert.True(problem.Where.File == "names.csv", what);
        Assert.Contains(found, problem.Found.English);
        Assert.NotEmpty(problem.Mend.English);
    }

    [Fact]
    public void Missing_list_and_folder_in_its_place()
    {
        using var folder = new TemporaryFolder();
        Assert.Contains("no such file", Lists.Refused(Lists.Read(folder)).Found.English);

        Directory.CreateDirectory(folder["names.csv"]);
        Assert.Contains("is a folder", Lists.Refused(Lists.Read(folder)).Found.English);
    }

    [Fact]
    public void All_faulty_lists_are_told_at_once()
    {
        var read = Lists.Read([("a.csv", ""), ("b.csv", "Name\nAnna\n"), ("c.csv", "First name,Last name\nA,B\n")]);

        Assert.Equal(["a.csv", "c.csv"], read.Problems.Where(p => p.Severity == Severity.CannotUse).Select(p => p.Where.File!));
    }

    [Fact]
    public void Over_50_MB()
    {
        using var folder = new TemporaryFolder();
        using (var file = File.Create(folder["names.csv"]))
        {
            file.Write("Name\nAnna\n"u8);
            file.SetLength(50_000_001);
        }

        Assert.Contains("bigger than 50 MB", Lists.Refused(Lists.Read(folder)).Found.English);
    }

    [Theory]
    [InlineData("Name,Mail\nAnna,a\n\"Bert,b\nCarl,c\nDora,d\n", 3, "never closes it")]
    [InlineData("Name,Mail\nAnna,a\n\"Bert,b\nCarl,\"c\"\nDora,d\n", 4, "began in line 3")]
    [InlineData("Name,Mail\n\"Nan\" Berg,a\n", 2, "after a closing quotation mark")]
    [InlineData("sep=,\nName,Mail\n\"Nan\" Berg,a\n", 3, "after a closing quotation mark")]
    public void A_wrong_quotation_mark_is_told_by_its_line(string csv, int line, string found)
    {
        var problem = Lists.Refused(Lists.Read(csv));

        Assert.Equal(line, problem.Where.Line);
        Assert.Contains(found, problem.Found.English);
    }

    [Fact]
    public void A_quotation_mark_inside_a_plain_field_is_text() =>
        Assert.Equal("2 placed Anna \"Nan\" Berg", Lists.Table(Lists.Read("Name,Mail\nAnna \"Nan\" Berg,a\n")));

    [Fact]
    public void Rows_that_a_stray_pair_of_quotation_marks_swallowed_are_not_lost_in_silence()
    {
        var read = Lists.Read("Name,Mail,Sum\nAnna,a,1\nBert,\"b,2\nCarl,c,3\nDora,d\",4\nEmil,e,5\n");

        Assert.Equal("2 placed Anna\n3 held Bert\n6 placed Emil", Lists.Table(read));
        Assert.Equal("the row runs from line 3 to line 5: is a quotation mark missing?", Lists.Row(read, 3).Reason);
    }

    [Fact]
    public void An_address_over_several_lines_is_fine_and_lines_are_counted()
    {
        var read = Lists.Read("Name,Address\r\nAnna,\"Mill Lane 3\r\nRiverton, North\"\r\n\"Bert\nOst\",x\r\nCarl,y\r\n");

        Assert.Equal("2 placed Anna\n4 placed Bert Ost\n6 placed Carl", Lists.Table(read));
        Assert.Equal("a line break inside the name became a blank", Assert.Single(Lists.Row(read, 4).Notes));
    }

    [Fact]
    public void Missing_and_spare_fields_are_noted()
    {
        var read = Lists.Read("Name,Mail,Note\nAnna,a@x.example\nBert,b@x.example,hi,,\nCarl,c@x.example,hi\n");

        Assert.Equal("2 placed Anna\n3 placed Bert\n4 placed Carl", Lists.Table(read));
        Assert.Equal("the row has 2 fields, the header 3", Assert.Single(Lists.Row(read, 2).Notes));
        Assert.Empty(Lists.Row(read, 3).Notes);
    }

    [Fact]
    public void A_separator_that_may_belong_to_the_name_holds_the_row()
    {
        var read = Lists.Read("Name,Mail,Note\nAnna,a@x.example,\nBerg, Bert,b@x.example,secret\nCarl,c@x.example,thanks, dear\n");

        Assert.Equal("2 placed Anna\n3 held Berg\n4 placed Carl", Lists.Table(read));
        Assert.Contains("does a comma belong to the name?", Lists.Row(read, 3).Reason.English);
        Assert.Equal("the row has 4 fields, the header 3", Assert.Single(Lists.Row(read, 4).Notes));
        Assert.DoesNotContain("secret", Lists.AllShown(read));
    }

    /// <summary>A telephone number where all have one shows that nothing moved; a figure in an address shows nothing.</summary>
    [Fact]
    public void A_column_of_numbers_proves_the_name_and_one_of_text_with_figures_does_not()
    {
        var numbers = Lists.Read(
            "Name,Phone,Note\nAnna,+44 (20) 79-46,\nBert,555 12,\nBo, Reed,555 14,x\nCarl,555 13,thanks, dear\n");
        Assert.Equal("2 placed Anna\n3 placed Bert\n4 held Bo\n5 placed Carl", Lists.Table(numbers));

        var addresses = Lists.Read("Name,Address\nAnna,Mill Lane 3\nBert,Weir Row 4\nBo, Reed 2,Quay 14\nCarl,Tow Path 9\n");
        Assert.Equal("2 placed Anna\n3 placed Bert\n4 held Bo\n5 placed Carl", Lists.Table(addresses));
    }

    [Fact]
    public void A_wish_that_may_have_slipped_a_column_holds_the_row()
    {
        var read = Lists.Read("Name,Mail,Note,Anonymous\nAnna,a@x.example,,\nBert,b@x.example,thanks, dear,yes\n");

        Assert.Equal(RowOutcome.Held, Lists.Row(read, 3).Outcome);
    }

    [Fact]
    public void No_link_is_followed()
    {
        using var elsewhere = new TemporaryFolder();
        elsewhere.With("names.csv", "Name\nAnna\n");
        using var folder = new TemporaryFolder();
        File.CreateSymbolicLink(folder["names.csv"], elsewhere["names.csv"]);
        Directory.CreateSymbolicLink(folder["sub"], elsewhere.FullPath);
        folder.With("real.csv", "Name\nBert\n");
        File.CreateSymbolicLink(folder["inside.csv"], "real.csv");
        File.CreateSymbolicLink(folder["ring.csv"], "ring.csv");

        Assert.Contains("“names.csv” is a link", Lists.Refused(Lists.Read(folder, lists: "names.csv")).Found.English);
        Assert.Contains("“sub” is a link", Lists.Refused(Lists.Read(folder, lists: "sub/names.csv")).Found.English);
        Assert.Contains(
            "outside the job's folder",
            Lists.Refused(Lists.Read(folder, lists: "../" + Path.GetFileName(elsewhere.FullPath) + "/names.csv")).Found.English);
        Assert.NotEmpty(Lists.Refused(Lists.Read(folder, lists: "ring.csv")).Mend.English);
        Assert.Contains("“inside.csv” is a link", Lists.Refused(Lists.Read(folder, lists: "inside.csv")).Found.English);
    }

    [Fact]
    public void A_list_of_endless_rows_or_columns_is_refused()
    {
        foreach (string csv in new[] { "Name\n" + string.Concat(Enumerable.Repeat("a\n", 260_000)),
            "Name" + new string(',', 1000) + "\nAnna\n" })
        {
            Assert.Contains("more than 250000 rows or 1000 columns", Lists.Refused(Lists.Read(csv)).Found.English);
        }
    }

    [Fact]
    public void A_name_of_a_million_letters_is_held()
    {
        var row = Lists.Row(Lists.Read("Name\n" + new string('a', 1_000_000) + "\n"), 2);

        Assert.Equal(RowOutcome.Held, row.Outcome);
        Assert.Contains("1000000 characters", row.Reason.English);
        Assert.True(row.Text.Length < 200);
    }

    [Fact]
    public void No_bytes_at_all_make_it_throw()
    {
        const string Pieces = "Name,;|\t\"\r\n Anna\u0000\u200B\uFEFF=@é";
        Gen.Byte.Array[0, 400].Sample(bytes => Assert.NotNull(Lists.ReadBytes(bytes)), seed: "0000KOIPe036", iter: 500);
        Gen.String[Gen.Char[Pieces], 0, 120].Sample(
            text => Assert.NotNull(Lists.ReadBytes(Encoding.UTF8.GetBytes(text))), seed: "0000KOIPe036", iter: 1000);
    }

    private static byte[] Noise()
    {
        byte[] bytes = new byte[5000];
        new Random(7).NextBytes(bytes);
        return bytes;
    }

    /// <summary>Only where a column asks who is left out may a row that is a field short or long hide a wish.</summary>
    [Theory]
    [InlineData("Name,Town,Sum\nAda Reed,Quay,5\nBo Marsh,Mill\nJo Farrow,Quay,7\n", "2 placed Ada Reed\n3 placed Bo Marsh\n4 placed Jo Farrow")]
    [InlineData("Name,Town,Anonymous\nAda Reed,Quay,\nBo Marsh,Mill,,\nJo Farrow,Quay,\n", "2 placed Ada Reed\n3 held Bo Marsh\n4 placed Jo Farrow")]
    [InlineData("Name,Town,Sum\nAda Reed,Quay,5\nBo Marsh,Mill,6,\nJo Farrow,Quay,7\n", "2 placed Ada Reed\n3 placed Bo Marsh\n4 placed Jo Farrow")]
    public void A_row_of_another_length_waits_only_where_it_may_hide_a_wish(string csv, string table) =>
        Assert.Equal(table, Lists.Table(Lists.Read(csv)));

    /// <summary>In a list of two columns any sentence with a comma looks like a row; in a longer one, few do.</summary>
    [Theory]
    [InlineData("Name,Note\nAda Reed,\"for the band\nwith love, as ever\nfrom all\"\nBo Marsh,\n", "2 placed Ada Reed\n5 placed Bo Marsh")]
    [InlineData("Name,Note\nAda Reed,\"for the band\nJo Lind, hello\nIda Quill, hello\nfrom all\"\nBo Marsh,\n", "2 held Ada Reed\n6 placed Bo Marsh")]
    [InlineData("Name,Note,Sum\nAda Reed,\"for the band\nJo Lind,hello,5\nfrom all\",5\nBo Marsh,,5\n", "2 held Ada Reed\n5 placed Bo Marsh")]
    public void Lines_in_a_note_that_look_like_rows_were_swallowed_by_a_quotation_mark(string csv, string table) =>
        Assert.Equal(table, Lists.Table(Lists.Read(csv)));
}
