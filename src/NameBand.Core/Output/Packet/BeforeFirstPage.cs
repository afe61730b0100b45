using NameBand.Common;
using NameBand.Layout;

namespace NameBand.Output.Packet;

/// <summary>Before the first stitch: what is tried on a scrap and washed out, while it costs an evening and not a garment.</summary>
internal static class BeforeFirstPage
{
    public static void Write(PageFlow flow, PacketMatter matter)
    {
        flow.Heading("Before the first stitch", withMm: 60);
        flow.Text("Common practice, no source; what your cloth and machine show you on the scrap comes before it.", sizeMm: 3.4);
        foreach (var step in Steps(matter))
        {
            flow.Item("", step);
        }
    }

    private static IEnumerable<Said> Steps(PacketMatter matter)
    {
        var plan = matter.Plan;
        yield return "Wash the cloth of the strips as the garment will be washed, dry it and press it, before anything is cut or ruled: what shrinks later draws the names together. "
            + "Has the garment itself been washed? Measure its hem only then.";
        yield return $"Are the colours fast? Lay a wet white scrap on each of {Wording.List([.. Coloured(plan)])}, press it with a hot iron until it is dry, and look at the scrap. "
            + $"What leaves its colour there is washed until it leaves none, or is not used; dark thread on pale cloth most of all.";
        yield return $"Needle {matter.Fabric.Needle}, a new one; thread {matter.Fabric.Thread.Name}; backing: {matter.Fabric.Backing}. The same on the scrap as on the strip.";
        if (plan.HasNeedlePaths)
        {
            yield return "Tension, on a scrap: sew one name and turn it over. Of each wide column the bobbin’s thread should show as its middle third. None seen: loosen the needle’s thread, "
                + "or tighten the bobbin’s; bobbin’s thread on the right side: the other way about. Pull at the scrap: no stitch gives way, and no loop stands up.";
            yield return "The swatch (the command swatch) tells what this cloth shortens by and whether it bears the load: sew it before the first hooping.";
        }
        else
        {
            yield return "Tension, on a scrap: sew one name and turn it over: no loops on either side, and the cloth lies flat beside it.";
        }

        yield return "Is the hem stiffened? A braid or horsehair band in it, or a facing, changes the sewing down: no strip is eased there, so measure the hem as it hangs, stiffened, and keep to it; "
            + "sew through the outer cloth alone where the band lies, by hand if need be, and never across its cut ends; pin across the edge and not along it. A soft facing is sewn through; the lower edge then takes a longer stitch.";
        if (matter.Job.Hoop.Along.Mm > 0 && matter.Job.IsHooped)
        {
            yield return "Hoop a scrap of the strip’s cloth with its backing once, for practice: drum-flat, not stretched; when it is taken out it must not spring back.";
        }
    }

    private static IEnumerable<Said> Coloured(StripPlan plan)
    {
        yield return plan.Colours.Cloth is { } cloth ? (Said)$"the cloth, {cloth.InWords}" : "the cloth";
        foreach (var thread in plan.Threads.Threads)
        {
            yield return plan.Threads.AreSeveral || plan.Colours.Job.Thread is not null ? (Said)$"the thread, {thread.InWords}" : "the thread";
        }

        yield return "the garment";
    }
}
