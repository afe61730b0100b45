using MathNet.Numerics.Distributions;
using NameBand.Estimating;
using Xunit;

namespace NameBand.Tests.Estimating;

public class PaceLearningTests
{
    private const int Runs = 1000;

    /// <summary>Truth drawn from the prior itself: then the range must cover it as often as it says, whatever was timed.</summary>
    [Theory]
    [InlineData(0)]
    [InlineData(3)]
    [InlineData(12)]
    public void The_range_covers_the_truth_in_eight_cases_of_ten(int timed)
    {
        int covered = 0;
        for (int seed = 0; seed < Runs; seed++)
        {
            var random = new Random(seed);
            double error =
                InverseGamma.Sample(
                    random, PaceLearning.PriorShapeFactor, PaceLearning.PriorErrorMinutes * (PaceLearning.PriorShapeFactor - 1));
            double spread = PaceLearning.PriorSpreadPart * Math.Sqrt(error / PaceLearning.PriorErrorMinutes);
            covered += Covers(random, Normal.Sample(random, PaceLearning.PriorPaceFactor, spread), error, timed) ? 1 : 0;
        }

        // Of 1000 draws at 0.8 the standard deviation is 12.6; three of them either way.
        Assert.InRange(covered, 762, 838);
    }

    /// <summary>A made-up true pace: after some evenings the prior weighs little, and the range still covers as often as it says.</summary>
    [Theory]
    [InlineData(0.85, 25)]
    [InlineData(1.0, 25)]
    [InlineData(1.3, 25)]
    [InlineData(1.6, 60)]
    public void A_pace_of_ones_own_is_found(double pace, int timed)
    {
        int covered = Enumerable.Range(0, Runs).Count(seed => Covers(new Random(seed), pace, 0.15, timed));
        Assert.InRange(covered, 730, 900);
    }

    [Fact]
    public void The_range_narrows_and_moves_as_hoopings_are_timed()
    {
        var none = PaceLearning.Learn([], 300);
        var three = PaceLearning.Learn([.. Enumerable.Repeat(new TimedWork(10, 13), 3)], 300);
        var many = PaceLearning.Learn([.. Enumerable.Repeat(new TimedWork(10, 13), 20)], 300);
        Assert.Equal(none.Before, none.Now);
        Assert.Equal(300, none.Now.Likely, 9);
        Assert.True(none.Now.Likely < three.Now.Likely && three.Now.Likely < many.Now.Likely && many.Now.Likely < 390);
        Assert.True(Width(many) < Width(three) && Width(three) < Width(none));
        Assert.True(Width(many) < Width(none) / 3);
        Assert.Equal(1.3, many.PaceFactor, 1);
    }

    /// <summary>Computed: with the prior taken away the pace is that of weighted least squares, Σ took / Σ estimated.</summary>
    [Fact]
    public void With_much_timed_it_is_plain_weighted_least_squares()
    {
        TimedWork[] timed = [.. Enumerable.Range(1, 400).Select(i => new TimedWork(5 + (i % 7), (5 + (i % 7)) * (i % 2 == 0 ? 1.1 : 1.3)))];
        Assert.Equal(timed.Sum(t => t.TookMinutes) / timed.Sum(t => t.EstimatedMinutes), PaceLearning.Learn(timed, 10).PaceFactor, 3);
    }

    [Fact]
    public void Work_that_says_nothing_teaches_nothing() =>
        Assert.Equal(0, PaceLearning.Learn([new TimedWork(0, 10), new TimedWork(5, double.NaN)], 10).Timed);

    private static double Width(LearnedPace pace) => pace.Now.High - pace.Now.Low;

    private static bool Covers(Random random, double pace, double errorMinutes, int timed)
    {
        TimedWork Sew()
        {
            double estimated = 4 + (8 * random.NextDouble());
            return new TimedWork(estimated, Normal.Sample(random, pace * estimated, Math.Sqrt(errorMinutes * estimated)));
        }

        TimedWork[] logged = [.. Enumerable.Range(0, timed).Select(_ => Sew())];
        TimedWork[] left = [.. Enumerable.Range(0, 40).Select(_ => Sew())];
        var range = PaceLearning.Learn(logged, left.Sum(t => t.EstimatedMinutes)).Now;
        return left.Sum(t => t.TookMinutes) is var truth && truth >= range.Low && truth <= range.High;
    }
}
