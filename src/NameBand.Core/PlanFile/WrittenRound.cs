using System.Collections.Immutable;
using System.Text.Json.Serialization;

namespace NameBand.PlanFile;

internal sealed record WrittenRound
{
    public required int Number { get; init; }

    public required decimal LengthMm { get; init; }

    public required decimal HemMm { get; init; }

    public required decimal GapMm { get; init; }

    public required decimal UpperEdgeShorterMm { get; init; }

    public required decimal UpperEdgeShorterPercent { get; init; }

    /// <summary>Part of the gaps between names that would be lost.</summary>
    public decimal? UpperEdgeGapsPercent { get; init; }

    /// <summary><c>liesFlat</c>, <c>canBeEased</c>, <c>withTucks</c> or <c>wantsShaping</c>.</summary>
    public string? UpperEdge { get; init; }

    /// <summary>Tapered tucks from the starting end, where the job asks for them and easing alone does not do.</summary>
    public IReadOnlyList<WrittenTuck>? Tucks { get; init; }

    /// <summary>Of the lower finished edge, where the strip is cut to the curve.</summary>
    public decimal? RadiusMm { get; init; }

    public decimal? UpperEdgeMm { get; init; }

    /// <summary>Fingerprint of what the round's proof was made from.</summary>
    public string? MadeFrom { get; init; }

    public string? ProofPrint { get; init; }

    /// <summary>Stands on the round's proof.</summary>
    public string? Mark { get; init; }

    public required IReadOnlyList<WrittenSegment> Segments { get; init; }
}

/// <summary>A tapered tuck: its width at the upper edge, nothing at the lower one.</summary>
internal sealed record WrittenTuck
{
    public required int Number { get; init; }

    /// <summary>Its middle, along the finished round from its starting end.</summary>
    public required decimal AtMm { get; init; }

    /// <summary>The same from the cut left end of its piece of flat cloth.</summary>
    public required decimal OnClothMm { get; init; }

    public required decimal WidthMm { get; init; }

    /// <summary>Order of the name on its left.</summary>
    public required int After { get; init; }

    public required int Before { get; init; }
}

internal sealed record WrittenSegment
{
    public required int Number { get; init; }

    /// <summary>Along the finished round from its starting end.</summary>
    public required decimal StartMm { get; init; }

    public required decimal LengthMm { get; init; }

    public required decimal ClothStartMm { get; init; }

    /// <summary>From the cut left end of its piece of flat cloth: what every sheet prints.</summary>
    public decimal? OnClothMm { get; init; }

    public required IReadOnlyList<WrittenName> Names { get; init; }

    /// <summary>Sewn before a group's names, and no names of the list: their line is the group's number in job.json.</summary>
    public IReadOnlyList<WrittenName>? Headings { get; init; }

    /// <summary>Sewn in the middle of gaps between names.</summary>
    public IReadOnlyList<WrittenMotif>? Motifs { get; init; }

    /// <summary>Sewn, and asked for by no row any longer: on the cloth, but no names of the job.</summary>
    public IReadOnlyList<WrittenName>? Gone { get; init; }
}

internal sealed record WrittenName
{
    public required int Order { get; init; }

    public required string Text { get; init; }

    public required string List { get; init; }

    public required int Line { get; init; }

    public required decimal StartMm { get; init; }

    public required decimal WidthMm { get; init; }

    /// <summary>At the machine, where it is keyed in or traced; the names of a needle path share their hooping's minutes.</summary>
    public decimal? Minutes { get; init; }

    /// <summary>Where it was laid out, where it has moved since by what was measured (drift.csv).</summary>
    public decimal? PlannedStartMm { get; init; }

    public decimal? PlannedWidthMm { get; init; }

    /// <summary>Width of the name itself on its base line, where the strip is cut to the curve.</summary>
    public decimal? OnBaseLineMm { get; init; }

    public required decimal BaselineYMm { get; init; }

    /// <summary>1 on the upper and 2 on the lower line of a strip with two; not said where there is one.</summary>
    public int? OnLine { get; init; }

