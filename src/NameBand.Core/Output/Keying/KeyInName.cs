using System.Collections.Immutable;
using NameBand.Common;
using NameBand.Layout;

namespace NameBand.Output.Keying;

/// <summary>What is keyed in at one go.</summary>
/// <param name="Keyed">In the order of keying, with its blanks.</param>
/// <param name="OnClothMm">Start mark from the cut left end of its piece of flat cloth, as it lies now.</param>
/// <param name="FromEndMm">Start mark on the flat cloth, from the strip's end that is sewn first.</param>
/// <param name="FromLastMm">Start mark from where the piece before ended; null for the first of a strip.</param>
/// <param name="ExpectedMm">Length it should come out at.</param>
/// <param name="ToleranceMm">How far it may be from that, 19 times in 20.</param>
/// <param name="Seconds">Machine time; null when the letters were not timed.</param>
/// <param name="IsEstimated">Some letter's width is an estimate.</param>
public sealed record KeyInPart(
    string Keyed, double OnClothMm, double FromEndMm, double? FromLastMm, double ExpectedMm, double ToleranceMm, double? Seconds,
    bool IsEstimated);

/// <summary>A name on the key-in sheet.</summary>
/// <param name="Order">Its number on the proofs.</param>
/// <param name="Turn">Its place in the order of sewing, from 1.</param>
/// <param name="Hooping">The sitting or hooping it is sewn in.</param>
public sealed record KeyInName(
    int Turn, int Order, string Text, RowRef Row, int Round, int Hooping, ImmutableArray<KeyInPart> Parts)
{
    /// <summary>The ruler that its start marks are read on.</summary>
    public required ClothRuler Ruler { get; init; }

    /// <summary>The mark of that hooping.</summary>
    public string Mark { get; init; } = "";

    /// <summary>It is sewn already, as far as measured ends tell.</summary>
    public bool IsSewn { get; init; }

    /// <summary>The sewing log says that it is sewn. The printed sheet does not tell: it stays what it is while the log grows.</summary>
    public bool IsLogged { get; init; }

    public double? Seconds => Parts.All(p => p.Seconds is not null) ? Parts.Sum(p => p.Seconds) : null;
}
