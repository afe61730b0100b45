using System.Collections.Immutable;

namespace NameBand.Estimating;

/// <summary>A figure with the range it may well fall in.</summary>
public readonly record struct Figure(double Low, double Likely, double High)
{
    public static Figure operator +(Figure a, Figure b) => new(a.Low + b.Low, a.Likely + b.Likely, a.High + b.High);
}

/// <summary>One line of the estimate: what is done, how often or over what length, and the minutes it takes.</summary>
public sealed record WorkLine(string Work, double Amount, string Unit, Figure Minutes);

/// <summary>What one hooping takes.</summary>
public sealed record HoopingFigures(
    int Number, int Stitches, int Jumps, int Trims, int Stops, double NeedleThreadM, double BobbinThreadM, double MachineMinutes);

/// <summary>Hours, thread and cloth of the whole job.</summary>
public sealed record Estimate(
    ImmutableArray<HoopingFigures> Hoopings,
    ImmutableArray<WorkLine> MachineWork,
    ImmutableArray<WorkLine> HandWork,
    double NeedleThreadM,
    double BobbinThreadM,
    double ClothM2,
    double BackingM2)
{
    public Figure MachineMinutes => MachineWork.Aggregate(default(Figure), (sum, w) => sum + w.Minutes);

    public Figure HandsOnMinutes => HandWork.Aggregate(default(Figure), (sum, w) => sum + w.Minutes);
}
