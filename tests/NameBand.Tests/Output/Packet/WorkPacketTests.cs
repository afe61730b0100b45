using NameBand.Cloth;
using NameBand.Common;
using NameBand.Estimating;
using NameBand.Job;
using NameBand.Layout;
using NameBand.MachineLetters.Alphabets;
using NameBand.Output.Packet;
using NameBand.Output.Sheets;
using SkiaSharp;
using UglyToad.PdfPig;
using Xunit;

namespace NameBand.Tests.OutputRoom;

public sealed class WorkPacketTests(PrintedSample printed) : IClassFixture<PrintedSample>
{
    [Fact]
    public void The_same_job_gives_the_same_bytes()
    {
        Assert.Equal(Packet(OutSample.Plan(), "Lantern walk"), Packet(OutSample.Plan(), "Lantern walk"));
    }

    [Theory]
    [InlineData("a/b\\c: “x”? <*> | 行列 ⸘ \u0007")]
    [InlineData("مسيرة الفوانيس")]
    [InlineData("")]
    public void Any_title_can_be_printed(string title)
    {
        using var pdf = PdfDocument.Open(Packet(OutSample.Plan(), title));
        Assert.InRange(pdf.NumberOfPages, 6, 12);
    }

    [Fact]
    public void A_long_title_and_long_names_stay_on_the_paper()
    {
        string words = string.Join(' ', Enumerable.Repeat("Wolkenschieberin", 12));
        using var pdf = PdfDocument.Open(Packet(OutSample.Plan(), words + new string('W', 300)));
        Assert.All(pdf.GetPages(), page => Assert.All(page.Letters, l => Assert.InRange(l.BoundingBox.Right, 0, page.Width)));
    }

    [Fact]
    public void A_strip_longer_than_the_paper_goes_on_in_rows()
    {
        var plan = OutSample.Plan();
        var wide = plan.Hoopings[0].Segments[0];
        var longer = wide with { Segment = wide.Segment with { LengthMm = 500 } };
        var hooping = plan.Hoopings[0] with { Segments = [longer] };
        using var pdf = PdfDocument.Open(Packet(plan with { Hoopings = plan.Hoopings.SetItem(0, hooping) }, "Long"));
        string text = string.Concat(pdf.GetPages().Select(p => p.Text));
        Assert.Equal(2, text.Split("goes on below").Length - 1);
    }

    /// <summary>Hoopings of two strips of 50.8 mm at true size: two fill a page, but for the first below its heading.</summary>
    [Theory]
    [InlineData("a4")]
    [InlineData("letter")]
    public void Two_hoopings_share_a_page(string paper)
    {
        using var pdf = PdfDocument.Open(printed.File($"sheets/work-packet-{paper}.pdf"));
        int[] heads = [.. pdf.GetPages().Select(p => p.GetWords().ToList()).Select(w => w.Zip(w.Skip(1), w.Skip(2))
            .Count(t => t.First.Text == "Hooping" && int.TryParse(t.Second.Text, out _) && t.Third.Text == "mark")).Where(n => n > 0)];
        Assert.Equal(Directory.GetFiles(printed.FullPath("needle-paths"), "*.csv").Length, heads.Sum());
        Assert.Equal([1, .. Enumerable.Repeat(2, heads.Length - 1)], heads);
    }

    /// <summary>A mark is copied by hand: two signs laid over one another share less than four fifths of their ink.</summary>
    [Theory]
    [InlineData(SheetFace.PlainName)]
    [InlineData(SheetFace.BoldName)]
    public void Signs_that_are_copied_by_hand_are_told_apart(string face)
    {
        using var sheet = SheetFace.Open(face);
        Assert.All(new[] { "1I", "Il", "1l", "0O" }, pair => Assert.InRange(InCommon(sheet, pair[0], pair[1]), 0, MostInCommon));
    }

    private const double MostInCommon = 0.8;

