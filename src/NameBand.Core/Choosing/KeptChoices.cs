using NameBand.Job;
using NameBand.PlanFile;

namespace NameBand.Choosing;

/// <summary>What an earlier plan of the same job chose where the job left it free.</summary>
/// <param name="IsMixed">Whether some hoopings have another frame than the plan's.</param>
internal sealed record KeptChoices(int? Lanes, string? Frame, MarkMethod? Marks = null, bool? IsMixed = null)
{
    public static KeptChoices None { get; } = new(null, null);

    public static KeptChoices Of(WrittenPlan plan) => new(
        plan.Free?.Lanes is >= 1 and var lanes ? lanes : null, plan.Free?.Frame,
        HoldingKeys.MarksOf(plan.Free?.Marks) is { } marks and not MarkMethod.None ? marks : null,
        plan.Free?.Frame is null ? null : plan.Hoopings.Any(h => h.Frame is not null));
}
