using System.Text.Json;
using NameBand.Common;

namespace NameBand.Reports.Answers;

/// <summary>Names that came when the garment was finished, and what can be done for them, the least work first.</summary>
public sealed record ToldLate
{
    public required IReadOnlyList<string> Names { get; init; }

    public required IReadOnlyList<ToldLateOffer> Offers { get; init; }

    internal static string WordOf(LateKind kind) => JsonNamingPolicy.CamelCase.ConvertName(kind.ToString());

    internal static ToldLate? Of(LateNames? late) => late is null ? null : new()
    {
        Names = late.Names,
        Offers = [.. late.Offers.Select(o => new ToldLateOffer
        {
            Take = WordOf(o.Kind),
            Place = o.Place,
            Fits = o.Fits,
            More = o.More,
            Minutes = Telling.Thousandth(o.Minutes),
            Looks = o.Looks,
            Steps = o.Steps,
        })],
    };
}

public sealed record ToldLateOffer
{
    /// <summary>The word by which the command takes it: room, partRound or label.</summary>
    public required string Take { get; init; }

    public required Said Place { get; init; }

    /// <summary>How many of the names it takes.</summary>
    public required int Fits { get; init; }

    /// <summary>How many more it would take without another hooping or label.</summary>
    public required int More { get; init; }

    public required double Minutes { get; init; }

    /// <summary>What everybody will see.</summary>
    public required Said Looks { get; init; }

    /// <summary>What is done, in its order.</summary>
    public required Said Steps { get; init; }
}

/// <summary>The job that was made for them.</summary>
/// <param name="Folder">Inside the job's folder.</param>
public sealed record ToldTakenLate(Said Place, string Folder, IReadOnlyList<string> Names);
