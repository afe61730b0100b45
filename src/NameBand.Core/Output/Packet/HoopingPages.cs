using NameBand.Common;
using NameBand.Estimating;
using NameBand.Layout;
using NameBand.Output.Sheets;
using NameBand.PlanFile;

namespace NameBand.Output.Packet;

/// <summary>A block for each hooping, in the order of sewing: its strips at true size, its marks, its figures, room for notes.</summary>
internal static class HoopingPages
{
    // Sizes of type and rows on paper that lies beside the machine: names as the packet's text, marks a little smaller, a heading, a line
    // to write on.
    private const double NameMm = 3.9;
    private const double MarksMm = 3.4;
    private const double HeadMm = 9;
    private const double NotesMm = 6;

    /// <summary>More room for notes that stand under a line of type, clear of its tails.</summary>
    private const double BelowTextMm = 2;

    public static void Write(PageFlow flow, PacketMatter matter, CancellationToken cancel)
    {
        var figures = matter.Estimate.Hoopings.ToDictionary(f => f.Number);
        flow.NewPage();
        flow.Heading("The hoopings, in the order of sewing");
        double y = matter.Plan.MarkYMm;
        Said marks = y < 0 ? (Said)$"The marks lie {JobInWords.Mm(-y)} below the centre line, on the ruled line."
            : $"The marks lie {JobInWords.Mm(y)} above the centre line, on the ruled line.";
        flow.Text($"{MarkWords.AboveHoopings(matter.Plan)}Distances and centimetres count along the flat cloth from its cut left end, never from the hooping before. Strips side by side are drawn as they lie, the upper one above. {marks}");
        flow.YMm += 2;
        foreach (var hooping in matter.Plan.Hoopings)
        {
            cancel.ThrowIfCancellationRequested();
            Block(flow, matter, hooping, figures[hooping.Number]);
        }
    }

    /// <summary>
    /// One hooping whole on its page: its picture, and what belongs to each of its strips, the upper one first: written into
    /// the strip's own turn-ins where they have room, so that two hoopings share a page, else below the picture.
    /// </summary>
    private static void Block(PageFlow flow, PacketMatter matter, Hooping hooping, HoopingFigures figures)
    {
        var picture = new HoopingPicture(flow, matter.Plan);
        var strips = StripWords.FromAbove(hooping);
        var marks = strips.Select((s, i) => Marks(matter.Plan, hooping, s, StripWords.Of(i, strips.Count))).ToList();
        bool isWrittenIn = picture.HasRoomInTurnIns(hooping, MarksMm) && marks.All(m => flow.Lines(m, flow.WidthMm, MarksMm).Count == 1);
        var below = OfAll(matter, hooping).Select(w => (w, MarksMm)).ToList();
        if (!isWrittenIn)
        {
            below.InsertRange(0, strips.SelectMany((s, i) => new[] { (marks[i], MarksMm), (Names(s), NameMm) }));
        }

        double notesMm = NotesMm + (below.Count > 0 ? BelowTextMm : 0);
        double height = HeadMm + picture.HeightMm(hooping) + below.Sum(w => flow.TextHeightMm(w.Item1, w.Item2)) + notesMm;
        flow.Room(Math.Min(height, flow.PageRoomMm));
        Head(flow, matter, hooping, figures);
        double top = flow.YMm;
        picture.Draw(flow.Pages.IsCounting ? null : matter.Sewn(hooping), hooping, withNames: isWrittenIn);
        for (int i = 0; isWrittenIn && i < strips.Count; i++)
        {
            double baseline = top + picture.BelowMarksMm(hooping, strips[i], MarksMm);
            var said = marks[i];
            flow.Pages.AsItLies(() => flow.Pages.Text(PageFlow.LeftMm + 1, baseline, said, MarksMm));
        }

        foreach (var (text, sizeMm) in below)
        {
            flow.Text(text, sizeMm: sizeMm);
        }

        Said notes = "notes";
        flow.Room(notesMm - 2.6);
        flow.YMm += notesMm - 2.6;
        double left = PageFlow.LeftMm + flow.Pages.WidthMm($"{notes} ", MarksMm);
        flow.Pages.Text(PageFlow.LeftMm, flow.YMm, notes, MarksMm, Ink.Quiet);
        flow.Pages.Line(left, flow.YMm + 0.6, flow.RightMm, flow.YMm + 0.6, 0.15, Ink.Faint);
        flow.YMm += 1;
    }

