using NameBand.Estimating;
using NameBand.Garment;
using NameBand.Job;
using NameBand.Layout;

namespace NameBand.Choosing;

/// <summary>
/// A cost that no choice of what is free goes under: strips side by side, how they are shifted and cut into hoopings, the
/// frame and the marks, for a plan whose names lie as they do.
/// </summary>
/// <remarks>
/// A hooping holds at most one segment of each strip that lies side by side, and no strip has fewer segments than alone in the
/// longest field. So there are no fewer segments than all strips have alone, no fewer hoopings than that by the most strips side
/// by side, nor than the strip with the most. What a plan has more is taken off at the most that it can save; so are cutting
/// strips apart, a slower frame, and bobbins that are not emptied.
/// </remarks>
internal static class FreeBound
{
    /// <summary>Stitches, jumps and cuts of the two crosses that a segment is set by.</summary>
    private const int MarkStitches = 10;
    private const int MarkJumps = 2;
    private const int MarkCuts = 2;

    /// <summary>The long stitches of a cross take less than so many times a usual one.</summary>
    private const double MarkPace = 4;

    private const double SlightMm = 1e-6;

    /// <param name="estimate">Of the plan as it is sewn.</param>
    public static double CostMinutes(BandJob job, StripPlan plan, Estimate estimate)
    {
        double cost = estimate.Work.CostMinutes;
        var hooped = plan.Hoopings.Where(h => !h.IsRun).ToList();
        if (!job.IsHooped || hooped.Count == 0)
        {
            return cost;
        }

        int[] least = [.. plan.Cloths.SelectMany(c => c.Pieces).Select(p => Segments(job, plan, p))];
        int segments = least.Sum();
        int lanes = MostLanes(job, plan);
        int hoopings = Math.Max((segments + lanes - 1) / lanes, least.Max());
        double saved = (Math.Max(0, hooped.Count - hoopings) * EachHooping(job, plan, hoopings))
            + (Math.Max(0, hooped.Sum(h => h.Segments.Length) - segments) * EachSegment(job, plan))
            + (hooped.Count * Math.Max(0, job.Hands.HoopingMinutes - QuickestFrame(job)) * Rest(job))
            + OtherMarks(job, plan, Math.Min(hooped.Count, hoopings), Math.Min(hooped.Sum(h => h.Segments.Length), segments))
            + Apart(estimate) + Bobbins(job, estimate);

        // A spoiled name is sewn once more at the mean of all: what machine time is saved is saved there too.
        int names = plan.Hoopings.Sum(HoopHands.NamesIn);
        double spoiled = estimate.Work.Rows.Where(r => r.Act == WorkList.SewingOnceMore).Sum(r => r.Count);
        return Math.Max(0, cost - (saved * (1 + (names > 0 ? spoiled / names : 0))));
    }

    /// <summary>Fewest segments of a piece in the longest field that there is: taking the longest one each time.</summary>
    private static int Segments(BandJob job, StripPlan plan, StripPiece piece)
    {
        double field = FlatCloth.FieldMm(Fields(job, plan).Max(f => f.AlongMm), plan.SpareMm);
        PlacedName[] names = [.. plan.Rounds[piece.Round - 1].Places
            .Where(n => !n.Lettered.IsInOneRun && n.StartMm >= piece.StartMm - SlightMm && n.StartMm < piece.EndMm - SlightMm)];
        int segments = 0;
        double from = double.NegativeInfinity;
        foreach (var name in names)
        {
            if (plan.OnClothMm(name.EndMm - from) > field + SlightMm)
            {
                segments++;
                from = name.StartMm;
            }
        }

        return segments;
    }

    private static int MostLanes(BandJob job, StripPlan plan)
    {
        if (!job.Strip.SewnBeforeCutting || plan.Hem.IsCurved)
        {
            return 1;
        }

        double outside = Math.Max(plan.Hem.Strip.SewingZoneMm / 2, -plan.MarkYMm + SegmentCutter.MarkArmMm);
        double between = Fields(job, plan).Max(f => f.AcrossMm) - (2 * outside);
        int most = between < 0 ? 1 : 1 + (int)Math.Floor((between / job.Strip.CutWidth.Mm) + SlightMm);
        return job.Layout.AreLanesFree || job.Layout.Lanes is null ? most : Math.Min(most, job.Layout.Lanes.Value);
    }

    private static IEnumerable<(double AlongMm, double AcrossMm)> Fields(BandJob job, StripPlan plan) =>
        job.Frames.Select(f => (f.Along.Mm, f.Across.Mm)).Append((plan.FieldAlongMm, plan.FieldAcrossMm));

    private static double QuickestFrame(BandJob job) =>
        job.Frames.Select(f => f.MountMinutes).OfType<double>().Append(job.Hands.HoopingMinutes).Min();

    /// <summary>The most that one hooping less can save, hands and machine.</summary>
    private static double EachHooping(BandJob job, StripPlan plan, int left)
    {
        double mount = left >= StartingValues.FirstHoopings
            ? job.Hands.HoopingMinutes : Math.Max(job.Hands.FirstHoopingsMinutes, job.Hands.HoopingMinutes);
        return ((mount + job.Hands.BackingMinutesPerPiece) * Rest(job)) + MarkChoice.HoopingMinutes(job, plan.Marks)
            + (job.Machine.SecondsToStart / 60);
    }

    /// <summary>The most that other marks can save in the hoopings that are left, where the job leaves them free.</summary>
    private static double OtherMarks(BandJob job, StripPlan plan, int hoopings, int segments) => MarkChoice.IsFree(job)
        ? (hoopings * (MarkChoice.HoopingMinutes(job, plan.Marks) - MarkChoice.LeastHoopingMinutes(job))) + (segments * EachSegment(job, plan)) : 0;

    private static double EachSegment(BandJob job, StripPlan plan)
    {
        var machine = job.Machine;
        double breaks = MarkStitches / 1000.0 * machine.BreaksPer1000Stitches * machine.SecondsPerBreak;
        double seconds = (MarkStitches * MarkPace * 60 / machine.StitchesPerMinute) + breaks
            + (MarkJumps * machine.SecondsPerJump) + (MarkCuts * machine.SecondsPerTrim);
        return plan.Marks == MarkMethod.Sewn ? seconds / 60 : 0;
    }

    private static double Apart(Estimate estimate) =>
        estimate.Work.Rows.Where(r => r.Act == WorkList.CuttingApart).Sum(r => r.Minutes.Likely);

    /// <summary>No order of hoopings winds fewer bobbins than the thread fills.</summary>
    private static double Bobbins(BandJob job, Estimate estimate)
    {
        int changes = estimate.Hoopings.Sum(h => h.BobbinChanges);
        int least = Math.Max(0, (int)Math.Ceiling((estimate.BobbinThreadM / job.Bobbin.UsableM) - 1e-9) - 1);
        return Math.Max(0, changes - least) * job.Machine.SecondsPerBobbin / 60;
    }

    private static double Rest(BandJob job) => 1 + job.Hands.RestAllowance;
}
