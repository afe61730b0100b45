using System.Collections.Immutable;
using NameBand.Common;
using NameBand.Estimating;
using NameBand.Job;
using NameBand.Layout;

namespace NameBand.Reports;

/// <summary>A plan that can be sewn and attached, as make would come to it.</summary>
/// <param name="Mark">The four signs that make would put on its sheets.</param>
/// <param name="Edits">What of job.json it changes.</param>
public sealed record OfferedPlan(string Mark, ImmutableArray<JobEdit> Edits, BandJob Job, StripPlan Plan, Estimate Estimate)
{
    /// <summary>What it answers best, the first of them first; empty for the plain way.</summary>
    public ImmutableArray<PlanWish> Wishes { get; init; } = [];

    /// <summary>What has to be done before it can be sewn, besides changing keys.</summary>
    public ImmutableArray<Said> Asks { get; init; } = [];

    /// <summary>What stood in the way of sewing it as it is set; empty where nothing did.</summary>
    public Said Mends { get; init; } = "";

    /// <summary>Of that, what she wrote herself, as it stands in job.json: the wish that stood in the way.</summary>
    public ImmutableArray<JobEdit> InTheWay { get; init; } = [];

    /// <summary>No choice of what is free costs less; null where it is not known.</summary>
    public double? BoundCostMinutes { get; init; }
}

/// <summary>The plans there are for a job, what she wishes for first.</summary>
/// <param name="AsSet">The job as it is set, sound or not; null when it could not be laid out.</param>
/// <param name="Plain">The plain way; null where the job cannot be sewn so.</param>
public sealed record PlansReport(
    ExitStatus Status, OfferedPlan? AsSet, ImmutableArray<OfferedPlan> Plans, OfferedPlan? Plain, ImmutableArray<Problem> Problems)
{
    /// <summary>Mark of the plan whose work is laid beside another's; null: of none.</summary>
    public string? Why { get; init; }

    /// <summary>Mark of the plan that job.json was given; null: of none.</summary>
    public string? Taken { get; init; }

    /// <summary>Names that came when the garment was finished; null where there are none.</summary>
    public LateNames? Late { get; init; }

    /// <summary>What was taken for them; null: nothing.</summary>
    public TakenLate? TakenLate { get; init; }
}
