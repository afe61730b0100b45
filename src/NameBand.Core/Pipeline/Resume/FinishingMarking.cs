using NameBand.Common;
using NameBand.Job;
using NameBand.Output;
using NameBand.Reports;

namespace NameBand.Pipeline.Resume;

/// <summary>What a person says of a step of finishing, as a line of the log.</summary>
internal static class FinishingMarking
{
    /// <summary>The line, or why it cannot be written down.</summary>
    public static (SewingEntry[] Lines, Problem? Why) Lines(SewingWord word, PlanOverview plan)
    {
        var step = word.Step!.Value;
        return Objection(word, step, plan) is { } why
            ? ([], why)
            : ([new SewingEntry(
                word.Round, word.Deed, When: PlainText.Whole(word.When), Path: FinishingWords.Of(step), Note: PlainText.Whole(word.Note))
            {
                Of = SewingSubject.Round,
            }], null);
    }

    private static Problem? Objection(SewingWord word, FinishingStep step, PlanOverview plan)
    {
        var where = new Where(OutPaths.Plan);
        if (word.Round > 0 && plan.Plan.Rounds.All(r => r.Number != word.Round))
        {
            return Problem.CannotUse(
                where, FormattableString.Invariant($"There is no round {word.Round} in the plan; it has {plan.Plan.Rounds.Length}."),
                "Say the number of the round, the lowest being 1, or leave --round out where it is done of all.");
        }

        var steps = plan.FinishingMinutes?.Select(f => f.Step).OfType<FinishingStep>().Distinct().Order().ToList() ?? [];
        return steps.Count == 0
            ? Problem.CannotUse(where, "This plan is of an earlier version and does not say how it is finished.", "Run make first.")
            : steps.Contains(step) ? null : Problem.CannotUse(
                where, $"Nothing of this job is done under “{FinishingWords.Of(step)}”.",
                $"Its steps are: {string.Join(", ", steps.Select(FinishingWords.Of))}.");
    }
}
