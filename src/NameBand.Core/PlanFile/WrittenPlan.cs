namespace NameBand.PlanFile;

/// <summary>
/// A plan as plan.json has it, member by member in the order of the file: lengths to 0.001 mm, minutes and metres of thread to
/// a tenth. A member that is not required need not be there, in a file of an earlier version above all; docs/plan.schema.json
/// is the same in public, and a test holds the two together.
/// </summary>
internal sealed record WrittenPlan
{
    public required int Format { get; init; }

    public required string Title { get; init; }

    public WrittenMade? Made { get; init; }

    /// <summary>What of her machine and her time the plan was calculated with.</summary>
    public WrittenWorkshop? Workshop { get; init; }

    /// <summary>What was free to choose, and so is kept in the next plan.</summary>
    public WrittenFree? Free { get; init; }

    /// <summary>What needs a person before anything is sewn: faults of the whole job first, then one for each held row.</summary>
    public IReadOnlyList<WrittenProblem>? Problems { get; init; }

    /// <summary>What was found of each fact; any that needs a person means exit status 1.</summary>
    public IReadOnlyList<WrittenVerdict>? Verdicts { get; init; }

    public required WrittenHem Hem { get; init; }

    public required WrittenStrip Strip { get; init; }

    /// <summary>Height of the capitals.</summary>
    public required decimal LetterHeightMm { get; init; }

    /// <summary>Above the strip's centre line.</summary>
    public required decimal BaselineYMm { get; init; }

    public required decimal MarkYMm { get; init; }

    /// <summary>How hoopings are set in place, <c>drawn</c> or <c>paper</c>; not said of sewn crosses, and where nothing is
    /// marked.</summary>
    public string? Marks { get; init; }

    /// <summary>How cloth is held, <c>clamp</c>, <c>magnet</c> or <c>laid</c>; not said of a screwed hoop, and without one.</summary>
    public string? Hold { get; init; }

    /// <summary>As job.json names it; not said where there are no needle paths to go on from.</summary>
    public string? Face { get; init; }

    public string? Fabric { get; init; }

    /// <summary>Not rounded, so that what is sewn later matches what is sewn.</summary>
    public double? LetterHeightExactMm { get; init; }

    /// <summary>Lowest first.</summary>
    /// <summary>The highest number that a name ever had, where names with higher numbers than those of now were taken out: no
    /// number comes twice.</summary>
    public int? LastNumber { get; init; }

    public required IReadOnlyList<WrittenRound> Rounds { get; init; }

    /// <summary>Only where the order was free.</summary>
    public WrittenBestFit? BestFit { get; init; }

    public required IReadOnlyList<WrittenCloth> Cloths { get; init; }

    /// <summary>In the order of sewing.</summary>
    public required IReadOnlyList<WrittenHooping> Hoopings { get; init; }

    /// <summary>Every act of a machine or a person.</summary>
    public IReadOnlyList<WrittenAct>? Work { get; init; }

    public required WrittenTotals Totals { get; init; }

    /// <summary>Every data row of every list with what became of it.</summary>
    public required IReadOnlyList<WrittenRow> Rows { get; init; }
}

internal sealed record WrittenMade
{
    /// <summary>Of the program that made it.</summary>
    public string? Version { get; init; }

    /// <summary>Stands on the sheets of the whole plan; from texts and places alone.</summary>
    public string? Mark { get; init; }
}

internal sealed record WrittenProblem
{
    /// <summary><c>needsPerson</c> or <c>cannotUse</c>.</summary>
    public required string Severity { get; init; }

    public required WrittenWhere Where { get; init; }

    public required string Text { get; init; }

    /// <summary>Empty where a decision in corrections.csv settles it.</summary>
    public required string Mend { get; init; }
}

public sealed record WrittenVerdict
{
    /// <summary><c>hem</c>, <c>easing</c>, <c>load</c>, <c>letters</c> or <c>waiting</c>.</summary>
    public required string About { get; init; }

    /// <summary>Not said of the whole plan.</summary>
    public int? Round { get; init; }

    /// <summary><c>good</c>, <c>note</c> or <c>needsAPerson</c>.</summary>
    public required string Verdict { get; init; }

    public required string Text { get; init; }
}

/// <summary>What of a place is known; nothing for the job as a whole.</summary>
internal sealed record WrittenWhere
{
    public string? File { get; init; }

