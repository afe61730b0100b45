using NameBand.Common;
using NameBand.Layout;
using NameBand.Output.Changes;
using NameBand.PlanFile;

namespace NameBand.Reports.Answers;

/// <summary>What <c>make</c> and <c>print</c> answer when they have made something.</summary>
public sealed record MakeAnswer : CommandAnswer
{
    public required string Title { get; init; }

    public required string OutFolder { get; init; }

    /// <summary>The plan's, as it stands on all its sheets.</summary>
    public required string Mark { get; init; }

    /// <summary>As job.json names it.</summary>
    public required string Face { get; init; }

    /// <summary>Whether the machine's own letters are keyed in, with gaps of <see cref="SpacingMm"/>.</summary>
    public required bool OwnLetters { get; init; }

    public double? SpacingMm { get; init; }

    /// <summary>Whether what drifts off its marks can be set out anew (drift.csv); of typed names.</summary>
    public bool SetsOut { get; init; }

    /// <summary>Whether all is sewn in runs without a hoop.</summary>
    public bool Unhooped { get; init; }

    public required double LetterHeightMm { get; init; }

    /// <summary>Smallest to largest, in words, where groups have letters of their own height.</summary>
    public Said? LetterHeights { get; init; }

    public required int Names { get; init; }

    public required int Hoopings { get; init; }

    /// <summary>Where names go several ways side by side: what goes each of them.</summary>
    public IReadOnlyList<ToldWay>? Ways { get; init; }

    /// <summary>Whether a machine follows coordinates for any name; else names are keyed in, or traced.</summary>
    public required bool NeedlePaths { get; init; }

    public required bool MatchesHem { get; init; }

    public required IReadOnlyList<ToldRound> Rounds { get; init; }

    public required IReadOnlyList<ToldLimit> HeightLimits { get; init; }

    public required double StripLengthMm { get; init; }

    public required double HemLengthMm { get; init; }

    /// <summary>Length of the strips less that of the hems.</summary>
    public required double DifferenceMm { get; init; }

    /// <summary>How much a round may be off its hem, in words.</summary>
    public required Said Allowed { get; init; }

    /// <summary>Which way the names run round and for whom they stand upright, in words.</summary>
    public required Said Runs { get; init; }

    public required double CutWidthMm { get; init; }

    public required double FinishedWidthMm { get; init; }

    public required double FieldAlongMm { get; init; }

    public required double FieldAcrossMm { get; init; }

    /// <summary>Frames that some hoopings are sewn in instead; null where there are none.</summary>
    public IReadOnlyList<ToldFrame>? OtherFrames { get; init; }

    /// <summary>Most strips that lie side by side on one cloth.</summary>
    public required int SideBySide { get; init; }

    public required long Stitches { get; init; }

    public required ToldFigure MachineMinutes { get; init; }

    public required ToldFigure HandsOnMinutes { get; init; }

    /// <summary>Where the minutes are by the pace that the log shows: what they would be at the set one.</summary>
    public ToldFigure? MachineMinutesAtSetPace { get; init; }

    public ToldFigure? HandsOnMinutesAtSetPace { get; init; }

    /// <summary>Once something is sewn.</summary>
    public ToldLeft? Left { get; init; }

    public required double NeedleThreadM { get; init; }

    public required double BobbinThreadM { get; init; }

    /// <summary>Since the plan that lay in the out folder; null when there was none.</summary>
    public ToldChanges? Changes { get; init; }

    /// <summary>What is taken of her machine; null where a workshop.json tells it.</summary>
    public AssumedWorkshop? Assumed { get; init; }

    /// <summary>What was found of each fact, as plan.json has it.</summary>
    public required IReadOnlyList<WrittenVerdict> Verdicts { get; init; }

    public required ToldCounts Rows { get; init; }

    public required IReadOnlyList<ToldRow> Held { get; init; }

    public required ToldNeeds Needs { get; init; }
}

/// <summary>What <c>make</c> and <c>print</c> answer when nothing was made: as far as they came.</summary>
internal sealed record RefusedMakeAnswer : CommandAnswer
{
    public string? Title { get; init; }

    public string? OutFolder { get; init; }

    public ToldChanges? Changes { get; init; }

    /// <summary>What is taken of her machine; null where a workshop.json tells it.</summary>
    public AssumedWorkshop? Assumed { get; init; }

    public ToldCounts? Rows { get; init; }

