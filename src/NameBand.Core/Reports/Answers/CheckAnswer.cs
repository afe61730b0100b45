using NameBand.Common;

namespace NameBand.Reports.Answers;

/// <summary>What <c>check</c> answers: each part of a job, and whether it is whole and agrees with the others.</summary>
public sealed record CheckAnswer : CommandAnswer
{
    /// <summary>Empty where nothing can be read that has one.</summary>
    public required string Title { get; init; }

    public required IReadOnlyList<ToldPart> Parts { get; init; }

    internal static CheckAnswer Of(CheckReport report) => new()
    {
        Status = (int)report.Status,
        Problems = report.Problems,
        Title = report.Title,
        Parts = [.. report.Parts.Select(p => new ToldPart(p.Name, p.IsWhole, p.Found))],
    };
}

/// <param name="Whole">Not said where there is nothing of it yet.</param>
public sealed record ToldPart(Said Name, bool? Whole, Said Found);