    /// <summary>How it gets onto the cloth, in the word that job.json has for it.</summary>
    public string? Way { get; init; }

    /// <summary><c>run</c> or <c>satin</c>, where it is sewn from a needle path.</summary>
    public string? Style { get; init; }

    public string? Group { get; init; }

    /// <summary>Where it or its group has one of its own.</summary>
    public decimal? LetterHeightMm { get; init; }

    /// <summary>Where one was wished for it alone.</summary>
    public string? Face { get; init; }
}

internal sealed record WrittenMotif
{
    public required string Text { get; init; }

    public required decimal StartMm { get; init; }

    public required decimal WidthMm { get; init; }

    public required decimal BaselineYMm { get; init; }
}

internal sealed record WrittenHooping
{
    public required int Number { get; init; }

    /// <summary>Stands on the hooping's sheets.</summary>
    public string? Mark { get; init; }

    public required IReadOnlyList<WrittenHooped> Segments { get; init; }

    public required int Cloth { get; init; }

    public required decimal OnClothMm { get; init; }

    /// <summary>The frame that it is sewn in, where that is another one than the workshop's of this plan.</summary>
    public WrittenFrame? Frame { get; init; }

    /// <summary>Null where names are not sewn from needle paths.</summary>
    [JsonIgnore(Condition = JsonIgnoreCondition.Never)]
    public required string? NeedlePath { get; init; }

    public required string Proof { get; init; }

    public required int Stitches { get; init; }

    public required int Jumps { get; init; }

    public required int Trims { get; init; }

    /// <summary>In the order in which they are sewn; null where the whole job has one thread.</summary>
    public IReadOnlyList<string>? Threads { get; init; }

    public required decimal Minutes { get; init; }

    /// <summary>Fingerprint of what the hooping's files were made from.</summary>
    public string? MadeFrom { get; init; }

    public string? NeedlePathPrint { get; init; }

    public string? ProofPrint { get; init; }

    /// <summary>Needle holes in each mm² of its fullest letter, exactly as measured.</summary>
    public double? HolesPerMm2 { get; init; }

    /// <summary>The same in its densest disc of 1 mm diameter.</summary>
    public double? SpotHolesPerMm2 { get; init; }

    /// <summary>Layers of thread where most lie over one another.</summary>
    public int? MostLayers { get; init; }

    /// <summary>What was measured on its needle path, to the last bit.</summary>
    [JsonConverter(typeof(OneLineNumbers))]
    public ImmutableArray<double>? Measured { get; init; }

    /// <summary>Whether all its letters could be read as strokes; not said where they were not looked at.</summary>
    public bool? LettersRead { get; init; }

    /// <summary>Its files are those that were sewn.</summary>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingDefault)]
    public bool Sewn { get; init; }

    /// <summary>What it was sewn in, where the rest of the plan has another face, height or cloth.</summary>
    public WrittenSewnAs? SewnAs { get; init; }

    /// <summary>It was spoiled and is to be sewn again.</summary>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingDefault)]
    public bool Again { get; init; }

    /// <summary>It is to be sewn again on a piece of its own.</summary>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingDefault)]
    public bool Patch { get; init; }
}

/// <summary>A segment in its hooping.</summary>
internal sealed record WrittenHooped
{
    public required int Number { get; init; }

    public required decimal XMm { get; init; }

    public required decimal YMm { get; init; }

    /// <summary>Where it starts along its own strip, where curved strips lie beside each other.</summary>
    public decimal? OnClothMm { get; init; }

    /// <summary>From end to end of the centre line, where the strip is cut to the curve, as are the members below.</summary>
    public decimal? ChordMm { get; init; }

    public decimal? BowMm { get; init; }

    public decimal? RuledLineYMm { get; init; }
}

internal sealed record WrittenSewnAs
{
    public required string Face { get; init; }

    public required string Fabric { get; init; }

    public required double LetterHeightExactMm { get; init; }
}
