using NameBand.Common;

namespace NameBand.Garment;

/// <summary>What it takes to make a straight strip lie on a round edge.</summary>
public enum EaseVerdict
{
    /// <summary>The cloth gives as much of itself.</summary>
    LiesFlat,

    /// <summary>The upper edge can be eased in, in the gaps between names: satin does not ease.</summary>
    CanBeEased,

    /// <summary>A strip cut to the curve, or on the bias, lies better.</summary>
    WantsShaping,
}

/// <summary>How much shorter the upper edge of one round's strip must become to lie flat.</summary>
/// <param name="ShorterMm">The angle of the part-circle times the finished width: the same for every round.</param>
/// <param name="Part">The same as a part of the round's length, which grows as the rounds get shorter.</param>
public sealed record RoundEase(int Number, double LengthMm, double ShorterMm, double Part, EaseVerdict Verdict)
{
    /// <param name="liesFlatPart">Up to and without this part a strip lies flat of itself.</param>
    /// <param name="easedPart">Up to and with this part it can be eased.</param>
    public static RoundEase Judge(int number, double lengthMm, double shorterMm, double liesFlatPart, double easedPart)
    {
        double part = shorterMm / lengthMm;
        var verdict = part < liesFlatPart || shorterMm <= 0 ? EaseVerdict.LiesFlat
            : part <= easedPart ? EaseVerdict.CanBeEased
            : EaseVerdict.WantsShaping;
        return new RoundEase(number, lengthMm, shorterMm, part, verdict);
    }

    /// <summary>A strip cut as a piece of a ring: its upper edge is cut that much shorter, and nothing need be eased.</summary>
    public static RoundEase CutToTheCurve(int number, double lengthMm, double shorterMm) =>
        new(number, lengthMm, shorterMm, shorterMm / lengthMm, EaseVerdict.LiesFlat) { IsCutToTheCurve = true };

    /// <summary>Whether the strip has the curve already.</summary>
    public bool IsCutToTheCurve { get; init; }

    /// <summary>The verdict as a sentence for the maker.</summary>
    public string InWords()
    {
        if (IsCutToTheCurve)
        {
            return FormattableString.Invariant($"Round {Number}: the strip is cut to the curve, its upper edge {ShorterMm:0} mm shorter than its lower one ({100 * Part:0.0} %), and lies flat.");
        }

        string lead = FormattableString.Invariant($"Round {Number}: the strip's upper edge must become {ShorterMm:0} mm shorter than its lower one ({100 * Part:0.0} %)");
        return Verdict switch
        {
            EaseVerdict.LiesFlat => $"{lead}: it lies flat of itself.",
            EaseVerdict.CanBeEased => $"{lead}: it can be eased in, in the gaps between names only, for satin does not ease.",
            _ => $"{lead}: more than can be eased.",
        };
    }
}
