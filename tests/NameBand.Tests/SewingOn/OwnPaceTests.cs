using NameBand.Estimating;
using NameBand.Job;
using Xunit;

namespace NameBand.Tests.SewingOn;

/// <summary>What the log says moves the plain totals, the joins of patches and the bobbin, and no file that was not changed.</summary>
public class OwnPaceTests
{
    private static SewnJob Job(string more = "")
    {
        var job = new SewnJob("Orla Penhale", "Bram Sedgewick", "Tuva Lind", "Ilse Quill", "Noor Haddad", "Jo Weir");
        job.Settings("", more);
        Assert.Equal(ExitStatus.AllPlaced, job.Make().Status);
        return job;
    }

    private static double Total(SewnJob job, string key) => job.Plan().GetProperty("totals").GetProperty(key).GetDouble();

    private static double HoopingMinutes(SewnJob job) =>
        job.Plan().GetProperty("hoopings").EnumerateArray().Sum(h => h.GetProperty("minutes").GetDouble());

    [Fact]
    public void Totals_and_lines_follow_the_pace_of_the_log_and_the_set_pace_stands_beside()
    {
        using var job = Job();
        double before = Total(job, "machineMinutes");
        Assert.False(job.Plan().GetProperty("totals").TryGetProperty("machineMinutesAtSetPace", out _));
        var estimated = job.Make().Estimate!.Hoopings;
        byte[] round = File.ReadAllBytes(job["out/proofs/round-01.png"]);
        foreach (int hooping in new[] { 1, 2, 3 })
        {
            job.Say(hooping, minutes: 2 * estimated[hooping - 1].MachineMinutes);
        }

        var estimate = job.Make().Estimate!;
        double factor = estimate.OwnPace!.MachineFactor;
        Assert.InRange(factor, 1.3, 2);
        Assert.Equal(before, Total(job, "machineMinutesAtSetPace"), 1);
        Assert.Equal(before * factor, Total(job, "machineMinutes"), 0.2);

        // Each hooping is rounded to a tenth.
        Assert.Equal(HoopingMinutes(job), estimate.MachineWork.Where(r => r.When == WorkTime.EachHooping).Sum(r => r.Minutes.Likely), 0.4);
        Assert.Equal(
            factor * estimate.OwnPace.AtSetPace.MachineWork.First().Minutes.Likely, estimate.MachineWork.First().Minutes.Likely, 6);
        Assert.Single(estimate.MachineWork.Where(r => r.When == WorkTime.EachHooping).Select(r => r.Cause).Distinct());

        // Nothing was said of the hands: they stay, and so does every picture that shows minutes.
        Assert.Equal(estimate.OwnPace.AtSetPace.HandsOnMinutes, estimate.HandsOnMinutes);
        Assert.Equal(round, File.ReadAllBytes(job["out/proofs/round-01.png"]));
        byte[] plan = File.ReadAllBytes(job["out/plan.json"]);
        job.Make();
        Assert.Equal(plan, File.ReadAllBytes(job["out/plan.json"]));

        var hours = Bander.Hours(job.Folder).Estimate!;
        Assert.Equal(estimate.MachineMinutes.Likely, hours.MachineMinutes.Likely, 1);
        // plan.json has a tenth of a minute.
        Assert.Equal(Total(job, "machineMinutesAtSetPace"), hours.OwnPace!.AtSetPace.MachineMinutes.Likely, 0.06);
    }

    [Fact]
    public void The_range_of_the_total_narrows_as_more_is_timed_as_estimated()
    {
        using var job = Job();
        var estimated = job.Make().Estimate!.Hoopings;
        job.Say(1, minutes: estimated[0].MachineMinutes);
        double one = Width(job.Make().Estimate!.MachineMinutes);
        foreach (int hooping in new[] { 2, 3, 4, 5 })
        {
            job.Say(hooping, minutes: estimated[hooping - 1].MachineMinutes);
        }

        var five = job.Make().Estimate!;
        Assert.Equal(1, five.OwnPace!.MachineFactor, 3);
        Assert.True(Width(five.MachineMinutes) < one);
        Assert.True(one < Width(five.OwnPace.AtSetPace.MachineMinutes));

        static double Width(Figure f) => f.High - f.Low;
    }

