using System.Collections.Immutable;
using NameBand.Common;
using NameBand.Job;
using NameBand.Reports.Answers;

namespace NameBand.Reports;

/// <summary>What one choice of face and rounds comes to.</summary>
/// <param name="HeightMm">The largest letters that fit, or the least the job allows where not even they do.</param>
/// <param name="TooLongMm">How much the names run over at that height; 0 where they fit.</param>
/// <param name="Held">Names that could not be placed with this face.</param>
/// <param name="Lanes">Strips side by side that the field holds, 1 where only one.</param>
/// <param name="LaneHoopings">Hoopings with that many side by side.</param>
public sealed record FitChoice(
    string Face, int Rounds, double HeightMm, double TooLongMm, int Held, int Hoopings, double MachineMinutes, double HandsOnMinutes,
    int Lanes, int LaneHoopings, double LaneMachineMinutes, double LaneHandsOnMinutes)
{
    /// <summary>Height from which the face's letters can be sewn as drawn; 0 where nothing is sewn from needle paths.</summary>
    public double LeastHeightMm { get; init; }

    /// <summary>Whether strokes or counters are too small for thread and needle at this choice's height.</summary>
    public bool IsTooSmall => HeightMm < LeastHeightMm - 1e-9;
}

/// <summary>The choices of a job side by side, the job's own face first.</summary>
public sealed record FitReport(ExitStatus Status, BandJob? Job, ImmutableArray<FitChoice> Choices, ImmutableArray<Problem> Problems)
{
    /// <summary>What the command answers.</summary>
    public CommandAnswer Answer => FitAnswer.Of(this);
}
