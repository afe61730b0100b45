using NameBand.Output.Sheets;

namespace NameBand.Output.Packet;

/// <summary>
/// The work packet: everything a maker takes to the machine and to the table, as a PDF to print at its own size. Written
/// page by page, a hooping's stitches at a time, so that it takes no more memory for three thousand names than for sixty.
/// </summary>
public static class WorkPacket
{
    public static void Write(Stream stream, Paper paper, PacketMatter matter, CancellationToken cancel = default)
    {
        using var plain = SheetFace.Open(SheetFace.PlainName);
        using var strong = SheetFace.Open();
        SheetPages.WriteCounted(
            stream, paper, $"{matter.Job.Title}: work packet", PaperTitle.WithMark(matter.Job.Title, matter.Plan), (plain, strong), pages =>
        {
            var flow = new PageFlow(pages);
            FrontPage.Write(flow, matter);
            BuyingPage.Write(flow, matter);
            BeforeFirstPage.Write(flow, matter);
            if (matter.Plan.HasNeedlePaths)
            {
                HoopingPages.Write(flow, matter with { Plan = matter.Plan.OfNeedlePaths }, cancel);
            }

            HandWorkPages.Write(flow, matter);
            NameFinderPages.Write(flow, matter);
        });
    }
}