    private static IEnumerable<Said> OfAll(PacketMatter matter, Hooping hooping)
    {
        if (ThreadWords.Of(matter.Plan, hooping) is { IsEmpty: false } threads)
        {
            yield return threads;
        }

        if (hooping.HasNeedlePath && !matter.Job.CutsThread)
        {
            yield return Wording.AsSentence(ThreadsToClip.InWords(matter.Sewn(hooping), hooping.OnClothMm));
        }
    }

    /// <summary>Of two names one above the other the upper one stands before the slash.</summary>
    private static Said Names(HoopedSegment hooped) =>
        Said.Plain(string.Join(
            "   ", PlacesAlong.Of(hooped.Segment.Names)
            .Select(p => string.Join(" / ", p.Select(n => $"{n.Order}\u00a0{n.Lettered.Name.Text}")))));

    private static void Head(PageFlow flow, PacketMatter matter, Hooping hooping, HoopingFigures figures)
    {
        var pages = flow.Pages;
        pages.Line(PageFlow.LeftMm, flow.YMm + 1, flow.RightMm, flow.YMm + 1, 0.3);
        flow.YMm += 7;
        pages.Box(PageFlow.LeftMm + 0.3, flow.YMm - 4.2, 4.6, 4.6, 0.35);
        Said which = $"Hooping {hooping.Number}";
        pages.Strong(PageFlow.LeftMm + 8, flow.YMm, which, 5.4);
        double after = PageFlow.LeftMm + 10 + pages.StrongFace.WidthMm(which.ToString(), 5.4);
        string sign = SheetMarks.Of(matter.Plan, hooping);
        Said mark = hooping.Frame is { } frame ? (Said)$"mark {sign} · frame “{frame.Name}”" : $"mark {sign}";
        Said bobbin = figures.BobbinChanges > 0 ? (Said)$" · fresh bobbin {Bobbin(matter, hooping)}" : "";
        var minutes = Thousandths.Tenths(matter.Estimate.OwnMinutes(figures));
        Said stitches = Wording.Count(figures.Stitches, "stitch", "stitches");
        Said facts = $"thread {matter.Fabric.Thread.Name} · {stitches} · {minutes:0.0} min{bobbin}";
        double room = flow.RightMm - after - 4;
        double size = 3.7 * Math.Min(1, room / (pages.WidthMm(mark, 3.7) + pages.WidthMm(facts, 3.7)));
        pages.Text(after, flow.YMm, mark, size);
        pages.TextRight(flow.RightMm, flow.YMm, facts, size);
        flow.YMm += 2;
    }

    private static string Bobbin(PacketMatter matter, Hooping hooping)
    {
        return string.Join(", ", matter.Estimate.BobbinChanges.Where(b => b.Hooping == hooping.Number).Select(b => b.Before));
    }

    private static Said Marks(StripPlan plan, Hooping hooping, HoopedSegment hooped, Said which)
    {
        double zero = StripPlan.OnClothMm(hooping, hooped);
        var segment = hooped.Segment;
        var marks = plan.MarksAlongMm(hooped);
        Said along = plan.Hem.IsCurved ? " along the lower edge" : "";
        Said arc = plan.FrameOf(hooped) is { } frame
            ? (Said)$"; the strip’s arc is {JobInWords.Mm(frame.MarkBowMm(plan.MarkYMm, segment.MarkArmMm))} off the ruled line at its middle"
            : "";
        Said cloth = plan.Cloths.Length > 1 ? (Said)$"cloth {hooping.Cloth}, " : "";
        Said strip = which.IsEmpty ? "" : (Said)$"{which}, ";
        return $"{cloth}{strip}round {hooped.Round.Number}: left mark {JobInWords.Mm(zero + marks.LeftMm)}, right mark {JobInWords.Mm(zero + marks.RightMm)} from the cloth’s left end{along}, {JobInWords.Mm(plan.RightMarkMm(hooped) - segment.LeftMarkMm)} apart{arc}";
    }
}
