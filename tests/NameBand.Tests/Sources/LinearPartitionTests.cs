using NameBand.Layout;
using Xunit;

namespace NameBand.Tests.Sources;

/// <summary>Dividing a row over rounds against the linear partition problem.</summary>
public class LinearPartitionTests
{
    /// <summary>100, 200 … 900 into three ranges: the largest sum is at least 1700. Source: S. Skiena, The Algorithm Design
    /// Manual, his worked example.</summary>
    [Fact]
    public void The_textbook_example()
    {
        double[] books = [100, 200, 300, 400, 500, 600, 700, 800, 900];
        var counts = RoundDivider.Divide(books, [0, 0, 0]);
        Assert.Equal<int>([5, 2, 2], counts);
        Assert.Equal(1700, RoundDivider.LargestExcess(books, [0, 0, 0], counts));
    }

    /// <summary>Against the dynamic programme of the same chapter, on random rows and rounds of unequal length.</summary>
    [Fact]
    public void No_division_has_a_smaller_largest_excess()
    {
        for (int seed = 0; seed < 300; seed++)
        {
            var random = new Random(seed);
            double[] needs = [.. Enumerable.Range(0, random.Next(1, 14)).Select(_ => 10 + (random.NextDouble() * 90))];
            double[] rounds = [.. Enumerable.Range(0, random.Next(1, 5)).Select(k => 300 - (k * random.NextDouble() * 60))];
            var counts = RoundDivider.Divide(needs, rounds);
            Assert.Equal(needs.Length, counts.Sum());
            Assert.Equal(Least(needs, rounds, [.. rounds.Select(_ => 1.0)]), RoundDivider.LargestExcess(needs, rounds, counts), 6);
        }
    }

    /// <summary>The same where each round's excess is held against its length, short rounds among long ones.</summary>
    [Fact]
    public void No_division_has_a_smaller_largest_excess_for_its_length()
    {
        for (int seed = 0; seed < 300; seed++)
        {
            var random = new Random(seed);
            double[] needs = [.. Enumerable.Range(0, random.Next(1, 14)).Select(_ => 10 + (random.NextDouble() * 90))];
            double[] rounds = [.. Enumerable.Range(0, random.Next(1, 5)).Select(_ => 100 + (random.NextDouble() * 400))];
            double[] weights = [.. rounds.Select(r => r / rounds.Max())];
            Assert.Equal(weights, RoundDivider.ByLength(rounds));
            var counts = RoundDivider.Divide(needs, rounds, weights: weights);
            Assert.Equal(needs.Length, counts.Sum());
            Assert.Equal(Least(needs, rounds, weights), RoundDivider.LargestExcess(needs, rounds, counts, weights), 6);
        }
    }

    private static double Least(double[] needs, double[] rounds, double[] weights)
    {
        double[] best = [double.NegativeInfinity, .. Enumerable.Repeat(double.PositiveInfinity, needs.Length)];
        foreach (var (round, weight) in rounds.Zip(weights))
        {
            double[] next = [.. Enumerable.Repeat(double.PositiveInfinity, needs.Length + 1)];
            for (int to = 0; to <= needs.Length; to++)
            {
                for (int from = 0; from <= to; from++)
                {
                    next[to] = Math.Min(next[to], Math.Max(best[from], (needs[from..to].Sum() - round) / weight));
                }
            }

            best = next;
        }

        return best[^1];
    }
}
