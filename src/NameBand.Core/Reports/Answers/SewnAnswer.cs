using NameBand.Common;
using NameBand.Job;

namespace NameBand.Reports.Answers;

/// <summary>What <c>sewn</c> answers: what was written down, and how every hooping stands.</summary>
public sealed record SewnAnswer : CommandAnswer
{
    public required string Title { get; init; }

    /// <summary>Whether something was just written into the sewing log.</summary>
    public required bool Written { get; init; }

    public ToldDeed? Said { get; init; }

    /// <summary>The length of a typed name that was just written down or taken back; null for none.</summary>
    public ToldLength? Length { get; init; }

    /// <summary>Empty where it cannot be told how the sewing stands.</summary>
    public required IReadOnlyList<ToldHooping> Hoopings { get; init; }

    /// <summary>Names that are keyed in or traced; null where there are none.</summary>
    public IReadOnlyList<ToldName>? Names { get; init; }

    /// <summary>How far each round is finished; null where nothing is said of it.</summary>
    public IReadOnlyList<ToldFinish>? Finished { get; init; }

    /// <summary>Hand work that comes when all is sewn and is not done yet; null where the plan does not say.</summary>
    public double? FinishingMinutes { get; init; }

    internal static SewnAnswer Of(SewingReport report) => new()
    {
        Status = (int)report.Status,
        Problems = report.Problems,
        Title = report.Title,
        Written = report.Said is not null,
        Said = report.Said is { } said ? Deed(said, report) : null,
        Length = report.MeasuredName is { } length
            ? new ToldLength
            {
                Name = length.Number,
                Millimetres = length.Millimetres,
                OnScrap = length.IsScrap,
                TakenBack = length.IsTakenBack
            } : null,
        Hoopings = [.. report.Hoopings.Select(Hooping)],
        Names = report.Names.IsDefaultOrEmpty ? null : [.. report.Names.Select(Name)],
        Finished = report.Rounds.Any(r => r.Last is not null) ? [.. report.Rounds.Select(Finish)] : null,
        FinishingMinutes = report.FinishingMinutes is { } finishing ? Telling.Thousandth(finishing) : null,
    };

    private static ToldDeed Deed(SewingEntry said, SewingReport report) => new()
    {
        Deed = SewingLogLine.Word(said.Deed),
        Hooping = said.Of == SewingSubject.Hooping ? said.Hooping : null,
        Names = report.SaidNames.IsDefaultOrEmpty ? null : report.SaidNames,
        Round = said.Of == SewingSubject.Round ? said.Hooping : null,
        Step = said.Of == SewingSubject.Round && said.Deed != SewingDeed.Left ? said.Path : null,
        Minutes = Thousandth(said.Minutes),
        HandMinutes = Thousandth(said.HandMinutes),
        MeasuredMm = Thousandth(said.MeasuredMm),
        ExpectedMm = Thousandth(report.Measured?.ExpectedMm),
        PatchOnClothMm = Thousandth(report.PatchOnClothMm),
    };

    private static ToldName Name(NameState name) => new()
    {
        Number = name.Number,
        State = name.IsSewn ? "sewn" : name.IsAgain ? "again" : "open",
        Text = name.Text,
        Minutes = Telling.Thousandth(name.Minutes),
        TookMinutes = Thousandth(name.Last?.Minutes),
    };

    private static ToldFinish Finish(RoundState round) => new()
    {
        Round = round.Number,
        Step = round.Last is { } last ? FinishingWords.Of(last) : null,
        Text = round.Last is { } done ? FinishingWords.Done(done) : "nothing yet",
    };

    private static ToldHooping Hooping(HoopingState hooping) => new()
    {
        Number = hooping.Number,
        State = hooping.IsSewn ? "sewn" : hooping.IsAgain ? "again" : "open",
        OnItsOwn = hooping is { IsAgain: true, Last.Deed: SewingDeed.Patch },
        Minutes = (double)Math.Round((decimal)hooping.Minutes, 1),
        TookMinutes = Thousandth(hooping.Last?.Minutes),
        Names = hooping.Names,
        By = hooping is { IsSewn: true, Last.By.Length: > 0 } ? hooping.Last.By : null,
        Mark = hooping.Mark.Length > 0 ? hooping.Mark : null,
        AsksForMark = hooping.AsksForMark,
    };

    private static double? Thousandth(double? number) => number is { } known ? Telling.Thousandth(known) : null;
}

/// <summary>What was written into the sewing log.</summary>
public sealed record ToldDeed
{
    /// <summary>The word of the log.</summary>
    public required string Deed { get; init; }

    /// <summary>Null where it was not of a hooping.</summary>
    public int? Hooping { get; init; }

    /// <summary>Numbers of the names, where they are logged by themselves.</summary>
    public IReadOnlyList<int>? Names { get; init; }

    /// <summary>The round that is being finished; 0 for all.</summary>
    public int? Round { get; init; }

    /// <summary>The step of finishing.</summary>
    public string? Step { get; init; }

    public double? Minutes { get; init; }

    public double? HandMinutes { get; init; }

    public double? MeasuredMm { get; init; }

    public double? ExpectedMm { get; init; }

    /// <summary>Cloth to cut for a piece of its own, its seams included.</summary>
    public double? PatchOnClothMm { get; init; }
}

/// <summary>The length of a typed name in lengths.csv.</summary>
public sealed record ToldLength
{
    /// <summary>The name's number.</summary>
    public required int Name { get; init; }

    /// <summary>As it was told.</summary>
    public required string Millimetres { get; init; }

    /// <summary>On a scrap: the name itself is still to sew.</summary>
    public required bool OnScrap { get; init; }

    /// <summary>It was told by mistake and counts no longer.</summary>
    public required bool TakenBack { get; init; }
}

/// <summary>A name that is keyed in or traced.</summary>
public sealed record ToldName
{
    public required int Number { get; init; }

    /// <summary><c>sewn</c>, <c>again</c> or <c>open</c>.</summary>
    public required string State { get; init; }

    public required string Text { get; init; }

    /// <summary>At the machine, as the plan estimates them.</summary>
    public required double Minutes { get; init; }

    /// <summary>As they were said last.</summary>
    public double? TookMinutes { get; init; }
}

/// <summary>How far a round is finished.</summary>
public sealed record ToldFinish
{
    public required int Round { get; init; }

    /// <summary>The last step that is done; null for none.</summary>
    public string? Step { get; init; }

    /// <summary>The same in words.</summary>
    public required Said Text { get; init; }
}

public sealed record ToldHooping
{
    public required int Number { get; init; }

    /// <summary><c>sewn</c>, <c>again</c> or <c>open</c>.</summary>
    public required string State { get; init; }

    /// <summary>It is to be sewn again on a piece of its own.</summary>
    public required bool OnItsOwn { get; init; }

    /// <summary>At the machine, as the plan estimates them.</summary>
    public required double Minutes { get; init; }

    /// <summary>As they were said last.</summary>
    public double? TookMinutes { get; init; }

    public required IReadOnlyList<string> Names { get; init; }

    /// <summary>Who sewed it last, where it was said.</summary>
    public string? By { get; init; }

    /// <summary>Stands on its sheets; null where they bear none.</summary>
    public string? Mark { get; init; }

    /// <summary>It had other marks before, so that old sheets may lie about.</summary>
    public required bool AsksForMark { get; init; }
}
