using NameBand.Lettering.Faces;
using NameBand.Output.Keying;
using NameBand.Output.Sheets;
using NameBand.Tests.Outside;
using SixLabors.ImageSharp;
using SixLabors.ImageSharp.PixelFormats;
using Xunit;

namespace NameBand.Tests.MachineLettersRoom;

/// <summary>The sheet beside the machine is read in passing, from 1 m.</summary>
public class KeyInSheetTests
{
    private const int PixelsPerMm = 8;
    private const double CellMm = 12;

    /// <summary>Capitals seen from 1 m under 16 minutes of arc are the least that can be asked (ISO 9241-303, from memory).</summary>
    private const double LeastCapMm = 1000 * 16 / 60.0 * Math.PI / 180;

    [SkippableFact]
    public void Letters_that_look_alike_are_told_apart_and_a_blank_is_seen()
    {
        OutsideTool.Require("pdftoppm", "poppler-utils");
        var pictures = Pictures("1", "I", "l", "0", "O", "A A", "AA");
        foreach (var (one, other) in new[] { ("1", "I"), ("1", "l"), ("I", "l"), ("0", "O") })
        {
            Assert.InRange(Unlike(pictures[one], pictures[other]), 0.2, 1);
        }

        // What is beside the A and below it: only the mark of a blank has ink there.
        bool[] blank = pictures["A A"], none = pictures["AA"];
        Assert.True(Below(blank) > 20 && Below(none) == 0);
    }

    [Fact]
    public void Figures_are_as_large_as_is_read_from_a_metre()
    {
        using var face = SheetFace.Open();
        using var font = face.At(KeyInColumns.FigureMm);
        double cap = font.Metrics.CapHeight;
        Assert.InRange(cap, LeastCapMm, 2 * LeastCapMm);
    }

    /// <summary>Each text in a cell of its own, as black and white.</summary>
    private static Dictionary<string, bool[]> Pictures(params string[] texts)
    {
        using var folder = new TemporaryFolder();
        using (var face = SheetFace.Open())
        using (var file = File.Create(folder["sheet.pdf"]))
        using (var pages = new SheetPages(file, Paper.A4, "Sheet", "", face))
        {
            pages.Begin();
            for (int i = 0; i < texts.Length; i++)
            {
                new KeyedText(pages, 9).Draw(20 + (i * 2 * CellMm), 30, texts[i]);
            }
        }

        string dpi = (PixelsPerMm * 25.4).ToString(System.Globalization.CultureInfo.InvariantCulture);
        OutsideTool.Run("pdftoppm", ["-r", dpi, "-gray", "-png", "-singlefile", folder["sheet.pdf"], folder["sheet"]]);
        using var page = Image.Load<L8>(folder["sheet.png"]);
        int side = (int)(CellMm * PixelsPerMm);
        return texts.Select((t, i) => (Text: t, Left: (int)((20 + (i * 2 * CellMm)) * PixelsPerMm))).ToDictionary(
            c => c.Text,
            c => Enumerable.Range(0, side * side)
            .Select(p => page[c.Left + (p % side), ((30 - 9) * PixelsPerMm) + (p / side)].PackedValue < 128).ToArray());
    }

    /// <summary>Part of the ink of both that only one of them has, at the place where they differ least.</summary>
    private static double Unlike(bool[] one, bool[] other)
    {
        int side = (int)(CellMm * PixelsPerMm);
        return Enumerable.Range(-12, 25).Min(by =>
        {
            int differs = 0, ink = 0;
            for (int i = 0; i < one.Length; i++)
            {
                int x = (i % side) + by;
                bool a = one[i], b = x >= 0 && x < side && other[i + by];
                differs += a != b ? 1 : 0;
                ink += (a ? 1 : 0) + (b ? 1 : 0);
            }

            return (double)differs / ink;
        });
    }

    /// <summary>Ink below the base line.</summary>
    private static int Below(bool[] picture)
    {
        int side = (int)(CellMm * PixelsPerMm);
        return picture.Where((ink, i) => ink && i / side > (9 * PixelsPerMm) + 2).Count();
    }
}
