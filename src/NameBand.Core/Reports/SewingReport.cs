using System.Collections.Immutable;
using NameBand.Common;
using NameBand.Job;
using NameBand.Layout.Resuming;

namespace NameBand.Reports;

/// <summary>What a person says of a hooping; null in <see cref="Deed"/> only asks how things stand.</summary>
/// <param name="When">Date and time by the person's clock, as it is to stand in the log.</param>
public sealed record SewingWord(
    int Hooping, SewingDeed Deed, double? Minutes = null, double? HandMinutes = null, string Machine = "", double? MeasuredMm = null,
    string When = "", string Note = "")
{
    /// <summary>Names that are keyed in or traced, from the first number to the last; null: it speaks of a hooping.</summary>
    public (int First, int Last)? Names { get; init; }

    /// <summary>The step of finishing that is done, or is not after all; null: it speaks of sewing.</summary>
    public FinishingStep? Step { get; init; }

    /// <summary>The round that is being finished; 0 for all.</summary>
    public int Round { get; init; }

    /// <summary>Which strip was measured, from the top, where a hooping holds several.</summary>
    public int? Strip { get; init; }

    /// <summary>The four signs on the sheet it was sewn from; empty: not said.</summary>
    public string Mark { get; init; } = "";

    /// <summary>A measured length that is farther off than cloth usually is was measured twice, and is so.</summary>
    public bool IsSure { get; init; }

    /// <summary>How long a typed name came out, as it was measured; null: not said.</summary>
    public double? LengthMm { get; init; }

    /// <summary>Where its first word ended and its second began, as it was written.</summary>
    public string Blank { get; init; } = "";

    /// <summary>So much of <see cref="Round"/> lies bare on the garment behind what is sewn and pinned; null: not said.</summary>
    public double? LeftMm { get; init; }

    /// <summary>It was sewn on a scrap: the length counts, the name is not sewn.</summary>
    public bool IsScrap { get; init; }
}

/// <summary>One hooping and how it stands.</summary>
/// <param name="Minutes">As the plan estimates them.</param>
public sealed record HoopingState(int Number, ImmutableArray<string> Names, double Minutes, SewingEntry? Last)
{
    /// <summary>Stands on its sheets; empty where they bear none.</summary>
    public string Mark { get; init; } = "";

    /// <summary>It had another mark before, so that old sheets may lie about: the mark is asked for when it is sewn.</summary>
    public bool AsksForMark { get; init; }

    public bool IsSewn => Last?.Deed == SewingDeed.Sewn;

    public bool IsAgain => Last?.Deed is SewingDeed.Again or SewingDeed.Patch;
}

/// <summary>One name that is keyed in or traced, and how it stands.</summary>
/// <param name="Minutes">At the machine, as the plan estimates them.</param>
public sealed record NameState(int Number, string Text, double Minutes, SewingEntry? Last)
{
    public bool IsSewn => Last?.Deed == SewingDeed.Sewn;

    public bool IsAgain => Last?.Deed == SewingDeed.Again;
}

/// <summary>A round that is being finished.</summary>
/// <param name="Last">The last step that is done; null for none.</param>
public sealed record RoundState(int Number, FinishingStep? Last)
{
    /// <summary>All of it is written down as sewn: only then is it finished.</summary>
    public bool IsSewn { get; init; }
}

/// <summary>A typed name whose length was told.</summary>
/// <param name="Millimetres">As it was told.</param>
/// <param name="IsScrap">On a scrap: the name itself is still to sew.</param>
public sealed record MeasuredName(int Number, string Millimetres, bool IsScrap)
{
    /// <summary>It was told by mistake and counts no longer.</summary>
    public bool IsTakenBack { get; init; }
}

/// <summary>How a job's sewing stands.</summary>
/// <param name="Said">What was just added to the log; null when nothing was. Of several names the last one.</param>
public sealed record SewingReport(
    ExitStatus Status, string Title, ImmutableArray<HoopingState> Hoopings, SewingLog Log, SewingEntry? Said, double? PatchOnClothMm,
    ImmutableArray<Problem> Problems)
{
    /// <summary>The piece whose length was just said.</summary>
    public SewnStrip? Measured { get; init; }

    /// <summary>Names that are keyed in or traced, by their numbers; empty where there are none.</summary>
    public ImmutableArray<NameState> Names { get; init; } = [];

    /// <summary>Numbers of the names that were just written down.</summary>
    public ImmutableArray<int> SaidNames { get; init; } = [];

    /// <summary>The typed name whose length was just written down or taken back, on the strip or on a scrap; null for none.</summary>
    public MeasuredName? MeasuredName { get; init; }

    public ImmutableArray<RoundState> Rounds { get; init; } = [];

    /// <summary>The steps in which this job is finished, in their order; empty where the plan does not say.</summary>
    public ImmutableArray<FinishingStep> Steps { get; init; } = [];

    /// <summary>Hand work that comes when all is sewn and is not done yet, from pressing to sewing down; null where the plan does
    /// not say.</summary>
    public double? FinishingMinutes { get; init; }
}
