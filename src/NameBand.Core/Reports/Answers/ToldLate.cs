namespace NameBand.Reports.Answers;

/// <summary>Names that came when the garment was finished, and what can be done for them, the least work first.</summary>
public sealed record ToldLate
{
    public required IReadOnlyList<string> Names { get; init; }

    public required IReadOnlyList<ToldLateOffer> Offers { get; init; }

    internal static ToldLate? Of(LateNames? late) => late is null ? null : new()
    {
        Names = late.Names,
        Offers = [.. late.Offers.Select(o => new ToldLateOffer
        {
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
    public required string Place { get; init; }

    /// <summary>How many of the names it takes.</summary>
    public required int Fits { get; init; }

    /// <summary>How many more it would take without another hooping or label.</summary>
    public required int More { get; init; }

    public required double Minutes { get; init; }

    /// <summary>What everybody will see.</summary>
    public required string Looks { get; init; }

    /// <summary>What is done, in its order.</summary>
    public required string Steps { get; init; }
}
