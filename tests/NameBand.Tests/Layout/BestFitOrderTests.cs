using NameBand.Cloth;
using NameBand.Job;
using NameBand.Layout;
using NameBand.Lettering;
using Xunit;

namespace NameBand.Tests.Layout;

public class BestFitOrderTests
{
    private static readonly Fabric Cotton = FabricTable.Find("quilting cotton")!;

    private static StripPlan Lay(BandJob job, LetteredList names) => LayoutPlanner.Plan(job, Sample.Hem(job), names, Cotton).Value!;

    private static BandJob BestFit(BandJob job) => job with { Lettering = job.Lettering with { Order = NameOrder.BestFit } };

    [Theory]
    [InlineData(1, 30)]
    [InlineData(2, 60)]
    [InlineData(3, 90)]
    public void Every_name_is_there_once_and_the_segments_are_no_more_than_in_listed_order(int rounds, int count)
    {
        for (int seed = 0; seed < 6; seed++)
        {
            var list = Sample.Lettered(Sample.RandomWidths(seed, count));
            var job = Sample.Job.WithRounds(rounds).WithHeight(8);
            var listed = Lay(job, list);
            var best = Lay(BestFit(job), list);
            Assert.Equal(
                list.Names.Select(n => n.Name.Text).Order(StringComparer.Ordinal),
                best.Rounds.SelectMany(r => r.Names).Select(n => n.Lettered.Name.Text).Order(StringComparer.Ordinal));
            int segments = best.Rounds.Sum(r => r.Segments.Length);
            Assert.Equal(best.BestFit!.Hoopings, segments);
            Assert.True(best.BestFit.Bound <= segments);
            if (listed.MatchesHem)
            {
                Assert.True(best.MatchesHem);
                Assert.True(segments <= listed.Rounds.Sum(r => r.Segments.Length));
            }
        }
    }

    [Fact]
    public void On_one_round_the_number_is_proven()
    {
        for (int seed = 0; seed < 10; seed++)
        {
            var plan = Lay(BestFit(Sample.Job.WithHeight(9)), Sample.Lettered(Sample.RandomWidths(seed, 34)));
            Assert.True(plan.BestFit!.IsProven);
        }
    }

    [Fact]
    public void Rounds_as_needed_are_filled_and_the_last_keeps_the_gap()
    {
        var plan = Lay(BestFit(Sample.Job.WithRounds(null).WithHeight(10)), Sample.Lettered(Sample.RandomWidths(3, 80)));
        Assert.True(plan.MatchesHem);
        Assert.Equal(80, plan.NameCount);
        Assert.Equal(plan.Rounds[^2].GapMm, plan.Rounds[^1].GapMm, 9);
    }

    [Fact]
    public void The_same_list_gives_the_same_order_every_time()
    {
        var list = Sample.Lettered(Sample.RandomWidths(11, 120));
        var job = BestFit(Sample.Job.WithRounds(3).WithHeight(8));
        string Order() => string.Join('|', Lay(job, list).Rounds.SelectMany(r => r.Names).Select(n => n.Lettered.Name.Text));
        Assert.Equal(Order(), Order());
    }
}
