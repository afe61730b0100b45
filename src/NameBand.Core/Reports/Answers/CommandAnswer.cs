using System.Text.Json.Serialization;
using NameBand.Common;

namespace NameBand.Reports.Answers;

/// <summary>
/// What a command answers: one record, printed as prose for a person and as JSON for another program. Every figure in it is
/// rounded to a thousandth, once, so that both print the same one.
/// </summary>
public abstract record CommandAnswer
{
    [JsonPropertyOrder(-2)]
    public int Format { get; init; } = 1;

    /// <summary>The exit status.</summary>
    [JsonPropertyOrder(-1)]
    public required int Status { get; init; }

    /// <summary>In the order in which they are told.</summary>
    [JsonPropertyOrder(1)]
    public required IReadOnlyList<Problem> Problems { get; init; }

    /// <inheritdoc cref="HoursReport.IsSoundButForTheDay"/>
    [JsonIgnore]
    public bool IsSoundButForTheDay { get; init; }

    [JsonIgnore]
    public bool IsRefused => Status == (int)ExitStatus.CannotUse;
}

/// <summary>Why a command gave nothing else.</summary>
public sealed record RefusedAnswer : CommandAnswer
{
    public static RefusedAnswer Of(ExitStatus status, IEnumerable<Problem> problems) => Of((int)status, problems);

    public static RefusedAnswer Of(int status, IEnumerable<Problem> problems) => new() { Status = status, Problems = [.. problems] };
}

/// <summary>A figure with the range it may well fall in.</summary>
public sealed record ToldFigure(double Low, double Likely, double High);

/// <summary>A row of a list, and what there is to say of it.</summary>
public sealed record ToldRow
{
    public required string List { get; init; }

    public required int Line { get; init; }

    public required string Text { get; init; }

    public required Said Reason { get; init; }
}

/// <summary>How many rows became what.</summary>
public sealed record ToldCounts
{
    public required int All { get; init; }

    public required int Placed { get; init; }

    public required int Merged { get; init; }

    public required int Held { get; init; }

    public required int LeftOut { get; init; }
}

/// <summary>How the problems of an answer are divided: those of the whole job come first, then those of held rows, then notes.</summary>
public sealed record ToldNeeds(int OfJob, int OfRows)
{
    [JsonIgnore]
    public int Count => OfJob + OfRows;
}
