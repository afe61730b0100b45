using NameBand.Choosing;
using NameBand.Cloth;
using NameBand.Common;
using NameBand.Layout.Planning;
using Xunit;

namespace NameBand.Tests.ChoosingRoom;

/// <summary>What is tried of what shows on the garment.</summary>
public class VisibleStepsTests
{
    /// <summary>Strips of 50.8 mm with 17.4 mm to sew on: three lie side by side in 150 mm, and not four.</summary>
    [Theory]
    [InlineData(63, 1, new[] { 1, 2, 3 })]
    [InlineData(150, 1, new[] { 1, 2, 3 })]
    [InlineData(203, 1, new[] { 1, 2, 3, 4 })]
    [InlineData(203, 2, new[] { 1, 2, 3 })]
    [InlineData(260, 1, new[] { 1, 2, 3, 4, 5 })]
    public void A_round_is_cut_into_no_more_pieces_than_fill_the_lanes_of_the_field(double acrossMm, int rounds, int[] pieces)
    {
        var job = Sample.Job.WithHeight(8).WithRounds(rounds);
        job = job with { Hoop = job.Hoop with { Across = Length.FromMm(acrossMm) } };
        var plan = LayoutPlanner.Plan(
            job, Sample.Hem(job), Sample.Lettered(Sample.RandomWidths(1, 30 * rounds)), FabricTable.Find("quilting cotton")!).Value!;

        Assert.Equal(17.4, plan.Hem.Strip.SewingZoneMm, 1e-9);
        Assert.Equal(pieces, VisibleSteps.Pieces(plan).Order());
    }
}
