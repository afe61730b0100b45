using System.Collections.Immutable;
using NameBand.Common;

namespace NameBand.Reports;

/// <summary>Where names can go that came when the garment was finished.</summary>
public enum LateKind
{
    /// <summary>Blank room on a round, which make plans them into of itself.</summary>
    Room,

    PartRound,

    Label,
}

/// <summary>What can be done for names that came when the garment was finished.</summary>
/// <param name="Place">Such as <c>room that was kept</c>.</param>
/// <param name="Fits">How many of the names it takes.</param>
/// <param name="More">How many more it would take without another hooping or label.</param>
/// <param name="Looks">What everybody will see, told as it is.</param>
/// <param name="Steps">What is done, in its order.</param>
public sealed record LateOffer(Said Place, int Fits, int More, double Minutes, Said Looks, Said Steps)
{
    public required LateKind Kind { get; init; }
}

/// <summary>An offer that was taken.</summary>
/// <param name="Folder">Of the job that was made for it, inside the job's.</param>
public sealed record TakenLate(Said Place, string Folder, ImmutableArray<string> Names);

/// <summary>Names that came when the garment was finished, and the offers, the one with the least work first.</summary>
public sealed record LateNames(ImmutableArray<string> Names, ImmutableArray<LateOffer> Offers);
