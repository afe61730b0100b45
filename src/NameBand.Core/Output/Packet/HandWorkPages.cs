using System.Globalization;
using NameBand.Common;
using NameBand.Estimating;
using NameBand.Layout;

namespace NameBand.Output.Packet;

/// <summary>The work by hand after the last hooping, in its order, with the measures of this job.</summary>
internal static class HandWorkPages
{
    private const int Parts = 8; // Halves of halves of halves, as a hem is folded to be pinned.

    public static void Write(PageFlow flow, PacketMatter matter)
    {
        flow.NewPage();
        flow.Heading("The work by hand, in its order");
        int number = 0;
        foreach (var step in Steps(matter))
        {
            flow.Item((++number).ToString(CultureInfo.InvariantCulture) + ".", step);
        }

        UpperEdgePages.Write(flow, matter);
        Eighths(flow, matter.Plan);
        Hours(flow, matter);
    }

    private static IEnumerable<Said> Steps(PacketMatter matter)
    {
        var plan = matter.Plan;
        var strip = plan.Hem.Strip;
        int snips = matter.Estimate.Hoopings.Sum(h => h.Snips);
        yield return plan.HasNeedlePaths && snips > 0
            ? (Said)$"Clip the threads that lie loose between letters ({JobInWords.Whole(snips)} in all; the others are cut by the machine), close to the cloth, on both sides."
            : plan.HasNeedlePaths
            ? "Clip the ends that the machine leaves where it cuts, close to the cloth, on both sides; no thread hangs loose between letters."
            : "Clip every loose thread, close to the cloth, on both sides.";
        yield return $"Take the backing off ({matter.Fabric.Backing}), if it is of a kind that comes off: hold the stitches with a thumb and tear away from them.";
        yield return MarkWords.BeforeHeat(plan);
        yield return "Press face down on a thick towel, so that the letters keep their height.";
        yield return matter.Job.Strip.SewnBeforeCutting
            ? (Said)$"Trim to width: {Both(strip.CutWidthMm)}, that is {JobInWords.Mm(strip.CutWidthMm / 2)} to each side of the centre line; {RuledLine(plan)}.{EndsToCut(plan)}"
            : $"The strip has its width already ({Both(strip.CutWidthMm)}): trim frayed threads only.";
        yield return plan.Joins == 0
            ? "Nothing is joined: each strip is one piece."
            : Said.Plural(
                plan.Joins, $"Join the pieces of each round, right sides together; with the closing of the rounds there are {plan.Joins} joins.",
                $"Join the pieces of each round, right sides together; with the closing of the rounds there are {plan.Joins} joins.");
        yield return $"Measure each round, along its middle, flat and not stretched: {Rounds(plan, r => r.LengthMm)}. Within {plan.AllowedInWords} it can be eased in; if it is farther off, see where it came out long or short.";
        Said edges = $"Turn the edges in: {Both(strip.TurnInMm)} on each, pressed, so that the strip is {Both(strip.FinishedWidthMm)} wide";
        yield return plan.Hem.Closed ? (Said)$"{edges}."
            : $"{edges}; and {Both(plan.Hem.EndTurnInMm)} at both ends, so that it is as long as its edge.";
        if (plan.Easing.Any(e => e.Tucked is not null))
        {
            yield return "Fold the tapered tucks (table below): at the upper edge pinch up half of a tuck’s width, let the fold run out into nothing at the lower edge, pin it, and lay them all to one side.";
        }

        yield return "Mark each strip and its line on the garment in eighths (table below), and pin eighth to eighth, then between.";
        Said heights = Said.Join(
            "; ", plan.Rounds.Select(r =>
                (Said)$"round {r.Number} {JobInWords.Mm(plan.Hem.LiftMm + ((r.Number - 1) * plan.Hem.RoundStepMm))} above the hem"));
        yield return $"Sew the lower edge first: {heights}.";
        yield return UpperEdgePages.Step(plan);
        yield return plan.Hem.Closed
            ? (Said)$"Leave the last 150 mm of both edges until the ends are closed. The ends overlap by {JobInWords.Mm(plan.Hem.OverlapMm)}, and no name lies there."
            : $"Close both ends, turned in by {JobInWords.Mm(plan.Hem.EndTurnInMm)}, before the last 150 mm of the edges are sewn.";
    }

