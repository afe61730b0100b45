using System.Collections.Immutable;
using CsCheck;
using NameBand.Cloth;
using NameBand.Common;
using NameBand.Estimating;
using NameBand.Job;
using NameBand.Layout;
using NameBand.Layout.Planning;
using NameBand.Stitching;
using Xunit;

namespace NameBand.Tests.Estimating;

public class PaceAndBobbinTests
{
    private static readonly MachineSettings Machine = Sample.Job.Machine;

    [Fact]
    public void Usual_stitches_run_at_the_set_pace_and_wide_and_short_ones_slower()
    {
        Assert.Equal(0.1, Pace.SecondsPerStitch(2.5, Machine), 9);
        Assert.Equal(0.1, Pace.SecondsPerStitch(4, Machine), 9);
        Assert.Equal(0.1 * 1.45, Pace.SecondsPerStitch(7, Machine), 9);
        Assert.Equal(0.115, Pace.SecondsPerStitch(0.5, Machine), 9);
        Assert.Equal(0.1, Pace.SecondsPerStitch(7, Machine with { SlowPerMm = 0 }), 9);
    }

    /// <summary>A class 15 bobbin: 20.3 × 11.7 mm outside. Source of the measures: a parts seller's table; the rest is computed
    /// and assumed.</summary>
    [Fact]
    public void What_a_bobbin_holds_is_the_room_in_it_over_the_section_of_its_thread()
    {
        var bobbin = new BobbinSettings();
        double room = Math.PI * ((9.5 * 9.5) - (3.25 * 3.25)) * 9.9;
        double section = 16e-3 * 1.1;
        Assert.Equal(room * 0.65 / section / 1000, bobbin.HoldsM, 6);
        Assert.InRange(bobbin.HoldsM, 60, 130);
        Assert.Equal(40, (bobbin with { CapacityM = 40 }).HoldsM);
    }

    [Fact]
    public void A_fresh_bobbin_goes_in_before_the_name_that_the_old_one_would_not_finish()
    {
        var bobbin = new BobbinSettings(CapacityM: 10 / (1 - BobbinSettings.LeftOnPart));
        var (changes, bobbins) = BobbinRun.Follow([Hooping(1, 4, 4), Hooping(2, 3, 25, 1)], bobbin);
        Assert.Equal(5, bobbins);
        Assert.Equal(
            [(2, 1, 2.0, 0, 1), (2, 2, 7.0, 2, 3)],
            changes.Select(c => (c.Hooping, c.BeforeOrder, Math.Round(c.LeftM, 9), c.InName, c.Bobbins)));
    }

    [Fact]
    public void Bobbins_last_and_no_name_that_fits_one_is_interrupted() =>
        Gen.Double[0.1, 9.9].Array[1, 60].Sample(
            needs =>
            {
                var bobbin = new BobbinSettings(CapacityM: 10 / (1 - BobbinSettings.LeftOnPart));
                var (changes, bobbins) = BobbinRun.Follow([Hooping(1, needs)], bobbin);
                double left = 10;
                for (int i = 0; i < needs.Length; i++)
                {
                    bool isChanged = changes.Any(c => c.BeforeOrder == i + 1);
                    Assert.Equal(needs[i] > left, isChanged);
                    left = (isChanged ? 10 : left) - needs[i];
                }

                Assert.Equal(changes.Length + 1, bobbins);
                Assert.All(changes, c => Assert.Equal(0, c.InName));
                Assert.True(bobbins >= Math.Ceiling((needs.Sum() / 10) - 1e-9));
            },
            seed: "0000KgvJX7r2");

    [Fact]
    public void Minutes_of_the_hoopings_sum_to_the_machines_and_thread_of_the_names_to_the_hoopings()
    {
        var job = Sample.Job with { Bobbin = new BobbinSettings(CapacityM: 0.9) };
        var plan = LayoutPlanner.Plan(job, Sample.Hem(job), Sample.Lettered(Sample.RandomWidths(7, 12)), FabricTable.All[0]).Value!;
        ImmutableArray<HoopingFigures> measured =
            [.. plan.Hoopings.Select(h => HoopingMeter.Measure(h, plan, Zigzag(h, plan), FabricTable.All[0], job.Machine))];
        var estimate = Estimator.Make(job, plan, measured);
        double inHoopings = estimate.MachineWork.Where(w => w.When == WorkTime.EachHooping).Sum(w => w.Minutes.Likely);
        Assert.Equal(inHoopings, estimate.Hoopings.Sum(h => h.MachineMinutes), 9);
        Assert.True(estimate.BobbinChanges.Length > 2);
        Assert.Equal(estimate.Bobbins - 1, estimate.BobbinChanges.Sum(c => c.Bobbins));
        Assert.All(measured, h => Assert.Equal(h.BobbinThreadM, h.Names.Sum(n => n.BobbinM), 9));
        Assert.Equal(Enumerable.Range(1, 12), measured.SelectMany(h => h.Names).Select(n => n.Order).Where(o => o > 0));
        Assert.All(estimate.Work.Rows, w => Assert.NotEmpty(w.Cause.Why.English));
        Assert.All(estimate.Work.Rows, w => Assert.True(w.Minutes.Low <= w.Minutes.Likely && w.Minutes.Likely <= w.Minutes.High));
    }

    private static HoopingFigures Hooping(int number, params double[] bobbinM) =>
        new(number, 0, 0, 0, 0, 0, bobbinM.Sum(), 1) { Names = [.. bobbinM.Select((m, i) => new NameThread(i + 1, m, m))] };

    /// <summary>Marks below the strip and a zigzag over each name, as a needle path has them.</summary>
    private static NeedlePath Zigzag(Hooping hooping, StripPlan plan)
    {
        var steps = new List<NeedleStep> { new(NeedleAction.Jump, StitchKind.None, new Point(0, plan.MarkYMm)),
            new(NeedleAction.Stitch, StitchKind.Mark, new Point(0, plan.MarkYMm)) };
        foreach (var segment in hooping.Segments)
        {
            foreach (var name in segment.Segment.Names)
            {
                double left = segment.XMm + plan.OnClothMm(name.StartMm - segment.Segment.StartMm);
                steps.Add(new NeedleStep(NeedleAction.Trim, StitchKind.None, steps[^1].At));
                steps.Add(new NeedleStep(NeedleAction.Jump, StitchKind.None, new Point(left, -2)));
                for (double x = 0; x <= name.WidthMm; x += 0.4)
                {
                    steps.Add(new NeedleStep(NeedleAction.Stitch, StitchKind.Satin, new Point(left + x, -2)));
                    steps.Add(new NeedleStep(NeedleAction.Stitch, StitchKind.Satin, new Point(left + x, 2)));
                }
            }
        }

        return new NeedlePath([.. steps, new NeedleStep(NeedleAction.End, StitchKind.None, steps[^1].At)]);
    }
}
