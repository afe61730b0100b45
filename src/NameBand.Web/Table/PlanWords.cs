using System.Collections.Immutable;
using NameBand.Common;
using NameBand.Estimating;
using NameBand.Job;
using NameBand.Reports;

namespace NameBand.Web.Table;

/// <summary>A plan in a maker's words.</summary>
internal static class PlanWords
{
    public static Said Of(PlanWish wish) => wish switch
    {
        PlanWish.AsSet => "As you set it",
        PlanWish.FewestHours => "Fewest hours of yours",
        PlanWish.Soonest => "Soonest",
        PlanWish.BiggestLetters => "Biggest letters",
        _ => "Typed letters",
    };

    public static Said Title(OfferedPlan plan) =>
        plan.Wishes.IsEmpty ? "The plain way" : plan.Mends.IsEmpty ? Of(plan.Wishes[0]) : $"{Of(plan.Wishes[0])}, mended";

    /// <summary>The same within a sentence.</summary>
    public static Said InSentence(Said title) => title.Changed((text, culture) => text.ToLower(culture));

    /// <summary>What else it answers best.</summary>
    public static Said Also(OfferedPlan plan) => plan.Wishes.Length < 2 ? ""
        : (Said)$"Also: {Wording.List([.. plan.Wishes.Skip(1).Select(w => InSentence(Of(w)))])}.";

    /// <summary>Rounds, what is hooped, how high the letters are and in what.</summary>
    public static Said Facts(OfferedPlan plan)
    {
        var job = plan.Job;
        Said letters = job.Traits.HasLettersOfItsOwn && !job.HasSeveralWays ? "the machine’s own letters" : Said.Plain(job.Lettering.Face);
        Said pieces = plan.Plan.HasSeveralWays
            ? plan.Plan.SittingsInWords : job.IsHooped ? Wording.Count(plan.Plan.Hoopings.Length, "hooping") : "no hoop";
        return $"{Words.Rounds(plan.Plan.Rounds.Length)} · {pieces} · {Words.Mm(plan.Plan.LetterHeightMm)} mm · {letters}";
    }

    /// <summary>Evenings that it takes, where it is known how long one is.</summary>
    public static Said Evenings(OfferedPlan plan) => plan.Job.EveningMinutes is not { } minutes ? ""
        : Words.Count(
            EveningWork.Plan(plan.Estimate, plan.Plan, [new SewingMachine("")], EveningLengths.Always(minutes)).Evenings, "evening",
            "evenings");

    /// <summary>What it asks of her besides; what is said with the name of a file is said by the page once the plan is taken.</summary>
    public static ImmutableArray<Said> Asks(OfferedPlan plan) => [.. plan.Asks
        .Select(a => a.English.Contains(".csv", StringComparison.Ordinal) || a.English.Contains(".json", StringComparison.Ordinal)
            ? "Something is to be measured or settled first: take it, and the page says what." : a).Distinct()];

    /// <summary>What is set, in the words of the fields.</summary>
    public static ImmutableArray<string> Changes(OfferedPlan plan) =>
        [.. plan.Edits.Select(e => JobKeyCard.All.FirstOrDefault(c => c.Path == e.Path) is { } card
        ? $"{KeyLabels.Of(card)}: {(e.Json is null ? "as usual" : KeyLabels.Said(KeyValue.Shown(card, e.Json)))}"
            : KeyLabels.Said(e.Path.Split('.')[^1]).ToString())];
}
