using System.Text;
using CsCheck;
using NameBand.Common;
using Xunit;

namespace NameBand.Tests.NamesRoom;

public class CsvRoundTripTests
{
    private static readonly Gen<string> Field = Gen.OneOf(
        Gen.String[Gen.Char["abcÅéßжΩ名あ강א ا \",;|\t\r\n='+-@\u200B\u00A0"], 0, 12], Gen.String[Gen.Char.AlphaNumeric, 0, 6]);

    private static readonly Gen<string[][]> Table =
        from columns in Gen.Int[2, 5]
        from rows in Field.Array[columns].Array[1, 8]
        select rows;

    private static readonly Encoding[] Encodings =
        [new UTF8Encoding(false), new UTF8Encoding(true), new UnicodeEncoding(false, true), new UnicodeEncoding(true, true),
            new UnicodeEncoding(false, false), new UnicodeEncoding(true, false)];

    /// <summary>Any table, written by RFC 4180 with any of the separators, line ends and encodings, comes back row for row.</summary>
    [Fact]
    public void Any_table_comes_back_with_its_lines()
    {
        var kinds = Gen.Select(Table, Gen.Int[0, 3], Gen.Int[0, 2], Gen.Int[0, Encodings.Length - 1], Gen.Bool);
        kinds.Sample((table, separatorKind, endKind, encodingKind, lastEnd) =>
        {
            char separator = ",;\t|"[separatorKind];
            string end = new[] { "\r\n", "\n", "\r" }[endKind];
            string[] header = [.. table[0].Select((_, i) => "column" + (char)('A' + i))];
            string csv = string.Join(end, table.Prepend(header).Select(r => Row(r, separator))) + (lastEnd ? end : "");
            var encoding = Encodings[encodingKind];
            byte[] bytes = [.. encoding.GetPreamble(), .. encoding.GetBytes(csv)];
            using var folder = new TemporaryFolder();

            var read = CsvFile.Read(folder.With("t.csv", bytes).FullPath, "t.csv");

            var rows = read.Value!.Rows;
            Assert.Equal(separator, read.Value.Separator);
            Assert.Equal(table.Length + 1, rows.Length);
            int line = 2;
            for (int i = 0; i < table.Length; i++)
            {
                Assert.Equal(table[i], rows[i + 1].Fields.AsEnumerable());
                Assert.Equal(line, rows[i + 1].Line);
                line += 1 + table[i].Sum(f => CsvScan.CountLineBreaks(f));
                Assert.Equal(line - 1, rows[i + 1].LastLine);
            }
        }, seed: "0000KOIPe036", iter: 2000);
    }

    /// <summary>The walk that finds faults and the reader that takes rows apart must see the same rows.</summary>
    [Fact]
    public void Walk_and_reader_see_the_same_fields()
    {
        Gen.String[Gen.Char["ab \",\r\n"], 0, 30].Select(t => "x,y\n" + t).Sample(text =>
        {
            var (counts, fault) = CsvScan.Walk(text, ',');
            var parsed = CsvFile.Parse(text, new Where());
            Assert.Equal(fault is null, parsed.Value is not null);
            Assert.Equal(fault is null ? counts : null, parsed.Value?.Rows.Select(r => r.Fields.Length));
        }, seed: "0000KOIPe036", iter: 20_000);
    }

    [Fact]
    public void Whatever_is_written_comes_back_and_never_begins_like_a_formula()
    {
        Gen.String[Gen.Char["ab=+-@' \",;\r\n"], 0, 8].Array[1, 5].Sample(fields =>
        {
            string row = CsvText.Row(fields.Prepend("first"), ',');
            var read = CsvFile.Parse("x,y\r\n" + row + CsvText.LineEnd, new Where()).Value!.Rows[1].Fields;

            Assert.Equal(fields, read.Skip(1).Select(CsvText.ReadBack));
            Assert.DoesNotContain(read, f => f.Length > 0 && "=+-@".Contains(f[0]));
        }, seed: "0000KOIPe036", iter: 5000);
    }

    [Theory]
    [InlineData("=1+1", "'=1+1")]
    [InlineData("'=1+1", "''=1+1")]
    [InlineData("@x,y", "\"'@x,y\"")]
    [InlineData("O'Dell", "O'Dell")]
    [InlineData("'tis", "'tis")]
    [InlineData("", "")]
    public void Fields(string text, string written)
    {
        Assert.Equal(written, CsvText.Field(text));
    }

    private static string Row(string[] fields, char separator) => string.Join(separator, fields.Select(f =>
        f.AsSpan().IndexOfAny("\"\r\n") >= 0 || f.Contains(separator) || f != f.Trim(' ') || f.Length == 0
            ? "\"" + f.Replace("\"", "\"\"", StringComparison.Ordinal) + "\"" : f));
}
