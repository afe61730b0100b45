using System.Globalization;
using NameBand.Common;
using NameBand.Layout;

namespace NameBand.Output.Packet;

/// <summary>The work by hand after the last hooping, in its order, with the measures of this job.</summary>
internal static class HandWorkPages
{
    private const int Parts = 8;

    public static void Write(PageFlow flow, PacketMatter matter)
    {
        flow.NewPage();
        flow.Heading("The work by hand, in its order");
        int number = 0;
        foreach (string step in Steps(matter))
        {
            flow.Item((++number).ToString(CultureInfo.InvariantCulture) + ".", step);
        }

        Eighths(flow, matter.Plan);
        Hours(flow, matter);
    }

    private static IEnumerable<string> Steps(PacketMatter matter)
    {
        var plan = matter.Plan;
        var strip = plan.Hem.Strip;
        int snips = matter.Estimate.Hoopings.Sum(h => h.Snips);
        int segments = plan.Hoopings.Sum(h => h.Segments.Length);
        yield return $"Clip the threads that lie loose between letters ({JobInWords.Whole(snips)} in all; the others are cut by the machine), close to the cloth, on both sides.";
        yield return $"Take the backing off ({matter.Fabric.Backing}), if it is of a kind that comes off: hold the stitches with a thumb and tear away from them.";
        yield return $"Take the alignment marks out before any heat: two to each strip in each hooping, {JobInWords.Whole(2 * segments)} in all. Heat sets their holes.";
        yield return "Press face down on a thick towel, so that the letters keep their height.";
        yield return matter.Job.Strip.SewnBeforeCutting
            ? $"Trim to width: {Both(strip.CutWidthMm)}, that is {JobInWords.Mm(strip.CutWidthMm / 2)} to each side of the centre line; the marks’ line lay {JobInWords.Mm(Math.Abs(plan.MarkYMm))} {(plan.MarkYMm < 0 ? "below" : "above")} it."
            : $"The strip has its width already ({Both(strip.CutWidthMm)}): trim frayed threads only.";
        yield return plan.Joins == 0 ? "Nothing is joined: each strip is one piece." : $"Join the pieces of each round, right sides together; with the closing of the rounds there are {plan.Joins} joins.";
        yield return "Measure each round, along its middle, flat and not stretched: "
            + string.Join("; ", plan.Rounds.Select(r => $"round {r.Number} {JobInWords.Mm(r.LengthMm)}"))
            + $". Within {JobInWords.Mm(plan.Hem.ToleranceMm)} it can be eased in; if it is farther off, see which hooping came out long or short.";
        yield return $"Turn the edges in: {Both(strip.TurnInMm)} on each, pressed, so that the strip is {Both(strip.FinishedWidthMm)} wide.";
        yield return "Mark each strip and its line on the garment in eighths (table below), and pin eighth to eighth, then between.";
        yield return "Sew the lower edge first: " + string.Join("; ", plan.Rounds.Select(r => $"round {r.Number} {JobInWords.Mm(plan.Hem.LiftMm + ((r.Number - 1) * plan.Hem.RoundStepMm))} above the hem")) + ".";
        yield return plan.Hem.IsCurved
            ? "Then the upper edge: the strip is cut to the curve of the hem and lies flat, so nothing is eased. Both edges are off the straight grain somewhere: pin closely and do not stretch them."
            : plan.Hem.UpperEdgeShorterMm > 0.05
            ? $"Then the upper edge. It has to become {JobInWords.Mm(plan.Hem.UpperEdgeShorterMm)} shorter than the lower one, round for round: ease it in the gaps between names only, for satin does not ease."
            : "Then the upper edge: it is as long as the lower one, and nothing is eased.";
        yield return plan.Hem.Closed
            ? $"Leave the last 150 mm of both edges until the ends are closed. The ends overlap by {JobInWords.Mm(plan.Hem.OverlapMm)}, and no name lies there."
            : "Turn both ends in and close them before the last 150 mm of the edges are sewn.";
    }

    /// <summary>Where the pins go: the same eighths of the strip and of its line on the garment.</summary>
    private static void Eighths(PageFlow flow, StripPlan plan)
    {
        flow.Heading("Eighths to pin", 5.2);
        var pages = flow.Pages;
        double column = (flow.WidthMm - 34) / Parts;
        void Row(string label, double lengthMm)
        {
            flow.Room(6);
            flow.YMm += 5.4;
            pages.Text(PageFlow.LeftMm, flow.YMm, label, 3.7);
            for (int i = 1; i <= Parts; i++)
            {
                string at = (lengthMm * i / Parts).ToString("0.0", CultureInfo.InvariantCulture);
                pages.TextRight(PageFlow.LeftMm + 34 + (column * i), flow.YMm, at, 3.7);
            }
        }

        foreach (var round in plan.Rounds)
        {
            Row($"round {round.Number}, strip", round.LengthMm);
            Row($"round {round.Number}, garment", round.HemMm);
        }

        flow.Text("Millimetres from the starting end of the strip, and from where it begins on the garment.", sizeMm: 3.4);
    }

    private static void Hours(PageFlow flow, PacketMatter matter)
    {
        var lines = matter.Estimate.MachineWork.Concat(matter.Estimate.HandWork).Where(l => l.Amount > 0).ToList();
        flow.Heading("What it takes", 5.2, lines.Count * 5);
        foreach (var line in lines)
        {
            flow.Room(5);
            flow.YMm += 4.8;
            flow.Pages.Text(PageFlow.LeftMm, flow.YMm, line.Work, 3.7);
            flow.Pages.TextRight(flow.RightMm - 70, flow.YMm, $"{line.Amount.ToString("0.#", CultureInfo.InvariantCulture)} {line.Unit}", 3.7);
            flow.Pages.TextRight(flow.RightMm, flow.YMm, JobInWords.Range(line.Minutes), 3.7);
        }
    }

    private static string Both(double mm) => $"{JobInWords.Mm(mm)} ({Length.FromMm(mm).InInches()})";
}
