using System.Collections.Immutable;
using System.Text.Json;
using NameBand.Common;
using NameBand.Estimating;
using NameBand.Job;
using NameBand.PlanFile;

namespace NameBand.Reports.Answers;

/// <summary>Puts the plans that were found into the record that is told.</summary>
internal static class PlansTelling
{
    public static CommandAnswer Of(PlansReport report)
    {
        if (report.AsSet is not { } asSet || report.Status == ExitStatus.CannotUse)
        {
            return RefusedAnswer.Of(report.Status, report.Problems);
        }

        return new PlansAnswer
        {
            Status = (int)report.Status,
            Problems = report.Problems,
            Title = asSet.Job.Title,
            PlainMinutes = report.Plain is { } plain ? Hers(plain) : null,
            Plain = report.Plain is { } measure ? Plan(measure, asSet) : null,
            Plans = [.. report.Plans.Select(p => Plan(p, asSet))],
            Late = ToldLate.Of(report.Late),
            TakenLate = report.TakenLate is { } late ? new ToldTakenLate(late.Place, late.Folder, late.Names) : null,
            Taken = report.Taken,
            Compared = report.Why is { } mark ? Compared(report, asSet, mark) : null,
            Reading = AssumedReading.Of(asSet.Job),
            Assumed = AssumedWorkshop.Of(asSet.Job),
        };
    }

    public static string Word(PlanWish wish) => JsonNamingPolicy.CamelCase.ConvertName(wish.ToString());

    /// <summary>The sum of the rows as they are told, as plan.json adds them up.</summary>
    private static double Hers(OfferedPlan plan) =>
        (double)plan.Estimate.Work.Rows.Where(r => r.By == Doer.Hands || r.IsAttended).Sum(r => Thousandths.Mm(r.Minutes.Likely));

    private static ToldPlan Plan(OfferedPlan plan, OfferedPlan asSet) => new()
    {
        Mark = plan.Mark,
        Wish = plan.Wishes.IsEmpty ? "plain" : Word(plan.Wishes[0]),
        AlsoWishes = [.. plan.Wishes.Skip(1).Select(Word)],
        Settings = plan.Edits.ToImmutableSortedDictionary(e => e.Path, Value, StringComparer.Ordinal),
        Lines = [.. Lines(plan.Edits)],
        Keys = [.. plan.Edits.Select(e => e.Path.Split('.')[^1])],
        Asks = plan.Asks,
        InTheWay = [.. plan.InTheWay.Select(Line)],
        Ways = plan.Plan.Ways.ToImmutableSortedDictionary(w => JobKeys.WordOf(w.Way), w => w.Names, StringComparer.Ordinal),
        Who = !plan.Plan.HasSeveralWays
        ? null : plan.Plan.Rounds.SelectMany(r => r.Names).Where(n => n.IsOfList).GroupBy(n => n.Lettered.Way)
            .OrderByDescending(g => g.Count()).ThenBy(g => g.Key)
            .Select(g => new ToldShare(
                JobKeys.WordOf(g.Key), WayTraits.Of(g.Key).How, [.. g.OrderBy(n => n.Order).Select(n => n.Lettered.Name.Text)]))
                .ToImmutableArray(),
        Face = plan.Job.Traits.HasLettersOfItsOwn && !plan.Job.HasSeveralWays ? "" : plan.Job.Lettering.Face,
        LetterHeightMm = Telling.Thousandth(plan.Plan.LetterHeightMm),
        Rounds = plan.Plan.Rounds.Length,
        Hoopings = plan.Plan.Hoopings.Length,
        Hooped = plan.Job.IsHooped,
        MachineMinutes = (double)PlanWork.Minutes(plan.Estimate.Work, Doer.Machine),
        HandsOnMinutes = (double)PlanWork.Minutes(plan.Estimate.Work, Doer.Hands),
        HersMinutes = Hers(plan),
        ElapsedMinutes = Telling.Thousandth(plan.Estimate.ElapsedMinutes),
        CostMinutes = Telling.Thousandth(plan.Estimate.Work.CostMinutes),
        BoundCostMinutes = plan.BoundCostMinutes is { } bound ? Telling.Thousandth(bound) : null,
        Why = PlanStep.InWords(plan, asSet),
    };

    private static JsonElement Value(JobEdit edit) => JsonDocument.Parse(edit.Json ?? "null").RootElement.Clone();

    /// <summary>Such as <c>"strip": { "rounds": 1 }</c>.</summary>
    /// <summary>One for each group of keys, so that all of them can be pasted: no key comes twice.</summary>
    internal static IEnumerable<Said> Lines(IEnumerable<JobEdit> edits) => edits
        .GroupBy(e => e.Json is null ? e.Path : Group(e) + ".", StringComparer.Ordinal).Select(g => Line([.. g]));

    private static Said Line(JobEdit edit) => Line([edit]);

    private static Said Line(JobEdit[] ofGroup)
    {
        string[] steps = Group(ofGroup[0]).Split('.', StringSplitOptions.RemoveEmptyEntries);
        string groups = string.Concat(steps.Select(s => $"\"{s}\": {{ "));
        string ends = string.Concat(steps.Select(_ => " }"));
        string keys = string.Join(", ", ofGroup.Select(e => $"\"{e.Path.Split('.')[^1]}\": {e.Json}"));
        return ofGroup[0].Json is null ? (Said)$"take {ofGroup[0].Path} out" : Said.Plain($"{groups}{keys}{ends}");
    }

    private static string Group(JobEdit edit) => string.Join('.', edit.Path.Split('.')[..^1]);

    /// <summary>The plan beside the one as it is set; that one beside the plain way.</summary>
    private static ToldComparison? Compared(PlansReport report, OfferedPlan asSet, string mark)
    {
        var plan = report.Plans.First(p => p.Mark == mark);
        bool isAsSet = plan.Mark == asSet.Mark;
        return (isAsSet ? report.Plain : asSet) is { } other ? Beside(plan, other, isAsSet ? "" : other.Mark) : null;
    }

    public static ToldComparison Beside(OfferedPlan plan, OfferedPlan other, string otherMark)
    {
        var (own, others) = (Minutes(plan), Minutes(other));
        ToldDifference[] acts = [.. own.Select(o => o.Key).Concat(others.Select(o => o.Key)).Distinct().OrderBy(k => k.By).Select(
            k => Difference(k.Act, k.By, own.GetValueOrDefault(k), others.GetValueOrDefault(k)))];
        decimal sum = own.Values.Sum();
        decimal otherSum = others.Values.Sum();
        return new ToldComparison
        {
            Mark = plan.Mark,
            OtherMark = otherMark,
            Acts = acts,
            Minutes = (double)sum,
            OtherMinutes = (double)otherSum,
            DifferenceMinutes = (double)(sum - otherSum),
        };
    }

    private static ToldDifference Difference(Said act, Doer by, decimal own, decimal other) =>
        new(act, by == Doer.Machine ? "machine" : "hands", (double)own, (double)other, (double)(own - other));

    /// <summary>In thousandths, as plan.json adds them up.</summary>
    private static Dictionary<(Said Act, Doer By), decimal> Minutes(OfferedPlan plan) => plan.Estimate.Work.Rows
        .GroupBy(r => (r.Act, r.By)).ToDictionary(g => g.Key, g => g.Sum(r => Thousandths.Mm(r.Minutes.Likely)));
}
