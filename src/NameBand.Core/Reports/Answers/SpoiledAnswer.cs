using NameBand.Common;

namespace NameBand.Reports.Answers;

/// <summary>What <c>sewn --spoiled</c> answers: what can be done about a name that went wrong, the soundest and least work first.</summary>
public sealed record SpoiledAnswer : CommandAnswer
{
    public required string Title { get; init; }

    public required string Spoiled { get; init; }

    public required IReadOnlyList<string> Names { get; init; }

    public required IReadOnlyList<ToldSpoiledWay> Ways { get; init; }

    internal static CommandAnswer Of(SpoiledReport report) => report.Title is { } title
        ? new SpoiledAnswer
        {
            Status = (int)report.Status,
            Problems = report.Problems,
            Title = title,
            Spoiled = report.Spoiled,
            Names = report.Names,
            Ways = [.. report.Ways.Select(w => new ToldSpoiledWay
            {
                What = w.What, Minutes = Telling.Thousandth(w.Minutes), Sound = w.IsSound, Why = w.Why, Steps = w.Steps, Say = w.Say,
            })],
        }
        : RefusedAnswer.Of(report.Status, report.Problems);
}

public sealed record ToldSpoiledWay
{
    public required Said What { get; init; }

    /// <summary>For one name.</summary>
    public required double Minutes { get; init; }

    /// <summary>Whether the cloth bears it.</summary>
    public required bool Sound { get; init; }

    public required Said Why { get; init; }

    public required Said Steps { get; init; }

    /// <summary>What is said to the log, after <c>sewn JOB</c>.</summary>
    public required string Say { get; init; }
}
