using System.Collections.Immutable;
using NameBand.Common;
using NameBand.Output.Sheets;

namespace NameBand.Output.Packet;

/// <summary>
/// The sheet for reading proofs: all names large, first as an alphabet has them, so that two people can check them
/// against the list, then in the order of sewing. Two boxes beside each name, one for each reader.
/// </summary>
internal static class ProofReadingSheet
{
    // Names nearly twice as large as text, so that every letter is read and not guessed; lines of a long one, and room at the right for
    // its place.
    private const double RowMm = 11;
    private const double NameMm = 7;
    private const double LineMm = 9;
    private const double SmallMm = 3.3;
    private const double PlaceMm = 44;
    private const double LeastMm = 2.2; // A place that is long in some language is set smaller before it is cut.

    public static void Write(Stream stream, Paper paper, PacketMatter matter)
    {
        using var plain = SheetFace.Open(SheetFace.PlainName);
        using var strong = SheetFace.Open();
        SheetPages.WriteCounted(
            stream, paper, $"{matter.Job.Title}: proof-reading", PaperTitle.WithMark(matter.Job.Title, matter.Plan), (plain, strong),
            pages => Write(new PageFlow(pages), matter));
    }

    private static void Write(PageFlow flow, PacketMatter matter)
    {
        flow.NewPage();
        flow.Heading("Names to check, sorted");
        flow.Text("One reads aloud from the list, letter by letter, with every accent, hyphen and blank; the other follows here. Then change places. A name that is wrong is put right in corrections.csv, never on the sheet alone.");
        flow.YMm += 6;
        bool isPart = matter.Plan.HasSeveralWays, isHooping = matter.Plan.HasNeedlePaths;
        Rows(flow, FoundName.Sorted(matter.Plan, matter.Job.Lettering.Collation), "line of the list",
            f => $"{f.Placed.Lettered.Name.Row.List}, {f.Placed.Lettered.Name.Row.Line}");
        flow.NewPage();
        flow.Heading("The same names in the order of sewing");
        flow.YMm += 6;
        Rows(flow, FoundName.InSewingOrder(matter.Plan), isPart ? "part, round" : isHooping ? "hooping, round" : "sitting, round",
            f => isPart ? (Said)$"{f.Placed.Order}: part {f.Hooping}, round {f.RoundInWords}"
                : isHooping ? (Said)$"{f.Placed.Order}: hooping {f.Hooping}, round {f.RoundInWords}"
                : $"{f.Placed.Order}: sitting {f.Hooping}, round {f.RoundInWords}");
    }

    private static void Rows(PageFlow flow, ImmutableArray<FoundName> names, Said place, Func<FoundName, Said> placeOf)
    {
        var pages = flow.Pages;
        pages.TextRight(flow.RightMm, flow.YMm, place, SmallMm, Ink.Quiet);
        double left = PageFlow.LeftMm + 15;
        foreach (var found in names)
        {
            double room = flow.RightMm - PlaceMm - left;
            var lines = flow.Lines(Said.Plain(found.Text), room, NameMm, pages.StrongFace);
            flow.Room(RowMm + ((lines.Count - 1) * LineMm));
            double baseline = flow.YMm + RowMm - 3;
            flow.YMm += RowMm + ((lines.Count - 1) * LineMm);
            pages.Box(PageFlow.LeftMm + 0.5, baseline - 4.6, 4.6, 4.6);
            pages.Box(PageFlow.LeftMm + 7, baseline - 4.6, 4.6, 4.6);
            for (int i = 0; i < lines.Count; i++)
            {
                pages.PutStrong(left, baseline + (i * LineMm), lines[i], NameMm);
            }

            var said = placeOf(found);
            pages.TextRight(flow.RightMm, baseline, said, Math.Max(LeastMm, pages.Fitting(said, SmallMm, PlaceMm - 2)), Ink.Quiet);
            pages.Line(PageFlow.LeftMm, flow.YMm, flow.RightMm, flow.YMm, 0.1, Ink.Faint);
        }
    }
}
