using System.Collections.Immutable;

namespace NameBand.MachineLetters.Widths;

/// <summary>
/// Which lengths to read first so that the rest is known best: those that leave the least mean variance of all (I-optimal
/// design), taken one after the other from several first ones, and then exchanged as long as that helps.
/// </summary>
internal static class NameDesign
{
    /// <summary>More names than this are judged by so many of them, evenly taken.</summary>
    private const int MostJudged = 240;

    // Rounds of exchanges: each round helps less than the one before, and on a long list it has to end. Our choice.
    private const int MostExchanges = 20;

    /// <summary>How many first names are tried.</summary>
    private const int MostStarts = 12;

    /// <param name="sums">Lengths that may be read, and by which the choice is judged.</param>
    /// <returns>Places in <paramref name="sums"/>, the most telling first.</returns>
    public static ImmutableArray<int> Choose(WidthModel model, IReadOnlyList<WidthSum> sums, int count)
    {
        int[] judged = sums.Count <= MostJudged
            ? [.. Enumerable.Range(0, sums.Count)]
            : [.. Enumerable.Range(0, MostJudged).Select(i => (int)((long)i * sums.Count / MostJudged))];
        var criterion = new Criterion(model, [.. judged.Select(i => sums[i])]);
        return [.. Best(criterion, judged.Length, Math.Min(count, judged.Length)).Select(i => judged[i])];
    }

    private static List<int> Best(Criterion criterion, int all, int count)
    {
        if (count == 0)
        {
            return [];
        }

        var firsts = criterion.Left([]).Select((left, i) => (Left: left, At: i)).OrderBy(p => p.Left).ThenBy(p => p.At).Take(MostStarts);
        return firsts.Select(f => From(criterion, f.At, count)).MinBy(c => c.Left).Chosen;
    }

    private static (List<int> Chosen, double Left) From(Criterion criterion, int first, int count)
    {
        List<int> chosen = [first];
        double best = double.PositiveInfinity;
        while (chosen.Count < count)
        {
            var (at, left) = Least(criterion, chosen);
            chosen.Add(at);
            best = left;
        }

        bool isBetter = true;
        for (int round = 0; round < MostExchanges && isBetter; round++)
        {
            isBetter = false;
            for (int k = 0; k < chosen.Count; k++)
            {
                var (other, now) = Least(criterion, [.. chosen.Where((_, i) => i != k)]);
                if (now < best * (1 - 1e-9))
                {
                    (chosen[k], best, isBetter) = (other, now, true);
                }
            }
        }

        return (chosen, best);
    }

    private static (int At, double Left) Least(Criterion criterion, List<int> others)
    {
        double[] left = criterion.Left(others);
        int at = Enumerable.Range(0, left.Length).Except(others).MinBy(i => left[i]);
        return (at, left[at]);
    }

    /// <summary>The mean variance that is left after reading some, over the hypotheses as they weigh before anything is read.</summary>
    internal sealed class Criterion
    {
        private readonly List<(double[,] Covariance, double Weight)> _parts = [];
        private readonly double[] _noise;

        public Criterion(WidthModel model, ImmutableArray<WidthSum> sums)
        {
            double[] means = new double[sums.Length];
            foreach (var (hypothesis, weight) in model.Hypotheses().Where(h => h.Hypothesis.IsPlain))
            {
                var seen = sums.Select(hypothesis.See).ToList();
                double[,] covariance = new double[seen.Count, seen.Count];
                for (int i = 0; i < seen.Count; i++)
                {
                    means[i] += weight * seen[i].MeanMm;
                    for (int j = 0; j <= i; j++)
                    {
                        covariance[i, j] = covariance[j, i] = seen[i].Covariance(seen[j]);
                    }
                }

                _parts.Add((covariance, weight));
            }

            double all = _parts.Sum(p => p.Weight);
            _parts = [.. _parts.Select(p => (p.Covariance, p.Weight / all))];
            _noise = [.. means.Select(m => (model.ReadingErrorMm * model.ReadingErrorMm) + Math.Pow(model.FeedPart * m / all, 2))];
        }

        public double Of(IReadOnlyList<int> read) => Left([.. read.SkipLast(1)])[read[^1]];

        /// <summary>What is left after reading those and one more, for each one more.</summary>
        public double[] Left(IReadOnlyList<int> read)
        {
            int n = _noise.Length;
            double[] sums = new double[n];
            foreach (var (covariance, weight) in _parts)
            {
                double[,] left = (double[,])covariance.Clone();
                foreach (int at in read)
                {
                    TakeAway(left, at);
                }

                double trace = Enumerable.Range(0, n).Sum(i => left[i, i]);
                for (int j = 0; j < n; j++)
                {
                    double squares = 0;
                    for (int i = 0; i < n; i++)
                    {
                        squares += left[j, i] * left[j, i];
                    }

                    sums[j] += weight * (trace - (squares / (left[j, j] + _noise[j]))) / n;
                }
            }

            return sums;
        }

        /// <summary>What one more reading leaves of a covariance: an update of rank one.</summary>
        private void TakeAway(double[,] covariance, int at)
        {
            int n = _noise.Length;
            double open = covariance[at, at] + _noise[at];
            double[] row = new double[n];
            for (int i = 0; i < n; i++)
            {
                row[i] = covariance[at, i];
            }

            for (int i = 0; i < n; i++)
            {
                double by = row[i] / open;
                for (int j = 0; j < n; j++)
                {
                    covariance[i, j] -= by * row[j];
                }
            }
        }
    }
}
