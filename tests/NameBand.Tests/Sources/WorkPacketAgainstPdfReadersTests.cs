using System.Globalization;
using NameBand.Output;
using NameBand.Output.Sheets;
using NameBand.Tests.OutputRoom;
using NameBand.Tests.Outside;
using UglyToad.PdfPig;
using UglyToad.PdfPig.Core;
using UglyToad.PdfPig.Tokens;
using Xunit;

namespace NameBand.Tests.Sources;

/// <summary>
/// The work packet, read back by two readers nobody here made: PdfPig and poppler (Debian poppler-utils). A PDF unit is
/// 1/72 in (ISO 32000-1, 8.3.2.3); A4 is 210 × 297 mm (ISO 216), letter 8 1/2 × 11 in (ANSI/ASME Y14.1).
/// </summary>
public sealed class WorkPacketAgainstPdfReadersTests(PrintedSample printed) : IClassFixture<PrintedSample>
{
    private const double MmPerUnit = 25.4 / 72;

    [Theory]
    [InlineData("a4", 210, 297)]
    [InlineData("letter", 215.9, 279.4)]
    public void Every_page_has_the_size_of_its_paper(string paper, double widthMm, double heightMm)
    {
        using var pdf = Open(paper);
        Assert.InRange(pdf.NumberOfPages, 15, 60);
        Assert.All(pdf.GetPages(), page =>
        {
            Assert.Equal(widthMm, page.Width * MmPerUnit, 0.1);
            Assert.Equal(heightMm, page.Height * MmPerUnit, 0.1);
        });
    }

    [Theory]
    [InlineData("a4")]
    [InlineData("letter")]
    public void The_squares_on_the_first_page_have_their_size(string paper)
    {
        using var pdf = Open(paper);
        var boxes = pdf.GetPage(1).Paths.Where(p => p.IsStroked).Select(p => p.GetBoundingRectangle()).OfType<PdfRectangle>()
            .Select(b => (Width: b.Width * MmPerUnit, Height: b.Height * MmPerUnit, Left: b.Left * MmPerUnit)).ToList();
        foreach (double side in new[] { 50, 50.8 })
        {
            var square = Assert.Single(boxes, b => Math.Abs(b.Width - side) < 0.1 && Math.Abs(b.Height - side) < 0.1);
            Assert.Equal(side == 50 ? 15 : 73, square.Left, 0.1);
        }
    }

    /// <summary>Washing, fastness, tension and a stiffened hem, each with a box to tick, and where it comes from.</summary>
    [Fact]
    public void What_is_tried_before_the_first_stitch_stands_in_it()
    {
        using var pdf = Open("a4");
        string text = string.Join(' ', pdf.GetPages().SelectMany(p => p.GetWords()).Select(w => w.Text))
            .Normalize(System.Text.NormalizationForm.FormKC);
        foreach (string said in new[]
        {
            "Before the first stitch", "Common practice, no source; what your cloth", "Wash the cloth of the strips",
            "Are the colours fast?", "middle third", "Is the hem stiffened? A braid or horsehair band",
        })
        {
            Assert.Contains(said, text, StringComparison.Ordinal);
        }
    }

    [Fact]
    public void Title_language_and_the_wish_to_be_printed_at_its_own_size_are_set()
    {
        using var pdf = Open("a4");
        Assert.Equal("Lantern walk: the river dancer's cloak: work packet", pdf.Information.Title);
        Assert.Null(pdf.Information.CreationDate);
        var catalogue = pdf.Structure.Catalog.CatalogDictionary;
        Assert.True(catalogue.TryGet(NameToken.Create("Lang"), out StringToken language));
        Assert.Equal("en", language.Data);
        Assert.True(catalogue.TryGet(NameToken.Create("ViewerPreferences"), out DictionaryToken wishes));
        Assert.True(wishes.TryGet(NameToken.Create("PrintScaling"), out NameToken scaling));
        Assert.Equal("None", scaling.Data);
    }

    [SkippableTheory]
    [InlineData("a4")]
    [InlineData("letter")]
    public void Every_name_is_found_as_text_in_its_own_script(string paper)
    {
        OutsideTool.Require("pdftotext", "poppler-utils");
        var names = printed.Report.Plan!.Rounds.SelectMany(r => r.Names).Select(n => n.Lettered.Name.Text).ToList();
        Assert.Equal(60, names.Count);
        PrintedNames.AreAllIn(printed.FullPath(OutPaths.WorkPacket(paper)), names);
    }

    [SkippableFact]
    public void Every_face_is_embedded_and_has_its_characters()
    {
        OutsideTool.Require("pdffonts", "poppler-utils");
        string[] lines = OutsideTool.Run("pdffonts", [printed.FullPath(OutPaths.WorkPacket("a4"))])
            .Split('\n', StringSplitOptions.RemoveEmptyEntries);
        Assert.True(lines.Length > 5);
        Assert.All(lines.Skip(2), line => Assert.Matches(@"\s+yes\s+yes\s+yes\s+\d+\s+0$", line.TrimEnd()));
    }

    /// <summary>The lines of the thread on paper span what the needle path spans, to a tenth of a millimetre.</summary>
    [Fact]
    public void A_hooping_is_drawn_at_true_size()
    {
        using var pdf = Open("a4");
        var hooping = printed.Report.Plan!.Hoopings[0];
        var seen = File.ReadLines(printed.FullPath(OutPaths.NeedlePath(hooping.Number))).Skip(1).Select(l => l.Split(','))
            .Where(c => c[3] == "stitch").Select(c => double.Parse(c[1], CultureInfo.InvariantCulture)).ToList();
        var threads = pdf.GetPages().Select(page => page.Paths.Where(p => p.IsStroked && p.Sum(s => s.Commands.Count) > 500)
            .Select(p => p.GetBoundingRectangle()).OfType<PdfRectangle>().ToList()).First(found => found.Count > 0);
        Assert.NotEmpty(threads);
        Assert.Equal(seen.Max() - seen.Min(), threads.MaxBy(t => t.Top).Width * MmPerUnit, 0.25);
    }

    [Fact]
    public void Each_hooping_has_its_block_with_marks_and_figures()
    {
        using var pdf = Open("a4");
        string text = string.Concat(pdf.GetPages().Select(p => p.Text)).Replace(" ", "", StringComparison.Ordinal)
            .Replace("\u00a0", "", StringComparison.Ordinal);
        foreach (var hooping in printed.Report.Plan!.Hoopings)
        {
            // The crosses have arms of 3 mm, so the first one has its middle 3 mm from the segment's end.
            string left = (hooping.OnClothMm + 3).ToString("0.0", CultureInfo.InvariantCulture);
            int from = text.IndexOf($"Hooping{hooping.Number}mark", StringComparison.Ordinal);
            Assert.True(from >= 0, $"Hooping {hooping.Number} has no block.");
            int to = text.IndexOf($"Hooping{hooping.Number + 1}mark", from, StringComparison.Ordinal);
            Assert.Contains($"leftmark{left}mm", to < 0 ? text[from..] : text[from..to], StringComparison.Ordinal);
        }
    }

    private PdfDocument Open(string paper) => PdfDocument.Open(printed.File(OutPaths.WorkPacket(paper)));
}
