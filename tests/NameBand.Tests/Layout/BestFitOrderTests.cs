using NameBand.Cloth;
using NameBand.Job;
using NameBand.Layout;
using NameBand.Layout.Planning;
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

    /// <summary>Three names that fill the field to a hair: whatever is rounded on the way, that two hoopings are needed must not
    /// be said.</summary>
    [Fact]
    public void What_is_said_to_be_needed_is_never_more_than_what_does()
    {
        for (int n = 2; n <= 6; n++)
        {
            const double Gap = 20;
            double width = (((150 * 0.99) + Gap) / n) - Gap - 1e-7;
            var job = BestFit(Sample.Job.WithHem(2000, closed: false).WithHeight(8));
            job = job with { Lettering = job.Lettering with { Gap = Common.Length.FromMm(Gap), Spread = false } };
            var plan = Lay(job, Sample.Lettered(Enumerable.Repeat((width - (2 * Cotton.PullCompensationMm)) / 8, n)));
            Assert.Equal(Gap, plan.BestFit!.GapMm, 6);
            Assert.Equal(n, plan.NameCount);
            Assert.Equal(1, plan.BestFit.Bound);
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
