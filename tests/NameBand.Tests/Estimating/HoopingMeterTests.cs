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

        // Two stitches of 2 and 3 mm through 0.45 mm of cloth and two tails of 40 mm; over the jumps after the cut goes no thread.
        double both = 2 * (2 + 3 + 0.9);
        Assert.Equal(((both * 5 / 8) + 80) / 1000, figures.NeedleThreadM, 9);
        Assert.Equal(((both * 3 / 8) + 80) / 1000, figures.BobbinThreadM, 9);
    }

    /// <summary>A loose thread lies where the machine went on without a cut, and at the end where it made none.</summary>
    [Fact]
    public void Only_travel_that_is_not_cut_takes_thread_and_is_snipped_by_hand()
    {
        NeedleStep[] begun = [Step(NeedleAction.Jump, 0), Step(NeedleAction.Stitch, 0), Step(NeedleAction.Stitch, 2)];
        NeedleStep[] gone =
            [Step(NeedleAction.Jump, 7), Step(NeedleAction.Jump, 12), Step(NeedleAction.Stitch, 12), Step(NeedleAction.Stitch, 14)];
        NeedleStep cut = Step(NeedleAction.Trim, 2);
        NeedleStep cutAtTheEnd = Step(NeedleAction.Trim, 14);
        var uncut = Of([.. begun, .. gone, cutAtTheEnd]);
        var trimmed = Of([.. begun, cut, .. gone, cutAtTheEnd]);
        Assert.Equal((1, 1), (uncut.Jumps, uncut.Snips));
        Assert.Equal((1, 0), (trimmed.Jumps, trimmed.Snips));
        Assert.Equal(2, Of([.. begun, .. gone]).Snips);

        // The cut costs a tail of 40 mm and saves the 10 mm of the way.
        Assert.Equal(0.030, trimmed.NeedleThreadM - uncut.NeedleThreadM, 9);
        Assert.Equal(0, Of([Step(NeedleAction.Jump, 0), Step(NeedleAction.Jump, 900), Step(NeedleAction.End, 900)]).Snips);

        static HoopingFigures Of(NeedleStep[] steps) =>
            HoopingMeter.Measure(1, new NeedlePath([.. steps]), FabricTable.All[0], Sample.Job.Machine);
    }
}
