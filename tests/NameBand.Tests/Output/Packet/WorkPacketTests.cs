using NameBand.Cloth;
using NameBand.Common;
using NameBand.Estimating;
using NameBand.Job;
using NameBand.Layout;
using NameBand.Output.Packet;
using NameBand.Output.Sheets;
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
        string[] lines = System.Text.Encoding.UTF8.GetString(printed.File("sheets/name-finder.csv")[3..]).Split("\r\n", StringSplitOptions.RemoveEmptyEntries);
        Assert.Equal(61, lines.Length);
        Assert.StartsWith("name,number,round,", lines[0], StringComparison.Ordinal);
        var plan = printed.Report.Plan!;
        var rows = lines.Skip(1).Select(l => l.Split(',')).ToList();
        Assert.Equal(Enumerable.Range(1, 60), rows.Select(c => int.Parse(c[^13], System.Globalization.CultureInfo.InvariantCulture)).Order());
        var latin = rows.Select(c => c[0]).Where(n => n.All(char.IsAscii)).ToList();
        Assert.True(latin.Count > 20);
        Assert.Equal(latin.Order(StringComparer.InvariantCultureIgnoreCase), latin);
        foreach (string[] cells in rows)
        {
            var name = plan.Rounds.SelectMany(r => r.Names).Single(n => n.Order == int.Parse(cells[^13], System.Globalization.CultureInfo.InvariantCulture));
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
