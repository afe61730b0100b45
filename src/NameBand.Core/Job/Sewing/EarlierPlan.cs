using System.Collections.Immutable;
using NameBand.Common;

namespace NameBand.Job;

/// <summary>A name as an earlier plan had it.</summary>
/// <param name="StartMm">As it was laid out, whatever was measured since of names that are keyed in.</param>
/// <param name="IsGone">Sewn, and its row was no longer in the list.</param>
public sealed record EarlierName(
    int Order, string Text, RowRef Row, double StartMm, double WidthMm, double BaselineYMm, bool IsGone = false)
{
    /// <summary>On a strip with two lines of names: 1 on the upper one, 2 on the lower one; else 0.</summary>
    public int OnLine { get; init; }

    /// <summary>Where the plan shows it, what was measured taken in.</summary>
    public double ShownStartMm { get; init; } = StartMm;

    public double ShownWidthMm { get; init; } = WidthMm;

    /// <summary>Its group in job.json; null for none.</summary>
    public string? Group { get; init; }

    /// <summary>That it went; needle paths where the plan is of version 0.1 and does not say.</summary>
    public Way Way { get; init; }

    /// <summary>How it was sewn, in the plan's word; null when the plan does not say.</summary>
    public string? Style { get; init; }

    /// <summary>Height of its letters where it has one of its own; null: that of the plan.</summary>
    public double? LetterHeightMm { get; init; }

    /// <summary>The face that was wished for it alone; null: that of its group or its plan.</summary>
    public string? Face { get; init; }

    /// <summary>A heading stands in the file of the job and not in a list.</summary>
    public bool IsHeading => Row.List == JobReader.FileName;
}

public sealed record EarlierSegment(
    int Number, double StartMm, double LengthMm, double ClothStartMm, ImmutableArray<EarlierName> Names)
{
    /// <summary>Sewn between names; they have no order and no row.</summary>
    public ImmutableArray<EarlierName> Motifs { get; init; } = [];
}

public sealed record EarlierRound(int Number, double LengthMm, double HemMm, double GapMm, ImmutableArray<EarlierSegment> Segments)
{
    /// <summary>Fingerprint of what the round's proof was made from; empty when the plan does not say.</summary>
    public string MadeFrom { get; init; } = "";

    public string ProofPrint { get; init; } = "";
}

/// <param name="OnClothMm">Where it starts along its own strip, where curved strips lie beside each other; else null.</param>
public sealed record EarlierHooped(int Segment, double XMm, double YMm, double? OnClothMm = null);

public sealed record EarlierHooping(
    int Number, ImmutableArray<EarlierHooped> Segments, string MadeFrom, string PathPrint, string ProofPrint, int Cloth, double OnClothMm)
{
    /// <summary>The frame that it was planned in, where that is another one than the plan's.</summary>
    public Frame? Frame { get; init; }

    /// <summary>Stands on its sheets; empty when the plan does not say: then they bear none.</summary>
    public string Mark { get; init; } = "";

    /// <summary>Its threads in the order in which they were planned to be sewn; empty where the whole job had one.</summary>
    public ImmutableArray<CssColour> Threads { get; init; } = [];

    /// <summary>Needle holes in each mm² of its fullest letter; null when the plan does not say.</summary>
    public double? HolesPerMm2 { get; init; }

    /// <summary>Needle holes in each mm² of its densest disc of 1 mm diameter; null when the plan does not say.</summary>
    public double? SpotHolesPerMm2 { get; init; }

    public int? MostLayers { get; init; }

    /// <summary>Whether all its letters could be read as strokes; null when the plan does not say.</summary>
    public bool? LettersRead { get; init; }

    /// <summary>False where its names are keyed in or traced.</summary>
    public bool HasNeedlePath { get; init; } = true;

    /// <summary>Its files are those that were sewn.</summary>
    public bool IsSewn { get; init; }

    /// <summary>Sewn in another face, height or cloth than the rest of its plan; null for none.</summary>
    public SewnAs? SewnAs { get; init; }

    /// <summary>What was measured on its needle path, to the last bit; empty when the plan does not say.</summary>
    internal ImmutableArray<double> Measured { get; init; } = [];
}

/// <summary>What a hooping was sewn in.</summary>
/// <param name="Face">As job.json named it.</param>
public sealed record SewnAs(string Face, string Fabric, double LetterHeightMm);

public sealed record EarlierPiece(
    int Number, int Round, double StartMm, double LengthMm, int Lane, double OnClothMm, double StartAllowanceMm, double EndAllowanceMm);

public sealed record EarlierCloth(int Number, double LengthMm, double WidthMm, ImmutableArray<EarlierPiece> Pieces);

/// <summary>A plan.json read back: what was planned when something was sewn, or when the out folder was last made.</summary>
public sealed record EarlierPlan(
    string Face, string Fabric, double LetterHeightMm, double BaselineYMm, double MarkYMm, double Shortening,
    ImmutableArray<EarlierRound> Rounds, ImmutableArray<EarlierHooping> Hoopings, ImmutableArray<EarlierCloth> Cloths)
{
    /// <summary>How its hoopings were held and marked; plans of version 0.1, which do not say, had a screwed hoop and sewn
    /// crosses.</summary>
    public Holding Holding { get; init; } = Holding.Usual;

    /// <summary>What the cloth loses under the stitches alone, where the plan said so; null: the same everywhere.</summary>
    public double? UnderStitchesPart { get; init; }

    /// <summary>How many strips side by side share a hooping where the job leaves it free; 1 in version 0.1.</summary>
    public int LanesBeside { get; init; } = 1;

    /// <summary>The highest number that a name ever had, where that is more than its names have now; else 0.</summary>
    public int LastNumber { get; init; }

    /// <summary>From the lower base line up to the upper one, where a strip has two lines of names; else 0.</summary>
    public double LineStepMm { get; init; }

    public IEnumerable<EarlierName> Names => Rounds.SelectMany(r => r.Segments).SelectMany(s => s.Names);

    /// <summary>Number of the hooping that each segment lies in.</summary>
    public ImmutableDictionary<int, int> HoopingOfSegment =>
        Hoopings.SelectMany(h => h.Segments.Select(s => (s.Segment, h.Number))).ToImmutableDictionary(p => p.Segment, p => p.Number);
}
