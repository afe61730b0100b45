using System.Collections.Immutable;

namespace NameBand.Estimating;

/// <summary>A figure with the range it may well fall in: in eight cases of ten the truth lies between low and high.</summary>
public readonly record struct Figure(double Low, double Likely, double High)
{
    public static Figure operator +(Figure a, Figure b) => new(a.Low + b.Low, a.Likely + b.Likely, a.High + b.High);
}

/// <summary>One line of the estimate: what is done, how often or over what length, and the minutes it takes.</summary>
public sealed record WorkLine(string Work, double Amount, string Unit, Figure Minutes)
{
    /// <summary>Why the range is as wide as it is.</summary>
    public string Why { get; init; } = "";

    /// <summary>Hand work at each hooping, which the sewing log times.</summary>
    public bool IsAtTheHoop { get; init; }
}

/// <summary>Thread that one name takes, in sewing order.</summary>
/// <param name="Order">The name's number in the whole job; 0 for the alignment marks.</param>
public readonly record struct NameThread(int Order, double NeedleM, double BobbinM);

/// <summary>A bobbin put in before a name is begun.</summary>
/// <param name="BeforeOrder">Number of the name; 0 where the marks of the hooping come first.</param>
/// <param name="LeftM">Bobbin thread that was still on the old one and would not have finished the name.</param>
/// <param name="InName">How often more the bobbin is changed inside this name, because it takes more than a whole one.</param>
/// <param name="Bobbins">Bobbins put in, before the name and inside it.</param>
public sealed record BobbinChange(int Hooping, int BeforeOrder, double LeftM, int InName, int Bobbins)
{
    /// <summary>Such as <c>before 12</c>, a name's number on the proofs.</summary>
    public string Before => BeforeOrder > 0 ? FormattableString.Invariant($"before {BeforeOrder}") : "before the marks";

    /// <summary>The hooping is sewn: this bobbin is in the machine already, or empty.</summary>
    public bool IsPast { get; init; }
}

/// <summary>What one hooping takes.</summary>
public sealed record HoopingFigures(
    int Number, int Stitches, int Jumps, int Trims, int Stops, double NeedleThreadM, double BobbinThreadM, double MachineMinutes)
{
    /// <summary>Minutes of the stitches alone, at the pace each stitch allows.</summary>
    public double StitchingMinutes { get; init; }

    /// <summary>Loose threads that a person cuts: jumps the machine did not cut before, and the last thread where it did not cut that.</summary>
    public int Snips { get; init; }

    /// <summary>The same, name by name, in the order they are sewn; empty when the hooping was not known.</summary>
    public ImmutableArray<NameThread> Names { get; init; } = [];

    /// <summary>Bobbins changed in this hooping.</summary>
    public int BobbinChanges { get; init; }

    /// <summary>True once the sewing log says so: it then counts for nothing that is still to do.</summary>
    public bool IsSewn { get; init; }
}

/// <summary>Hours and thread of the whole job.</summary>
public sealed record Estimate(
    ImmutableArray<HoopingFigures> Hoopings,
    ImmutableArray<WorkLine> MachineWork,
    ImmutableArray<WorkLine> HandWork,
    double NeedleThreadM,
    double BobbinThreadM)
{
    /// <summary>By the machine's own pace, once hoopings were timed.</summary>
    public Figure MachineMinutes => OwnPace?.MachineMinutes ?? Sum(MachineWork);

    /// <summary>By the person's own pace, once the work at a hooping was timed.</summary>
    public Figure HandsOnMinutes => OwnPace?.HandsOnMinutes ?? Sum(HandWork);

    /// <summary>Minutes that one of the hoopings takes at the machine, by its own pace as the totals are.</summary>
    public double OwnMinutes(HoopingFigures hooping) => hooping.MachineMinutes * (OwnPace?.MachineFactor ?? 1);

    /// <summary>What the log has taught; null: nothing was timed, and all is at the pace that is set.</summary>
    public OwnPace? OwnPace { get; init; }

    public static Figure Sum(IEnumerable<WorkLine> lines) => lines.Aggregate(default(Figure), (sum, w) => sum + w.Minutes);

    /// <summary>Where a fresh bobbin goes in, in sewing order.</summary>
    public ImmutableArray<BobbinChange> BobbinChanges { get; init; } = [];

    /// <summary>Bobbins wound in all.</summary>
    public int Bobbins { get; init; }

    /// <summary>The hoopings by their numbers.</summary>
    public IReadOnlyDictionary<int, HoopingFigures> ByNumber() => Hoopings.ToDictionary(h => h.Number);
}
