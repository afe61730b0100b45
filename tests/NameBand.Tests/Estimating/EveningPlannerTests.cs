using CsCheck;
using NameBand.Estimating;
using Xunit;

namespace NameBand.Tests.Estimating;

public class EveningPlannerTests
{
    private static EveningPlan Plan(double[] minutes, int machines, double? evening) => EveningPlanner.Plan(
        [.. minutes.Select((m, i) => new HoopingTime(i + 1, m))],
        [.. Enumerable.Range(1, machines).Select(m => new SewingMachine("machine " + m))], evening);

    [Fact]
    public void Hoopings_stay_in_their_order_where_that_takes_no_more_evenings()
    {
        var plan = Plan([30, 30, 30, 40, 40, 40], 1, 120);
        Assert.Equal((2, 2, true), (plan.Evenings, plan.LeastEvenings, plan.IsProvenBest));
        Assert.Equal([[1, 2, 3], [4, 5, 6]], plan.Sittings.Select(s => s.Hoopings.ToArray()));
    }

    /// <summary>Two evenings would do for these if the first went with the third: the cloth would be hooped here and there.</summary>
    [Fact]
    public void Neighbours_stay_together_though_an_evening_could_be_saved()
    {
        var plan = Plan([70, 70, 50, 50], 1, 120);
        Assert.Equal([[1], [2, 3], [4]], plan.Sittings.Select(s => s.Hoopings.ToArray()));
        Assert.Equal((2, false), (plan.LeastEvenings, plan.IsProvenBest));
    }

    /// <summary>4 h of cutting before, hoopings of 30 and 40 min, and 3 h of finishing, in evenings of 2 h.</summary>
    [Fact]
    public void All_the_work_is_dealt_out_and_other_work_is_laid_down_and_taken_up_again()
    {
        var plan = EveningPlanner.Plan(
            [new HoopingTime(1, 30), new HoopingTime(2, 40), new HoopingTime(3, 30, 10)], [new SewingMachine("")], 120,
            new OtherWork([new OtherTask("cutting", 100)], [new OtherTask("pressing", 50), new OtherTask("sewing down", 130)]));
        Assert.Equal(4, plan.Evenings);
        Assert.Equal([100.0, 120, 120, 50], plan.Sittings.Select(s => s.Minutes), (a, b) => Math.Abs(a - b) < 1e-9);
        Assert.Equal([[], [1, 2, 3], [], []], plan.Sittings.Select(s => s.Hoopings.ToArray()));
    }

    [Fact]
    public void In_one_go_the_other_work_is_a_sitting_where_there_is_any()
    {
        HoopingTime[] hoopings = [new HoopingTime(1, 30), new HoopingTime(2, 20)];
        var alone = EveningPlanner.Plan(hoopings, [new SewingMachine("")], null);
        Assert.Equal([50.0], alone.Sittings.Select(s => s.Minutes));
        var whole = EveningPlanner.Plan(
            hoopings, [new SewingMachine("")], null, new OtherWork([new OtherTask("cutting", 15)], [new OtherTask("pressing", 10)]));
        Assert.Equal([50.0, 25], whole.Sittings.Select(s => s.Minutes));
        Assert.Equal([[1, 2], []], whole.Sittings.Select(s => s.Hoopings.ToArray()));
    }

    /// <summary>A machine of half the pace takes 20 min for what another sews in 10; hands take 15 at either.</summary>
    [Fact]
    public void Hands_are_not_slower_at_a_slower_machine()
    {
        var hooping = new HoopingTime(1, 10, 15);
        Assert.Equal(35, EveningPlanner.Plan([hooping], [new SewingMachine("slow", 2)], 60).Sittings.Single().Minutes, 9);
        Assert.Equal(35, EveningPlanner.Plan([hooping], [new SewingMachine("slow", 2)], null).Minutes, 9);
        var beside = EveningPlanner.Plan(
            [.. Enumerable.Range(1, 12).Select(i => new HoopingTime(i, 10, 15))],
            [new SewingMachine("quick"), new SewingMachine("slow", 2)], null);
        Assert.Equal(175, beside.Minutes, 6);
        Assert.True(beside.LeastMinutes <= 175);
    }

    [Fact]
    public void Each_machine_has_one_part_of_the_cloth_in_an_evening() => Gen.Select(Gen.Double[5, 50].Array[1, 40], Gen.Int[1, 3]).Sample(
        (minutes, machines) =>
        {
            var plan = Plan(minutes, machines, 90);
            int[] order = [.. plan.Sittings.SelectMany(s => s.Hoopings)];
            Assert.Equal(Enumerable.Range(1, minutes.Length), order);
        },
        iter: 100, seed: "0000KgvJX7r2");

    [Fact]
    public void A_hooping_longer_than_an_evening_has_one_for_itself_and_is_named()
    {
        var plan = Plan([30, 150, 30], 1, 60);
        Assert.Equal([2], plan.TooLong.AsEnumerable());
        Assert.Equal(2, plan.Evenings);
        Assert.Equal([1, 3], plan.Sittings[0].Hoopings.AsEnumerable());
    }

    [Fact]
    public void A_slower_machine_gets_less()
    {
        var plan = EveningPlanner.Plan(
            [.. Enumerable.Range(1, 30).Select(i => new HoopingTime(i, 10))], [new SewingMachine("quick"), new SewingMachine("slow", 2)],
            null);
        Assert.Equal(200, plan.Minutes, 6);
        Assert.True(plan.IsProvenBest);
        Assert.Equal(20, plan.Sittings.Single(s => s.Machine == "quick").Hoopings.Length);
    }

    [Fact]
    public void Nothing_to_sew_takes_no_evening()
    {
        Assert.Equal(0, Plan([], 2, 120).Evenings);
        Assert.Equal(0, Plan([], 2, null).Minutes);
    }

    [Fact]
    public void Every_hooping_is_sewn_once_within_the_evenings_and_never_under_the_bound() =>
        Gen.Select(Gen.Double[1, 60].Array[1, 40], Gen.Int[1, 3], Gen.Bool).Sample(
            (minutes, machines, byEvening) =>
            {
                double? evening = byEvening ? 90 : null;
                var plan = Plan(minutes, machines, evening);
                Assert.Equal(Enumerable.Range(1, minutes.Length), plan.Sittings.SelectMany(s => s.Hoopings).Order());
                Assert.All(plan.Sittings, s => Assert.Equal(s.Hoopings.Sum(h => minutes[h - 1]), s.Minutes, 1e-6));
                Assert.All(plan.Sittings, s => Assert.True(evening is null || s.Minutes <= evening + 1e-6));
                Assert.True(plan.Minutes >= plan.LeastMinutes - 1e-6);
                Assert.True(plan.Evenings >= plan.LeastEvenings);
            },
            iter: 150, seed: "0000KgvJX7r2");
}
