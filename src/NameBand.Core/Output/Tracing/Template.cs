using System.Globalization;
using NameBand.Common;
using NameBand.Layout;
using NameBand.Output.Sheets;
using SkiaSharp;

namespace NameBand.Output.Tracing;

/// <summary>
/// The strips at true size on paper: rows to be cut out and taped together where their marks meet, to lie under or over
/// the strip or to be printed on tear-away.
/// </summary>
internal static class Template
{
    private const double MarginMm = 12;
    private const double OverlapMm = 15;
    private const double BetweenRowsMm = 9;
    private const double SquareMm = 50;

    public static void Write(Stream stream, Paper paper, string title, StripPlan plan, TraceLines lines, bool mirrored)
    {
        using var face = SheetFace.Open();
        var wide = paper.OnItsSide;
        string side = mirrored ? "mirror image, for the wrong side" : "as it is read";
        using var pages = new SheetPages(stream, wide, $"{title}: template", $"{title} · print at 100 % · {side}", face);
        double rowHeight = plan.Hem.Strip.CutWidthMm + BetweenRowsMm;
        double rowLength = wide.WidthMm - (2 * MarginMm);
        pages.Begin();
        double y = Head(pages, title, plan, side);
        foreach (var round in plan.Rounds)
        {
            double all = plan.OnClothMm(round.LengthMm);
            int rows = Math.Max(1, (int)Math.Ceiling((all - OverlapMm) / (rowLength - OverlapMm)));
            for (int row = 0; row < rows; row++)
            {
                if (y + rowHeight > wide.HeightMm - 12)
                {
                    pages.Begin();
                    y = 10;
                }

                double from = row * (rowLength - OverlapMm);
                var window = new TemplateRow(
                    pages, plan, round, row + 1, rows, from, Math.Min(from + rowLength, all), MarginMm, y + (plan.Hem.Strip.CutWidthMm / 2), mirrored);
                window.Draw(lines, OverlapMm);
                y += rowHeight;
            }
        }
    }

    private static double Head(SheetPages pages, string title, StripPlan plan, string side)
    {
        double right = pages.Paper.WidthMm - MarginMm;
        pages.Text(MarginMm, 18, title, pages.Fitting(title, 7, right - MarginMm - SquareMm - 10));
        string[] notes =
        [
            FormattableString.Invariant($"Template, {side}: {plan.NameCount} names, letters {plan.LetterHeightMm:0.0} mm high."),
            "Print at 100 %, without fitting to the page. The square must measure 50 mm each way: if it does not, the printer has scaled it.",
            FormattableString.Invariant($"Cut the rows out and tape them together so that the two lines marked with the same letter lie on each other ({OverlapMm:0} mm overlap)."),
            "Heavy lines are the middle of each stroke, light ones its edge. Dashed lines are the folds, outer lines the cut. The scale below counts centimetres on the flat strip.",
            ReadMePage.CareInOneLine,
        ];
        double y = 26;
        foreach (string note in notes)
        {
            y = pages.Wrapped(MarginMm, y, right - MarginMm - SquareMm - 10, note, 3.7) + 0.8;
        }

        pages.Box(right - SquareMm, 10, SquareMm, SquareMm, 0.2);
        pages.Text(right - SquareMm + 4, 10 + (SquareMm / 2), "50 mm × 50 mm", 4);
        pages.Line(right - SquareMm, 10 + SquareMm - 5, right - SquareMm + Length.MmPerInch, 10 + SquareMm - 5, 0.2);
        pages.Line(right - SquareMm + Length.MmPerInch, 10 + SquareMm - 7, right - SquareMm + Length.MmPerInch, 10 + SquareMm - 3, 0.2);
        pages.Text(right - SquareMm + Length.MmPerInch + 1.5, 10 + SquareMm - 3.8, "1 in", 3, Ink.Quiet);
        return Math.Max(y, 10 + SquareMm) + 6;
    }
}
