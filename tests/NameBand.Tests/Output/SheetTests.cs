using System.Globalization;
using System.Text;
using CsvHelper;
using NameBand.Output;
using Xunit;

namespace NameBand.Tests.OutputRoom;

public sealed class SheetTests
{
    [Fact]
    public void TheWorksheetHasARowForEverySegmentWithItsNamesAsTheyAre()
    {
        var plan = OutSample.Plan();
        byte[] bytes = WorksheetBytes();
        Assert.Equal([0xEF, 0xBB, 0xBF], bytes[..3]);
        string text = Encoding.UTF8.GetString(bytes[3..]);
        Assert.DoesNotContain("\n", text.Replace("\r\n", "", StringComparison.Ordinal), StringComparison.Ordinal);

        using var reader = CsvReader.FromText(text, CsvReaderOptions.Default with { Separator = ',', HasHeader = false });
        Assert.True(reader.Read());
        string[] header = reader.Current.ToArray();
        Assert.Equal("hooping", header[0]);
        Assert.Equal("done", header[^1]);
        var segments = plan.Hoopings.SelectMany(h => h.Segments.Select(s => (h.Number, s.Segment))).ToList();
        foreach (var (number, segment) in segments)
        {
            Assert.True(reader.Read());
            string[] row = reader.Current.ToArray();
            Assert.Equal(header.Length, row.Length);
            Assert.Equal(number, int.Parse(row[0], CultureInfo.InvariantCulture));
            Assert.Equal(OutSample.ClothEndMm + segment.ClothStartMm, double.Parse(row[4], CultureInfo.InvariantCulture), 0.051);
            foreach (var name in segment.Names)
            {
                Assert.Contains(name.Lettered.Name.Text, row[3], StringComparison.Ordinal);
            }

            Assert.Equal("", row[^1]);
        }

        Assert.False(reader.Read());
    }

    [Fact]
    public void NoCellOfTheWorksheetCanRunAsAFormula()
    {
        string text = Encoding.UTF8.GetString(WorksheetBytes()[3..]);
        using var reader = CsvReader.FromText(text, CsvReaderOptions.Default with { Separator = ',', HasHeader = false });
        var cells = new List<string>();
        while (reader.Read())
        {
            cells.AddRange(reader.Current.ToArray());
        }

        Assert.Contains(cells, c => c.StartsWith("'=Pell", StringComparison.Ordinal));
        Assert.All(cells, cell => Assert.DoesNotMatch("^[=+@-]", cell));
    }

    [Theory]
    [InlineData(true, "Cut the strip to its width only when")]
    [InlineData(false, "The strip is cut before it is sewn")]
    public void ThePageToReadFirstFitsTheJob(bool sewnBeforeCutting, string expected)
    {
        string text = ReadMe("“Lantern” walk – 行列", sewnBeforeCutting);
        Assert.StartsWith("“Lantern” walk – 行列\n===", text, StringComparison.Ordinal);
        Assert.Contains(expected, text, StringComparison.Ordinal);
        Assert.Contains("allows for 1.0 %", text, StringComparison.Ordinal);
        Assert.Contains("16.5 mm from the middle", text, StringComparison.Ordinal);
        Assert.DoesNotContain('\r', text);
        Assert.All(text.Split('\n'), line => Assert.InRange(line.Length, 0, 92));
        foreach (string file in new[] { OutPaths.Plan, OutPaths.Worksheet, "proofs/hooping-001.png", "proofs/round-01.png",
            "needle-paths/" })
        {
            Assert.Contains(file, text, StringComparison.Ordinal);
        }
    }

    [Theory]
    [InlineData("tr-TR")]
    [InlineData("de-DE")]
    [InlineData("ar-SA")]
    public void BytesAreTheSameUnderAnyCulture(string culture)
    {
        byte[] sheet = WorksheetBytes();
        string page = ReadMe("Title", true);
        var before = CultureInfo.CurrentCulture;
        try
        {
            CultureInfo.CurrentCulture = CultureInfo.GetCultureInfo(culture);
            Assert.Equal(sheet, WorksheetBytes());
            Assert.Equal(page, ReadMe("Title", true));
        }
        finally
        {
            CultureInfo.CurrentCulture = before;
        }
    }

    private static byte[] WorksheetBytes()
    {
        var plan = OutSample.Plan();
        using var stream = new MemoryStream();
        Worksheet.Write(stream, plan, OutSample.Estimate(plan));
        return stream.ToArray();
    }

    private static string ReadMe(string title, bool sewnBeforeCutting)
    {
        using var stream = new MemoryStream();
        ReadMePage.Write(stream, title, null, ReadMeFirst.Parts(OutSample.Plan(), sewnBeforeCutting));
        return Encoding.UTF8.GetString(stream.ToArray());
    }
}
