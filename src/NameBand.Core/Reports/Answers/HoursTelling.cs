using System.Collections.Immutable;
using NameBand.Estimating;
using NameBand.PlanFile;

namespace NameBand.Reports.Answers;

/// <summary>Puts what was estimated into the record that is told.</summary>
internal static class HoursTelling
{
    public static CommandAnswer Of(HoursReport report) =>
        report is { Job: not null, Plan: not null, Estimate: { } estimate, Shopping: { } shopping }
            ? Estimated(report, estimate, shopping)
            : RefusedAnswer.Of(report.Status, report.Problems);

    private static HoursAnswer Estimated(HoursReport report, Estimate estimate, ShoppingList shopping)
    {
        var set = estimate.OwnPace?.AtSetPace;
        return WithEvenings(report, new HoursAnswer
        {
            Status = (int)report.Status,
            Problems = report.Problems,
            IsSoundButForTheDay = report.IsSoundButForTheDay,
            Title = report.Job!.Title,
            Mark = SheetMarks.Of(report.Plan!),
            Names = report.Plan!.NameCount,
            Hoopings = report.Plan.Hoopings.Length,
            TakenUp = report.Plan.HasSeveralWays ? report.Plan.SittingsInWords : null,
            Hooped = estimate.IsHooped,
            Machine = [.. estimate.MachineWork.Select(Act)],
            Hands = [.. estimate.HandWork.Select(Act)],
            Work = PlanWork.Of(estimate.Work),
            Causes = [.. Causes(estimate.Work)],
            MachineMinutes = MakeTelling.Sum(estimate.Work, Doer.Machine),
            HandsOnMinutes = MakeTelling.Sum(estimate.Work, Doer.Hands),
            AllMinutes = Telling.Figure(estimate.Work.All),
            ElapsedMinutes = Telling.Thousandth(estimate.ElapsedMinutes),
            MachineMinutesAtSetPace = set is null ? null : MakeTelling.Sum(set.Work, Doer.Machine),
            HandsOnMinutesAtSetPace = set is null ? null : MakeTelling.Sum(set.Work, Doer.Hands),
            Begun = estimate.IsBegun,
            HoopingsLeft = estimate.WorkLeft is { HoopingsInAll: > 0 } hooped ? hooped.Hoopings : null,
            NamesLeft = estimate.WorkLeft is { NamesInAll: > 0 } byName ? byName.Names : null,
            NamesByName = estimate.Names.IsEmpty ? null : estimate.Names.Length,
            MachineMinutesLeft = MakeTelling.Sum(estimate.Left, Doer.Machine),
            HandsOnMinutesLeft = MakeTelling.Sum(estimate.Left, Doer.Hands),
            FinishingMinutesLeft = Telling.Thousandth(estimate.WorkLeft.FinishingMinutes),
            Bobbins = estimate.Bobbins,
            BobbinHoldsM = Telling.Thousandth(report.Job.Bobbin.HoldsM),
            BobbinChanges = [.. estimate.BobbinChanges.Select(Bobbin)],
            Shopping = [.. shopping.Lines.Select(Buy)],
            Currency = shopping.Currency,
            Total = shopping.Total is { } total ? Telling.Thousandth(total) : null,
            Worth = shopping.Worth is { } worth ? Telling.Thousandth(worth) : null,
            MachinePace = Pace(report.Machine),
            HandsPace = Pace(report.Hands),
            Spoils = estimate.Spoils is { } s
                ? new ToldSpoils(s.Sewn, s.Spoiled, Telling.Thousandth(s.SetPer100), Telling.Thousandth(s.NowPer100)) : null,
            Assumed = AssumedWorkshop.Of(report.Job),
        });
    }

    private static HoursAnswer WithEvenings(HoursReport report, HoursAnswer answer) =>
        report.Evenings is not { } plan ? answer : answer with
        {
            FinishBy = report.Calendar?.FinishBy,
            BeginBy = report.Calendar?.BeginBy,
            DoneOn = report.Calendar?.DoneOn,
            LongerByMinutes = report.Calendar?.LongerByMinutes,
            Evenings = plan.Evenings,
            LeastEvenings = plan.LeastEvenings,
            LeastMinutes = Telling.Thousandth(plan.LeastMinutes),
            PlannedMinutes = Telling.Thousandth(plan.Minutes),
            IsProvenBest = plan.IsProvenBest,
            Sittings = [.. plan.Sittings.Select(s => new ToldSitting
        {
            Evening = s.Evening,
            Day = report.Calendar?.DayOf(s.Evening),
            Person = s.Person.Length > 0 ? s.Person : null,
            Machine = s.Machine,
            Minutes = Telling.Thousandth(s.Minutes),
            Before = Tasks(s.Before),
            After = Tasks(s.After),
            Hoopings = s.Hoopings,
        })],
            TooLong = plan.TooLong,
            Tonight = report.Tonight is { } tonight ? Tonight(tonight) : null,
        };

    private static ToldTonight Tonight(Tonight tonight) => new()
    {
        Text = tonight.InWords,
        Day = tonight.Day,
        Minutes = Telling.Thousandth(tonight.Minutes),
        Names = tonight.Names,
        LastName = tonight.LastNumber,
        Hoopings = tonight.Hoopings,
        Bobbins = tonight.Bobbins,
    };

    private static IEnumerable<ToldCause> Causes(Work work) =>
        work.Rows.Select(r => r.Cause).DistinctBy(c => c.Name).Select(c => new ToldCause(c.Name, c.Why));

    private static IReadOnlyList<ToldTask> Tasks(ImmutableArray<OtherTask> tasks) =>
        [.. tasks.Select(t => new ToldTask(t.Act, Telling.Thousandth(t.Minutes)))];

    private static ToldAct Act(WorkRow row) => new()
    {
        Work = row.Act,
        Amount = Telling.Thousandth(row.Count),
        Unit = row.CountedFrom,
        LowMinutes = Telling.Thousandth(row.Minutes.Low),
        LikelyMinutes = Telling.Thousandth(row.Minutes.Likely),
        HighMinutes = Telling.Thousandth(row.Minutes.High),
        Why = row.Cause.Why,
    };

    private static ToldBobbin Bobbin(BobbinChange change) => new()
    {
        Hooping = change.Hooping,
        BeforeName = change.BeforeOrder,
        Bobbins = change.Bobbins,
        Past = change.IsPast,
        LeftM = Telling.Thousandth(change.LeftM),
        InName = change.InName,
    };

    private static ToldBuy Buy(BuyLine line) => new()
    {
        What = line.What,
        Amount = Telling.Thousandth(line.Amount),
        Unit = line.Unit,
        InShop = line.InShop,
        Needed = line.Needed,
        Price = line.Price is { } price ? Telling.Thousandth(price) : null,
    };

    private static ToldPace? Pace(LearnedPace? pace) => pace is null ? null : new ToldPace
    {
        Timed = pace.Timed,
        Factor = Telling.Thousandth(pace.PaceFactor),
        LeftLowMinutes = Telling.Thousandth(pace.Now.Low),
        LeftLikelyMinutes = Telling.Thousandth(pace.Now.Likely),
        LeftHighMinutes = Telling.Thousandth(pace.Now.High),
        BeforeLowMinutes = Telling.Thousandth(pace.Before.Low),
        BeforeLikelyMinutes = Telling.Thousandth(pace.Before.Likely),
        BeforeHighMinutes = Telling.Thousandth(pace.Before.High),
    };
}
