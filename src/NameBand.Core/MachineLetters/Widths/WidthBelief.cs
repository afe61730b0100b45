using System.Collections.Immutable;
using MathNet.Numerics.Distributions;

namespace NameBand.MachineLetters.Widths;

/// <summary>A length that was read of something sewn.</summary>
/// <param name="Piece">Readings of the same sewn piece share what the feed did to it.</param>
/// <param name="ErrorMm">Standard deviation of this reading, where it is not the ruler's.</param>
internal sealed record WidthReading(WidthSum Sum, double LengthMm, int Piece, double? ErrorMm = null)
{
    /// <summary>It stands for many readings, none of which is looked at alone.</summary>
    public bool IsSettled { get; init; }
}

/// <summary>A length that is foretold.</summary>
/// <param name="LowMm">It is expected not to be below this 19 times in 20.</param>
/// <param name="HighMm">Nor above this: both ends together hold 9 times in 10.</param>
internal readonly record struct Foretold(double MeanMm, double SdMm, double LowMm, double HighMm);

/// <summary>A reading that does not go with the others.</summary>
/// <param name="Reading">Its place among the readings.</param>
/// <param name="Chance">How likely it is misread.</param>
/// <param name="ExpectedMm">What the others expect.</param>
internal sealed record DoubtfulReading(int Reading, double Chance, double ExpectedMm);

/// <summary>
/// What is known of a machine's letters from some sewn lengths: Bayesian linear regression with all covariances kept, over a
/// mixture of hypotheses (looks, and how far letters go their own ways), in the space of the lengths themselves.
/// </summary>
/// <remarks>
/// For sums f = Xθ with prior mean m and covariance C, and readings y = f + e: mean and covariance of other sums given y are
/// those of conditioning a Gaussian. A hypothesis weighs as its density at y does.
/// </remarks>
internal sealed class WidthBelief
{
    // One reading in so many is grossly wrong, and by about so much: our assumption.
    private const double GrossOneIn = 30;
    private const double GrossMm = 6.8;

    // From this chance on a reading is taken for wrong; from the lower one a second reading is asked for.
    private const double TakenForWrong = 0.5;
    private const double WorthAsking = 0.15;

    /// <summary>A hypothesis lighter than this part of all is let go.</summary>
    private const double LightestPart = 1e-6;

    /// <summary>Either end of a stated range.</summary>
    private const double Tail = 0.05;

    private const double ExactMm = 1e-10; // Far below what a range is printed with, a tenth of a millimetre.
    // Halvings: a range of a metre comes to less than 1e-10 mm in 44 of them, Newton's steps come there sooner.
    private const int MostSteps = 60;

    private readonly ImmutableArray<WidthReading> _readings;
    private readonly ImmutableArray<Conditioned> _parts;

    public WidthBelief(WidthModel model, IEnumerable<WidthReading> readings)
    {
        _readings = [.. readings];
        var prior = model.Hypotheses().SelectMany(h => Conditioned.Of(h.Hypothesis, Math.Log(h.Weight), _readings, model)).ToList();
        double[] wrong = new double[_readings.Length];
        for (int round = 0; round < _readings.Length; round++)
        {
            var chances = GrossChances(prior, wrong);
            int worst = Enumerable.Range(0, chances.Length).MaxBy(i => chances[i]);
            if (chances[worst] <= TakenForWrong)
            {
                break;
            }

            wrong[worst] = chances[worst];
            prior = [.. prior.Select(p => p.WithWrong(worst, GrossMm * GrossMm))];
        }

        Wrong = [.. Enumerable.Range(0, wrong.Length).Where(i => wrong[i] > 0)];
        var last = _readings.IsEmpty ? [] : GrossChances(prior, wrong);
        double most = prior.Max(p => p.LogWeight);
        double all = prior.Sum(p => Math.Exp(p.LogWeight - most));
        _parts = [.. prior.Select(p => p with { Weight = Math.Exp(p.LogWeight - most) / all }).Where(p => p.Weight > LightestPart)];
        Doubtful =
        [
            .. Enumerable.Range(0, wrong.Length).Select(i => (At: i, Chance: Math.Max(wrong[i], last[i])))
                .Where(c => c.Chance > WorthAsking).OrderByDescending(c => c.Chance)
                .Select(c => new DoubtfulReading(c.At, c.Chance, _parts.Sum(p => p.Weight * p.Without(c.At)))),
        ];
    }

    /// <summary>Readings that are taken for grossly wrong and hardly count, by their place.</summary>
    public ImmutableArray<int> Wrong { get; }

    /// <summary>Readings that a second one should be taken of, the most doubtful first.</summary>
    public ImmutableArray<DoubtfulReading> Doubtful { get; }

    public double Mean(WidthSum sum) => _parts.Sum(p => p.Weight * p.Mean(sum)) / _parts.Sum(p => p.Weight);

    public Foretold Foretell(WidthSum sum)
    {
        (double Weight, double Mean, double Sd)[] parts = [.. _parts.Select(p =>
        {
            var (mean, variance) = p.Foretell(sum);
            return (p.Weight, mean, Math.Sqrt(Math.Max(variance, 1e-12)));
        })];
        double all = parts.Sum(p => p.Weight);
        double mean = parts.Sum(p => p.Weight * p.Mean) / all;
        double variance = parts.Sum(p => p.Weight * ((p.Sd * p.Sd) + ((p.Mean - mean) * (p.Mean - mean)))) / all;
        double sd = Math.Sqrt(variance);
        return new Foretold(mean, sd, Quantile(parts, all, Tail), Quantile(parts, all, 1 - Tail));
    }

