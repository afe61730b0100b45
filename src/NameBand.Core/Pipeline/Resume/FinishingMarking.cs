using System.Collections.Immutable;
using NameBand.Common;
using NameBand.Job;
using NameBand.Output;
using NameBand.Reports;

namespace NameBand.Pipeline.Resume;

/// <summary>What a person says of a step of finishing, as a line of the log.</summary>
internal static class FinishingMarking
{
    /// <summary>The line, or why it cannot be written down.</summary>
    public static (SewingEntry[] Lines, Problem? Why) Lines(SewingWord word, SewingLog log, PlanOverview plan)
    {
        var step = word.Step!.Value;
        return (Objection(word, step, plan) ?? NotSewn(word, log, plan)) is { } why
            ? ([], why)
            : ([new SewingEntry(
                word.Round, word.Deed, When: PlainText.Whole(word.When), Path: FinishingWords.Of(step), Note: PlainText.Whole(word.Note))
            {
                Of = SewingSubject.Round,
            }], null);
    }

    /// <summary>Hoopings and names of a round, or of all where it is 0, that are not written down as sewn.</summary>
    public static ImmutableArray<string> NotSewn(int round, SewingLog log, PlanOverview plan)
    {
        var segments = plan.Plan.Rounds.Where(r => round == 0 || r.Number == round).SelectMany(r => r.Segments).Select(s => s.Number)
            .ToHashSet();
        var pieces = plan.Plan.Hoopings.Where(h => h.Segments.Any(s => segments.Contains(s.Segment))).Select(h => h.Number).ToHashSet();
        var hoopings = plan.Hoopings.Where(h => pieces.Contains(h.Number) && !log.IsSewn(h.Number))
            .Select(h => FormattableString.Invariant($"{h.Number}"));
        var names = plan.Names.Where(n => pieces.Contains(n.Hooping) && !log.OfNames.IsSewn(n.Number))
            .Select(n => FormattableString.Invariant($"n{n.Number}"));
        return [.. hoopings, .. names];
    }

    /// <summary>The steps in which a plan is finished; empty where it does not say.</summary>
    public static ImmutableArray<FinishingStep> Steps(PlanOverview plan) =>
        [.. (plan.FinishingMinutes ?? []).Select(f => f.Step).OfType<FinishingStep>().Distinct().Order()];

    /// <summary>What is not sewn is neither pressed nor pinned: said too early it would be missing from what is left.</summary>
    private static Problem? NotSewn(SewingWord word, SewingLog log, PlanOverview plan)
    {
        var left = NotSewn(word.Round, log, plan);
        return word.Deed != SewingDeed.Done || left.IsEmpty ? null : Problem.CannotUse(
            new Where(OutPaths.Plan),
            $"Not all of it is logged as sewn: {left.Length} to go, the first is {left[0]}.",
            $"Say first what is sewn: sewn JOB {left[0]}.");
    }

    private static Problem? Objection(SewingWord word, FinishingStep step, PlanOverview plan)
    {
        var where = new Where(OutPaths.Plan);
        if (word.Round > 0 && plan.Plan.Rounds.All(r => r.Number != word.Round))
        {
            return Problem.CannotUse(
                where, $"There is no round {word.Round} in the plan; it has {plan.Plan.Rounds.Length}.",
                "Say the number of the round, the lowest being 1, or leave --round out where it is done of all.");
        }

        var steps = Steps(plan);
        return steps.IsEmpty
            ? Problem.CannotUse(where, "This plan is of an earlier version and does not say how it is finished.", "Run make first.")
            : steps.Contains(step) ? null : Problem.CannotUse(
                where, $"Nothing of this job is done under “{FinishingWords.Of(step)}”.",
                $"Its steps are: {string.Join(", ", steps.Select(FinishingWords.Of))}.");
    }
}
