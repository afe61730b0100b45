using System.Text;
using CsvHelper;
using NameBand.MachineLetters.Alphabets;
using NameBand.Output;
using SixLabors.ImageSharp;
using SixLabors.ImageSharp.PixelFormats;
using NameBand.Tests.Outside;
using Xunit;

namespace NameBand.Tests.OutputRoom;

public sealed class ThanksTests(SentSample sent) : IClassFixture<SentSample>
{
    [Fact]
    public void There_is_one_picture_for_each_name_of_the_size_that_was_asked_for()
    {
        Assert.Equal(SentSample.Names.Length, sent.Report.Plan!.NameCount);
        string[] files = Directory.GetFiles(sent.FullPath("thanks"), "*.png");
        Assert.Equal(SentSample.Names.Length, files.Length);
        Assert.All(files, file =>
        {
            using var picture = Image.Load<Rgb24>(file);
            Assert.Equal((640, 384), (picture.Width, picture.Height));
            Assert.InRange(Thread(picture), 2000, 100_000);
        });
    }

    [Fact]
    public void A_picture_is_called_by_its_number_and_by_nothing_of_the_person() =>
        Assert.Equal(
            Enumerable.Range(1, SentSample.Names.Length).Select(n => $"name-000{n}.png"),
            Directory.GetFiles(sent.FullPath("thanks"), "*.png").Select(f => Path.GetFileName(f)).Order(StringComparer.Ordinal));

    [Fact]
    public void No_byte_of_a_picture_says_a_name_or_an_address()
    {
        foreach (string file in Directory.GetFiles(sent.FullPath("thanks"), "*.png"))
        {
            string text = Encoding.Latin1.GetString(File.ReadAllBytes(file));
            Assert.DoesNotContain("example.org", text, StringComparison.Ordinal);
            Assert.DoesNotContain("Marshall", text, StringComparison.Ordinal);
            Assert.DoesNotContain("tEXt", text, StringComparison.Ordinal);
        }
    }

    /// <summary>Centre front lies at 300 mm of the round; the place in the table is that of the plan, the shorter way.</summary>
    [Fact]
    public void The_table_says_whose_each_is_where_it_lies_and_what_is_to_be_seen()
    {
        var rows = Table();
        Assert.Equal(SentSample.Names, rows.Select(r => CsvText(r[1])));
        foreach (string[] row in rows)
        {
            var name = sent.Report.Plan!.Rounds[0].Names.Single(n =>
                n.Order.ToString(System.Globalization.CultureInfo.InvariantCulture) == row[4]);
            Assert.Equal((name.Lettered.Name.Text, "names.csv",
                name.Lettered.Name.Row.Line.ToString(System.Globalization.CultureInfo.InvariantCulture)),
                (CsvText(row[1]), row[2], row[3]));
            double middle = name.StartMm + (name.WidthMm / 2);
            double fromFront = middle - 300;
            double length = sent.Report.Plan!.Rounds[0].LengthMm;
            double fromBack = ((middle - 300 + length) % length) - (length / 2);
            string expected = Math.Abs(fromFront) <= Math.Abs(fromBack)
                ? FormattableString.Invariant($"{Math.Abs(fromFront):0} mm (")
                    : FormattableString.Invariant($"{Math.Abs(fromBack):0} mm (");
            Assert.StartsWith(expected, row[6], StringComparison.Ordinal);
            Assert.EndsWith(Math.Abs(fromFront) <= Math.Abs(fromBack) ? "centre front" : "centre back", row[6], StringComparison.Ordinal);
            Assert.Contains($"“{name.Lettered.Name.Text}”", row[7], StringComparison.Ordinal);
            Assert.Contains(SentSample.Title, row[7], StringComparison.Ordinal);
        }
    }

    [Fact]
    public void The_name_finder_counts_from_where_the_job_says_centre_front_lies()
    {
        string[] lines = Encoding.UTF8.GetString(sent.File(OutPaths.NameFinder)[3..]).Split("\r\n", StringSplitOptions.RemoveEmptyEntries);
        Assert.Contains(
            ",hooping,from_centre_front_mm,side_of_centre_front,from_centre_back_mm,side_of_centre_back", lines[0],
            StringComparison.Ordinal);
        string[] cells = lines.Single(l => l.StartsWith("Ottilie", StringComparison.Ordinal)).Split(',');
        double middle = double.Parse(cells[5], System.Globalization.CultureInfo.InvariantCulture);
        Assert.Equal(300 - middle, double.Parse(cells[9], System.Globalization.CultureInfo.InvariantCulture), 0.11);
        Assert.Equal("left", cells[10]);
    }

    /// <summary>On the template names are drawn and not written: there they are known by their numbers.</summary>
    [SkippableTheory]
    [InlineData("work-packet")]
    [InlineData("proof-reading")]
    [InlineData("name-finder")]
    public void Every_sheet_bears_names_of_every_script(string sheet)
    {
        OutsideTool.Require("pdftotext", "poppler-utils");
        foreach (string paper in new[] { "a4", "letter" })
        {
            PrintedNames.AreAllIn(sent.FullPath($"sheets/{sheet}-{paper}.pdf"), SentSample.Names);
        }
    }

    [Theory]
    [InlineData("work-packet")]
    [InlineData("proof-reading")]
    [InlineData("name-finder")]
    [InlineData("template")]
    public void Every_sheet_has_its_title_and_keeps_within_the_paper(string sheet)
    {
        foreach (string paper in new[] { "a4", "letter" })
        {
            using var pdf = UglyToad.PdfPig.PdfDocument.Open(sent.File($"sheets/{sheet}-{paper}.pdf"));
            Assert.StartsWith(SentSample.Title, pdf.Information.Title, StringComparison.Ordinal);
            Assert.All(pdf.GetPages(), page =>
            {
                Assert.NotEmpty(page.Letters);
                Assert.All(page.Letters, l => Assert.InRange(l.BoundingBox.Right, 0, page.Width));
            });
            Assert.Contains(
                $"page{pdf.NumberOfPages}of{pdf.NumberOfPages}",
                string.Concat(pdf.GetPages().Last().Text.Where(c => !char.IsWhiteSpace(c))), StringComparison.Ordinal);
        }
    }

    private static string CsvText(string cell) => Common.CsvText.ReadBack(cell);

    private static int Thread(Image<Rgb24> picture)
    {
        int count = 0;
        for (int y = 0; y < picture.Height * 7 / 10; y++)
        {
            for (int x = 0; x < picture.Width; x++)
            {
                count += ProofPicture.IsIndigo(picture[x, y]) ? 1 : 0;
            }
        }

        return count;
    }

    private List<string[]> Table()
    {
        using var reader = CsvReader.FromText(
            Encoding.UTF8.GetString(sent.File(OutPaths.ThanksTable)[3..]),
            CsvReaderOptions.Default with { Separator = ',', HasHeader = false });
        var rows = new List<string[]>();
        while (reader.Read())
        {
            rows.Add([.. reader.Current.ToArray()]);
        }

        Assert.Equal(["file", "name", "list", "line", "number", "round", "place", "description"], rows[0]);
        return rows[1..];
    }
}