    public IReadOnlyList<ToldRow>? Held { get; init; }
}

public sealed record ToldRound
{
    public required int Number { get; init; }

    public required double LengthMm { get; init; }

    public required double HemMm { get; init; }

    /// <summary>Names of the list; headings and what stays of names that are gone are not counted.</summary>
    public required int Names { get; init; }

    /// <summary>Whether its length agrees with its hem.</summary>
    public required bool Meets { get; init; }

    /// <summary>Whether nothing at all lies on it.</summary>
    public required bool Blank { get; init; }
}

/// <summary>A row that keeps everybody's letters down.</summary>
public sealed record ToldLimit
{
    public required string List { get; init; }

    public required int Line { get; init; }

    /// <summary>It is a heading, which stands in no list: the line is the number of its group; null: a name.</summary>
    public bool? Heading { get; init; }

    public required string Text { get; init; }

    public required Said Because { get; init; }

    /// <summary>Letters without it and those before it.</summary>
    public required double HeightWithoutMm { get; init; }

    /// <summary>Whether that is any larger than with it.</summary>
    public required bool Gain { get; init; }
}

/// <summary>What is still to do.</summary>
public sealed record ToldLeft
{
    /// <summary>Numbers of the hoopings that are not sewn.</summary>
    public required IReadOnlyList<int> ToSew { get; init; }

    /// <summary>Numbers of the names that are keyed in or traced and not sewn; null where there are none of that kind.</summary>
    public IReadOnlyList<int>? NamesToSew { get; init; }

    /// <summary>How many names are keyed in or traced in all.</summary>
    public int? NamesByName { get; init; }

    public required ToldFigure MachineMinutes { get; init; }

    public required ToldFigure HandsOnMinutes { get; init; }

    public ToldFigure? MachineMinutesAtSetPace { get; init; }

    public ToldFigure? HandsOnMinutesAtSetPace { get; init; }

    /// <summary>The hand work when all is sewn, from pressing to sewing down.</summary>
    public required double FinishingMinutes { get; init; }
}

/// <summary>What changed since the plan before; the unchanged names only counted.</summary>
public sealed record ToldChanges
{
    public required int Unchanged { get; init; }

    public required IReadOnlyList<ToldChange> Names { get; init; }
}

public sealed record ToldChange
{
    public static string TextChanged { get; } = PlanChanges.Word(NameFate.TextChanged);

    public static string MovedHooping { get; } = PlanChanges.Word(NameFate.MovedHooping);

    public static string MovedAlong { get; } = PlanChanges.Word(NameFate.MovedAlong);

    public static string NoLongerSewn { get; } = PlanChanges.Word(NameFate.NoLongerSewn);

    public static string SewnThenChanged { get; } = PlanChanges.Word(NameFate.SewnThenChanged);

    public static string SewnThenWithdrawn { get; } = PlanChanges.Word(NameFate.SewnThenWithdrawn);

    /// <summary>The word of changes.csv.</summary>
    public required string Change { get; init; }

    public required string Text { get; init; }

    public required string TextBefore { get; init; }

    public required string List { get; init; }

    public required int Line { get; init; }

    public int? Hooping { get; init; }

    public int? HoopingBefore { get; init; }

    public required Said Why { get; init; }
}

/// <summary>The names that go one way onto the cloth, where several stand side by side.</summary>
public sealed record ToldWay
{
    /// <summary>In the word that job.json has for it.</summary>
    public required string Way { get; init; }

    public required int Names { get; init; }

    public required int Hoopings { get; init; }

    /// <summary>Sewn without a hoop.</summary>
    public required int Runs { get; init; }

    /// <summary>A machine follows needle paths.</summary>
    public required bool IsFollowed { get; init; }

    /// <summary>The same in words.</summary>
    public required Said Text { get; init; }
}

/// <summary>A frame that so many hoopings are sewn in.</summary>
public sealed record ToldFrame(string Name, double AlongMm, double AcrossMm, int Hoopings)
{
    public static ToldFrame Of(IGrouping<string, Hooping> hoopings) => hoopings.First().Frame is { } frame
        ? new ToldFrame(frame.Name, Telling.Thousandth(frame.Along.Mm), Telling.Thousandth(frame.Across.Mm), hoopings.Count())
        : throw new ArgumentException("These hoopings have the plan's own frame.", nameof(hoopings));
}
