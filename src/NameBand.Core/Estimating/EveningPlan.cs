using System.Collections.Immutable;
using NameBand.Common;

namespace NameBand.Estimating;

/// <summary>A hooping, the minutes it keeps a machine at its set pace, and those of the hands that are at work on it.</summary>
internal readonly record struct HoopingTime(int Number, double MachineMinutes, double HandMinutes = 0)
{
    /// <summary>The cloth it lies on, which several people do not share; 0: it is nobody's matter.</summary>
    public int Cloth { get; init; }

    /// <summary>Minutes with a machine of its own pace, which does not make hands slower.</summary>
    public double TakesMinutes(SewingMachine machine) => (MachineMinutes * machine.Factor) + HandMinutes;
}

/// <summary>Work besides the hoopings, which can be laid down and taken up again.</summary>
public readonly record struct OtherTask(Said Act, double Minutes);

/// <summary>What comes before the first hooping and after the last, in the order it is done; by one person.</summary>
internal sealed record OtherWork(ImmutableArray<OtherTask> Before, ImmutableArray<OtherTask> After)
{
    public static OtherWork None { get; } = new([], []);

    public double Minutes => Before.Sum(t => t.Minutes) + After.Sum(t => t.Minutes);
}

/// <param name="Factor">Its minutes as a multiple of the likely ones: learned from the log, 1 when nothing is known.</param>
public sealed record SewingMachine(string Name, double Factor = 1);

/// <summary>What is done at one machine in one evening.</summary>
/// <param name="Evening">From 1; always 1 when no evening's length was given.</param>
/// <param name="Hoopings">In their order along the cloth.</param>
public sealed record Sitting(int Evening, string Machine, ImmutableArray<int> Hoopings, double Minutes)
{
    /// <summary>Whose it is, where several people sew; else empty.</summary>
    public string Person { get; init; } = "";

    /// <summary>Work before the first hooping.</summary>
    public ImmutableArray<OtherTask> Before { get; init; } = [];

    /// <summary>Work after the last hooping.</summary>
    public ImmutableArray<OtherTask> After { get; init; } = [];
}

/// <summary>Which work on which evening and machine.</summary>
/// <param name="Minutes">Time to the end: of the longest machine, evening by evening.</param>
/// <param name="LeastEvenings">No plan can do with fewer; equal to <paramref name="Evenings"/> when this one is best.</param>
/// <param name="LeastMinutes">No plan can be done sooner.</param>
/// <param name="IsProvenBest">True when it was shown that no plan is better.</param>
/// <param name="TooLong">Hoopings that take longer than an evening; each has one for itself.</param>
public sealed record EveningPlan(
    ImmutableArray<Sitting> Sittings, int Evenings, double Minutes, int LeastEvenings, double LeastMinutes, bool IsProvenBest,
    ImmutableArray<int> TooLong);