    public int? Line { get; init; }

    public int? Column { get; init; }

    public string? Key { get; init; }

    public string? Name { get; init; }
}

internal sealed record WrittenHem
{
    public required decimal LengthMm { get; init; }

    public required bool Closed { get; init; }

    public required decimal OverlapMm { get; init; }

    public required decimal ToleranceMm { get; init; }

    /// <summary>Of a round's hem; where that is more it is the tolerance.</summary>
    public decimal? TolerancePercent { get; init; }
}

internal sealed record WrittenStrip
{
    public required decimal CutWidthMm { get; init; }

    public required decimal TurnInMm { get; init; }

    public required decimal FinishedWidthMm { get; init; }

    /// <summary>Sum of the rounds' lengths.</summary>
    public required decimal TotalLengthMm { get; init; }

    /// <summary>That sum less the sum of the rounds' hems.</summary>
    public required decimal DifferenceMm { get; init; }

    public required bool MatchesHem { get; init; }

    public required double Shortening { get; init; }

    /// <summary>From the lower base line up to the upper one, where a strip has two lines of names.</summary>
    public decimal? LineStepMm { get; init; }

    /// <summary>What the cloth loses under the stitches, where it loses nothing in the gaps: then shortening is that of the
    /// whole.</summary>
    public double? UnderStitchesPart { get; init; }

    /// <summary><c>curved</c>; not said of a straight strip.</summary>
    public string? Shape { get; init; }

    /// <summary>Which way the names run round and for whom they stand upright, in words.</summary>
    public required string Runs { get; init; }
}

/// <summary>How good an order is that was looked for.</summary>
internal sealed record WrittenBestFit
{
    public required int Hoopings { get; init; }

    public required int Bound { get; init; }

    /// <summary>The bound in parts of hoopings, as a linear program has it.</summary>
    public required decimal PatternBound { get; init; }

    public required decimal GapMm { get; init; }

    public required bool Proven { get; init; }
}

internal sealed record WrittenCloth
{
    public required int Number { get; init; }

    public required decimal LengthMm { get; init; }

    public required decimal WidthMm { get; init; }

    public required IReadOnlyList<WrittenPiece> Pieces { get; init; }
}

/// <summary>A piece of a round's strip on its cloth.</summary>
internal sealed record WrittenPiece
{
    public required int Number { get; init; }

    public required int Round { get; init; }

    public required decimal StartMm { get; init; }

    public required decimal LengthMm { get; init; }

    public required int Lane { get; init; }

    public required decimal LaneYMm { get; init; }

    public required decimal OnClothMm { get; init; }

    public required decimal StartAllowanceMm { get; init; }

    public required decimal EndAllowanceMm { get; init; }

    /// <summary>Of a strip that is cut to the curve, as are the members below.</summary>
    public decimal? LowerCutEdgeMm { get; init; }

    public decimal? LowerCutRadiusMm { get; init; }

    public decimal? UpperCutEdgeMm { get; init; }

    public decimal? UpperCutRadiusMm { get; init; }

    public decimal? GrainAtEndsDegrees { get; init; }
}

internal sealed record WrittenTotals
{
    public required int Names { get; init; }

    public required int Segments { get; init; }

    public required int Hoopings { get; init; }

    public required long Stitches { get; init; }

    public required long Jumps { get; init; }

    public required long Trims { get; init; }

    public required decimal MachineMinutes { get; init; }

    public required decimal HandsOnMinutes { get; init; }

    /// <summary>Where the minutes above are by the pace that the log shows: what they would be at the set one.</summary>
    public decimal? MachineMinutesAtSetPace { get; init; }

    public decimal? HandsOnMinutesAtSetPace { get; init; }

    public required decimal NeedleThreadM { get; init; }

    public required decimal BobbinThreadM { get; init; }
}

/// <summary>A data row of a list with what became of it.</summary>
internal sealed record WrittenRow
{
    public required string List { get; init; }

    public required int Line { get; init; }

    /// <summary><c>placed</c>, <c>merged</c>, <c>held</c> or <c>leftOut</c>.</summary>
    public required string Outcome { get; init; }

    public required string Text { get; init; }

    /// <summary>Empty where there is nothing to say.</summary>
    public required string Reason { get; init; }
}
