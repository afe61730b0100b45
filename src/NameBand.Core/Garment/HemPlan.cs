using System.Collections.Immutable;
using NameBand.Common;
using NameBand.Job;

namespace NameBand.Garment;

/// <summary>Which way the names run round, as seen from above the garment.</summary>
public enum RunDirection
{
    /// <summary>Towards the wearer's left at the front.</summary>
    CounterClockwise,

    /// <summary>Towards the wearer's right at the front.</summary>
    Clockwise,
}

/// <summary>The strip across its width, in millimetres; y = 0 is the strip's centre line.</summary>
public sealed record StripWidths(double CutWidthMm, double TurnInMm, double MarginMm)
{
    public double FinishedWidthMm => CutWidthMm - (2 * TurnInMm);

    /// <summary>Height of the sewing zone: the finished width less the margin at each edge.</summary>
    public double SewingZoneMm => FinishedWidthMm - (2 * MarginMm);
}

/// <summary>A place on the hem that names keep out of: its middle, measured along the edge from the strip's starting end.</summary>
public sealed record ClearZone(double AtMm, double WidthMm);

/// <summary>The edge the strips go round and the length each round must have.</summary>
/// <param name="EdgeLengthMm">Length of the hem edge itself.</param>
/// <param name="TurnRad">Angle of the part-circle, 2π·turn; 0 for a straight edge.</param>
/// <param name="FixedRounds">Number of rounds, or null for as many as needed.</param>
/// <param name="MeasuredRoundsMm">Lengths measured round by round; empty when computed from the edge.</param>
public sealed record HemPlan(
    double EdgeLengthMm,
    double TurnRad,
    bool Closed,
    double OverlapMm,
    HemTolerance Tolerance,
    double LiftMm,
    double RoundStepMm,
    int? FixedRounds,
    ImmutableArray<double> MeasuredRoundsMm,
    StripWidths Strip,
    RunDirection Runs)
{
    /// <summary>Blank that a slanting seam between two pieces takes, its own slant included; 0 where joins are straight.</summary>
    public double JoinBlankMm { get; init; }

    /// <summary>Longest piece that was asked for; null for none.</summary>
    public double? AskedPieceMm { get; init; }

    /// <summary>Strips that lie side by side on one cloth.</summary>
    public int Lanes { get; init; } = 1;

    /// <summary>Longest piece of a round; of a curved strip a metre, or less on a tight curve, where none was asked for.</summary>
    public double? LongestPieceMm(int round) => AskedPieceMm ?? (IsCurved ? Math.Min(1000, 1.3 * RadiusMm(round)) : null);

    /// <summary>Strips are cut as pieces of a ring that lies flat on the garment.</summary>
    public bool IsCurved { get; init; }

    public GarmentSide Side { get; init; } = GarmentSide.Outside;

    public Reader ReadBy { get; init; } = Reader.Viewer;

    /// <summary>Places that names keep out of, along the hem edge.</summary>
    public ImmutableArray<ClearZone> KeepClear { get; init; } = [];

    /// <summary>Where along the hem edge the list begins.</summary>
    public double StartMm { get; init; }

    /// <summary>Where along the hem edge centre front lies; null when not said.</summary>
    public double? CentreFrontMm { get; init; }

    /// <summary>Where along the hem edge centre back lies; null when not said.</summary>
    public double? CentreBackMm { get; init; }

    /// <summary>Kept free of names at the end of every round.</summary>
    public double KeepFreeMm { get; init; }

    /// <summary>Part of every round that is kept free of names at its end.</summary>
    public double KeepFreePart { get; init; }

    /// <summary>What is kept free of names at the end of a round: by its length or its part, whichever is more.</summary>
    public double KeptFreeMm(int round) => Math.Max(KeepFreeMm, KeepFreePart > 0 ? KeepFreePart * RoundMm(round) : 0);

    /// <summary>The same hem with nothing kept free: what was kept is what latecomers are for.</summary>
    public HemPlan WithNothingKeptFree() => this with { KeepFreeMm = 0, KeepFreePart = 0 };

    /// <summary>What a strip's upper edge gives; how a round lies on the garment is judged when its gaps are known.</summary>
    public EaseRule Ease { get; init; } = new(JobDefaults.LiesFlatPart, JobDefaults.EaseLimitStraightPart, null, IsBias: false);

    /// <summary>
    /// Length in mm of round <paramref name="number"/> (1 is the lowest) at its lower edge: the edge less the
    /// angle times the height above it. May be zero or less when a round would lie above the skirt's middle.
    /// </summary>
    public double RoundMm(int number) =>
        MeasuredRoundsMm.Length > 0
            ? MeasuredRoundsMm[number - 1]
            : EdgeLengthMm - (TurnRad * (LiftMm + ((number - 1) * RoundStepMm)));

    /// <summary>
    /// Radius in mm of a ring that lies flat as round <paramref name="number"/>: its lower edge is the round, and its
    /// upper edge is shorter by the angle times the width, as the garment is. Endless for a straight edge.
    /// </summary>
    public double RadiusMm(int number) => RoundMm(number) / TurnRad;

    /// <summary>Which way the names run and for whom they stand upright, as a sentence without its end.</summary>
    public Said RunsInWords
    {
        get
        {
            Said side = Side == GarmentSide.Outside ? "outside" : "inside";
            Said upright = ReadBy == Reader.Viewer
                ? (Said)$"upright for someone who looks at the {side}"
                : "upright for the wearer, with the tops of the letters towards the hem";
            if (!Closed)
            {
                return ReadBy == Reader.Viewer
                    ? (Said)$"along the edge from left to right, seen from the {side}; {upright}"
                    : $"along the edge from right to left, seen from the {side}; {upright}";
            }

            return Runs == RunDirection.CounterClockwise
                ? (Said)$"on the {side}, counter-clockwise seen from above (at the front towards the wearer's left); {upright}"
                : $"on the {side}, clockwise seen from above (at the front towards the wearer's right); {upright}";
        }
    }

    /// <summary>Clear of ink at each end of an edge with two ends, which is a finished edge like any other; 0 where the ends
    /// meet.</summary>
    public double EndMarginMm { get; init; }

    /// <summary>Cloth beyond each finished end of an edge with two ends, to be turned in as the long edges are.</summary>
    public double EndTurnInMm => Closed ? 0 : Strip.TurnInMm;

    /// <summary>How much shorter, in mm, the finished strip's upper edge must be than its lower one to lie flat.</summary>
    public double UpperEdgeShorterMm => TurnRad * Strip.FinishedWidthMm;
}
