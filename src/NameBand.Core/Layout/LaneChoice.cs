namespace NameBand.Layout;

/// <summary>How strips may lie side by side where that is free: chosen by the work it takes, or kept from an earlier plan.</summary>
/// <param name="Kept">So many at most, as the earlier plan had it; null: none is kept.</param>
/// <param name="CostMinutes">What a plan costs her. It is asked of plans that differ in nothing else.</param>
public sealed record LaneChoice(int? Kept, Func<StripPlan, double> CostMinutes)
{
    /// <summary>The same of plans that are finished by their way before it is known what they cost.</summary>
    public LaneChoice Of(Func<StripPlan, StripPlan> finish) => this with { CostMinutes = plan => CostMinutes(finish(plan)) };
}
