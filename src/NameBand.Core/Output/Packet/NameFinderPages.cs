using NameBand.Common;
using NameBand.Layout;
using NameBand.Output.Sheets;

namespace NameBand.Output.Packet;

/// <summary>The pages by which a supporter finds her name: the whole hem as one picture, and a table sorted by name.</summary>
internal static class NameFinderPages
{
    // Fifty names on a page, in type that is found at a glance.
    private const double RowMm = 5.2;
    private const double TextMm = 3.6;

    // Columns at the right of the names, each as wide as the blank before it leaves.
    private static readonly (double FromRightMm, double WidthMm)[] Columns = [(104, 14), (89, 14), (64, 24), (17, 46), (0, 16)];

    public static void Write(PageFlow flow, PacketMatter matter)
    {
        flow.NewPage();
        flow.Heading("The whole hem");
        flow.Text(matter.Plan.Hem.Closed
            ? "Seen from above, the lowest round outside. The numbers are those of the table; the line is where the strips’ ends meet, the marks are centre front and centre back."
            : "The lowest round below, as it is read from left to right. The numbers are those of the table.");
        double size = Math.Min(flow.WidthMm, flow.PageRoomMm - flow.YMm);
        HemPicture.Draw(flow.Pages, matter.Plan, PageFlow.LeftMm + ((flow.WidthMm - size) / 2), flow.YMm + 6, size);
        if (matter.Plan.Hem.Closed)
        {
            flow.NewPage();
        }
        else
        {
            flow.YMm += HemPicture.HeightMm(matter.Plan, size) + 10;
        }

        flow.Heading("Where each name lies");
        flow.Text("Along the finished round: from the strip’s starting (left) end to the middle of the name; and the shorter way from centre front or centre back (hem.centreFront and hem.centreBack of job.json), to the left or right as it is read.");
        Titles(flow, matter.Plan);
        foreach (var found in FoundName.Sorted(matter.Plan, matter.Job.Lettering.Collation))
        {
            if (flow.Room(RowMm))
            {
                Titles(flow, matter.Plan);
            }

            flow.YMm += RowMm;
            double right = flow.RightMm;
            flow.Pages.Put(PageFlow.LeftMm, flow.YMm, flow.Cut(found.Text, flow.WidthMm - 118, TextMm), TextMm);
            foreach (var (column, said) in Columns.Zip(new Said[]
            {
                Whole(found.Placed.Order), found.RoundInWords, JobInWords.Mm(found.MiddleMm), found.PlaceInWords, Whole(found.Hooping),
            }))
            {
                flow.Pages.TextRight(right - column.FromRightMm, flow.YMm, said, flow.Pages.Fitting(said, TextMm, column.WidthMm));
            }
        }
    }

    private static void Titles(PageFlow flow, StripPlan plan)
    {
        flow.YMm += 6;
        double right = flow.RightMm;
        flow.Pages.Text(PageFlow.LeftMm, flow.YMm, "name", 3.2, Ink.Quiet);
        foreach (var (column, word) in Columns.Zip(new Said[]
        {
            "number", "round", "from start", "from front, back", plan.HasNeedlePaths ? "hooping" : "sitting",
        }))
        {
            flow.Pages.TextRight(right - column.FromRightMm, flow.YMm, word, flow.Pages.Fitting(word, 3.2, column.WidthMm), Ink.Quiet);
        }

        flow.YMm += 1;
        flow.Pages.Line(PageFlow.LeftMm, flow.YMm, right, flow.YMm, 0.2);
    }

    private static Said Whole(int number) => $"{number}";
}
