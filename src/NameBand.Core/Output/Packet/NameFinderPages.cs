using System.Globalization;
using NameBand.Output.Sheets;

namespace NameBand.Output.Packet;

/// <summary>The pages by which a supporter finds her name: the whole hem as one picture, and a table sorted by name.</summary>
internal static class NameFinderPages
{
    private const double RowMm = 5.2;
    private const double TextMm = 3.6;

    public static void Write(PageFlow flow, PacketMatter matter)
    {
        flow.NewPage();
        flow.Heading("The whole hem");
        flow.Text("Seen from above, the lowest round outside. The numbers are those of the table; the line is where the strips’ ends meet, the mark opposite it their middle.");
        double size = Math.Min(flow.WidthMm, flow.PageRoomMm - flow.YMm);
        HemPicture.Draw(flow.Pages, matter.Plan, PageFlow.LeftMm + (flow.WidthMm / 2), flow.YMm + 6 + (size / 2), size / 2);

        flow.NewPage();
        flow.Heading("Where each name lies");
        flow.Text("Along the finished round: from the strip’s starting (left) end to the middle of the name; and from the middle of the round, which is centre front when the strip’s ends meet at centre back, to the left or right as it is read.");
        Titles(flow);
        foreach (var found in FoundName.Sorted(matter.Plan, matter.Job.Lettering.Collation))
        {
            if (flow.Room(RowMm))
            {
                Titles(flow);
            }

            flow.YMm += RowMm;
            double right = flow.RightMm;
            flow.Pages.Text(PageFlow.LeftMm, flow.YMm, flow.Cut(found.Text, flow.WidthMm - 108, TextMm), TextMm);
            Cell(flow, right - 92, Whole(found.Placed.Order));
            Cell(flow, right - 76, Whole(found.Round));
            Cell(flow, right - 50, JobInWords.Mm(found.MiddleMm));
            Cell(flow, right - 17, $"{JobInWords.Mm(Math.Abs(found.FromMiddleMm))} {(found.FromMiddleMm < 0 ? "left" : "right")}");
            Cell(flow, right, Whole(found.Hooping));
        }
    }

    private static void Titles(PageFlow flow)
    {
        flow.YMm += 6;
        double right = flow.RightMm;
        flow.Pages.Text(PageFlow.LeftMm, flow.YMm, "name", 3.2, Ink.Quiet);
        foreach (var (at, word) in new[] { (92, "number"), (76, "round"), (50, "from start"), (17, "from middle"), (0, "hooping") })
        {
            flow.Pages.TextRight(right - at, flow.YMm, word, 3.2, Ink.Quiet);
        }

        flow.YMm += 1;
        flow.Pages.Line(PageFlow.LeftMm, flow.YMm, right, flow.YMm, 0.2);
    }

    private static void Cell(PageFlow flow, double right, string text) => flow.Pages.TextRight(right, flow.YMm, text, TextMm);

    private static string Whole(int number) => number.ToString(CultureInfo.InvariantCulture);
}
