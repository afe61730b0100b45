using NameBand.Common;
using Xunit;

namespace NameBand.Tests.Sources;

/// <summary>Source: RFC 4180 (October 2005), section 2, items 1 to 7: the examples there, character for character.</summary>
public class Rfc4180Tests
{
    [Theory]
    [InlineData("aaa,bbb,ccc\r\nzzz,yyy,xxx\r\n", 2)] // item 1
    [InlineData("aaa,bbb,ccc\r\nzzz,yyy,xxx", 2)] // item 2
    [InlineData("field_name,field_name,field_name\r\naaa,bbb,ccc\r\nzzz,yyy,xxx\r\n", 3)] // item 3
    [InlineData("aaa,bbb,ccc", 1)] // item 4
    [InlineData("\"aaa\",\"bbb\",\"ccc\"\r\nzzz,yyy,xxx", 2)] // item 5
    public void Rows_of_three_fields(string csv, int rows)
    {
        var read = Read(csv);

        Assert.Equal(rows, read.Length);
        Assert.All(read, r => Assert.Equal(3, r.Fields.Length));
        Assert.Equal(["aaa", "bbb", "ccc"], read[rows == 3 ? 1 : 0].Fields.AsEnumerable());
    }

    [Fact]
    public void Item_6_a_line_break_inside_quotation_marks()
    {
        var read = Read("\"aaa\",\"b\r\nbb\",\"ccc\"\r\nzzz,yyy,xxx");

        Assert.Equal(["aaa", "b\r\nbb", "ccc"], read[0].Fields.AsEnumerable());
        Assert.Equal((1, 2, 3), (read[0].Line, read[0].LastLine, read[1].Line));
    }

    [Fact]
    public void Item_7_a_quotation_mark_inside_a_field_is_written_twice()
    {
        Assert.Equal(["aaa", "b\"bb", "ccc"], Assert.Single(Read("\"aaa\",\"b\"\"bb\",\"ccc\"")).Fields.AsEnumerable());
        Assert.Equal("aaa,\"b\"\"bb\",ccc", CsvText.Row(["aaa", "b\"bb", "ccc"]));
    }

    private static CsvRow[] Read(string csv) => [.. CsvFile.Parse(csv, new Where()).Value!.Rows];
}
