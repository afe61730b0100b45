using NameBand.Garment;
using Xunit;

namespace NameBand.Tests.Garment;

public sealed class GarmentMiddlesTests
{
    private static readonly HemPlan Closed = Sample.Hem(Sample.Job.WithHem(4000));

    [Theory]
    [InlineData(100, 100, true, 1900, false)]
    [InlineData(3900, 100, false, 1900, true)]
    [InlineData(1900, 1900, true, 100, false)]
    [InlineData(2100, 1900, false, 100, true)]
    [InlineData(0, 0, true, 2000, false)]
    public void Unsaid_the_ends_meet_at_centre_back(double atMm, double fromBackMm, bool rightOfBack, double fromFrontMm, bool rightOfFront)
    {
        var middles = GarmentMiddles.On(Closed, 4000);
        Assert.Equal(new FromMiddle(fromBackMm, rightOfBack), middles.FromBack(atMm));
        Assert.Equal(new FromMiddle(fromFrontMm, rightOfFront), middles.FromFront(atMm));
    }

    [Fact]
    public void One_that_is_said_has_the_other_opposite()
    {
        var middles = GarmentMiddles.On(Closed with { CentreFrontMm = 3000 }, 4000);
        Assert.Equal(1000, middles.BackMm);
        Assert.Equal(3000, GarmentMiddles.On(Closed with { CentreBackMm = 1000 }, 4000).FrontMm);
    }

    [Fact]
    public void Both_can_be_said_where_the_garment_is_not_even()
    {
        var middles = GarmentMiddles.On(Closed with { CentreFrontMm = 500, CentreBackMm = 2300 }, 4000);
        Assert.Equal((500, 2300), (middles.FrontMm, middles.BackMm));
    }

    [Fact]
    public void On_a_shorter_round_they_lie_in_proportion() =>
        Assert.Equal(1500, GarmentMiddles.On(Closed with { CentreFrontMm = 2000 }, 3000).FrontMm);

    [Fact]
    public void An_edge_with_two_ends_has_only_what_is_said()
    {
        var open = Sample.Hem(Sample.Job.WithHem(4000, closed: false));
        Assert.Null(GarmentMiddles.On(open, 4000).FromFront(10));
        Assert.Null(GarmentMiddles.On(open, 4000).FromBack(10));

        // No way round: from the left end to the right of the middle is far.
        Assert.Equal(new FromMiddle(2900, true), GarmentMiddles.On(open with { CentreFrontMm = 1000 }, 4000).FromFront(3900));
    }

    [Fact]
    public void A_middle_beyond_the_hem_is_refused()
    {
        var job = Sample.Job with { Layout = Sample.Job.Layout with { CentreBack = Common.Length.FromMm(5000) } };
        var problem = Assert.Single(HemPlanner.Plan(job).Problems);
        Assert.Equal("hem.centreBack", problem.Where.Key);
    }
}
