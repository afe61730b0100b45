using NameBand.Cloth;
using NameBand.Common;
using NameBand.Estimating;
using NameBand.Stitching;
using Xunit;

namespace NameBand.Tests.Estimating;

public class HoopingMeterTests
{
    private static NeedleStep Step(NeedleAction action, double x) => new(action, StitchKind.None, new Point(x, 0));

    [Fact]
    public void Everything_on_the_path_is_counted_and_timed()
    {
        var path = new NeedlePath(
        [
            Step(NeedleAction.Jump, 0), Step(NeedleAction.Stitch, 0), Step(NeedleAction.Stitch, 2), Step(NeedleAction.Trim, 2),
            Step(NeedleAction.Stop, 2), Step(NeedleAction.Jump, 5), Step(NeedleAction.Jump, 9), Step(NeedleAction.Stitch, 9),
            Step(NeedleAction.Stitch, 12), Step(NeedleAction.End, 12),
        ]);
        var figures = HoopingMeter.Measure(3, path, FabricTable.All[0], Sample.Job.Machine);
        Assert.Equal((3, 4, 1, 1, 1), (figures.Number, figures.Stitches, figures.Jumps, figures.Trims, figures.Stops));
        Assert.Equal((path.Stitches, path.Jumps, path.Trims), (figures.Stitches, figures.Jumps, figures.Trims));
        double breaks = 4 / 1000.0 * 0.1 * 90 / 60;
        Assert.Equal((4 / 600.0) + ((1 + 7 + 40 + 60) / 60.0) + breaks, figures.MachineMinutes, 9);

        // Two stitches of 2 and 3 mm through 0.45 mm of cloth, two tails of 40 mm, and 7 mm of thread over the jumps.
        double both = 2 * (2 + 3 + 0.9);
        Assert.Equal(((both * 5 / 8) + 80 + 7) / 1000, figures.NeedleThreadM, 9);
        Assert.Equal(((both * 3 / 8) + 80) / 1000, figures.BobbinThreadM, 9);
    }

    [Fact]
    public void A_range_holds_its_likely_figure_and_hooping_keeps_to_five_to_eight_minutes()
    {
        var job = Sample.Job;
        var plan = NameBand.Layout.LayoutPlanner.Plan(job, Sample.Hem(job), Sample.Lettered(Sample.RandomWidths(1, 30)), FabricTable.All[0]).Value!;
        var estimate = Estimator.Make(job, plan, []);
        Assert.All(estimate.HandWork, w => Assert.True(w.Minutes.Low <= w.Minutes.Likely && w.Minutes.Likely <= w.Minutes.High));
        var hooping = estimate.HandWork.Single(w => w.Unit == "hoopings").Minutes;
        Assert.Equal(5.5, hooping.Low / plan.Hoopings.Length, 6);
        Assert.Equal(8.8, hooping.High / plan.Hoopings.Length, 6);
    }
}
