using System.Collections.Immutable;
using NameBand.Common;
using NameBand.Layout;
using NameBand.Output.Sheets;
using NameBand.PlanFile;

namespace NameBand.Output.Tracing;

/// <summary>
/// The strips at true size on paper: rows to be cut out and taped together where their marks meet, to lie under, over or
/// beside the strip, or to be printed on tear-away.
/// </summary>
internal static class Template
{
    public const double OverlapMm = 15; // Room for glue or tape between the two lines that are laid on each other: our choice.
    // What printers leave blank, the upper edge, and room between rows for scissors and their scale.
    internal const double MarginMm = 12;
    private const double TopMm = 10; // Rows come near to the paper's upper edge, for nothing stands above them.
    private const double BetweenRowsMm = 9; // A row's scale with its numbers, and room for scissors.

    private sealed record Words(string Title, Said Side, Said[] Notes);

    /// <summary>For names that are traced: the lines to follow.</summary>
    public static void Write(Stream stream, Paper paper, string title, StripPlan plan, TraceLines lines, bool mirrored)
    {
        Said side = mirrored ? "mirror image, for the wrong side" : "as it is read";
        Said follow =
            "Heavy lines are the middle of each stroke, light ones its edge. Dashed lines are the folds, upright ones at the ends too; outer lines the cut. The scale below counts centimetres on the flat strip from its cut left end.";
        var look = new TemplateLook(lines, plan.Hem.Strip, mirrored, WithCentres: true) { MarkOf = h => SheetMarks.Of(plan, h) };
        Write(stream, paper, new Words(title, side, Notes(plan, side, [follow, ReadMePage.CareInOneLine])), plan, look, default);
    }

    /// <summary>For hoopings: where each name and each alignment cross will lie on the flat cloth.</summary>
    public static void WriteHoopings(Stream stream, Paper paper, string title, StripPlan plan, CancellationToken cancel)
    {
        Said side = "as it is read";
        Said marks =
            "Crosses are the alignment marks, with their hooping’s number and the cloth’s tape in mm. Dashed lines are the folds, outer lines the cut. The scale below counts centimetres from the cloth’s left end. Lay it under thin cloth or beside it, and rule and mark from it.";
        var outlines = new TraceLines(plan.LetterHeightMm, followOutline: true);
        var look = new TemplateLook(outlines, plan.Hem.Strip, Mirrored: false, WithCentres: false)
        {
            MarkOf = h => SheetMarks.Of(plan, h),
        };
        Write(stream, paper, new Words(title, side, Notes(plan, side, [marks])), plan, look, cancel);
    }

    private static void Write(
        Stream stream, Paper paper, Words words, StripPlan plan, TemplateLook look, CancellationToken cancel)
    {
        var (title, side, notes) = words;
        using var face = SheetFace.Open();
        var wide = paper.OnItsSide;
        SheetPages.WriteCounted(
            stream, wide, $"{title}: template", $"{Packet.PaperTitle.WithMark(title, plan)} · print at 100 % · {side}", (face, null),
            pages =>
        {
            double length = wide.WidthMm - (2 * MarginMm);
            pages.Begin();
            double y = Head(pages, title, notes);
            double bottom = wide.HeightMm - 12;
            foreach (var cloth in Beside(TemplateStrip.OfCloths(plan)))
            {
                double half = Math.Min(look.HalfHeightMm(cloth[0]), (bottom - TopMm - BetweenRowsMm) / 2);
                double rowMm = (2 * half) + BetweenRowsMm;
                foreach (var window in TemplateWindow.Of(
                    cloth.Min(s => s.FromMm), cloth.Max(s => s.ToMm), length, [.. cloth.SelectMany(s => s.Hooped)]))
                {
                    cancel.ThrowIfCancellationRequested();
                    TemplateStrip[] seen = [.. cloth.Where(s => s.FromMm < window.ToMm && s.ToMm > window.FromMm)];
                    double all = seen.Length * rowMm;
                    foreach (var strip in seen)
                    {
                        // Strips side by side stand on one page, the upper one above, where a page can hold them.
                        double room = strip == seen[0] && TopMm + all <= bottom ? all : rowMm;
                        if (y + room > bottom)
                        {
                            pages.Begin();
                            y = TopMm;
                        }

                        if (!pages.IsCounting)
                        {
                            var row = new TemplateRow(pages, strip, look, window, y + half, half);
                            pages.AsItLies(row.Draw);
                        }

                        y += rowMm;
                    }
                }
            }
        });
    }

    /// <summary>Strips that are hooped side by side, from the upper one down; every other strip by itself.</summary>
    private static IEnumerable<ImmutableArray<TemplateStrip>> Beside(ImmutableArray<TemplateStrip> strips) =>
        strips.GroupBy(s => s.Hooped.IsEmpty ? "strip " + s.Code : FormattableString.Invariant($"cloth {s.Cloth}"))
            .Select(g => g.ToImmutableArray());

    private static Said[] Notes(StripPlan plan, Said side, Said[] last) =>
    [
        $"Template, {side}: {Said.Plural(plan.NameCount, $"{plan.NameCount} names", $"{plan.NameCount} names")}, letters {plan.LetterHeightsInWords} high.",
        "Print at 100 %, without fitting to the page. The square must measure 50 mm each way: if it does not, the printer has scaled it.",
        $"Cut the rows out and tape them together so that the two lines marked with the same letter lie on each other ({OverlapMm:0} mm overlap).",
        .. last,
    ];

    private static double Head(SheetPages pages, string title, Said[] notes)
    {
        double right = pages.Paper.WidthMm - MarginMm;
        double room = right - MarginMm - Packet.FrontPage.SquareMm - 10;
        Said shown = Said.Plain(Packet.PaperTitle.Short(title));
        pages.Text(MarginMm, 18, shown, pages.Fitting(shown, 7, room));
        double y = 26;
        foreach (var note in notes)
        {
            y = pages.Wrapped(MarginMm, y, room, note, 3.7) + 0.8;
        }

        pages.Box(right - Packet.FrontPage.SquareMm, 10, Packet.FrontPage.SquareMm, Packet.FrontPage.SquareMm, 0.2);
        pages.Text(right - Packet.FrontPage.SquareMm + 4, 10 + (Packet.FrontPage.SquareMm / 2), "50 mm × 50 mm", 4);
        double inch = right - Packet.FrontPage.SquareMm + Length.MmPerInch;
        pages.Line(right - Packet.FrontPage.SquareMm, 10 + Packet.FrontPage.SquareMm - 5, inch, 10 + Packet.FrontPage.SquareMm - 5, 0.2);
        pages.Line(inch, 10 + Packet.FrontPage.SquareMm - 7, inch, 10 + Packet.FrontPage.SquareMm - 3, 0.2);
        pages.Text(inch + 1.5, 10 + Packet.FrontPage.SquareMm - 3.8, "1 in", 3, Ink.Quiet);
        return Math.Max(y, 10 + Packet.FrontPage.SquareMm) + 6;
    }
}
