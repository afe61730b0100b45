using NameBand.Cli.Terminal;
using NameBand.Common;
using NameBand.Reports.Answers;

namespace NameBand.Cli.Reports;

/// <summary>What <c>hours</c> says: the work line by line, what to buy, and which evening does what.</summary>
internal sealed class HoursSummary(Page page, HoursAnswer answer)
{
    public void Print()
    {
        page.Line(Said.Plain(answer.Title), tone: Tone.Heading);
        page.Gap();
        if (answer.Names == 0)
        {
            page.Line("No name could be placed, so there is nothing to sew or to buy yet.");
            NeedsYou.Print(page, answer);
            return;
        }

        Said pieces = answer.TakenUp ?? Words.Count(answer.Hoopings, answer.Hooped ? "hooping" : "run");
        page.Line(
            $"{Words.Count(answer.Names, "name")} in {pieces}: {Words.Duration(answer.AllMinutes)}, hands and machine together. "
            + $"The real time should fall in the range in brackets 8 times in 10.");
        if (answer.ElapsedMinutes < answer.AllMinutes.Likely - 1)
        {
            page.Line(
                $"By the clock {Words.Duration(answer.ElapsedMinutes)}: nobody has to watch the machine, and one piece is clipped "
                + $"and freed of its backing while it sews the next.");
        }

        PrintWork("At the machine", answer.MachineMinutes, answer.MachineMinutesAtSetPace, answer.Machine);
        PrintLeft();
        PrintWork("By hand", answer.HandsOnMinutes, answer.HandsOnMinutesAtSetPace, answer.Hands);
        PrintLearned();
        PrintWhy();
        PrintBobbins();
        PrintShopping();
        new EveningSummary(page, answer).Print();
        new AssumedLines(page, answer.Assumed).Print();
        NeedsYou.Print(page, answer);
    }

    private void PrintWork(Said heading, ToldFigure sum, ToldFigure? atSetPace, IEnumerable<ToldAct> acts)
    {
        page.Gap();
        page.Line($"{heading}: {Words.Duration(sum)}", tone: Tone.Heading);
        if (atSetPace is { } set && set != sum)
        {
            page.Line($"The whole job by your own pace, what is sewn included; without your log {Words.Duration(set)}.", 2);
        }

        page.Facts([.. acts.Select(a => (a.Work, (Said)$"{Amount(a)}: {Minutes(a)}", Tone.Plain))]);
    }

    private void PrintLeft()
    {
        if (answer.Begun)
        {
            Said sew = answer.MachineMinutesLeft.Likely > 0 ? Words.Duration(answer.MachineMinutesLeft) : "nothing";
            Said finishing = Words.Duration(answer.FinishingMinutesLeft);
            page.Line(
                $"Still to sew: {ToSew()}, {sew} at the machine. Still to do by hand: "
                + $"{Words.Duration(answer.HandsOnMinutesLeft)}, of it {finishing} from pressing to sewing down. "
                + $"The figures with each act count the whole job, what is sewn included.",
                2);
        }
    }

    /// <summary>Such as <c>3 hoopings</c>, <c>19 of 24 names</c>, or both.</summary>
    private Said ToSew()
    {
        Said?[] parts =
        [
            answer.HoopingsLeft is { } hoopings ? Words.Count(hoopings, "hooping") : null,
            answer.NamesLeft is { } names ? (Said)$"{names} of {Words.Count(answer.NamesByName.GetValueOrDefault(), "name")}" : null,
        ];
        return Said.Join(" and ", parts.OfType<Said>());
    }

    private void PrintLearned()
    {
        if (answer.MachinePace is null && answer.HandsPace is null && answer.Spoils is null)
        {
            return;
        }

        page.Gap();
        page.Line("Learned from your log", tone: Tone.Heading);
        Learned(answer.MachinePace, "At the machine");
        Learned(answer.HandsPace, answer.NamesByName is null ? "Hooping, clipping and tearing away" : "By hand at each name and hooping");
        if (answer.Spoils is { } spoils)
        {
            page.Line($"Spoiled names: {spoils.Spoiled} of {Words.Count(spoils.Sewn, "name")} logged. "
                + $"The hours allow for {spoils.NowPer100:0.0} in a hundred; set are {spoils.SetPer100:0.#}.",
                2);
        }
    }

