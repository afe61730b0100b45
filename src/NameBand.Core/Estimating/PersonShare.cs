using System.Collections.Immutable;

namespace NameBand.Estimating;

/// <summary>What one of several people does of a job, over all her evenings.</summary>
/// <param name="Hoopings">Those of whole cloths, in the order of their numbers.</param>
public sealed record PersonShare(
    string Person, ImmutableArray<int> Hoopings, ImmutableArray<OtherTask> Before, ImmutableArray<OtherTask> After, double Minutes,
    int Evenings)
{
    /// <summary>In the order in which they first sit down; none where one person does it all.</summary>
    public static ImmutableArray<PersonShare> Of(EveningPlan? plan) =>
    [
        .. (plan?.Sittings ?? []).Where(s => s.Person.Length > 0).GroupBy(s => s.Person, StringComparer.Ordinal)
            .Select(g => new PersonShare(
            g.Key, [.. g.SelectMany(s => s.Hoopings).Order()], Sums(g.SelectMany(s => s.Before)), Sums(g.SelectMany(s => s.After)),
            g.Sum(s => s.Minutes), g.Select(s => s.Evening).Distinct().Count())),
    ];

    private static ImmutableArray<OtherTask> Sums(IEnumerable<OtherTask> tasks) =>
        [.. tasks.GroupBy(t => t.Act).Select(g => new OtherTask(g.Key, g.Sum(t => t.Minutes)))];
}
