using System.Globalization;
using System.Text.Json;
using NameBand.Output;
using NameBand.Output.Tracing;
using NameBand.Tests.OutputRoom;
using NameBand.Tests.Outside;
using NameBand.Tests.WholeLine;
using UglyToad.PdfPig;
using UglyToad.PdfPig.Core;
using Xunit;

namespace NameBand.Tests.Sources;

/// <summary>
/// The template of the hoopings, read back by PdfPig and poppler, against the needle paths' own CSV and plan.json. A PDF
/// unit is 1/72 in (ISO 32000-1, 8.3.2.3), its y runs up.
/// </summary>
public sealed class TemplateAgainstPdfReaderTests(PrintedSample printed, TemplateAgainstPdfReaderTests.OneStripEach strips)
    : IClassFixture<PrintedSample>, IClassFixture<TemplateAgainstPdfReaderTests.OneStripEach>
{
    /// <summary>The sample with each round on a cloth of its own: one strip on a row.</summary>
    public sealed class OneStripEach : IDisposable
    {
        private readonly TemporaryFolder _folder = MadeFolder.CopySample();

        public OneStripEach()
        {
            string job = File.ReadAllText(_folder["job.json"]);
            File.WriteAllText(
                _folder["job.json"],
                job.Replace("\"rounds\": 2 }", "\"rounds\": 2, \"lanes\": 1 }, \"marks\": \"sewn\"", StringComparison.Ordinal));
            OutFolder = Bander.Print(_folder.FullPath).OutFolder!;
        }

        public string OutFolder { get; }

        public void Dispose() => _folder.Dispose();
    }

    private const double MmPerUnit = 25.4 / 72;
    private const double LongTickMm = 3;
    private const double CutWidthMm = 50.8;

    [Theory]
    [InlineData("a4", 297, 210)]
    [InlineData("letter", 279.4, 215.9)]
    public void The_paper_lies_on_its_side_and_the_corners_of_the_test_square_have_their_places(
        string paper, double widthMm, double heightMm)
    {
        using var pdf = Open(paper);
        Assert.All(pdf.GetPages(), page =>
        {
            Assert.Equal(widthMm, page.Width * MmPerUnit, 0.1);
            Assert.Equal(heightMm, page.Height * MmPerUnit, 0.1);
        });
        var square = Assert.Single(Boxes(pdf, 1), b => Math.Abs(b.Width - 50) < 0.1 && Math.Abs(b.Height - 50) < 0.1);
        Assert.Equal(widthMm - 12, square.Right, 0.1);
        Assert.Equal(10, square.Top, 0.1);
    }

    [Theory]
    [InlineData("a4")]
    [InlineData("letter")]
    public void Crosses_lie_on_the_tape_where_the_needle_sews_them(string paper)
    {
        using var pdf = Open(paper);
        var row = Rows(pdf, 1)[0];
        double metre = row.CrossesMm[0] - Tick(row, 100);
        var sewn = MarksOnCloth().Where(m => m.Cloth == 1).Select(m => m.AtMm).Order().ToList();
        Assert.Equal(sewn[0] - 100, metre, 0.1);
        var drawn = row.CrossesMm.Select(x => 100 + x - Tick(row, 100)).ToList();
        Assert.True(drawn.Count > 3);
        Assert.All(drawn.Zip(sewn), pair => Assert.Equal(pair.Second, pair.First, 0.1));
    }

    [Theory]
    [InlineData("a4")]
    [InlineData("letter")]
    public void The_lines_to_be_laid_on_each_other_are_one_place_of_the_strip(string paper)
    {
        using var pdf = Open(paper);
        var rows = Rows(pdf, 1);
        Assert.Equal(2, rows.Count);
        double before = 300 + rows[0].JoinsMm[^1] - Tick(rows[0], 300);
        double after = 400 + rows[1].JoinsMm[0] - Tick(rows[1], 400);
        Assert.Equal(before, after, 0.1);
        Assert.Contains("1A", pdf.GetPage(1).Text, StringComparison.Ordinal);
    }

    /// <summary>The needle stays within the pull compensation of 0.2 mm of the outline that it fills.</summary>
    [Fact]
    public void The_first_name_is_drawn_where_it_is_sewn()
    {
        using var pdf = Open("a4");
        var row = Rows(pdf, 1)[0];
        double left = 100 + row.LettersLeftMm - Tick(row, 100);
        var hooping = Plan().GetProperty("hoopings")[0];
        double sewn = hooping.GetProperty("onClothMm").GetDouble() + Stitches(hooping, marks: false).Min(p => p.X);
        Assert.Equal(sewn + 0.2, left, 0.15);
    }

    [SkippableFact]
    public void Every_row_says_which_it_is_and_every_page_how_many_there_are()
    {
        OutsideTool.Require("pdftotext", "poppler-utils");
        string text = OutsideTool.Run("pdftotext", ["-enc", "UTF-8", In(OutPaths.HoopingTemplate("a4")), "-"]);
        using var pdf = Open("a4");
        for (int page = 1; page <= pdf.NumberOfPages; page++)
        {
            Assert.Contains($"page {page} of {pdf.NumberOfPages}", text, StringComparison.Ordinal);
        }

        foreach (string strip in new[] { "cloth 1, round 1", "cloth 2, round 2" })
        {
            int rows = text.Split(strip + ", row ").Length - 1;
            Assert.InRange(rows, 15, 20);
            Assert.All(Enumerable.Range(1, rows), row => Assert.Contains($"{strip}, row {row} of {rows}", text, StringComparison.Ordinal));
        }
    }

    /// <summary>Both crosses of a hooping stand on one row, with its mark: no row ends inside it.</summary>
    [Fact]
    public void Every_hooping_is_whole_on_one_row()
    {
        var plan = printed.Report.Plan!;
        using var pdf = PdfDocument.Open(printed.File(OutPaths.HoopingTemplate("a4")));
        var rows = Enumerable.Range(1, pdf.NumberOfPages).SelectMany(page => pdf.GetPage(page).GetWords()
            .GroupBy(w => Math.Round(w.BoundingBox.Bottom / 60)).Select(line => string.Join(' ', line.Select(w => w.Text)))).ToList();
        foreach (var hooping in plan.Hoopings)
        {
            string begins =
                FormattableString.Invariant(
                    $"{hooping.Number}: {Common.Thousandths.Tenths(hooping.OnClothMm + 3):0.0}, mark {PlanFile.SheetMarks.Of(plan, hooping)}");
            Assert.Contains(rows, row => row.Contains(begins, StringComparison.Ordinal));
        }
    }

    /// <summary>Rows of any cloth, with hoopings of any length one behind the other and side by side.</summary>
    [Fact]
    public void No_row_ends_inside_a_hooping_that_a_row_can_hold()
    {
        var random = new Random(18);
        for (int i = 0; i < 400; i++)
        {
            double end = 200 + (random.NextDouble() * 4000), at = random.Next(100);
            double length = random.Next(2) == 0 ? 273 : 255.4;
            var hooped = new List<(double FromMm, double ToMm)>();
            while (at + 20 < end)
            {
                double to = Math.Min(end, at + 20 + (random.NextDouble() * 230));
                hooped.Add((at, to));
                at = to + (random.Next(3) == 0 ? -10 : random.NextDouble() * 30);
            }

            var windows = TemplateWindow.Of(0, end, length, hooped);
            Assert.Equal((0, end), (windows[0].FromMm, windows[^1].ToMm));
            Assert.All(windows, w => Assert.InRange(w.ToMm - w.FromMm, 0, length + 1e-9));
            Assert.All(windows.Zip(windows.Skip(1)), p => Assert.Equal(Template.OverlapMm, p.First.ToMm - p.Second.FromMm, 9));
            Assert.All(hooped, h => Assert.Contains(windows, w => w.FromMm <= h.FromMm && w.ToMm >= h.ToMm));
        }
    }

    private sealed record Box(double Left, double Right, double Top, double Bottom, int Steps)
    {
        public double Width => Right - Left;

        public double Height => Bottom - Top;

        public double MiddleX => (Left + Right) / 2;
    }

    private sealed record Row(List<double> TicksMm, List<double> CrossesMm, List<double> JoinsMm, double LettersLeftMm);

    /// <summary>The rows of a page, known by their frames of the cut width.</summary>
    private static List<Row> Rows(PdfDocument pdf, int page)
    {
        var boxes = Boxes(pdf, page);
        var frames = boxes.Where(b => Math.Abs(b.Height - CutWidthMm) < 0.1 && b.Width > 100).OrderBy(b => b.Top).ToList();
        return [.. frames.Select(f =>
        {
            var inside = boxes.Where(b => b.Top >= f.Top - 0.2 && b.Bottom <= f.Bottom + 0.2).ToList();
            var upright = inside.Where(b => b.Width < 0.1).ToList();
            return new Row(
                [.. upright.Where(b => Math.Abs(b.Height - LongTickMm) < 0.1 && Math.Abs(b.Bottom - f.Bottom) < 0.1).Select(b => b.MiddleX)
                .Order()],
                [.. upright.Where(b => Math.Abs(b.Height - 6) < 0.1).Select(b => b.MiddleX).Order()],
                [.. upright.Where(b => Math.Abs(b.Height - CutWidthMm) < 0.1).Select(b => b.MiddleX).Order()],
                inside.Where(b => b.Steps > 15).Min(b => b.Left));
        })];
    }

    /// <summary>Long ticks stand every 100 mm; a row's first is the first full 100 mm after its beginning.</summary>
    private static double Tick(Row row, double mm) => row.TicksMm[(int)Math.Round((mm - (mm < 400 ? 100 : 400)) / 100)];

    private static List<Box> Boxes(PdfDocument pdf, int number)
    {
        var page = pdf.GetPage(number);
        double height = page.Height * MmPerUnit;
        return [.. page.Paths.Where(p => p.IsStroked).SelectMany(p => p.Select(s => (Box: s.GetBoundingRectangle(), s.Commands.Count)))
            .Where(b => b.Box is not null)
            .Select(b => new Box(
                b.Box!.Value.Left * MmPerUnit, b.Box.Value.Right * MmPerUnit, height - (b.Box.Value.Top * MmPerUnit),
                height - (b.Box.Value.Bottom * MmPerUnit), b.Count))];
    }

    /// <summary>The middles of the crosses as the machine sews them: of each cluster of mark stitches.</summary>
    private IEnumerable<(int Cloth, double AtMm)> MarksOnCloth()
    {
        foreach (var hooping in Plan().GetProperty("hoopings").EnumerateArray())
        {
            var points = Stitches(hooping, marks: true);
            double middle = (points.Min(p => p.X) + points.Max(p => p.X)) / 2;
            foreach (var side in points.GroupBy(p => p.X > middle))
            {
                yield return (
                    hooping.GetProperty("cloth").GetInt32(),
                    hooping.GetProperty("onClothMm").GetDouble() + ((side.Min(p => p.X) + side.Max(p => p.X)) / 2));
            }
        }
    }

    private List<(double X, double Y)> Stitches(JsonElement hooping, bool marks)
    {
        var rows = File.ReadLines(In(hooping.GetProperty("needlePath").GetString()!)).Skip(1).Select(l => l.Split(',')).ToList();
        int stop = rows.FindIndex(r => r[3] == "stop");
        return [.. (marks ? rows.Take(stop) : rows.Skip(stop)).Where(r => r[3] == "stitch")
            .Select(r => (double.Parse(r[1], CultureInfo.InvariantCulture), double.Parse(r[2], CultureInfo.InvariantCulture)))];
    }

    private JsonElement Plan() => JsonDocument.Parse(File.ReadAllBytes(In("plan.json"))).RootElement;

    private PdfDocument Open(string paper) => PdfDocument.Open(File.ReadAllBytes(In(OutPaths.HoopingTemplate(paper))));

    private string In(string relative) => Path.Combine(strips.OutFolder, relative);
}
