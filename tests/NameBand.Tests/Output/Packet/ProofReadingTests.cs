using NameBand.Cloth;
using NameBand.Estimating;
using NameBand.Output.Packet;
using NameBand.Output.Sheets;
using NameBand.Tests.Outside;
using UglyToad.PdfPig;
using Xunit;

namespace NameBand.Tests.OutputRoom;

public sealed class ProofReadingTests(PrintedSample printed) : IClassFixture<PrintedSample>
{
    [SkippableFact]
    public void Every_name_stands_on_it_twice_sorted_and_in_sewing_order()
    {
        OutsideTool.Require("pdftotext", "poppler-utils");
        string text = OutsideTool.Run("pdftotext", ["-layout", "-enc", "UTF-8", printed.FullPath("sheets/proof-reading-a4.pdf"), "-"]);
        var latin = printed.Report.Plan!.Rounds.SelectMany(r => r.Names).OrderBy(n => n.Order).Select(n => n.Lettered.Name.Text)
            .Where(t => t.All(c => c < '\u0300')).ToList();
        Assert.True(latin.Count > 40);
        Assert.All(latin, name => Assert.True(text.Split(name).Length >= 3, name));
        string sewing = text[text.IndexOf("The same names in the order of sewing", StringComparison.Ordinal)..];
        var places = latin.Distinct().Select(n => sewing.IndexOf(n, StringComparison.Ordinal)).ToList();
        Assert.Equal(places.Order(), places);
    }

    [Fact]
    public void Names_are_large_and_a_very_long_one_takes_several_lines()
    {
        var plan = OutSample.Plan();
        string longName = string.Join(' ', Enumerable.Repeat("Wolkenschieberin", 12));
        var first = plan.Hoopings[0].Segments[0];
        var name = first.Segment.Names[0];
        var renamed = name with { Lettered = Sample.Boxed(longName, 8) };
        var segment = first with { Segment = first.Segment with { Names = first.Segment.Names.SetItem(0, renamed) } };
        var longer = plan with { Hoopings = plan.Hoopings.SetItem(0, plan.Hoopings[0] with { Segments = [segment] }) };
        var estimate = OutSample.Estimate(longer);
        using var stream = new MemoryStream();
        ProofReadingSheet.Write(
            stream, Paper.A4,
            new PacketMatter(
                Sample.Job, FabricTable.All[0], longer, estimate, Shopping.For(Sample.Job, longer, estimate),
                h => OutSample.Path(longer, h)));
        using var pdf = PdfDocument.Open(stream.ToArray());
        Assert.Equal(24, pdf.GetPages().SelectMany(p => p.GetWords()).Count(w => w.Text == "Wolkenschieberin"));
        Assert.All(
            pdf.GetPages().SelectMany(p => p.GetWords()).Where(w => w.Text == "Wolkenschieberin"),
            w => Assert.True(w.BoundingBox.Right < 210 * 72 / 25.4 && w.BoundingBox.Height > 12));
    }
}
