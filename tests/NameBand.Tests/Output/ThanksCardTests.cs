using System.Xml.Linq;
using NameBand.MachineLetters.Alphabets;
using NameBand.Tests.Outside;
using UglyToad.PdfPig;
using Xunit;

namespace NameBand.Tests.OutputRoom;

/// <summary>Cards to cut apart: eight on a page, each with its place, and an address that a reader of codes reads.</summary>
public sealed class ThanksCardTests(SentSample sent) : IClassFixture<SentSample>
{
    [Theory]
    [InlineData("a4", 595.3, 841.9)]
    [InlineData("letter", 612, 792)]
    public void Seven_names_stand_on_one_page_each_in_its_own_card(string paper, double wide, double high)
    {
        using var pdf = PdfDocument.Open(sent.File($"sheets/thanks-cards-{paper}.pdf"));
        var page = Assert.Single(pdf.GetPages());
        Assert.Equal(wide, page.Width, 0.5);
        Assert.Equal(high, page.Height, 0.5);
        var starts = page.Letters.Where((l, i) => l.Value == "T" && i + 1 < page.Letters.Count && page.Letters[i + 1].Value == "h")
            .Select(l => ((int)(l.Location.X * 2 / page.Width), (int)((page.Height - l.Location.Y) * 4 / page.Height))).ToList();
        Assert.Equal(SentSample.Names.Length, starts.Distinct().Count());
        Assert.All(
            page.Letters, l => Assert.True(l.BoundingBox.Right < (l.Location.X < page.Width / 2 ? page.Width / 2 : page.Width) - 15));
    }

    [SkippableFact]
    public void The_code_on_each_card_is_read_back_by_another_reader()
    {
        OutsideTool.Require("zbarimg", "zbar-tools");
        OutsideTool.Require("pdftoppm", "poppler-utils");
        using var folder = new TemporaryFolder().With("cards.pdf", sent.File("sheets/thanks-cards-a4.pdf"));
        OutsideTool.Run("pdftoppm", ["-r", "200", "-gray", "-png", folder["cards.pdf"], folder["cards"]]);
        string picture = Directory.GetFiles(folder.FullPath, "*.png").Single();
        string[] read = OutsideTool.Run("zbarimg", ["--quiet", "--raw", picture]).Split('\n', StringSplitOptions.RemoveEmptyEntries);
        Assert.Equal(
            Enumerable.Range(1, SentSample.Names.Length).Select(n => $"https://lantern.example/n%C3%A4me#n{n}")
            .Order(StringComparer.Ordinal),
            read.Order(StringComparer.Ordinal));

        // It also reads one that lies on its head, and says so; one that is mirrored from left to right it takes for upright.
        var upright = XDocument.Parse(OutsideTool.Run("zbarimg", ["--quiet", "--xml", "-Sposition", picture])).Descendants()
            .Where(e => e.Name.LocalName == "symbol").Select(e => (string?)e.Attribute("orientation"));
        Assert.All(upright, way => Assert.Equal("UP", way));
    }
}
