using System.Collections.Immutable;
using NameBand.Common;

namespace NameBand.Layout;

/// <summary>
/// Divides a row of names, in their order, over rounds so that the fullest round is as little full as can be:
/// the largest excess of need over length (negative where there is room) is the least possible.
/// </summary>
internal static class RoundDivider
{
    /// <summary>
    /// Number of names in each round. Every entry of <paramref name="needsMm"/> is what one name takes, its gap
    /// included; <paramref name="roundsMm"/> is what each round offers.
    /// </summary>
    /// <param name="apart">Which names may share a round; null: all may.</param>
    /// <param name="weights">
    /// How much of the room left over each is to have beside the others, from just above 0 to 1; null: all as much. Rounds, and parts of
    /// one, get like gaps where each has as much as it is long.
    /// </param>
    public static ImmutableArray<int> Divide(
        IReadOnlyList<double> needsMm, IReadOnlyList<double> roundsMm, GroupSeparation? apart = null, IReadOnlyList<double>? weights = null)
    {
        weights ??= [.. roundsMm.Select(_ => 1.0)];
        double least = weights.Min();
        double most = (needsMm.Sum() - roundsMm.Min()) / least;
        var best = Fill(needsMm, roundsMm, most, apart, weights)
            ?? throw new InvalidOperationException("One round can always be made long enough for all names.");
        double high = LargestExcess(needsMm, roundsMm, best, weights);
        double low = -roundsMm.Max() / least;
        for (int i = 0; i < 60 && high - low > Tolerance.Rounding; i++)
        {
            double middle = (low + high) / 2;
            if (Fill(needsMm, roundsMm, middle, apart, weights) is { } filled)
            {
                best = filled;
                high = Math.Min(middle, LargestExcess(needsMm, roundsMm, filled, weights));
            }
            else
            {
                low = middle;
            }
        }

        return best;
    }

    /// <summary>Weights by which rounds of any length come out with like gaps.</summary>
    public static ImmutableArray<double> ByLength(IReadOnlyList<double> lengthsMm)
    {
        const double least = 0.001; // Of the longest: what has no length worth speaking of has no room for a name either.
        double longest = lengthsMm.DefaultIfEmpty(0).Max();
        return [.. lengthsMm.Select(mm => longest > 0 ? Math.Max(mm / longest, least) : 1)];
    }

    /// <summary>Whether the names fit the rounds in their order, none running over.</summary>
    public static bool Fits(IReadOnlyList<double> needsMm, IReadOnlyList<double> roundsMm, GroupSeparation? apart = null) =>
        Fill(needsMm, roundsMm, 0, apart) is not null;

    /// <summary>
    /// Fills round after round, each as full as it goes, until the names are used up. What is left when
    /// <paramref name="most"/> rounds are full goes on the last one, which then runs over.
    /// </summary>
    public static ImmutableArray<int> FillAsNeeded(
        IReadOnlyList<double> needsMm, Func<int, double> roundMm, int most, GroupSeparation? apart = null)
    {
        var counts = ImmutableArray.CreateBuilder<int>();
        int next = 0;
        double longest = Enumerable.Range(1, most).Select(roundMm).DefaultIfEmpty(0).Max();
        while (next < needsMm.Count)
        {
            bool last = counts.Count == most - 1;
            int until = apart?.Until(counts, next) ?? needsMm.Count;
            int fitting = Take(needsMm, next, until, roundMm(counts.Count + 1) + Tolerance.Rounding);
            int taken = last ? needsMm.Count - next
                : needsMm[next] <= longest + Tolerance.Rounding ? fitting : Math.Max(until > next ? 1 : 0, fitting);
            counts.Add(taken);
            next += taken;
        }

        return counts.ToImmutable();
    }

    internal static double LargestExcess(
        IReadOnlyList<double> needsMm, IReadOnlyList<double> roundsMm, ImmutableArray<int> counts, IReadOnlyList<double>? weights = null)
    {
        double largest = double.NegativeInfinity;
        int next = 0;
        for (int k = 0; k < counts.Length; k++)
        {
            double need = 0;
            for (int i = 0; i < counts[k]; i++)
            {
                need += needsMm[next++];
            }

            largest = Math.Max(largest, (need - roundsMm[k]) / (weights?[k] ?? 1));
        }

        return largest;
    }

    private static ImmutableArray<int>? Fill(
        IReadOnlyList<double> needsMm, IReadOnlyList<double> roundsMm, double excessMm, GroupSeparation? apart,
        IReadOnlyList<double>? weights = null)
    {
        var counts = new List<int>(roundsMm.Count);
        int next = 0;
        for (int k = 0; k < roundsMm.Count; k++)
        {
            counts.Add(Take(needsMm, next, apart?.Until(counts, next) ?? needsMm.Count,
                roundsMm[k] + (excessMm * (weights?[k] ?? 1)) + Tolerance.Rounding));
            next += counts[k];
        }

        return next == needsMm.Count ? [.. counts] : null;
    }

    private static int Take(IReadOnlyList<double> needsMm, int first, int until, double roomMm)
    {
        double need = 0;
        int taken = 0;
        while (first + taken < until && need + needsMm[first + taken] <= roomMm)
        {
            need += needsMm[first + taken];
            taken++;
        }

        return taken;
    }
}