    /// <summary>Covariance of two sums, the hypotheses' disagreement with it.</summary>
    public double Covariance(WidthSum one, WidthSum other)
    {
        double mean1 = Mean(one);
        double mean2 = Mean(other);
        return _parts.Sum(p => p.Weight * (p.Covariance(one, other)
            + ((p.Mean(one) - mean1) * (p.Mean(other) - mean2))));
    }

    /// <summary>Each reading's chance to be grossly wrong where one more is at most.</summary>
    private double[] GrossChances(List<Conditioned> parts, double[] wrong)
    {
        double odds = Math.Log(1 / (GrossOneIn - 1));
        double most = parts.Max(p => p.LogWeight);
        double none = Math.Log(parts.Sum(p => Math.Exp(p.LogWeight - most)));
        double[] logs = [.. Enumerable.Range(0, _readings.Length).Select(i => wrong[i] > 0 || _readings[i].IsSettled
            ? double.NegativeInfinity
            : odds + LogSum(parts.Select(p => p.LogWeight - most + p.Given.GainIfMore(i, GrossMm * GrossMm))))];
        double top = Math.Max(none, logs.DefaultIfEmpty(double.NegativeInfinity).Max());
        double sum = Math.Exp(none - top) + logs.Sum(l => Math.Exp(l - top));
        return [.. logs.Select(l => Math.Exp(l - top) / sum)];
    }

    private static double LogSum(IEnumerable<double> logs)
    {
        double[] all = [.. logs];
        double top = all.Max();
        return top + Math.Log(all.Sum(l => Math.Exp(l - top)));
    }

    /// <summary>That of a mixture lies between those of its parts: by Newton's steps, halved where one would leave what is known.</summary>
    private static double Quantile((double Weight, double Mean, double Sd)[] parts, double all, double part)
    {
        double z = Normal.InvCDF(0, 1, part);
        double low = parts.Min(p => p.Mean + (z * p.Sd));
        double high = parts.Max(p => p.Mean + (z * p.Sd));
        double at = parts.Sum(p => p.Weight * (p.Mean + (z * p.Sd))) / all;
        for (int i = 0; i < MostSteps && high - low > ExactMm; i++)
        {
            double off = (parts.Sum(p => p.Weight * Normal.CDF(p.Mean, p.Sd, at)) / all) - part;
            (low, high) = off < 0 ? (at, high) : (low, at);
            double next = at - (off / (parts.Sum(p => p.Weight * Normal.PDF(p.Mean, p.Sd, at)) / all));
            next = next > low && next < high ? next : (low + high) / 2;
            if (Math.Abs(next - at) < ExactMm)
            {
                return next;
            }

            at = next;
        }

        return at;
    }

    /// <summary>One hypothesis, given the readings.</summary>
    private sealed record Conditioned(
        WidthHypothesis Hypothesis, double LogPrior, ImmutableArray<WidthHypothesis.Seen> Seen, GaussianReadings Given)
    {
        /// <summary>Logarithm of the weight, up to what is common to all hypotheses.</summary>
        public double LogWeight => LogPrior + Given.LogDensity;

        public double Weight { get; init; }

        /// <summary>One for each way the feed may be.</summary>
        public static IEnumerable<Conditioned> Of(
            WidthHypothesis hypothesis, double logPrior, ImmutableArray<WidthReading> readings, WidthModel model)
        {
            ImmutableArray<WidthHypothesis.Seen> seen = [.. readings.Select(r => hypothesis.See(r.Sum))];
            double[] off = [.. readings.Select((r, i) => r.LengthMm - seen[i].MeanMm)];
            return model.Feeds().Select(f => new Conditioned(
                hypothesis, logPrior + Math.Log(f.Weight), seen,
                GaussianReadings.Of(off, (i, j) => seen[i].Covariance(seen[j]) + Noise(readings, i, j, model.ReadingErrorMm, f.FeedPart))));
        }

        /// <summary>The same with one reading's error far larger.</summary>
        public Conditioned WithWrong(int reading, double variance) => this with { Given = Given.WithMore(reading, variance) };

        /// <summary>What the other readings expect in the place of one.</summary>
        public double Without(int reading) => Seen[reading].MeanMm + Given.Without(reading);

        public double Mean(WidthSum sum)
        {
            var seen = Hypothesis.See(sum);
            return seen.MeanMm + Given.Mean(With(seen));
        }

        public (double MeanMm, double Variance) Foretell(WidthSum sum)
        {
            var seen = Hypothesis.See(sum);
            double[] with = With(seen);
            return (seen.MeanMm + Given.Mean(with), seen.Covariance(seen) - Given.Explained(with, with));
        }

        public double Covariance(WidthSum one, WidthSum other)
        {
            var (seen1, seen2) = (Hypothesis.See(one), Hypothesis.See(other));
            return seen1.Covariance(seen2) - Given.Explained(With(seen1), With(seen2));
        }

        private double[] With(WidthHypothesis.Seen seen) => [.. Seen.Select(seen.Covariance)];

        private static double Noise(ImmutableArray<WidthReading> readings, int i, int j, double readingErrorMm, double feedPart)
        {
            double error = readings[i].ErrorMm ?? readingErrorMm;
            bool isSamePiece = readings[i].Piece == readings[j].Piece && !readings[i].IsSettled;
            return (i == j ? error * error : 0) + (isSamePiece ? feedPart * feedPart * readings[i].LengthMm * readings[j].LengthMm : 0);
        }
    }
}
