using NameBand.Common;
using NameBand.Estimating;
using NameBand.Layout;
using NameBand.Output.Sheets;

namespace NameBand.Output.Packet;

/// <summary>The packet of one of several makers: her pieces, one test name by which all sew alike, and what she writes down.</summary>
internal static class PersonPacket
{
    public static void Write(Stream stream, Paper paper, PacketMatter matter, PersonShare share, CancellationToken cancel = default)
    {
        using var plain = SheetFace.Open(SheetFace.PlainName);
        using var strong = SheetFace.Open();
        string person = PlainText.OneLine(share.Person);
        Said title = $"{matter.Job.Title}: packet of {person}";
        SheetPages.WriteCounted(stream, paper, title, PaperTitle.WithMark(title.ToString(), matter.Plan), (plain, strong), pages =>
        {
            var flow = new PageFlow(pages);
            flow.NewPage();
            flow.YMm += 8;
            foreach (string line in flow.Lines(title, flow.WidthMm, 9 * 1.25).Take(3))
            {
                pages.PutStrong(PageFlow.LeftMm, flow.YMm, line, 9);
                flow.YMm += 11;
            }

            Share(flow, matter, share);
            TestName(flow, matter);
            flow.Heading("What is logged", 5.2);
            flow.Text($"There is one log for all. After each hooping: sewn JOB 12 --by \"{person}\", with --minutes if you looked at the clock; or tick it here and hand the sheets to whoever keeps the log.");
            BeforeFirstPage.Write(flow, matter);
            var own = share.Hoopings.ToHashSet();
            if (own.Count > 0 && matter.Plan.HasNeedlePaths)
            {
                HoopingPages.Write(flow, matter with { Plan = matter.Plan.OfNeedlePaths.Only(own) }, cancel);
            }
        });
    }

    private static void Share(PageFlow flow, PacketMatter matter, PersonShare share)
    {
        int all = matter.Plan.Hoopings.Length;
        Said hoopings = share.Hoopings.IsEmpty ? "no hooping"
            : (Said)$"{JobInWords.Whole(share.Hoopings.Length)} of {Wording.Count(all, "hooping", "hoopings")}, "
                + $"all of {Cloths(matter.Plan, share)}: {string.Join(", ", share.Hoopings)}";
        Said evenings = Wording.Count(share.Evenings, "evening");
        flow.Text($"Yours: {hoopings}; about {JobInWords.Time(share.Minutes)} in all, on {evenings}.", sizeMm: 4.6);
        Tasks(flow, "Before the first hooping, by hand", share.Before);
        Tasks(flow, "After the last hooping, by hand", share.After);
    }

    /// <summary>Such as <c>cloth 2</c>: a cloth with all the pieces of strip on it is one maker’s.</summary>
    private static Said Cloths(StripPlan plan, PersonShare share)
    {
        int[] cloths = [.. plan.Hoopings.Where(h => share.Hoopings.Contains(h.Number)).Select(h => h.Cloth).Distinct().Order()];
        return Said.Plural(cloths.Length, $"cloth {string.Join(", ", cloths)}", $"cloths {string.Join(", ", cloths)}");
    }

    private static void Tasks(PageFlow flow, Said heading, IReadOnlyCollection<OtherTask> tasks)
    {
        if (tasks.Count == 0)
        {
            return;
        }

        flow.Heading(heading, 5.2);
        foreach (var task in tasks)
        {
            flow.Item("", $"{task.Act}, {JobInWords.Time(task.Minutes)}");
        }
    }

    /// <summary>The same name for all, so that two hands and two machines are seen to sew alike before the garment shows it.</summary>
    private static void TestName(PageFlow flow, PacketMatter matter)
    {
        if (TestNameOf(matter.Plan) is not { } name)
        {
            return;
        }

        flow.Heading("One test name, the same for all", 5.2);
        flow.Text(
            $"Before your first hooping sew “{PlainText.OneLine(name.Lettered.Name.Text)}” on a scrap of the same cloth, with the same thread, needle and backing as the others. "
            + $"Pressed, it is {JobInWords.Mm(name.WidthMm)} long. Lay all of them beside each other: length within 1 mm, the same fullness, the same tension on the wrong side "
            + $"(common practice, no source). Where one differs, change needle, tension or speed before you go on.");
    }

    internal static PlacedName? TestNameOf(StripPlan plan) => plan.Hoopings.OrderBy(h => h.Number)
        .SelectMany(h => h.Segments.SelectMany(s => s.Segment.Names)).FirstOrDefault(n => n.IsOfList && !n.IsGone);
}