    [Fact]
    public void A_patch_piece_is_let_in_with_two_joins_and_a_mistake_takes_them_back()
    {
        using var job = Job(", \"hands\": { \"joinMinutes\": 10, \"restAllowance\": 0.1 }");
        job.Say(1);
        Assert.Empty(Lines());
        double before = Total(job, "handsOnMinutes");
        job.Say(1, SewingDeed.Patch);
        job.Make();

        // Two joins of 11 minutes; and a name that was spoiled lets a few more be expected.
        Assert.InRange(Total(job, "handsOnMinutes"), before + 22, before + 24);
        Assert.Equal((2, 22), (Lines().Single().Count, Math.Round(Lines().Single().Minutes.Likely, 6)));

        // The piece still has to be let in once it is sewn, and a second spoiling makes no second piece of the strip.
        job.Say(1);
        job.Say(1, SewingDeed.Patch);
        Assert.Equal(2, Lines().Single().Count);
        job.Say(1, SewingDeed.Mistake);
        Assert.Empty(Lines());

        List<WorkRow> Lines() => [.. job.Make().Estimate!.HandWork.Where(w => w.Act.English.Contains("patch", StringComparison.Ordinal))];
    }

    [Fact]
    public void The_bobbin_goes_on_from_what_the_log_says_was_sewn_spoiled_hoopings_too()
    {
        using var job = Job();
        var figures = job.Make().Estimate!.Hoopings;
        double needs = figures.Max(h => h.BobbinThreadM);

        // A bobbin that does for two hoopings and a little.
        string more = FormattableString.Invariant($", \"bobbin\": {{ \"capacity\": \"{(2.3 * needs / 0.97):0.000} m\" }}");
        job.Settings("", more);
        var fresh = job.Make().Estimate!;
        Assert.DoesNotContain(fresh.BobbinChanges, c => c.IsPast || c.Hooping == 1);

        // The last one first, and spoiled: both sewings took thread from the bobbin that 1 is begun with.
        job.Say(6);
        job.Say(6, SewingDeed.Again);
        job.Say(6);
        var estimate = job.Make().Estimate!;
        int inOrder = Follow([6, 6, 1, 2, 3, 4, 5]);
        Assert.Equal(inOrder, estimate.Bobbins);
        Assert.True(estimate.Bobbins > fresh.Bobbins || estimate.BobbinChanges.Select(c => c.Hooping)
            .SequenceEqual(fresh.BobbinChanges.Select(c => c.Hooping)) is false);
        Assert.All(estimate.BobbinChanges, c => Assert.Equal(c.Hooping == 6, c.IsPast));

        int Follow(int[] order) =>
            BobbinRun.Follow(
                order.Select(n => figures.Single(f => f.Number == n)), new BobbinSettings { CapacityM = 2.3 * needs / 0.97 }).Bobbins;
    }

    [Fact]
    public void The_log_knows_in_which_order_was_sewn_and_forgets_mistakes()
    {
        var log = SewingLog.Empty with
        {
            Entries =
            [
                new(3, SewingDeed.Sewn), new(3, SewingDeed.Sewn), new(1, SewingDeed.Sewn), new(3, SewingDeed.Measured, MeasuredMm: 90),
                new(3, SewingDeed.Again), new(2, SewingDeed.Sewn), new(2, SewingDeed.Mistake), new(3, SewingDeed.Sewn),
            ],
        };
        Assert.Equal([3, 1, 3], log.Sewings.ToArray());
        Assert.Empty(log.Patched);
    }
}
