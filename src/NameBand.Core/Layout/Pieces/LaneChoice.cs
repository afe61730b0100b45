using System.Collections.Immutable;
using NameBand.Job;

namespace NameBand.Layout.Pieces;

/// <summary>How strips may lie side by side where that is free: chosen by the work it takes, or kept from an earlier plan.</summary>
/// <param name="Kept">So many at most, as the earlier plan had it; null: none is kept.</param>
/// <param name="CostMinutes">What a plan costs her. It is asked of plans that differ in nothing else.</param>
internal sealed record LaneChoice(int? Kept, Func<StripPlan, double> CostMinutes)
{
    /// <summary>Frames that single hoopings may be sewn in where they fit; empty: all are sewn in the job's.</summary>
    public ImmutableArray<SmallerFrame> Smaller { get; init; } = [];

    /// <summary>The same of plans that are finished by their way before it is known what they cost.</summary>
    public LaneChoice Of(Func<StripPlan, StripPlan> finish) => this with { CostMinutes = plan => CostMinutes(finish(plan)) };
}

/// <summary>A frame beside the job's.</summary>
/// <param name="WorkPart">Of one hooping in it, where that of a hooping in the job's frame is 1.</param>
internal sealed record SmallerFrame(Frame Frame, double WorkPart);
