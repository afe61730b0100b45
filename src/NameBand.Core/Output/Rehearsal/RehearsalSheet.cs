using NameBand.Common;
using NameBand.Layout;
using NameBand.Output.Packet;
using NameBand.Output.Sheets;
using NameBand.Output.Tracing;

namespace NameBand.Output.Rehearsal;

/// <summary>
/// The finished strips at true size on paper, whichever way the names will be sewn: to be cut out, taped together and pinned on the
/// garment before anything is sewn.
/// </summary>
internal static class RehearsalSheet
{
    // What printers leave blank, the bars above and the foot's line below.
    private const double MarginMm = 12;
    private const double TopMm = 14;
    private const double FootMm = 13;
    private const double BetweenRowsMm = 3; // Room for scissors between two rows.
    // Bars to lay a ruler on: ten centimetres and four inches, so that a printer that scales by 1 % is a millimetre out.
    private const double BarMm = 100;
    private const double FourInchesMm = 4 * Length.MmPerInch;

    /// <returns>How many sheets of the paper it takes.</returns>
    public static int Write(Stream stream, Paper paper, string title, StripPlan plan, CancellationToken cancel)
    {
        using var plain = SheetFace.Open(SheetFace.PlainName);
        using var strong = SheetFace.Open();
        var wide = paper.OnItsSide;
        return SheetPages.WriteCounted(
            stream, wide, $"{title}: paper rehearsal", $"{PaperTitle.WithMark(title, plan)} · print at 100 %", (plain, strong),
            pages => Draw(pages, title, plan, cancel));
    }

    private static void Draw(SheetPages pages, string title, StripPlan plan, CancellationToken cancel)
    {
        double bottom = pages.Paper.HeightMm - FootMm;
        double width = pages.Paper.WidthMm - (2 * MarginMm);
        NewPage(pages);
        double y = Head(pages, title, plan) + BetweenRowsMm;
        foreach (var round in plan.Rounds)
        {
            var marks = RehearsalMark.Of(plan, round);
            double longest = RehearsalPiece.LongestMm(plan, round, width, bottom - TopMm - RehearsalRow.LabelMm);
            double end = round.LengthMm + (plan.Hem.Closed ? Template.OverlapMm : 0);
            foreach (var window in TemplateWindow.Of(0, end, longest, []))
            {
                cancel.ThrowIfCancellationRequested();
                double height = RehearsalRow.HeightMm(plan, round, window);
                if (y + height > bottom)
                {
                    NewPage(pages);
                    y = TopMm;
                }

                if (!pages.IsCounting)
                {
                    var row = new RehearsalRow(pages, plan, round, window, MarginMm, y);
                    pages.AsItLies(() => row.Draw(marks));
                }

                y += height + BetweenRowsMm;
            }
        }
    }

    /// <summary>Every sheet has its own bars: each goes through the printer by itself.</summary>
    private static void NewPage(SheetPages pages)
    {
        pages.Begin();
        Bar(pages, MarginMm, BarMm, 10, "100 mm");
        Bar(pages, MarginMm + BarMm + 30, FourInchesMm, 4, "4 in");
    }

    private static void Bar(SheetPages pages, double left, double lengthMm, int parts, Said word)
    {
        const double y = 8; // In mm from the paper's upper edge, above all that is cut out.
        pages.Line(left, y, left + lengthMm, y, 0.2);
        for (int i = 0; i <= parts; i++)
        {
            double x = left + (lengthMm * i / parts);
            pages.Line(x, y - (i == 0 || i == parts ? 2.5 : 1.2), x, y, 0.2);
        }

        pages.Text(left + lengthMm + 1.5, y, word, 3.2);
    }

    private static double Head(SheetPages pages, string title, StripPlan plan)
    {
        double room = pages.Paper.WidthMm - (2 * MarginMm);
        Said shown = $"{PaperTitle.Short(title)}: paper rehearsal";
        pages.Strong(MarginMm, 21, shown, pages.Fitting(shown, 6.5, room));
        double y = 28;
        foreach (var line in Steps(plan, pages.Of))
        {
            y = pages.Wrapped(MarginMm, y, room, line, 3.7) + 0.6;
        }

        return y;
    }

    private static IEnumerable<Said> Steps(StripPlan plan, int sheets)
    {
        yield return $"{Wording.Count(sheets, "sheet")}: every round as it will be when finished, at true size, to pin on the garment before anything is sewn.";
        yield return "1. Print at 100 %, without fitting to the page, and lay a ruler on the bars above: 100 mm, 4 in. If they are not, the printer has scaled the sheets.";
        yield return (Said)$"2. Cut each row out along its outer line. Tape the rows together so that the two lines with the same sign (1A, 1B …) lie on each other; they overlap by {Template.OverlapMm:0} mm."
            + (plan.Hem.IsCurved ? " The rows are bent as the strips are: lay them flat, do not pull them straight." : "")
            + (plan.Hem.Closed ? " The end of a round lies under its start, line on line." : "");
        yield return $"3. Pin: {Said.Join("; ", plan.Rounds.Select(r => Place(plan, r)))}. Dashed lines across say where the middles of the garment and the joins come to lie, as far as the job says where they are.";
        yield return $"4. Look from where people will stand. Names run {plan.Hem.RunsInWords}. Does each round meet its edge, are the letters large enough, is a name on a seam? Change the job now: paper costs nothing.";
        if (Likeness.IsIn(plan.Rounds.SelectMany(r => r.Names)))
        {
            yield return Likeness.OnSheets;
        }
    }

    private static Said Place(StripPlan plan, Round round) => $"round {round.Number} ({JobInWords.Mm(round.LengthMm)}) with its lower edge {JobInWords.Mm(plan.Hem.LiftMm + ((round.Number - 1) * plan.Hem.RoundStepMm))} above the hem";
}
