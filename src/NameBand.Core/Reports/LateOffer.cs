using System.Collections.Immutable;

namespace NameBand.Reports;

/// <summary>What can be done for names that came when the garment was finished.</summary>
/// <param name="Place">Such as <c>room that was kept</c>.</param>
/// <param name="Fits">How many of the names it takes.</param>
/// <param name="More">How many more it would take without another hooping or label.</param>
/// <param name="Looks">What everybody will see, told as it is.</param>
/// <param name="Steps">What is done, in its order.</param>
public sealed record LateOffer(string Place, int Fits, int More, double Minutes, string Looks, string Steps);

/// <summary>Names that came when the garment was finished, and the offers, the one with the least work first.</summary>
public sealed record LateNames(ImmutableArray<string> Names, ImmutableArray<LateOffer> Offers);
