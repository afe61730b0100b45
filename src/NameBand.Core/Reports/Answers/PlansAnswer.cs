using System.Text.Json;
using System.Text.Json.Serialization;
using NameBand.Common;

namespace NameBand.Reports.Answers;

/// <summary>What <c>plans</c> answers: at most five plans, what she wishes for first, and the plain way beside them.</summary>
public sealed record PlansAnswer : CommandAnswer
{
    public required string Title { get; init; }

    /// <summary>How long it took to find them, by the clock of whoever asked; 0 where nobody looked.</summary>
    public double Seconds { get; init; }

    /// <summary>Hours of hers by the plain way: typed, one line, without a hoop; null where the job cannot be sewn so.</summary>
    public double? PlainMinutes { get; init; }

    public ToldPlan? Plain { get; init; }

    public required IReadOnlyList<ToldPlan> Plans { get; init; }

    /// <summary>Names that came when the garment was finished; null where there are none.</summary>
    public ToldLate? Late { get; init; }

    /// <summary>What was taken for them.</summary>
    public ToldTakenLate? TakenLate { get; init; }

    /// <summary>Mark of the plan that was written into job.json.</summary>
    public string? Taken { get; init; }

    /// <summary>The work of two plans side by side.</summary>
    public ToldComparison? Compared { get; init; }

    /// <summary>Whether people will read the names, where the job does not say; null where it does.</summary>
    public AssumedReading? Reading { get; init; }

    /// <summary>What is taken of her machine; null where a workshop.json tells it.</summary>
    public AssumedWorkshop? Assumed { get; init; }
}

public sealed record ToldPlan
{
    /// <summary>That of the plan on the sheets that make makes of it.</summary>
    public required string Mark { get; init; }

    /// <summary>What it answers best.</summary>
    public required string Wish { get; init; }

    /// <summary>What else it answers best.</summary>
    public required IReadOnlyList<string> AlsoWishes { get; init; }

    /// <summary>Keys of job.json that change, by their full paths, with what is written there; null: the key is taken out.</summary>
    public required IReadOnlyDictionary<string, JsonElement> Settings { get; init; }

    /// <summary>The same as lines to write.</summary>
    public required IReadOnlyList<Said> Lines { get; init; }

    /// <summary>The last words of those keys.</summary>
    public required IReadOnlyList<string> Keys { get; init; }

    /// <summary>What it asks of her besides.</summary>
    public required IReadOnlyList<Said> Asks { get; init; }

    /// <summary>Of the plan as it is set, mended: the lines that she wrote and that stood in the way.</summary>
    public required IReadOnlyList<Said> InTheWay { get; init; }

    /// <summary>How many names go each way.</summary>
    public required IReadOnlyDictionary<string, int> Ways { get; init; }

    /// <summary>Where names go several ways: the names of each; left out where all go the same.</summary>
    public IReadOnlyList<ToldShare>? Who { get; init; }

    public required string Face { get; init; }

    public required double LetterHeightMm { get; init; }

    public required int Rounds { get; init; }

    public required int Hoopings { get; init; }

    /// <summary>Whether the cloth is hooped; else each strip is sewn in one run.</summary>
    public required bool Hooped { get; init; }

    public required double MachineMinutes { get; init; }

    public required double HandsOnMinutes { get; init; }

    /// <summary>Hands, and the machine that she sits by.</summary>
    public required double HersMinutes { get; init; }

    /// <summary>By the clock.</summary>
    public required double ElapsedMinutes { get; init; }

    /// <summary>Hands, the machine that she sits by, and half of what it sews alone: what free choices are chosen by.</summary>
    [JsonPropertyName("cost")]
    public required double CostMinutes { get; init; }

    /// <summary>No choice of what is free costs less than this; left out where it is not known.</summary>
    [JsonPropertyName("boundCost")]
    public double? BoundCostMinutes { get; init; }

    /// <summary>The step from the plan as it is set; of that one, what it is.</summary>
    public required Said Why { get; init; }
}

/// <summary>Names that go one way, in the order in which they stand.</summary>
/// <param name="How">The way in words: <c>keyed in</c>.</param>
public sealed record ToldShare(string Way, Said How, IReadOnlyList<string> Names);

/// <summary>Two plans, act by act.</summary>
public sealed record ToldComparison
{
    public required string Mark { get; init; }

    /// <summary>The other plan's; empty for the plain way.</summary>
    public required string OtherMark { get; init; }

    public required IReadOnlyList<ToldDifference> Acts { get; init; }

    public required double Minutes { get; init; }

    public required double OtherMinutes { get; init; }

    public required double DifferenceMinutes { get; init; }
}

/// <param name="By">machine or hands.</param>
/// <param name="DifferenceMinutes">Minutes less those of the other plan.</param>
public sealed record ToldDifference(Said Act, string By, double Minutes, double OtherMinutes, double DifferenceMinutes);
