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

    [Fact]
    public void They_are_dealt_out_anew_where_it_saves_an_evening()
    {
        var plan = Plan([70, 70, 50, 50], 1, 120);
        Assert.Equal(2, plan.Evenings);
        Assert.All(plan.Sittings, s => Assert.Equal(120, s.Minutes, 9));
    }

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
            [.. Enumerable.Range(1, 30).Select(i => new HoopingTime(i, 10))], [new SewingMachine("quick"), new SewingMachine("slow", 2)], null);
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
                Assert.All(plan.Sittings, s => Assert.Equal(s.Hoopings.Sum(h => minutes[h - 1]), s.Minutes, 6));
                Assert.All(plan.Sittings, s => Assert.True(evening is null || s.Minutes <= evening + 1e-6));
                Assert.True(plan.Minutes >= plan.LeastMinutes - 1e-6);
                Assert.True(plan.Evenings >= plan.LeastEvenings);
            },
            iter: 150, seed: "0000KgvJX7r2");
}
