using System.Collections.Immutable;
using NameBand.Job;

namespace NameBand.MachineLetters.Widths;

/// <summary>What is known of the machine before anything of it is measured.</summary>
/// <param name="Look">Which she picked from the pictures, if any.</param>
/// <param name="HasSpacings">The gap is told: lengths bring it along, and only what it is counted from is open.</param>
/// <param name="ReadingErrorMm">Standard deviation of one reading of the ruler.</param>
/// <param name="FeedPart">How far the feed makes the same name differ, as a part of its length; a standard deviation.</param>
internal sealed record WidthModel(LetterLook Look, bool HasSpacings, double ReadingErrorMm, double FeedPart)
{
    /// <summary>The prior that is asked.</summary>
    public LetterPrior Prior { get; init; } = LetterPrior.Shipped;

    /// <summary>How sure she is of the look she picked: our assumption.</summary>
    private const double LookPicked = 0.8;

    /// <summary>
    /// Letters go their own ways less or more than those of faces do on the whole: by which factor of the variance, and what part of the
    /// faces of each look did when a sixth of them was held out in its turn (benchmark letter-own), smoothed a little as they are few.
    /// </summary>
    private static readonly ImmutableArray<double> OwnFactors = [0.5, 1, 2.5, 6];
    private static readonly ImmutableArray<double> OwnUpright = [0.32, 0.55, 0.08, 0.05];
    private static readonly ImmutableArray<double> OwnScript = [0.15, 0.5, 0.13, 0.22];
    private static readonly ImmutableArray<double> OwnMonospaced = [0.75, 0.2, 0.04, 0.01];

    /// <summary>A machine may feed far more evenly than is common: the part of <see cref="FeedPart"/>, and how likely. Our
    /// assumption.</summary>
    private static readonly ImmutableArray<(double Part, double Weight)> Evenness = [(1, 0.6), (0.1, 0.4)];

    /// <summary>How much the feed may vary, with the weight of each.</summary>
    public ImmutableArray<(double FeedPart, double Weight)> Feeds() =>
        FeedPart > 0 ? [.. Evenness.Select(e => (FeedPart * e.Part, e.Weight))] : [(0, 1)];

    /// <summary>What letters may be like, with the weight of each.</summary>
    public ImmutableArray<(WidthHypothesis Hypothesis, double Weight)> Hypotheses() =>
    [
        .. Prior.Looks.SelectMany(look => OwnFactors.Zip(Own(look.Look)).Select(own => (
            new WidthHypothesis(look, own.First, HasSpacings), own.Second * Weight(look.Look)))),
    ];

    private static ImmutableArray<double> Own(LetterLook look) =>
        look switch { LetterLook.Script => OwnScript, LetterLook.Monospaced => OwnMonospaced, _ => OwnUpright };

    private double Weight(LetterLook look) => Look == LetterLook.Unknown ? 1.0 / Prior.Looks.Length
        : Look == look ? LookPicked : (1 - LookPicked) / (Prior.Looks.Length - 1);
}

/// <summary>Letters of one look that go their own ways so far: means and covariances of sums.</summary>
internal sealed class WidthHypothesis(LookPrior look, double ownFactor, bool hasSpacings)
{
    /// <summary>All letters a little larger or smaller than stated, as a part: our assumption.</summary>
    private const double Sized = 0.025;

    // A blank, and the gap that the machine leaves beside its letters' own space, in hundredths of the letter height:
    // our assumption.
    private const double BlankMean = 55;
    private const double BlankDoubt = 15;
    private const double GapMean = 8.3;
    private const double GapDoubt = 5.6;

    /// <summary>Letters go their own ways as those of faces do on the whole.</summary>
    public bool IsPlain => ownFactor == 1;

    /// <summary>A sum as this hypothesis sees it, in mm: its mean, how it goes with what letters have in common, and its terms'
    /// own deviations.</summary>
    /// <param name="Parts">In the order of the terms.</param>
    public sealed record Seen(double MeanMm, double[] Loads, (Term Term, double OwnMm)[] Parts)
    {
        public double Covariance(Seen other)
        {
            double sum = 0;
            for (int k = 0; k < Loads.Length; k++)
            {
                sum += Loads[k] * other.Loads[k];
            }

            for (int i = 0, j = 0; i < Parts.Length && j < other.Parts.Length;)
            {
                int order = Parts[i].Term.CompareTo(other.Parts[j].Term);
                sum += order == 0 ? Parts[i].OwnMm * other.Parts[j].OwnMm : 0;
                i += order <= 0 ? 1 : 0;
                j += order >= 0 ? 1 : 0;
            }

            return sum;
        }
    }

    public Seen See(WidthSum sum)
    {
        double mm = sum.HeightMm / 100;
        double mean = 0;
        double[] loads = new double[LookPrior.Factors];
        var parts = new (Term Term, double OwnMm)[sum.Parts.Length];
        double apart = Math.Sqrt(ownFactor);
        for (int i = 0; i < parts.Length; i++)
        {
            var (term, times) = sum.Parts[i];
            double own;
            if (Measure(term) is { } measure)
            {
                (mean, own) = (mean + (times * measure.Mean), measure.Own * apart);
                for (int k = 0; k < loads.Length; k++)
                {
                    loads[k] += times * measure.Loads[k] * mm;
                }
            }
            else
            {
                // All letters larger or smaller comes last of the terms: by then the mean is whole.
                (double value, own) = term.Kind == TermKind.Size ? (0, Sized * mean) : Plain(term, apart);
                mean += times * value;
            }

            parts[i] = (term, times * own * mm);
        }

        return new Seen((mean * mm) + sum.OffsetMm, loads, parts);
    }

    private PriorMeasure? Measure(Term term) => term.Kind switch
    {
        TermKind.Advance => look.Letters[term.Letter].Advance,
        TermKind.Left => look.Letters[term.Letter].Left,
        TermKind.Right => look.Letters[term.Letter].Right,
        _ => null,
    };

    private (double Mean, double Doubt) Plain(Term term, double apart) => term.Kind switch
    {
        TermKind.Blank => (BlankMean, BlankDoubt),
        TermKind.Apart => (0, term.Doubt * apart),

        // What the number on the machine counts, from letter to letter or on top of their own space, is open: both lie within.
        TermKind.Gap when hasSpacings => (-look.SpaceMean / 2, Math.Sqrt((GapDoubt * GapDoubt) + (look.SpaceMean * look.SpaceMean / 4))),
        TermKind.Gap => (GapMean, GapDoubt),
        _ => throw new ArgumentOutOfRangeException(nameof(term), term.Kind, "No such term."),
    };
}
