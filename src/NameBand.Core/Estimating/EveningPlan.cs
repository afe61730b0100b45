using System.Collections.Immutable;

namespace NameBand.Estimating;

/// <summary>A hooping and the minutes it keeps a machine, hooping included.</summary>
public readonly record struct HoopingTime(int Number, double Minutes);

/// <param name="Factor">Its minutes as a multiple of the likely ones: learned from the log, 1 when nothing is known.</param>
public sealed record SewingMachine(string Name, double Factor = 1);

/// <summary>What one machine sews in one evening.</summary>
/// <param name="Evening">From 1; always 1 when no evening's length was given.</param>
public sealed record Sitting(int Evening, string Machine, ImmutableArray<int> Hoopings, double Minutes);

/// <summary>Which hoopings on which evening and machine.</summary>
/// <param name="Minutes">Machine time to the end: of the longest machine, evening by evening.</param>
/// <param name="LeastEvenings">No plan can do with fewer; equal to <paramref name="Evenings"/> when this one is best.</param>
/// <param name="LeastMinutes">No plan can be done sooner.</param>
/// <param name="IsProvenBest">True when it was shown that no plan is better.</param>
/// <param name="TooLong">Hoopings that take longer than an evening; each has one for itself.</param>
public sealed record EveningPlan(
    ImmutableArray<Sitting> Sittings, int Evenings, double Minutes, int LeastEvenings, double LeastMinutes, bool IsProvenBest,
    ImmutableArray<int> TooLong);
