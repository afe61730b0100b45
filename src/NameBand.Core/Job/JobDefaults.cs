using NameBand.Common;

namespace NameBand.Job;

/// <summary>What is taken for a key that job.json does not give. They suit a domestic machine and quilting cotton.</summary>
internal static class JobDefaults
{
    public static Length TakenUp { get; } = Length.FromMm(0);

    public static Length Overlap { get; } = Length.FromInches(1);

    /// <summary>How far a strip may be from its hem and still be said to match it.</summary>
    public static Length Tolerance { get; } = Length.FromMm(6);

    /// <summary>The same as a part of the hem; the more of the two holds. Our assumption of what pins take up unseen.</summary>
    public const double TolerancePart = 0.005;

    public const bool Closed = true;

    /// <summary>Clear of names on each side of a slanting seam: common practice, no source.</summary>
    public static Length JoinClear { get; } = Length.FromMm(40);

    public static Length CutWidth { get; } = Length.FromInches(2);

    public static Length TurnIn { get; } = Length.FromInches(0.5);

    public static Length Margin { get; } = Length.FromMm(4);

    /// <summary>Of its length; common practice is 0.005 to 0.015, no source: the swatch decides.</summary>
    public const double ShorteningPart = 0.01;

    public const int Rounds = 1; // The fewest that there can be: nobody is given work she did not ask for.

    public static Length Lift { get; } = Length.FromMm(3);

    /// <summary>What lies between one round and the next where strip.roundStep is not given.</summary>
    public static Length BetweenRounds { get; } = Length.FromInches(0.5);

    /// <summary>A family and its style, which are words of no language.</summary>
    public const string Face = "Nunito" + " " + "Bold";

    public static Length Least { get; } = Length.FromMm(6);

    /// <summary>Letter heights of clear space between two names where lettering.gap is not given.</summary>
    /// <summary>Part of every round that stays blank where more names are to come.</summary>
    public const double MoreToComePart = 0.1;

    /// <summary>
    /// Letter heights: at arm's length two names then read as two, and a word's own blank, about half as wide, as one. Our choice.
    /// </summary>
    public const double GapFactor = 1.5;

    public const bool Spread = true;

    /// <summary>Part by which a strip's upper edge may be shorter than its lower one: common practice, no source.</summary>
    public const double LiesFlatPart = 0.01;

    /// <summary>Part by which the gaps between names may be eased: our assumption until the swatch is measured.</summary>
    public const double EaseLimitStraightPart = 0.10;

    /// <summary>The same on the bias, where cloth gives: our assumption until the swatch is measured.</summary>
    public const double EaseLimitBiasPart = 0.20;

    public static Length JoinAllowance { get; } = Length.FromMm(10);

    /// <summary>Common practice, no source: a hoop cannot hold the last inches of a cloth.</summary>
    public static Length EndCloth { get; } = Length.FromMm(80);

    public const string Collation = "und";

    public static Length Along { get; } = Length.FromMm(160);

    public static Length Across { get; } = Length.FromMm(100);

    public static Length Spare { get; } = Length.FromMm(5);

    public static string Fabric { get; } = ((Said)"quilting cotton").English;

    public static MachineSettings Machine { get; } = new(
        StitchesPerMinute: 600, SecondsPerJump: 1, SecondsPerTrim: 7, SecondsPerStop: 40, SecondsToStart: 60);

    public static HandSettings Hands { get; } = new(
        StartingValues.HoopingMinutes, StartingValues.TearAwayMinutesPerName, StartingValues.ClippingMinutesPerName,
        StartingValues.PressingMinutesPerMetre, StartingValues.TrimmingMinutesPerMetre, StartingValues.TurningInMinutesPerMetre,
        StartingValues.PinningMinutesPerMetre, StartingValues.SewingLowerEdgeMinutesPerMetre,
        StartingValues.SewingUpperEdgeMinutesPerMetre, StartingValues.JoinMinutes, StartingValues.RestAllowance);
}
