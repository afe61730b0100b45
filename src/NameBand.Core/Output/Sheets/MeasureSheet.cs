using System.Globalization;
using NameBand.MachineLetters;
using NameBand.MachineLetters.Measuring;

namespace NameBand.Output.Sheets;

/// <summary>The printed sheet of lines to sew and measure.</summary>
internal static class MeasureSheet
{
    private const double LeftMm = 15;
    private const double RowMm = 9;

    public static void Write(Stream stream, Paper paper, string title, double heightMm, IReadOnlyList<KeyInLine> lines, string fileToFill)
    {
        using var face = SheetFace.Open();
        string height = heightMm.ToString("0.##", CultureInfo.InvariantCulture);
        using var pages = new SheetPages(stream, paper, $"{title}: lines to measure", $"{title} · letters {height} mm", face);
        double y = FirstPage(pages, height, fileToFill);
        foreach (var line in lines)
        {
            if (y + RowMm > paper.HeightMm - 16)
            {
                pages.Begin();
                y = Heading(pages, 18);
            }

            Row(pages, y, line);
            y += RowMm;
        }
    }

    private static double FirstPage(SheetPages pages, string height, string fileToFill)
    {
        pages.Begin();
        pages.Text(LeftMm, 22, "Your machine’s letters, measured", 8);
        double y = 32;
        double width = pages.Paper.WidthMm - (2 * LeftMm);
        string[] steps =
        [
            $"1. Set the machine to letters {height} mm high and leave that setting alone. Use the cloth, backing and thread of the strip.",
            "2. Key in and sew each line below, one under the other. ␣ is a blank. If the machine has no such letter, write none.",
            "3. Measure from the left edge of the first letter to the right edge of the last, to half a millimetre. Time it if you can, first stitch to last.",
            $"4. Copy the lengths and seconds into {fileToFill} and run measure again.",
        ];
        foreach (string step in steps)
        {
            y = pages.Wrapped(LeftMm, y, width, step, 4.2) + 0.8;
        }

        return Heading(pages, y + 5);
    }

    private static double Heading(SheetPages pages, double y)
    {
        double right = pages.Paper.WidthMm - LeftMm;
        pages.Text(LeftMm, y, "Line", 3.6, Ink.Quiet);
        pages.Text(LeftMm + 14, y, "Key in", 3.6, Ink.Quiet);
        pages.TextRight(right - 45, y, "Length, mm", 3.6, Ink.Quiet);
        pages.TextRight(right - 12, y, "Seconds", 3.6, Ink.Quiet);
        pages.TextRight(right, y, "Sewn", 3.6, Ink.Quiet);
        pages.Line(LeftMm, y + 2, right, y + 2, 0.3);
        return y + 3;
    }

    private static void Row(SheetPages pages, double y, KeyInLine line)
    {
        double right = pages.Paper.WidthMm - LeftMm;
        double baseline = y + 6;
        pages.TextRight(LeftMm + 8, baseline, line.Number.ToString(CultureInfo.InvariantCulture), 5);
        string text = Letters.Shown(line.Text);
        pages.Text(LeftMm + 14, baseline, text, pages.Fitting(text, 6.5, right - 72 - LeftMm - 14));
        pages.Line(right - 70, baseline + 1, right - 45, baseline + 1);
        pages.Line(right - 35, baseline + 1, right - 12, baseline + 1);
        pages.Box(right - 5.5, baseline - 4, 5, 5);
        pages.Line(LeftMm, y + RowMm - 0.3, right, y + RowMm - 0.3, 0.1, Ink.Faint);
    }
}
