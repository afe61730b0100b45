using System.Collections.Immutable;
using NameBand.Common;
using NameBand.Layout;

namespace NameBand.Estimating;

/// <summary>Turns what is left of a job into evenings: all of it, from the first cut to the last stitch at the hem.</summary>
public static class EveningWork
{
    /// <summary>The act of all names that are sewn without a hoop.</summary>
    public static readonly Said SewingTheNames = "sewing the names";

    /// <param name="machines">With the pace of each, as the log shows it.</param>
    /// <param name="lengths">Of the evenings; null: sew until it is done.</param>
    public static EveningPlan Plan(Estimate estimate, StripPlan plan, IReadOnlyList<SewingMachine> machines, EveningLengths? lengths)
    {
        var rows = estimate.Left.Rows;
        var sewing = rows.Where(IsSewing).ToList();
        ImmutableArray<OtherTask> before = [.. Tasks(rows.Where(r => r.When == WorkTime.Before))];
        ImmutableArray<OtherTask> after = [.. Tasks(rows.Where(r => r.When != WorkTime.Before && !IsSewing(r)))];
        if (!estimate.IsHooped)
        {
            // A strip that is fed or traced can be laid down after any name.
            before = [.. before, .. Tasks([(SewingTheNames, sewing.Sum(r => r.Minutes.Likely))])];
            return EveningPlanner.Over([], machines, lengths, new OtherWork(before, after));
        }

        var times = Times(estimate, plan, sewing);
        return EveningPlanner.Over(
            times, machines, lengths, new OtherWork([.. before, .. ToMatch(times, plan, machines.Count, lengths)], after));
    }

    /// <summary>Where several people sew, each one but the first sews a name on a scrap, to be held beside the others.</summary>
    private static IEnumerable<OtherTask> ToMatch(ImmutableArray<HoopingTime> times, StripPlan plan, int machines, EveningLengths? lengths)
    {
        int more = Math.Min(machines, lengths?.People.Count(p => p.DoesMachine) ?? 0) - 1;
        return more <= 0 || times.IsEmpty
            ? [] : Tasks([("a test name of each to match", more * times.Sum(t => t.MachineMinutes + t.HandMinutes) / plan.NameCount)]);
    }

    /// <summary>
    /// The hoopings that are left, as they lie on their cloths. Hand work that is not counted hooping by hooping is shared out evenly.
    /// </summary>
    private static ImmutableArray<HoopingTime> Times(Estimate estimate, StripPlan plan, IReadOnlyList<WorkRow> sewing)
    {
        var figures = estimate.ByNumber();
        HoopingFigures[] left =
        [
            .. plan.Hoopings.Where(h => !figures[h.Number].IsSewn)
                .OrderBy(h => h.Cloth).ThenBy(h => h.OnClothMm).ThenBy(h => h.Number).Select(h => figures[h.Number]),
        ];
        double each = left.Length == 0 ? 0
            : (sewing.Where(r => r.By == Doer.Hands).Sum(r => r.Minutes.Likely) - left.Sum(Hands)) / left.Length;
        var clothOf = plan.Hoopings.ToDictionary(h => h.Number, h => h.Cloth);
        return [.. left
            .Select(f => new HoopingTime(f.Number, f.MachineMinutes, Math.Max(0, Hands(f) + each)) { Cloth = clothOf[f.Number] })];

        double Hands(HoopingFigures f) => (f.TimedHandMinutes * (estimate.OwnPace?.HandFactor ?? 1)) + f.OtherHandMinutes;
    }

    /// <summary>Done hooping by hooping or name by name; what is spoiled shows only when all is sewn.</summary>
    private static bool IsSewing(WorkRow row) =>
        row.When is WorkTime.EachHooping or WorkTime.EachName && row.Cause != WorkCause.Spoiling;

    private static IEnumerable<OtherTask> Tasks(IEnumerable<WorkRow> rows) => Tasks(rows.Select(r => (r.Act, r.Minutes.Likely)));

    private static IEnumerable<OtherTask> Tasks(IEnumerable<(Said Act, double Minutes)> tasks) =>
        tasks.Where(t => t.Minutes > 0).Select(t => new OtherTask(t.Act, t.Minutes));
}
