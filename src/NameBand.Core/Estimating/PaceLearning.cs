using MathNet.Numerics.Distributions;

namespace NameBand.Estimating;

/// <summary>A piece of work that was timed: what the estimate said, and what it took.</summary>
public readonly record struct TimedWork(double EstimatedMinutes, double TookMinutes);

/// <summary>What was learned of a pace.</summary>
/// <param name="Timed">Pieces of work it was learned from.</param>
/// <param name="PaceFactor">Minutes that work really takes for each minute estimated.</param>
/// <param name="Before">What is left to do, as it would be estimated with nothing timed.</param>
/// <param name="Now">The same with what was learned.</param>
public sealed record LearnedPace(int Timed, double PaceFactor, Figure Before, Figure Now);

/// <summary>
/// Learns a person's or a machine's pace from timed work, by weighted least squares with a prior, which is a Bayesian
/// regression through the origin: took = pace · estimated + error, the error normal with a variance in proportion to the
/// estimated minutes. Pace and variance have the conjugate prior (normal and inverse gamma), so that what is still to
/// come follows Student's t, and a range of 80 % is one in the strict sense, given the model. See docs/sewing.md.
/// </summary>
internal static class PaceLearning
{
    /// <summary>Before anything is timed the pace is as estimated, give or take 16 %: common practice, no source.</summary>
    public const double PriorPaceFactor = 1;

    public const double PriorSpreadPart = 0.16; // The 16 % above, as a standard deviation: common practice, no source.

    /// <summary>Expected variance of the error, in minutes, for each minute estimated: 0.95 min for a hooping of six. Our
    /// assumption.</summary>
    public const double PriorErrorMinutes = 0.15;

    /// <summary>Shape of the prior of the variance: as much weight as eight pieces of work would have.</summary>
    public const double PriorShapeFactor = 4;

    /// <summary>Part of cases in which the truth is to lie in the range.</summary>
    public const double CoveredPart = 0.8;

    /// <param name="leftMinutes">Work still to do, as estimated.</param>
    public static LearnedPace Learn(IReadOnlyList<TimedWork> timed, double leftMinutes)
    {
        var usable = timed.Where(t => t.EstimatedMinutes > 0 && double.IsFinite(t.TookMinutes) && t.TookMinutes >= 0).ToList();
        var before = Posterior.Of([]);
        var now = Posterior.Of(usable);
        return new LearnedPace(usable.Count, now.Pace, before.Range(leftMinutes), now.Range(leftMinutes));
    }

    /// <param name="Weight">Estimated minutes that stand behind the pace, those of the prior included.</param>
    private sealed record Posterior(double Pace, double Weight, double Shape, double Rate)
    {
        public static Posterior Of(IReadOnlyList<TimedWork> timed)
        {
            double priorWeight = PriorErrorMinutes / (PriorSpreadPart * PriorSpreadPart);
            double weight = priorWeight + timed.Sum(t => t.EstimatedMinutes);
            double pace = ((priorWeight * PriorPaceFactor) + timed.Sum(t => t.TookMinutes)) / weight;
            double residual = timed.Sum(t => Square(t.TookMinutes - (pace * t.EstimatedMinutes)) / t.EstimatedMinutes)
                + (priorWeight * Square(pace - PriorPaceFactor));
            double rate = (PriorErrorMinutes * (PriorShapeFactor - 1)) + (residual / 2);
            return new Posterior(pace, weight, PriorShapeFactor + (timed.Count / 2.0), rate);
        }

        /// <summary>The predictive range of the time that work of so many estimated minutes will take.</summary>
        public Figure Range(double leftMinutes)
        {
            double likely = Pace * leftMinutes;
            double scale = Math.Sqrt(Rate / Shape * (leftMinutes + (leftMinutes * leftMinutes / Weight)));
            double reach = scale * StudentT.InvCDF(0, 1, 2 * Shape, (1 + CoveredPart) / 2);
            return new Figure(Math.Max(0, likely - reach), likely, likely + reach);
        }

        private static double Square(double x) => x * x;
    }
}
