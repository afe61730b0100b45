using NameBand.Job;

namespace NameBand.Reports.Answers;

/// <summary>What <c>sewn</c> answers: what was written down, and how every hooping stands.</summary>
public sealed record SewnAnswer : CommandAnswer
{
    public required string Title { get; init; }

    /// <summary>Whether something was just written down.</summary>
    public required bool Written { get; init; }

    public ToldDeed? Said { get; init; }

    /// <summary>Empty where it cannot be told how the sewing stands.</summary>
    public required IReadOnlyList<ToldHooping> Hoopings { get; init; }

    /// <summary>Hand work that comes when all is sewn, from pressing to sewing down; null where the plan does not say.</summary>
    public double? FinishingMinutes { get; init; }

    internal static SewnAnswer Of(SewingReport report) => new()
    {
        Status = (int)report.Status,
        Problems = report.Problems,
        Title = report.Title,
        Written = report.Said is not null,
        Said = report.Said is { } said ? Deed(said, report) : null,
        Hoopings = [.. report.Hoopings.Select(Hooping)],
        FinishingMinutes = report.FinishingMinutes is { } finishing ? Telling.Thousandth(finishing) : null,
    };

    private static ToldDeed Deed(SewingEntry said, SewingReport report) => new()
    {
        Deed = SewingLogLine.Word(said.Deed),
        Hooping = said.Hooping,
        Minutes = Thousandth(said.Minutes),
        HandMinutes = Thousandth(said.HandMinutes),
        MeasuredMm = Thousandth(said.MeasuredMm),
        ExpectedMm = Thousandth(report.Measured?.ExpectedMm),
        PatchOnClothMm = Thousandth(report.PatchOnClothMm),
    };

    private static ToldHooping Hooping(HoopingState hooping) => new()
    {
        Number = hooping.Number,
        State = hooping.IsSewn ? "sewn" : hooping.IsAgain ? "again" : "open",
        OnItsOwn = hooping is { IsAgain: true, Last.Deed: SewingDeed.Patch },
        Minutes = (double)Math.Round((decimal)hooping.Minutes, 1),
        TookMinutes = Thousandth(hooping.Last?.Minutes),
        Names = hooping.Names,
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

    public required int Hooping { get; init; }

    public double? Minutes { get; init; }

    public double? HandMinutes { get; init; }

    public double? MeasuredMm { get; init; }

    public double? ExpectedMm { get; init; }

    /// <summary>Cloth to cut for a piece of its own, its seams included.</summary>
    public double? PatchOnClothMm { get; init; }
}

public sealed record ToldHooping
{
    public required int Number { get; init; }

    /// <summary><c>sewn</c>, <c>again</c> or <c>open</c>.</summary>
    public required string State { get; init; }

    /// <summary>It is to be sewn again on a piece of its own.</summary>
    public required bool OnItsOwn { get; init; }

    /// <summary>At the machine, as the plan reckons them.</summary>
    public required double Minutes { get; init; }

    /// <summary>As they were said last.</summary>
    public double? TookMinutes { get; init; }

    public required IReadOnlyList<string> Names { get; init; }

    /// <summary>Stands on its sheets; null where they bear none.</summary>
    public string? Mark { get; init; }

    /// <summary>It had other marks before, so that old sheets may lie about.</summary>
    public required bool AsksForMark { get; init; }
}
