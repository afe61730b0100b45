using System.Globalization;
using NameBand.Common;

namespace NameBand.Garment;

/// <summary>What it takes to make a straight strip lie on a round edge.</summary>
public enum EaseVerdict
{
    /// <summary>The cloth gives as much of itself.</summary>
    LiesFlat,

    /// <summary>The upper edge can be eased in, in the gaps between names: satin does not ease.</summary>
    CanBeEased,

    /// <summary>More than the gaps can take up: another strip is wanted.</summary>
    WantsShaping,
}

/// <summary>What a strip's upper edge gives, by its grain and by what the job says.</summary>
/// <param name="LiesFlatPart">Up to and without this part of its length a strip lies flat of itself.</param>
/// <param name="GapsPart">Part by which the gaps between names may be eased.</param>
/// <param name="LengthPart">Part of the whole length that may be eased, where the job names one; null for any.</param>
public sealed record EaseRule(double LiesFlatPart, double GapsPart, double? LengthPart, bool IsBias)
{
    /// <summary>How the strip is cut, as a sentence says it.</summary>
    public string GrainInWords => IsBias ? "on the bias" : "on the straight grain";
}

/// <summary>What of one round can be eased: the blank between its names, and the part of the round that these names with their gaps take.</summary>
/// <param name="GapsMm">Sum of the gaps; a blank wider than two of them eases only its own neighbours and counts as two.</param>
/// <param name="SpanMm">Names and gaps together.</param>
/// <param name="GapMm">One gap, as it is said to the maker.</param>
public readonly record struct RoundGaps(double GapsMm, double SpanMm, double GapMm);

/// <summary>How much shorter the upper edge of one round's strip must become to lie flat, and whether its gaps can take that up.</summary>
/// <param name="ShorterMm">The angle of the part-circle times the finished width: the same for every round.</param>
/// <param name="Part">The same as a part of the round's length, which grows as the rounds get shorter.</param>
/// <param name="GapsPart">The part of the gaps that they would lose.</param>
public sealed record RoundEase(int Number, double LengthMm, double ShorterMm, double Part, double GapsPart, EaseVerdict Verdict)
{
    /// <summary>How far rounding in the last place may carry a part over its limit.</summary>
    private const double SlightPart = 1e-9;

    /// <summary>Judges a straight strip by what its gaps must take up, for satin does not ease.</summary>
    public static RoundEase Judge(int number, double lengthMm, double finishedWidthMm, double turnRad, RoundGaps gaps, EaseRule rule)
    {
        double shorter = turnRad * finishedWidthMm;
        double part = shorter / lengthMm;
        double lost = gaps.GapsMm > 0 ? part * gaps.SpanMm / gaps.GapsMm : 0;
        double lengthPart = rule.LengthPart ?? double.PositiveInfinity;
        var verdict = part < rule.LiesFlatPart || shorter <= 0 ? EaseVerdict.LiesFlat
            : lost > rule.GapsPart + SlightPart || part > lengthPart ? EaseVerdict.WantsShaping
            : EaseVerdict.CanBeEased;
        double most = lost > 0 ? finishedWidthMm * Math.Min(rule.GapsPart / lost, lengthPart / part) : double.PositiveInfinity;
        return new RoundEase(number, lengthMm, shorter, part, lost, verdict) { Rule = rule, GapMm = gaps.GapMm, WidestMm = most };
    }

    /// <summary>A strip cut as a piece of a ring: its upper edge is cut that much shorter, and nothing need be eased.</summary>
    public static RoundEase CutToTheCurve(int number, double lengthMm, double shorterMm) =>
        new(number, lengthMm, shorterMm, shorterMm / lengthMm, 0, EaseVerdict.LiesFlat) { IsCutToTheCurve = true };

    /// <summary>Whether the strip has the curve already.</summary>
    public bool IsCutToTheCurve { get; init; }

    /// <summary>What it was judged by; null for a strip that has the curve.</summary>
    public EaseRule? Rule { get; init; }

    /// <summary>One gap between two names.</summary>
    public double GapMm { get; init; }

    /// <summary>Width of a finished strip that these gaps could just take up.</summary>
    public double WidestMm { get; init; } = double.PositiveInfinity;

    public Verdict Judged() => new(Fact.Easing, Number, Kind, InWords());

    private VerdictKind Kind => Verdict switch
    {
        EaseVerdict.LiesFlat => VerdictKind.Good,
        EaseVerdict.CanBeEased => VerdictKind.Note,
        _ => VerdictKind.NeedsAPerson,
    };

    /// <summary>The verdict as a sentence for the maker; the same words wherever it is said.</summary>
    public string InWords()
    {
        if (IsCutToTheCurve)
        {
            return FormattableString.Invariant($"Round {Number}: the strip is cut to the curve, its upper edge {ShorterMm:0} mm shorter than its lower one ({100 * Part:0.0} %), and lies flat.");
        }

        string lead = FormattableString.Invariant($"Round {Number}: the strip's upper edge must become {ShorterMm:0} mm shorter than its lower one ({100 * Part:0.0} %)");
        string each = FormattableString.Invariant($"each gap of {GapMm:0.0} mm would lose {GapMm * GapsPart:0.0} mm ({Percent(GapsPart)})");
        return Verdict switch
        {
            EaseVerdict.LiesFlat => $"{lead}: it lies flat of itself.",
            EaseVerdict.CanBeEased => $"{lead}: it can be eased in, in the gaps between names only, for satin does not ease; {each}.",
            _ => $"{lead}: more than can be eased, for {each}, and {Rule!.GrainInWords} {Limit()}.",
        };
    }

    private string Limit() => GapsPart > Rule!.GapsPart + SlightPart
        ? $"{Percent(Rule.GapsPart)} is the most"
        : $"{Percent(Rule.LengthPart ?? 0)} of the whole length is the most (strip.eased)";

    private static string Percent(double part) => (100 * part).ToString("0.#", CultureInfo.InvariantCulture) + " %";
}
