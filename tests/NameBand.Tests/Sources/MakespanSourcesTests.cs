using NameBand.Estimating;
using Xunit;

namespace NameBand.Tests.Sources;

/// <summary>Dealing work out to machines, against instances whose best answer is known.</summary>
public class MakespanSourcesTests
{
    private static EveningPlan Plan(int machines, params double[] minutes) => EveningPlanner.Plan(
        [.. minutes.Select((m, i) => new HoopingTime(i + 1, m))],
        [.. Enumerable.Range(1, machines).Select(m => new SewingMachine("machine " + m))], null);

    /// <summary>
    /// R. L. Graham, Bounds on multiprocessing timing anomalies, SIAM J. Appl. Math. 17 (1969), from memory: with m machines and
    /// jobs 2m−1, 2m−1, 2m−2, 2m−2, …, m+1, m+1, m, m, m the best is 3m while longest-first gives 4m − 1.
    /// </summary>
    [Theory]
    [InlineData(2)]
    [InlineData(3)]
    [InlineData(4)]
    [InlineData(5)]
    public void The_worst_case_of_longest_first_is_still_done_in_the_least_time(int machines)
    {
        var jobs = Enumerable.Range(machines + 1, machines - 1).SelectMany(j => new double[] { j, j })
            .Concat([machines, machines, machines]);
        var plan = Plan(machines, [.. jobs]);
        Assert.Equal(3 * machines, plan.Minutes, 9);
        Assert.Equal(3 * machines, plan.LeastMinutes, 9);
        Assert.True(plan.IsProvenBest);
    }

    /// <summary>Computed: a perfect partition exists by construction (1…n with sum divisible by the machines).</summary>
    [Theory]
    [InlineData(12, 3, 26)]
    [InlineData(20, 4, 52.5)]
    [InlineData(24, 5, 60)]
    public void Whole_numbers_are_shared_as_evenly_as_their_sum_allows(int jobs, int machines, double even)
    {
        var plan = Plan(machines, [.. Enumerable.Range(1, jobs).Select(i => (double)i)]);
        Assert.Equal(Math.Ceiling(even), plan.Minutes, 9);
        Assert.Equal(even, plan.LeastMinutes, 9);
    }

    /// <summary>Computed: three equal jobs on two machines take two of them, though the even share is one and a half.</summary>
    [Fact]
    public void A_bound_that_cannot_be_reached_is_raised() =>
        Assert.Equal((2.0, 2.0), (Plan(2, 1, 1, 1).Minutes, Plan(2, 1, 1, 1).LeastMinutes));
}