    /// <summary>From which ruled line the centre line is found again.</summary>
    private static Said RuledLine(StripPlan plan)
    {
        double y = plan.HasNeedlePaths ? plan.MarkYMm : plan.BaselineYMm;
        Said away = y < 0 ? (Said)$"{JobInWords.Mm(-y)} below it" : $"{JobInWords.Mm(y)} above it";
        return plan.HasNeedlePaths ? (Said)$"the marks’ line lay {away}"
            : plan.LineStepMm > 0 ? (Said)$"the letters’ lower base line lies {away}" : $"the letters’ base line lies {away}";
    }

    /// <summary>An edge with two ends: where the sewn strip is cut off.</summary>
    private static Said EndsToCut(StripPlan plan)
    {
        if (plan.Hem.Closed)
        {
            return "";
        }

        Said lengths = Said.Join(
            "; ", plan.Rounds.Select(r => (Said)$"round {r.Number} {JobInWords.Mm(r.LengthMm + (2 * plan.Hem.EndTurnInMm))} in all"));
        return $" Cut it off {JobInWords.Mm(plan.Hem.EndTurnInMm)} beyond each finished end: {lengths}.";
    }

    private static Said Rounds(StripPlan plan, Func<Round, double> lengthMm) =>
        Said.Join("; ", plan.Rounds.Select(r => (Said)$"round {r.Number} {JobInWords.Mm(lengthMm(r))}"));

    /// <summary>Where the pins go: the same eighths of the strip and of its line on the garment.</summary>
    private static void Eighths(PageFlow flow, StripPlan plan)
    {
        flow.Heading("Eighths to pin", 5.2);
        var pages = flow.Pages;
        double column = (flow.WidthMm - 34) / Parts;
        void Row(Said label, double lengthMm)
        {
            flow.Room(6);
            flow.YMm += 5.4;
            pages.Text(PageFlow.LeftMm, flow.YMm, label, pages.Fitting(label, 3.7, 34 + (column * 0.35)));
            for (int i = 1; i <= Parts; i++)
            {
                pages.TextRight(PageFlow.LeftMm + 34 + (column * i), flow.YMm, $"{lengthMm * i / Parts:0.0}", 3.7);
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
        var rows = matter.Estimate.Work.Rows;
        flow.Heading("What it takes", 5.2, rows.Length * 5);
        foreach (var row in rows)
        {
            flow.Room(5);
            flow.YMm += 4.8;
            Said act = row.By == Doer.Machine ? (Said)$"{row.Act} (machine)" : row.Act;
            var amount = Wording.Amount(row.Count, row.CountedFrom);
            double room = flow.WidthMm - 50 - 2 - flow.Pages.WidthMm(amount, 3.7);
            flow.Pages.Text(PageFlow.LeftMm, flow.YMm, act, flow.Pages.Fitting(act, 3.7, room));
            flow.Pages.TextRight(flow.RightMm - 50, flow.YMm, amount, 3.7);
            flow.Pages.TextRight(flow.RightMm, flow.YMm, JobInWords.Time(row.Minutes.Likely), 3.7);
        }

        flow.YMm += 1;
        var work = matter.Estimate.Work;
        flow.Text(
            $"At the machine {JobInWords.Range(work.Machine)}, by hand {JobInWords.Range(work.Hands)}, in all {JobInWords.Range(work.All)}.",
            sizeMm: 3.7);
    }

    private static Said Both(double mm) => $"{JobInWords.Mm(mm)} ({Length.FromMm(mm).InInches()})";
}
