using System.Globalization;
using NameBand.Common;
using NameBand.MachineLetters.Alphabets;
using NameBand.MachineLetters.Measuring;
using NameBand.PlanFile;

namespace NameBand.Output.Sheets;

/// <summary>The printed sheet of lines to sew and measure.</summary>
internal static class MeasureSheet
{
    private const double LeftMm = 15; // The foot stands there too.
    // Rows to write in by hand.
    private const double RunMm = 9.5;
    private const double RowMm = 7.5;

    public static void Write(Stream stream, Paper paper, string title, double heightMm, IReadOnlyList<KeyInLine> lines, string fileToFill)
    {
        using var face = SheetFace.Open();
        Said height = $"{heightMm:0.##}";
        Said foot = $"{Packet.PaperTitle.Short(title)} · letters {height} mm · mark {Mark(heightMm, lines)}";
        using var pages = new SheetPages(stream, paper, $"{title}: lines to measure", foot, face);
        double y = FirstPage(pages, height, fileToFill);
        foreach (var run in lines.GroupBy(l => l.Run == 0 ? -l.Number : l.Run))
        {
            var together = run.ToList();
            if (y + RunMm + (RowMm * together.Count) > paper.HeightMm - 16)
            {
                pages.Begin();
                y = Heading(pages, 18);
            }

            KeyIn(pages, y, together);
            y += RunMm;
            foreach (var line in together)
            {
                Row(pages, y, line);
                y += RowMm;
            }
        }
    }

    /// <summary>Told from an earlier sheet by its lines and their height: there is no plan yet.</summary>
    private static string Mark(double heightMm, IReadOnlyList<KeyInLine> lines) =>
        SheetMarks.OfTexts([heightMm.ToString("0.##", CultureInfo.InvariantCulture), .. lines.Select(l => l.Text)]);

    private static double FirstPage(SheetPages pages, Said height, string fileToFill)
    {
        pages.Begin();
        pages.Text(LeftMm, 22, "Your machine’s letters, measured", 8);
        double y = 32;
        double width = pages.Paper.WidthMm - (2 * LeftMm);
        Said[] steps =
        [
            $"1. Set the machine to letters {height} mm high and leave that setting alone. Use the cloth, backing and thread of the strip.",
            "2. Key in each line with a box and sew it, one under the other; tick the box. ␣ is a blank. Where the machine lacks a letter, write none.",
            "3. Measure each part by itself, from the left edge of its first letter to the right edge of its last, to half a millimetre. Time the whole line if you can, first stitch to last.",
            $"4. Copy the lengths and seconds into {fileToFill} and run measure again.",
        ];
        foreach (var step in steps)
        {
            y = pages.Wrapped(LeftMm, y, width, step, 4.2) + 0.8;
        }

        return Heading(pages, y + 5);
    }

    private static double Heading(SheetPages pages, double y)
    {
        double right = pages.Paper.WidthMm - LeftMm;
        pages.Text(LeftMm, y, "Key in and sew, then measure each part", 3.6, Ink.Quiet);
        Said length = "Length, mm", seconds = "Seconds, all";
        pages.TextRight(right - 33, y, length, pages.Fitting(length, 3.6, 30), Ink.Quiet);
        pages.TextRight(right, y, seconds, pages.Fitting(seconds, 3.6, 30), Ink.Quiet);
        return y + 2;
    }

    private static void KeyIn(SheetPages pages, double y, IReadOnlyList<KeyInLine> run)
    {
        double right = pages.Paper.WidthMm - LeftMm;
        pages.Line(LeftMm, y, right, y, 0.3);
        Said text = Said.Plain(Letters.Shown(string.Join(LineRuns.Between, run.Select(l => l.Text))));
        pages.Box(LeftMm, y + 2.6, 4.5, 4.5);
        pages.Text(LeftMm + 8, y + 7.2, text, pages.Fitting(text, 6.2, right - 26 - LeftMm - 8));
        pages.Line(right - 20, y + 8, right, y + 8);
    }

    private static void Row(SheetPages pages, double y, KeyInLine line)
    {
        double right = pages.Paper.WidthMm - LeftMm;
        double baseline = y + 5.4;
        pages.PutRight(LeftMm + 14, baseline, line.Number.ToString(CultureInfo.InvariantCulture), 4, Ink.Quiet);
        Said text = Said.Plain(Letters.Shown(line.Text));
        pages.Text(LeftMm + 18, baseline, text, pages.Fitting(text, 5, right - 60 - LeftMm - 18));
        pages.Line(right - 55, baseline + 0.8, right - 33, baseline + 0.8);
    }
}