    /// <summary>Ink that two signs share of the ink of both, their boxes laid middle on middle.</summary>
    private static double InCommon(SheetFace face, char one, char other)
    {
        using var font = face.At(100);
        using var a = Centred(font, one);
        using var b = Centred(font, other);
        using var both = a.Op(b, SKPathOp.Intersect);
        using var either = a.Op(b, SKPathOp.Union);
        return InkOf(both) / InkOf(either);
    }

    private static SKPath Centred(SKFont font, char sign)
    {
        var path = font.GetTextPath($"{sign}", new SKPoint(0, 0));
        path.Transform(SKMatrix.CreateTranslation(-path.TightBounds.MidX, -path.TightBounds.MidY));
        return path;
    }

    private static int InkOf(SKPath path)
    {
        using var bitmap = new SKBitmap(200, 200, SKColorType.Alpha8, SKAlphaType.Premul);
        using var canvas = new SKCanvas(bitmap);
        using var paint = new SKPaint { IsAntialias = false };
        canvas.Translate(100, 100);
        canvas.DrawPath(path, paint);
        return bitmap.Bytes.Count(b => b > 0);
    }

    /// <summary>Threads that lie loose are read off the needle paths themselves: a way that begins without a cut before it.</summary>
    [Fact]
    public void The_packet_asks_to_clip_only_what_the_machine_does_not_cut()
    {
        int loose = 0;
        int cuts = 0;
        foreach (string path in Directory.GetFiles(printed.FullPath("needle-paths"), "*.csv"))
        {
            string last = "";
            foreach (string action in File.ReadLines(path).Skip(1).Select(l => l[(l.LastIndexOf(',') + 1)..]))
            {
                loose += last == "stitch" && action is "jump" or "stop" or "end" && last == "stitch" ? 1 : 0;
                cuts += action == "trim" ? 1 : 0;
                last = action;
            }
        }

        Assert.Equal(0, loose);
        Assert.True(cuts > 60, $"{cuts}");
        using var pdf = PdfDocument.Open(printed.File("sheets/work-packet-a4.pdf"));
        string text = string.Concat(pdf.GetPages().SelectMany(p => p.GetWords()).Select(w => w.Text + " "));
        Assert.Contains("Clip the ends that the machine leaves where it cuts", text, StringComparison.Ordinal);
        Assert.DoesNotContain("that lie loose", text, StringComparison.Ordinal);
    }

    [Fact]
    public void The_name_finder_has_each_name_once_sorted()
    {
        string[] lines = System.Text.Encoding.UTF8.GetString(printed.File("sheets/name-finder.csv")[3..])
            .Split("\r\n", StringSplitOptions.RemoveEmptyEntries);
        Assert.Equal(61, lines.Length);
        Assert.StartsWith("name,number,round,", lines[0], StringComparison.Ordinal);
        var plan = printed.Report.Plan!;
        var rows = lines.Skip(1).Select(l => l.Split(',')).ToList();
        Assert.Equal(
            Enumerable.Range(1, 60), rows.Select(c => int.Parse(c[^13], System.Globalization.CultureInfo.InvariantCulture)).Order());
        var latin = rows.Select(c => c[0]).Where(n => n.All(char.IsAscii)).ToList();
        Assert.True(latin.Count > 20);
        Assert.Equal(latin.Order(StringComparer.InvariantCultureIgnoreCase), latin);
        foreach (string[] cells in rows)
        {
            var name = plan.Rounds.SelectMany(r => r.Names)
                .Single(n => n.Order == int.Parse(cells[^13], System.Globalization.CultureInfo.InvariantCulture));
            Assert.Equal(name.Lettered.Name.Text, cells[0]);
            Assert.Equal(name.StartMm, double.Parse(cells[^11], System.Globalization.CultureInfo.InvariantCulture), 0.051);
        }
    }

    private static byte[] Packet(StripPlan plan, string title)
    {
        var job = Sample.Job with { Title = title };
        var estimate = OutSample.Estimate(plan);
        var matter = new PacketMatter(
            job, FabricTable.All[0], plan, estimate, Shopping.For(job, plan, estimate), h => OutSample.Path(plan, h));
        using var stream = new MemoryStream();
        WorkPacket.Write(stream, Paper.A4, matter);
        return stream.ToArray();
    }
}
