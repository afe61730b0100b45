using System.Collections.Immutable;
using NameBand.Common;

namespace NameBand.Estimating;

/// <summary>What the machine does in the hoopings, counted from what was measured on their needle paths.</summary>
internal static class MachineRows
{
    public static readonly Said ChangingThread = "changing the thread";

    /// <summary>Way by way; what is done in several ways says which it is.</summary>
    public static IEnumerable<WorkRow> Of(WorkMatter matter, WorkToDo toDo)
    {
        if (matter.Ways is [var only])
        {
            return Of(only, matter, toDo);
        }

        return matter.Ways.SelectMany(w => Of(w, matter, toDo).Select(r => r with { Act = $"{r.Act}, {w.How}" }));
    }

    private static IEnumerable<WorkRow> Of(WayActs way, WorkMatter matter, WorkToDo toDo)
    {
        ImmutableArray<HoopingFigures> hoopings = [.. toDo.Figures.Where(h => way.Has(h.Number))];
        var machine = matter.Job.Machine;
        double stitches = hoopings.Sum(h => (double)h.Stitches);
        double stitching = hoopings.Sum(h => h.StitchingMinutes);
        bool isTraced = way.IsTraced;
        double lines = isTraced ? toDo.TracedM(way) : 0;
        double jumps = hoopings.Sum(h => (double)h.Jumps);
        double cuts = hoopings.Sum(h => (double)h.Trims);
        double stops = hoopings.Sum(h => (double)h.Stops);
        double bobbins = hoopings.Sum(h => (double)h.BobbinChanges);
        double breaks = isTraced ? 0 : HoopingMeter.ExpectedBreaks(stitches, machine);
        WorkRow[] rows =
        [
            At("starting a hooping", "hoopings", way.IsHooped ? hoopings.Length : 0, machine.SecondsToStart / 60, WorkCause.Waiting),
            isTraced
                ? At("following the lines free-motion", "m of line", lines, Each(stitching, lines), WorkCause.Following)
                : Sews(At("stitching", "stitches", stitches, Each(stitching, stitches), WorkCause.MachinePace)),
            Sews(At("jumps", "jumps", jumps, machine.SecondsPerJump / 60, WorkCause.MachinePace)),
            Sews(At("cutting the thread", "cuts", cuts, machine.SecondsPerTrim / 60, WorkCause.MachinePace)),
            At(ChangingThread, "stops", stops, machine.SecondsPerStop / 60, WorkCause.Waiting),
            At("changing the bobbin", "bobbins", bobbins, machine.SecondsPerBobbin / 60, WorkCause.Waiting),
            At("thread breaks", "breaks", breaks, machine.SecondsPerBreak / 60, WorkCause.Breaks),
        ];
        return isTraced && matter.Job.Traced.ByHand ? [] : rows.Where(r => r.Count > 0 && r.EachMinutes > 0);

        WorkRow Sews(WorkRow row) => row with { IsAttended = machine.IsWatched || !way.FollowsCoordinates };
    }

    private static WorkRow At(Said act, Said from, double count, double eachMinutes, WorkCause cause) =>
        new(act, Doer.Machine, WorkTime.EachHooping, from, count, eachMinutes, cause);

    private static double Each(double minutes, double count) => count > 0 ? minutes / count : 0;
}
