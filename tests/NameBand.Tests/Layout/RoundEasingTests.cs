using NameBand.Cloth;
using NameBand.Common;
using NameBand.Garment;
using NameBand.Job;
using NameBand.Layout;
using NameBand.Layout.Planning;
using Xunit;

namespace NameBand.Tests.Layout;

/// <summary>Whether a strip's upper edge can be eased, judged by what its gaps must take up.</summary>
public sealed class RoundEasingTests
{
    private static readonly Fabric Cotton = FabricTable.Find("quilting cotton")!;

    /// <summary>Thirty names of 104 mm on a round of 3638 mm: gaps of some 17 mm.</summary>
    private static StripPlan Tight(double turn, Func<LayoutSettings, LayoutSettings>? layout = null, double heightMm = 10)
    {
        var job = Sample.Job.WithHem(3652).WithHeight(heightMm) with { Layout = (layout ?? (l => l))(new LayoutSettings()) };
        job = job with { Hem = job.Hem with { Turn = turn } };
        return LayoutPlanner.Plan(job, Sample.Hem(job), Sample.Lettered(Enumerable.Repeat(10.4, 30)), Cotton).Value!;
    }

    [Theory]
    [InlineData(0.1, false, EaseVerdict.LiesFlat)]
    [InlineData(0.25, false, EaseVerdict.CanBeEased)]
    [InlineData(0.5, false, EaseVerdict.WantsShaping)]
    [InlineData(0.5, true, EaseVerdict.CanBeEased)]
    [InlineData(0.75, true, EaseVerdict.WantsShaping)]
    public void The_gaps_decide_and_the_bias_gives_more(double turn, bool isBias, EaseVerdict verdict)
    {
        var plan = Tight(turn, l => l with { IsBias = isBias });
        var round = plan.Rounds[0];
        var ease = Assert.Single(plan.Easing);
        Assert.Equal(2 * Math.PI * turn * 25.4, ease.ShorterMm, 9);
        Assert.Equal(ease.ShorterMm / (30 * round.GapMm), ease.GapsPart, 9);
        Assert.Equal(verdict, ease.Verdict);
    }

    /// <summary>The same strip and hem: only smaller letters, which leave wider gaps.</summary>
    [Fact]
    public void Wider_gaps_take_up_what_narrow_ones_cannot()
    {
        Assert.Equal(EaseVerdict.WantsShaping, Tight(0.75).Easing[0].Verdict);
        Assert.Equal(EaseVerdict.CanBeEased, Tight(0.75, heightMm: 6).Easing[0].Verdict);
    }

    [Fact]
    public void A_long_blank_eases_its_own_neighbours_and_not_the_whole_round()
    {
        var job = Sample.Job.WithHem(8000)
            .WithHeight(10) with
        {
            Lettering =
                Sample.Job.Lettering with { Spread = false, Height = Length.FromMm(10), Gap = Length.FromMm(10) }
        };
        job = job with { Hem = job.Hem with { Turn = 1 } };
        var ease = LayoutPlanner.Plan(job, Sample.Hem(job), Sample.Lettered(Enumerable.Repeat(10.4, 30)), Cotton).Value!.Easing[0];
        Assert.True(ease.ShorterMm / (8000 - (30 * 104)) < 0.10);
        double counted = (29 * 10) + (2 * 10);
        Assert.Equal(ease.Part * ((30 * 104.4) + counted) / counted, ease.GapsPart, 6);
        Assert.Equal(EaseVerdict.WantsShaping, ease.Verdict);
    }

    [Theory]
    [InlineData(0.13, EaseVerdict.CanBeEased)]
    [InlineData(0.12, EaseVerdict.WantsShaping)]
    public void The_job_may_say_what_its_cloth_gives(double limit, EaseVerdict verdict)
    {
        var ease = Tight(0.4, l => l with { GivenEaseLimitPart = limit }).Easing[0];
        Assert.InRange(ease.GapsPart, 0.12, 0.13);
        Assert.Equal(verdict, ease.Verdict);
    }

    /// <summary>The key of version 0.1: a part of the whole length, where it is written.</summary>
    [Fact]
    public void A_part_of_the_whole_length_that_is_written_still_holds() =>
        Assert.Equal(EaseVerdict.WantsShaping, Tight(0.25, l => l with { EasedPart = 0.0105 }).Easing[0].Verdict);

    [Fact]
    public void The_width_that_is_said_to_be_eased_can_be_eased()
    {
        var ease = Tight(0.75).Easing[0];
        double part = 2 * Math.PI * 0.75 * ease.WidestMm / (30 * ease.GapMm);
        Assert.Equal(0.10, part, 9);
    }
}
