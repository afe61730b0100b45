using System.Collections.Immutable;
using NameBand.Common;
using NameBand.Estimating;
using NameBand.Job;
using NameBand.Layout;
using NameBand.Names;
using NameBand.Output.Changes;

namespace NameBand.Reports;

/// <summary>What <c>Bander.Make</c> made; the parts after a failed one are null.</summary>
/// <param name="Names">Every row with what finally became of it.</param>
public sealed record MakeReport(
    ExitStatus Status, BandJob? Job, NameList? Names, StripPlan? Plan, Estimate? Estimate, string? OutFolder,
    ImmutableArray<Problem> Problems)
{
    /// <summary>What changed since the plan that lay in the out folder; null when there was none.</summary>
    public PlanChanges? Changes { get; init; }

    /// <summary>What the rooms found of each fact, as plan.json has it.</summary>
    public ImmutableArray<Verdict> Verdicts { get; init; } = [];

    /// <summary>Sheets of the paper rehearsal, by the word of the paper; empty where nothing was printed.</summary>
    public ImmutableSortedDictionary<string, int> RehearsalSheets { get; init; } = ImmutableSortedDictionary<string, int>.Empty;

    /// <summary>What is left at the machine by the pace the log shows, and as it would be without; null until one was timed.</summary>
    public LearnedPace? Machine { get; init; }

    /// <summary>The same of the hand work at each hooping.</summary>
    public LearnedPace? Hands { get; init; }
}
