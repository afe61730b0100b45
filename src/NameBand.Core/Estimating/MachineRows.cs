using System.Collections.Immutable;

namespace NameBand.Estimating;

/// <summary>What the machine does in the hoopings, counted from what was measured on their needle paths.</summary>
internal static class MachineRows
{
    public static IEnumerable<WorkRow> Of(WorkMatter matter, ImmutableArray<HoopingFigures> hoopings)
    {
        var machine = matter.Job.Machine;
        double stitches = hoopings.Sum(h => (double)h.Stitches);
        double stitching = hoopings.Sum(h => h.StitchingMinutes);
        bool isTraced = matter.Way.IsTraced;
        double lines = isTraced ? matter.Way.TracedMm / 1000 : 0;
        double jumps = hoopings.Sum(h => (double)h.Jumps);
        double cuts = hoopings.Sum(h => (double)h.Trims);
        double stops = hoopings.Sum(h => (double)h.Stops);
        double bobbins = hoopings.Sum(h => (double)h.BobbinChanges);
        double breaks = isTraced ? 0 : HoopingMeter.ExpectedBreaks(stitches, machine);
        WorkRow[] rows =
        [
            At("starting a hooping", "hoopings", hoopings.Length, machine.SecondsToStart / 60, WorkCause.Waiting),
            isTraced
                ? At("following the lines free-motion", "m of line", lines, Each(stitching, lines), WorkCause.Following)
                : Sews(At("stitching", "stitches", stitches, Each(stitching, stitches), WorkCause.MachinePace)),
            Sews(At("jumps", "jumps", jumps, machine.SecondsPerJump / 60, WorkCause.MachinePace)),
            Sews(At("cutting the thread", "cuts", cuts, machine.SecondsPerTrim / 60, WorkCause.MachinePace)),
            At("changing the thread", "stops", stops, machine.SecondsPerStop / 60, WorkCause.Waiting),
            At("changing the bobbin", "bobbins", bobbins, machine.SecondsPerBobbin / 60, WorkCause.Waiting),
            At("thread breaks", "breaks", breaks, machine.SecondsPerBreak / 60, WorkCause.Breaks),
        ];
        return isTraced && matter.Job.Traced.ByHand ? [] : rows.Where(r => r.Count > 0 && r.EachMinutes > 0);

        WorkRow Sews(WorkRow row) => row with { IsAttended = machine.IsWatched || !matter.Plan.HasNeedlePaths };
    }

    private static WorkRow At(string act, string from, double count, double eachMinutes, WorkCause cause) =>
        new(act, Doer.Machine, WorkTime.EachHooping, from, count, eachMinutes, cause);

    private static double Each(double minutes, double count) => count > 0 ? minutes / count : 0;
}
