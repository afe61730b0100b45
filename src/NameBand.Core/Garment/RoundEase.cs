using System.Collections.Immutable;
using NameBand.Common;

namespace NameBand.Garment;

/// <summary>What it takes to make a straight strip lie on a round edge.</summary>
public enum EaseVerdict
{
    /// <summary>The cloth gives as much of itself.</summary>
    LiesFlat,

    /// <summary>The upper edge can be eased in, in the gaps between names: satin does not ease.</summary>
    CanBeEased,

    /// <summary>Tapered tucks in the gaps take up what easing cannot, and the job asks for them.</summary>
    WithTucks,

    /// <summary>More than the gaps can take up: another strip is wanted.</summary>
    WantsShaping,
}

/// <summary>What a strip's upper edge gives, by its grain and by what the job says.</summary>
/// <param name="LiesFlatPart">Up to and without this part of its length a strip lies flat by itself.</param>
/// <param name="GapsPart">Part by which the gaps between names may be eased.</param>
/// <param name="LengthPart">Part of the whole length that may be eased, where the job names one; null for any.</param>
public sealed record EaseRule(double LiesFlatPart, double GapsPart, double? LengthPart, bool IsBias)
{
    /// <summary>Whether tapered tucks may take up what easing cannot.</summary>
    public bool HasTucks { get; init; }

    /// <summary>How the strip is cut, as a sentence says it.</summary>
    public Said GrainInWords => IsBias ? "on the bias" : "on the straight grain";
}

/// <summary>What of one round can be eased: the blank between its names, and the part of the round that these names with their
/// gaps take.</summary>
/// <param name="GapsMm">Sum of the gaps; a blank wider than two of them eases only its own neighbours and counts as two.</param>
/// <param name="SpanMm">Names and gaps together.</param>
/// <param name="GapMm">One gap, as it is said to the maker.</param>
public readonly record struct RoundGaps(double GapsMm, double SpanMm, double GapMm)
{
    /// <summary>Those that can hold a tuck, from left to right.</summary>
    public ImmutableArray<OpenGap> Open { get; init; } = [];
}

/// <summary>How much shorter the upper edge of one round's strip must become to lie flat, and whether its gaps can take that up.</summary>
/// <param name="ShorterMm">The angle of the part-circle times the finished width: the same for every round.</param>
/// <param name="Part">The same as a part of the round's length, which grows as the rounds get shorter.</param>
/// <param name="GapsPart">The part of the gaps that they would lose.</param>
public sealed record RoundEase(int Number, double LengthMm, double ShorterMm, double Part, double GapsPart, EaseVerdict Verdict)
{
    /// <summary>Less than this is not felt under a finger.</summary>
    private const double LeastToldPart = 0.0005;

    /// <summary>Judges a straight strip by what its gaps must take up, for satin does not ease.</summary>
    public static RoundEase Judge(int number, double lengthMm, double finishedWidthMm, double turnRad, RoundGaps gaps, EaseRule rule)
    {
        double shorter = turnRad * finishedWidthMm;
        double part = shorter / lengthMm;
        double lost = gaps.GapsMm > 0 ? part * gaps.SpanMm / gaps.GapsMm : 0;
        double lengthPart = rule.LengthPart ?? double.PositiveInfinity;
        bool liesFlat = part < rule.LiesFlatPart || shorter <= 0;
        bool isEased = lost <= rule.GapsPart + Tolerance.Rounding && part <= lengthPart;
        var tucks = liesFlat || isEased ? null : Tucks(part * gaps.SpanMm, gaps, rule);
        var verdict = liesFlat ? EaseVerdict.LiesFlat
            : isEased ? EaseVerdict.CanBeEased
            : tucks is not null && rule.HasTucks ? EaseVerdict.WithTucks
            : EaseVerdict.WantsShaping;
        double most = lost > 0 ? finishedWidthMm * Math.Min(rule.GapsPart / lost, lengthPart / part) : double.PositiveInfinity;
        return new RoundEase(number, lengthMm, shorter, part, lost, verdict)
        {
            Rule = rule,
            GapMm = gaps.GapMm,
            WidestMm = most,
            PossibleTucks = tucks,
            EasedGapsPart = tucks is null ? lost : Math.Max(0, ((part * gaps.SpanMm) - tucks.TakesMm) / (gaps.GapsMm - tucks.TakesMm)),
        };
    }

