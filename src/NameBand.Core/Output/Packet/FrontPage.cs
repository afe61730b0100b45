using NameBand.Common;
using NameBand.Layout;
using NameBand.Output.Sheets;

namespace NameBand.Output.Packet;

/// <summary>The first page: the job in a sentence, the squares that tell whether the printer kept the size, the cautions.</summary>
internal static class FrontPage
{
    /// <summary>Five centimetres, on any ruler: a printer that scales by 1 % is half a millimetre out.</summary>
    public const double SquareMm = 50;
    public const double InchSquareMm = 2 * Length.MmPerInch; // For rulers that have no centimetres: two inches.

    public static void Write(PageFlow flow, PacketMatter matter)
    {
        var pages = flow.Pages;
        flow.NewPage();
        flow.YMm += 8;
        foreach (string line in TitleLines(flow, matter.Job.Title))
        {
            pages.PutStrong(PageFlow.LeftMm, flow.YMm, line, 9);
            flow.YMm += 11;
        }

        flow.YMm -= 5;
        flow.Text(JobInWords.Sentence(matter.Plan, matter.Estimate), sizeMm: 4.6);
        if (matter.Tonight is { } tonight)
        {
            flow.Heading(matter.Estimate.IsBegun ? "The next evening" : "The first evening", 5.2);
            flow.Text(tonight.InWords, sizeMm: 4.6);
        }

        flow.YMm += 6;
        Squares(flow);
        flow.Heading("Take care", 5.2);
        foreach (var line in Cautions(matter.Plan))
        {
            flow.Item("–", line, 5);
        }

        Found(flow, matter);
        flow.Heading("In this packet", 5.2);
        Said sewing = matter.Plan.HasNeedlePaths
            ? (Said)$"{JobInWords.Hoopings(matter.Plan.OfNeedlePaths)} at true size, in the order of sewing; {(matter.Plan.HasSeveralWays ? (Said)"the other names are on the sheets beside this folder; " : "")}the work by hand afterwards"
            : "the work by hand afterwards (what to sew, and where, is on the sheets beside this folder)";
        flow.Text($"What to buy and how to cut it; what to try before the first stitch; {sewing}, with the measures of this job; where each name lies, and the whole hem as one picture.");
    }

    /// <summary>What was found of the plan and is not simply good; the upper edge has its own step in the work by hand.</summary>
    private static void Found(PageFlow flow, PacketMatter matter)
    {
        Verdict[] found = [.. matter.Verdicts.Where(v => v.Kind != VerdictKind.Good && v.About != Fact.Easing)];
        if (found.Length == 0)
        {
            return;
        }

        flow.Heading("What was found", 5.2);
        foreach (var verdict in found)
        {
            Said round = verdict.Round is { } number ? (Said)$"Round {number}: " : "";
            flow.Item("–", $"{(verdict.Kind == VerdictKind.NeedsAPerson ? (Said)"To be decided before you sew. " : "")}{round}{verdict.Text}", 5);
        }
    }

    /// <summary>At most three lines: a title may be as long as a list.</summary>
    private static IEnumerable<string> TitleLines(PageFlow flow, string title)
    {
        double size = 9 * 1.25;
        var lines = flow.Lines(Said.Plain(title), flow.WidthMm, size);
        return lines.Count <= 3 ? lines : [.. lines.Take(2), flow.Cut(lines[2] + " " + lines[3], flow.WidthMm, size)];
    }

    private static void Squares(PageFlow flow)
    {
        var pages = flow.Pages;
        double top = flow.YMm;
        Square(pages, PageFlow.LeftMm, top, SquareMm, "5 cm");
        double second = PageFlow.LeftMm + SquareMm + 8;
        Square(pages, second, top, InchSquareMm, "2 in");
        double textLeft = second + InchSquareMm + 7;
        double y = pages.Wrapped(textLeft, top + 4, flow.RightMm - textLeft, "Printed at actual size?", 4.4);
        pages.Wrapped(
            textLeft, y + 1, flow.RightMm - textLeft,
            "Print at 100 %, “actual size”, never “fit to page”. Lay a ruler on a square, along and down. If its side is not 5 cm, or 2 in, nothing else that is drawn is at true size either: set the printer right before you go on.", 3.7);
        flow.YMm = top + InchSquareMm + 2;
    }

    private static void Square(SheetPages pages, double x, double y, double side, Said label)
    {
        pages.Box(x, y, side, side, 0.25);
        for (int i = 1; i < 5; i++)
        {
            double at = side * i / 5;
            pages.Line(x + at, y, x + at, y + 2, 0.2);
            pages.Line(x, y + at, x + 2, y + at, 0.2);
        }

        pages.Strong(x + (side / 2) - 6, y + (side / 2) + 2, label, 5.5);
    }

    private static IEnumerable<Said> Cautions(StripPlan plan) =>
    [
        "What your machine’s manual, local rules and people trained for it say comes before anything here.",
        "Keep fingers, hair, sleeves and cords away from the needle and from everything that moves.",
        .. plan.HasNeedlePaths
            ? new Said[] { "The hoop moves by itself, and farther than the needle: before each start see that it can travel its whole field." }
            : [],
        "Switch the machine off to change a needle, to thread it, to clear a jam.",
        "A needle can break: wear glasses, and count the pieces before you go on. Stay with a machine that runs.",
        $"{MarkWords.HeatCaution(plan)} Close a rotary cutter each time you lay it down, and cut away from yourself.",
        "Sew one name on a scrap first, with the same cloth, backing, thread and needle, press it, and measure how long it came out.",
    ];
}
