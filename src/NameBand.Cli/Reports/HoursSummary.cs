using System.Globalization;
using NameBand.Cli.Terminal;
using NameBand.Common;
using NameBand.Estimating;
using NameBand.Reports;

namespace NameBand.Cli.Reports;

/// <summary>What <c>hours</c> says: the work line by line, what to buy, and which evening does what.</summary>
internal sealed class HoursSummary(Page page, HoursReport report)
{
    public void Print()
    {
        if (report is not { Job: { } job, Plan: { } plan, Estimate: { } estimate, Shopping: { } shopping })
        {
            throw new InvalidOperationException("A report that is not refused has an estimate.");
        }

        page.Line(job.Title, tone: Tone.Heading);
        page.Gap();
        string pieces = Words.Count(plan.Hoopings.Length, estimate.IsHooped ? "hooping" : "run");
        page.Line(
            $"{Words.Count(plan.NameCount, "name")} in {pieces}: {Words.Duration(estimate.Work.All)}, hands and machine together. "
            + "In eight cases of ten the truth lies within the range in brackets.");
        if (estimate.ElapsedMinutes < estimate.Work.All.Likely - 1)
        {
            page.Line(
                $"By the clock {Words.Duration(estimate.ElapsedMinutes)}: nobody has to watch the machine, and one piece is clipped "
                + "and freed of its backing while it sews the next.");
        }

        PrintWork("At the machine", estimate.MachineMinutes, estimate.OwnPace?.AtSetPace.MachineMinutes, estimate.MachineWork);
        PrintLeft(plan.Hoopings.Length);
        PrintWork("By hand", estimate.HandsOnMinutes, estimate.OwnPace?.AtSetPace.HandsOnMinutes, estimate.HandWork);
        PrintLearned();
        PrintWhy(estimate);
        PrintBobbins(estimate, job.Bobbin.HoldsM);
        PrintShopping(shopping);
        if (report.Evenings is { } evenings)
        {
            new EveningSummary(page, evenings).Print();
        }

        AssumedLines.Print(page, job);
    }

    private void PrintWork(string heading, Figure sum, Figure? atSetPace, IEnumerable<WorkRow> lines)
    {
        page.Gap();
        page.Line($"{heading}: {Words.Duration(sum)}", tone: Tone.Heading);
        if (atSetPace is { } set && set != sum)
        {
            page.Line($"The whole job by your own pace, what is sewn included; without your log {Words.Duration(set)}.", 2);
        }

        page.Facts([.. lines.Select(l => (l.Act, $"{Amount(l)}: {Minutes(l)}", Tone.Plain))]);
    }

    private void PrintLeft(int hoopings)
    {
        if (report.Left is { } left && left.Hoopings < hoopings)
        {
            string machine = left.Hoopings == 0 ? "nothing" : Words.Duration(left.MachineMinutes);
            page.Line(
                $"Still to sew: {Words.Count(left.Hoopings, "hooping")}, {machine} at the machine. Still to do by hand: "
                + $"{Words.Duration(left.HandsOnMinutes)}, of it {Words.Duration(left.FinishingMinutes)} from pressing to sewing down. "
                + "The figures with each act count the whole job, what is sewn included.",
                2);
        }
    }

    private void PrintLearned()
    {
        if (report.Machine is null && report.Hands is null)
        {
            return;
        }

        page.Gap();
        page.Line("Learned from your log", tone: Tone.Heading);
        Learned(report.Machine, "At the machine");
        Learned(report.Hands, "Hooping, clipping and tearing away");
    }

    private void Learned(LearnedPace? pace, string what)
    {
        if (pace is not null)
        {
            page.Line(
                string.Create(CultureInfo.InvariantCulture, $"{what}: {Words.Count(pace.Timed, "hooping")} timed; each reckoned minute takes {pace.PaceFactor:0.00}. Left to do: {Words.Duration(pace.Now)}; before anything was timed it was {Words.Duration(pace.Before)}."),
                2);
        }
    }

    private void PrintWhy(Estimate estimate)
    {
        page.Gap();
        page.Line("Why the ranges are as wide as they are", tone: Tone.Heading);
        page.Line("Acts of one kind are slow or quick together; the kinds do not know of each other.", 2);
        foreach (var group in estimate.Work.Rows.GroupBy(l => l.Cause))
        {
            page.Line($"{Wording.AsSentence(Wording.List([.. group.Select(l => l.Act).Distinct()]))[..^1]}: {group.Key.Why}.", 2);
        }
    }

    private void PrintBobbins(Estimate estimate, double holdsM)
    {
        page.Gap();
        page.Line($"Bobbins: {estimate.Bobbins} of {Words.Metres(holdsM)}", tone: Tone.Heading);
        if (estimate.BobbinChanges.Any(c => c.IsPast))
        {
            page.Line("Reckoned on from what your log says was sewn, in its order.", 2);
        }

        foreach (var change in estimate.BobbinChanges.Where(c => !c.IsPast))
        {
            string within = change.InName > 0 ? $" The name takes more than a whole bobbin: {Words.Count(change.InName, "change")} in the middle of it." : "";
            string before = change.BeforeOrder > 0 ? $"before name {change.BeforeOrder}" : change.Before;
            page.Line(string.Create(CultureInfo.InvariantCulture, $"A fresh one in hooping {change.Hooping}, {before}: the {change.LeftM:0.#} m left on the old one would not finish it.{within}"), 2);
        }
    }

    private void PrintShopping(ShoppingList shopping)
    {
        page.Gap();
        page.Line("What to buy", tone: Tone.Heading);
        page.Facts([.. shopping.Lines.Select(l => (l.What, $"{l.InShop}{Money(l.Price, ", ", shopping.Currency)} ({l.Needed})", Tone.Plain))]);
        if (shopping.Total is { } total)
        {
            string without = shopping.WithoutPrice.Any() ? $" without {Wording.List([.. shopping.WithoutPrice])}, which have no price in job.json" : "";
            page.Line($"In all{Money(total, " ", shopping.Currency)}{without}.", 2, Tone.GoodHeading);
        }

        if (shopping.Worth is { } worth)
        {
            page.Line($"The hours are worth{Money(worth, " ", shopping.Currency)}.", 2);
        }
    }

    private static string Money(double? amount, string before, string currency) =>
        amount is { } a ? before + string.Create(CultureInfo.InvariantCulture, $"{a:#,0.00}") + (currency.Length > 0 ? " " + currency : "") : "";

    private static string Amount(WorkRow line)
    {
        double count = line.Count < 100 ? Math.Round(line.Count, 1) : Math.Round(line.Count);
        return string.Create(CultureInfo.InvariantCulture, $"{count:#,0.#} {(line.Count == 1 ? One(line.CountedFrom) : line.CountedFrom)}");
    }

    private static string One(string unit) => unit switch
    {
        "stitches" => "stitch",
        _ => unit.EndsWith('s') ? unit[..^1] : unit,
    };

    private static string Minutes(WorkRow line) => line.Minutes.Likely < 0.5
        ? "under a minute"
        : string.Create(CultureInfo.InvariantCulture, $"{line.Minutes.Likely:0} min");
}
