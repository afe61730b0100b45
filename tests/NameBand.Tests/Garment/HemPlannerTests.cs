using NameBand.Common;
using NameBand.Garment;
using NameBand.Job;
using Xunit;

namespace NameBand.Tests.Garment;

public class HemPlannerTests
{
    private static BandJob Skirt(double turn, double waistMm, double lengthMm, double takenUpMm = 0) => Sample.Job with
    {
        Hem = Sample.Job.Hem with
        {
            Lengths = [],
            Turn = null,
            Skirt = new SkirtSettings(turn, Length.FromMm(waistMm), Length.FromMm(lengthMm), Length.FromMm(takenUpMm)),
        },
    };

    [Fact]
    public void A_round_above_the_hem_is_shorter_by_the_angle_times_its_height()
    {
        var hem = HemPlanner.Plan(Skirt(0.75, 700, 600, 20).WithRounds(2)).Value!;
        double theta = 1.5 * Math.PI;
        Assert.Equal(700 + (theta * 600) - 20, hem.EdgeLengthMm, 9);
        Assert.Equal(hem.EdgeLengthMm - (theta * 3), hem.RoundMm(1), 9);
        Assert.Equal(hem.RoundMm(1) - (theta * (25.4 + 12.7)), hem.RoundMm(2), 9);
        Assert.Equal(4.712, hem.RoundMm(1) - (hem with { LiftMm = 4 }).RoundMm(1), 3);
    }

    [Fact]
    public void A_measured_hem_without_a_turn_is_taken_as_it_is_and_says_so()
    {
        var job = Sample.Job with { Hem = Sample.Job.Hem with { Turn = null } };
        var result = HemPlanner.Plan(job);
        Assert.Equal(3660, result.Value!.RoundMm(1));
        Assert.Contains(result.Problems, p => p.Where.Key == "hem.circlePart" && p.Severity == Severity.Note);
    }

    [Fact]
    public void Lengths_measured_round_by_round_are_used_as_measured()
    {
        var job = (Sample.Job with { Hem = Sample.Job.Hem with { Lengths = [Length.FromMm(3600), Length.FromMm(3420)], Turn = 0.75 } })
            .WithRounds(2);
        var hem = HemPlanner.Plan(job).Value!;
        Assert.Equal([3600, 3420], [hem.RoundMm(1), hem.RoundMm(2)]);
        Assert.Equal(1.5 * Math.PI * 25.4, hem.UpperEdgeShorterMm, 9);
    }

    [Fact]
    public void A_two_inch_strip_pressed_in_half_an_inch_at_both_edges_is_one_inch_wide()
    {
        var strip = Sample.Hem(Sample.Job).Strip;
        Assert.Equal(25.4, strip.FinishedWidthMm, 9);
        Assert.Equal(17.4, strip.SewingZoneMm, 9);
    }

    [Theory]
    [InlineData(GarmentSide.Outside, Reader.Viewer, RunDirection.CounterClockwise)]
    [InlineData(GarmentSide.Outside, Reader.Wearer, RunDirection.Clockwise)]
    [InlineData(GarmentSide.Inside, Reader.Viewer, RunDirection.Clockwise)]
    [InlineData(GarmentSide.Inside, Reader.Wearer, RunDirection.CounterClockwise)]
    public void Names_run_the_way_their_reader_reads(GarmentSide side, Reader reader, RunDirection runs) =>
        Assert.Equal(runs, HemPlanner.Runs(side, reader));

    [Theory]
    [InlineData(
        GarmentSide.Outside, Reader.Viewer, true,
        "on the outside, counter-clockwise seen from above (at the front towards the wearer's left); upright for someone who looks at the outside")]
    [InlineData(
        GarmentSide.Inside, Reader.Viewer, true,
        "on the inside, clockwise seen from above (at the front towards the wearer's right); upright for someone who looks at the inside")]
    [InlineData(
        GarmentSide.Outside, Reader.Wearer, false,
        "along the edge from right to left, seen from the outside; upright for the wearer, with the tops of the letters towards the hem")]
    public void The_way_is_said_in_words(GarmentSide side, Reader reader, bool closed, string words)
    {
        var job = Sample.Job.WithHem(3660, closed);
        Assert.Equal(words, Sample.Hem(job with { Strip = job.Strip with { Side = side, ReadBy = reader } }).RunsInWords);
    }

    [Fact]
    public void Seams_that_eat_the_hem_and_rounds_past_the_middle_are_refused_with_a_mend()
    {
        var eaten = HemPlanner.Plan(Skirt(0.25, 100, 100, 5000));
        Assert.False(eaten.IsUsable);
        var high = HemPlanner.Plan(Skirt(1, 100, 100).WithRounds(9));
        Assert.False(high.IsUsable);
        Assert.All(eaten.Problems.Concat(high.Problems), p => Assert.NotEmpty(p.Mend.English));
    }

    [Fact]
    public void Rounds_that_would_lie_over_each_other_need_a_person()
    {
        var job = (Sample.Job with { Strip = Sample.Job.Strip with { RoundStep = Length.FromMm(20) } }).WithRounds(2);
        Assert.Contains(HemPlanner.Plan(job).Problems, p => p.Severity == Severity.NeedsPerson && p.Where.Key == "strip.roundStep");
    }
}