    private Said Timed(int count) => answer.HoopingsLeft is null ? Words.Count(count, "name")
        : answer.NamesByName is null ? Words.Count(count, "hooping") : Words.Count(count, "piece");

    private void Learned(ToldPace? pace, Said what)
    {
        if (pace is null)
        {
            return;
        }

        Said now = Words.Duration(new ToldFigure(pace.LeftLowMinutes, pace.LeftLikelyMinutes, pace.LeftHighMinutes));
        Said before = Words.Duration(new ToldFigure(pace.BeforeLowMinutes, pace.BeforeLikelyMinutes, pace.BeforeHighMinutes));
        page.Line(
    $"{what}: {Timed(pace.Timed)} timed; each calculated minute takes {pace.Factor:0.00}. Left to do: {now}; "
    + $"before anything was timed it was {before}.",
    2);
    }

    private void PrintWhy()
    {
        page.Gap();
        page.Line("Why the ranges are as wide as they are", tone: Tone.Heading);
        page.Line("Work of one kind is slow or quick together; the kinds vary independently.", 2);
        foreach (var cause in answer.Causes)
        {
            var acts = answer.Work.Where(a => a.Cause == cause.Name).Select(a => a.Act).Distinct();
            page.Line($"{Wording.Capital(Wording.List([.. acts]))}: {cause.Why}.", 2);
        }
    }

    private void PrintBobbins()
    {
        page.Gap();
        page.Line($"Bobbins: {answer.Bobbins} of {Words.Metres(answer.BobbinHoldsM)}", tone: Tone.Heading);
        if (answer.BobbinChanges.Any(c => c.Past))
        {
            page.Line("Counted on from what your log says was sewn, in its order.", 2);
        }

        foreach (var change in answer.BobbinChanges.Where(c => !c.Past))
        {
            Said within = change.InName > 0
                ? (Said)$" The name takes more than a whole bobbin: {Words.Count(change.InName, "change")} in the middle of it." : "";
            Said before = change.BeforeName > 0 ? (Said)$"before name {change.BeforeName}" : "before the marks";
            page.Line(
                $"A fresh one in hooping {change.Hooping}, {before}: the {change.LeftM:0.#} m left on the old one would not finish it.{within}", 2);
        }
    }

    private void PrintShopping()
    {
        page.Gap();
        page.Line("What to buy", tone: Tone.Heading);
        page.Facts([.. answer.Shopping.Select(l => (l.What, (Said)$"{l.InShop}{Money(l.Price, ", ")} ({l.Needed})", Tone.Plain))]);
        if (answer.Total is { } total)
        {
            Said[] unpriced = [.. answer.Shopping.Where(l => l.Price is null).Select(l => l.What)];
            Said without = unpriced.Length > 0 ? (Said)$" without {Wording.List(unpriced)}, which have no price in job.json" : "";
            page.Line($"In all{Money(total, " ")}{without}.", 2, Tone.GoodHeading);
        }

        if (answer.Worth is { } worth)
        {
            page.Line($"The hours are worth{Money(worth, " ")}.", 2);
        }
    }

    private Said Money(double? amount, string before) => amount is not { } a ? Said.Nothing
        : answer.Currency.Length > 0 ? (Said)$"{before}{a:#,0.00} {answer.Currency}" : $"{before}{a:#,0.00}";

    private static Said Amount(ToldAct act) => Wording.Amount(act.Amount, act.Unit);

    private static Said Minutes(ToldAct act) => act.LikelyMinutes < 0.5 ? "under a minute" : (Said)$"{act.LikelyMinutes:0} min";
}
