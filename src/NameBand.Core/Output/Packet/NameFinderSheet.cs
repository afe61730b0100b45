using NameBand.Output.Sheets;

namespace NameBand.Output.Packet;

/// <summary>The name finder by itself, to hang up where the garment is shown.</summary>
internal static class NameFinderSheet
{
    public static void Write(Stream stream, Paper paper, PacketMatter matter)
    {
        using var plain = SheetFace.Open(SheetFace.PlainName);
        using var strong = SheetFace.Open();
        SheetPages.WriteCounted(
            stream, paper, $"{matter.Job.Title}: name finder", PaperTitle.WithMark(matter.Job.Title, matter.Plan), (plain, strong),
            pages => NameFinderPages.Write(new PageFlow(pages), matter));
    }
}
