using System.Collections.Immutable;
using NameBand.Cloth;
using NameBand.Estimating;
using NameBand.Job;
using NameBand.Layout.Planning;
using Xunit;

namespace NameBand.Tests.Estimating;

/// <summary>What the log will time of hands at each hooping is what the list of acts says of work at the hoop, and nothing else.</summary>
public class TimedHandsTests
{
    private const string Letters = "\"way\": \"machineLetters\", \"letters\": { \"sizes\": [\"9 mm\", \"7 mm\"] }";
    private const string Hooped = "\"way\": \"machineLetters\", \"letters\": { \"sizes\": [\"9 mm\"], \"hooped\": true }";

    [Theory]
    [InlineData("\"hoop\": { \"along\": \"140 mm\" }", true)]
    [InlineData("\"hoop\": { \"along\": \"140 mm\" }", false)]
    [InlineData("\"hoop\": { \"along\": \"140 mm\" }, \"marks\": \"drawn\"", true)]
    [InlineData("\"hoop\": { \"along\": \"140 mm\" }, \"marks\": \"paper\"", false)]
    [InlineData(
        "\"hoop\": { \"along\": \"140 mm\" }, \"hands\": { \"restAllowance\": 0.3, \"secondsPerSnip\": 20, "
        + "\"firstHoopingsMinutes\": 9 }", false)]
    [InlineData("\"hoop\": { \"along\": \"140 mm\" }, \"hands\": { \"tearAwayMinutesPerMetre\": 4 }", true)]
    [InlineData(Letters, true)]
    [InlineData(Letters, false)]
    [InlineData(Hooped, true)]
    [InlineData("\"way\": \"traced\"", true)]
    [InlineData("\"way\": \"traced\", \"traced\": { \"sewn\": \"byHand\" }", true)]
    public void They_come_to_the_acts_at_the_hoop(string more, bool cutsThread)
    {
        using var folder = new TemporaryFolder()
            .With("job.json", $$"""{ "format": 1, "lists": ["names.csv"], "hem": { "length": "900 mm", "turn": 0 }, {{more}} }""")
            .With("workshop.json", $$"""
                { "format": 1, "machines": [
                  { "name": "one", "takes": ["coordinates", "keys", "hands"], "cutsThread": {{(cutsThread ? "true" : "false")}} } ] }
                """)
            .With("names.csv", "Name\nOrla Penhale\nBram Sedgewick\nTuva Lind\nIlse Quill\nNoor Haddad\nJo Weir\n");

        var estimated = Bander.Hours(folder.FullPath);

        var estimate = estimated.Estimate;
        Assert.True(estimate is not null, string.Join("\n", estimated.Problems.Select(p => p.Mend.English)));
        double atTheHoop = estimate.HandWork.Where(r => r.IsAtTheHoop).Sum(r => r.Minutes.Likely);
        Assert.True(atTheHoop > 0);
        Assert.Equal(atTheHoop, Timed(estimate), 1e-6);
        Assert.True(!more.Contains("machineLetters", StringComparison.Ordinal) || estimate.Hoopings.Any(h => h.Snips > 0));
    }

    /// <summary>A path whose threads are not all cut is snipped at its hoop.</summary>
    [Fact]
    public void Threads_that_are_snipped_at_the_hoop_are_among_them()
    {
        var job = Sample.Job with { Hands = JobDefaults.Hands };
        var plan = LayoutPlanner.Plan(job, Sample.Hem(job), Sample.Lettered(Sample.RandomWidths(1, 30)), FabricTable.All[0]).Value!;
        ImmutableArray<HoopingFigures> measured =
            [.. plan.Hoopings.Select(h => new HoopingFigures(h.Number, 1000, 10, 2, 1, 5, 3, 4) { Snips = h.Number })];

        var estimate = Estimator.Make(job, plan, measured);

        double atTheHoop = estimate.HandWork.Where(r => r.IsAtTheHoop).Sum(r => r.Minutes.Likely);
        Assert.Equal(atTheHoop, Timed(estimate), 1e-6);
        var without = Estimator.Make(job, plan, [.. measured.Select(m => m with { Snips = 0 })]);
        double seconds = measured.Sum(m => m.Snips) * job.Hands.SecondsPerSnip * (1 + job.Hands.RestAllowance);
        Assert.Equal(seconds / 60, Timed(estimate) - Timed(without), 1e-6);
    }

    private static double Timed(Estimate estimate) => estimate.Hoopings.Sum(h => h.TimedHandMinutes);
}