    /// <summary>Tucks that leave no more to be eased than what is left of the gaps beside them gives.</summary>
    private static TuckSet? Tucks(double lostMm, RoundGaps gaps, EaseRule rule)
    {
        double byGaps = rule.GapsPart < 1 ? (lostMm - (rule.GapsPart * gaps.GapsMm)) / (1 - rule.GapsPart) : 0;
        double byLength = rule.LengthPart is { } part ? lostMm - (part * gaps.SpanMm) : 0;
        return lostMm < gaps.GapsMm ? TuckSet.For(Math.Max(byGaps, byLength), lostMm, gaps.Open) : null;
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

    /// <summary>Tucks that would take up what easing cannot, wanted or not; null where there is nothing to take up, or gaps
    /// cannot hold them.</summary>
    public TuckSet? PossibleTucks { get; init; }

    /// <summary>Part of the gaps that is eased beside the tucks.</summary>
    public double EasedGapsPart { get; init; }

    /// <summary>The tucks that are folded; null for none.</summary>
    public TuckSet? Tucked => Verdict == EaseVerdict.WithTucks ? PossibleTucks : null;

    public Verdict Judged() => new(Fact.Easing, Number, Kind, InWords());

    private VerdictKind Kind => Verdict switch
    {
        EaseVerdict.LiesFlat => VerdictKind.Good,
        EaseVerdict.CanBeEased or EaseVerdict.WithTucks => VerdictKind.Note,
        _ => VerdictKind.NeedsAPerson,
    };

    /// <summary>The verdict as a sentence for the maker; the same words wherever it is said.</summary>
    public Said InWords()
    {
        if (IsCutToTheCurve)
        {
            return $"Round {Number}: the strip is cut to the curve, its upper edge {ShorterMm:0} mm shorter than its lower one ({100 * Part:0.0} %), and lies flat.";
        }

        Said lead =
            $"Round {Number}: the strip's upper edge must become {ShorterMm:0} mm shorter than its lower one ({100 * Part:0.0} %)";
        Said each = $"each gap of {GapMm:0.0} mm would lose {GapMm * GapsPart:0.0} mm ({Percent(GapsPart)})";
        return Verdict switch
        {
            EaseVerdict.LiesFlat => (Said)$"{lead}: it lies flat by itself.",
            EaseVerdict.CanBeEased => $"{lead}: it can be eased in, in the gaps between names only, for satin does not ease; {each}.",
            EaseVerdict.WithTucks => $"{lead}: {TucksInWords()}.",
            _ => $"{lead}: more than can be eased, for {each}, and {Rule!.GrainInWords} {Limit()}"
                + $"{(Rule.HasTucks ? (Said)"; tapered tucks cannot take it up either, for these gaps are too few or too narrow." : ".")}",
        };
    }

    /// <summary>How many tucks take up how much, and what is left to be eased.</summary>
    /// <exception cref="InvalidOperationException">Tucks are not possible: a bug.</exception>
    public Said TucksInWords()
    {
        var tucks = PossibleTucks ?? throw new InvalidOperationException("There are no tucks to tell of.");
        Said many = $"{tucks.Count} tapered {(tucks.Count == 1 ? (Said)"tuck" : "tucks, each")} {tucks.WidthMm:0.0} mm wide at the upper edge and nothing at the lower one, {(tucks.Count == 1 ? (Said)"takes" : "take")} up {tucks.TakesMm:0.0} mm of it";
        return EasedGapsPart < LeastToldPart ? many : (Said)$"{many}, and {Percent(EasedGapsPart)} of the gaps is eased";
    }

    private Said Limit() => GapsPart > Rule!.GapsPart + Tolerance.Rounding
        ? (Said)$"{Percent(Rule.GapsPart)} is the most"
        : $"{Percent(Rule.LengthPart ?? 0)} of the whole length is the most (strip.eased)";

    private static Said Percent(double part) => $"{100 * part:0.#} %";
}
