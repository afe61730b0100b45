using System.Collections.Immutable;
using NameBand.Common;
using NameBand.Layout;
using NameBand.MachineLetters;
using NameBand.MachineLetters.Spelling;

namespace NameBand.Output.Keying;

/// <summary>What is keyed in at one go.</summary>
/// <param name="Keyed">In the order of keying, with its blanks.</param>
/// <param name="OnClothMm">Start mark from the cut left end of its piece of flat cloth, as it lies now.</param>
/// <param name="FromEndMm">Start mark on the flat cloth, from the strip's end that is sewn first.</param>
/// <param name="FromLastMm">Start mark from where the piece before ended; null for the first of a strip.</param>
/// <param name="ExpectedMm">Length it should come out at.</param>
/// <param name="Seconds">Machine time; null when the letters were not timed.</param>
/// <param name="IsEstimated">Its range is wide: little of the machine is known.</param>
public sealed record KeyInPart(
    string Keyed, double OnClothMm, double FromEndMm, double? FromLastMm, double ExpectedMm, double? Seconds, bool IsEstimated)
{
    /// <summary>9 times in 10 it comes out no shorter than this and no longer than <see cref="MostMm"/>, the feed's own variation
    /// apart.</summary>
    public required double LeastMm { get; init; }

    public required double MostMm { get; init; }

    /// <summary>How far the feed alone may make it differ, 9 times in 10.</summary>
    public required double FeedMm { get; init; }

    /// <summary>What a sewn name is held to: its range and the feed's variation together, to <see cref="LongestMm"/>.</summary>
    public double ShortestMm => ExpectedMm - Together(ExpectedMm - LeastMm);

    public double LongestMm => ExpectedMm + Together(MostMm - ExpectedMm);

    private double Together(double mm) => Math.Sqrt((mm * mm) + (FeedMm * FeedMm));
}

/// <summary>A name on the key-in sheet.</summary>
/// <param name="Order">Its number on the proofs.</param>
/// <param name="Turn">Its place in the order of sewing, from 1.</param>
/// <param name="Hooping">The sitting or hooping it is sewn in.</param>
public sealed record KeyInName(
    int Turn, int Order, string Text, RowRef Row, int Round, int Hooping, ImmutableArray<KeyInPart> Parts)
{
    /// <summary>What the machine is set to for it.</summary>
    public required SizeStep Step { get; init; }

    /// <summary>The ruler that its start marks are read on.</summary>
    public required ClothRuler Ruler { get; init; }

    /// <summary>The name that it is sewn and logged with: itself, or of what is sewn between names the one that is sewn after it.</summary>
    public required int With { get; init; }

    /// <summary>Sewn between names, and no name.</summary>
    public bool IsMotif => Order == 0;

    /// <summary>The mark of that hooping.</summary>
    public string Mark { get; init; } = "";

    /// <summary>On a strip with two lines of names: 1 on the upper one, 2 on the lower one; else 0. Each line is sewn from end to
    /// end.</summary>
    public int Line { get; init; }

    /// <summary>It is sewn already, as far as measured ends tell.</summary>
    public bool IsSewn { get; init; }

    /// <summary>The sewing log says that it is sewn. The printed sheet does not tell: it stays what it is while the log grows.</summary>
    public bool IsLogged { get; init; }

    /// <summary>Words of it that get marks by hand.</summary>
    internal ImmutableArray<MarkedWord> MarkedWords { get; init; } = [];

    /// <summary>Letters of it that get marks by hand.</summary>
    public int HandMarks => MarkedWords.Sum(w => w.Letters.Length);

    /// <summary>What is added by hand, such as <c>é: acute accent on e</c>; empty for nothing.</summary>
    public Said ByHand => Said.Join("; ", MarkedWords.SelectMany(w => w.Letters).Select(l => l.InWords).Distinct());

    public double? Seconds => Parts.All(p => p.Seconds is not null) ? Parts.Sum(p => p.Seconds) : null;
}
