using System.Collections.Immutable;
using NameBand.Common;

namespace NameBand.Job;

/// <summary>How the strip lies under a machine that sews its own letters.</summary>
public enum StripFeed
{
    /// <summary>The strip runs away from the maker, under the presser foot.</summary>
    Lengthwise,

    /// <summary>The strip lies across the machine and is drawn from the right to the left.</summary>
    FromRight,

    /// <summary>The strip lies across the machine and is drawn from the left to the right.</summary>
    FromLeft,
}

/// <summary>A machine's own letters: what it offers and what it asks of her who keys in.</summary>
/// <param name="Alphabet">The measured alphabet, a CSV inside the job's folder; it may still have to be made.</param>
/// <param name="Sizes">Letter heights the machine offers; the first is the one that is measured.</param>
/// <param name="Spacings">Gaps between letters the machine offers; empty: only the one it was measured with.</param>
/// <param name="Gap">The gap the machine leaves; null: as measured.</param>
/// <param name="Has">Letters the machine has besides those in the measured alphabet.</param>
/// <param name="Holds">Characters the machine holds at a time; null: more than any name has.</param>
/// <param name="TopsRight">Lengthwise: the letters' tops lie to the maker's right as they are sewn.</param>
/// <param name="Mirrored">The letters come out as in a mirror, to be read from the wrong side.</param>
/// <param name="Hooped">The cloth is hooped; else it is fed under the presser foot on its backing.</param>
/// <param name="ReadingError">How far a reading of the ruler is out, as a standard deviation.</param>
public sealed record LettersSettings(
    string Alphabet, ImmutableArray<Length> Sizes, ImmutableArray<Length> Spacings, Length? Gap, string Has, int? Holds,
    bool KeepsLeadingBlanks, bool ForgetsWhenOff, StripFeed Feed, bool TopsRight, bool Mirrored, bool Hooped,
    Length ReadingError, double SecondsPerKey, double PositioningMinutes)
{
    /// <summary>What the letters look like, as she picks it from pictures.</summary>
    public LetterLook Look { get; init; }

    /// <summary>How wide its strokes come out at the first of the heights; null: not measured.</summary>
    public Length? Stroke { get; init; }

    /// <summary>
    /// Accents and strokes that the machine lacks are added by hand to the plain letter; else each name with one waits for a decision.
    /// </summary>
    public bool MarksByHand { get; init; }

    /// <summary>How far the feed makes one name come out longer or shorter than the same name again, as a part: common practice,
    /// no source.</summary>
    public double FeedVariationPart { get; init; } = 0.0175;

    public static LettersSettings Usual { get; } = new(
        "letters.csv", [], [], null, "ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789.,-'&", null,
        KeepsLeadingBlanks: false, ForgetsWhenOff: true, StripFeed.Lengthwise, TopsRight: true, Mirrored: false, Hooped: false,
        Length.FromMm(0.5), StartingValues.SecondsPerKey, StartingValues.PositioningMinutes);
}

/// <summary>How a traced template is made and followed.</summary>
/// <param name="Mirrored">Printed as in a mirror, to lie on the wrong side.</param>
/// <param name="ByHand">Sewn by hand; else free-motion at a machine.</param>
/// <param name="AlongOutline">The outline is followed; else the middle of each stroke.</param>
/// <param name="MmPerMinute">Pace along the line; null: <see cref="FreeMotionMmPerMinute"/> or <see cref="HandMmPerMinute"/>.</param>
public sealed record TracedSettings(
    bool Mirrored = false, bool ByHand = false, bool AlongOutline = false, double? MmPerMinute = null)
{
    /// <summary>Small letters followed under a darning foot, stops at each turn included: common practice, no source.</summary>
    public const double FreeMotionMmPerMinute = 250;

    /// <summary>Backstitch of 2 mm, some twelve a minute: common practice, no source.</summary>
    public const double HandMmPerMinute = 25;

    public double PaceMmPerMinute => MmPerMinute ?? (ByHand ? HandMmPerMinute : FreeMotionMmPerMinute);
}
