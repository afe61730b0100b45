using System.Collections.Immutable;
using NameBand.Common;
using NameBand.Estimating;
using NameBand.Job;
using NameBand.Layout;
using NameBand.Lettering.Faces;
using NameBand.Pipeline.Resume;
using NameBand.Pipeline.Stages;
using NameBand.Reports;

namespace NameBand.Pipeline;

/// <summary>Lays a job out and stitches it in memory to see what it takes. Writes nothing.</summary>
internal static class Estimation
{
    public static HoursReport Run(
        string jobFolder, double? eveningMinutes, DateOnly? today, IProgress<Progress>? progress, CancellationToken cancel)
    {
        var planned = Planning.Run(jobFolder, new FaceShelf(), cancel);
        if (planned.Value is not { } made || !planned.IsUsable)
        {
            return new HoursReport(ExitStatus.CannotUse, null, null, null, null, null, planned.Problems);
        }

        var sewing = made.Way.Sew(made);
        var estimate = Counting.Of(made, sewing, Counting.Measure(made, sewing, null, progress, cancel));
        var shopping = Shopping.For(made.Job, made.Plan, estimate);
        var evenings = Evenings.Of(made, sewing, estimate, eveningMinutes, today);
        var (machine, hands) = LoggedPace.Of(made.Begun?.Log, LoggedPace.Estimated(estimate));
        ImmutableArray<Problem> ofJob =
            [.. planned.Problems, .. sewing.Problems.Concat(made.Way.Doubts(made)).Where(p => p.Severity == Severity.NeedsPerson)];
        ImmutableArray<Problem> problems =
            [.. ofJob, .. OfDays(made.Job, estimate, evenings, today), .. OnOneCloth(made.Plan, evenings.Week)];
        return new HoursReport(Judging.StatusOf(made, problems), made.Job, made.Plan, estimate, shopping, evenings.Plan, problems)
        {
            IsSoundButForTheDay = Judging.StatusOf(made, ofJob) == ExitStatus.AllPlaced,
            Calendar = evenings.Calendar,
            Tonight = evenings.Tonight,
            Machine = machine,
            Hands = hands,
        };
    }

    /// <summary>What stands in the way of the day, or of saying anything of it, while anything is left to do.</summary>
    private static IEnumerable<Problem> OfDays(BandJob job, Estimate estimate, Evenings evenings, DateOnly? today)
    {
        var where = new Where(JobReader.FileName, Key: WorkKeys.FinishBy.Path);
        if (!estimate.IsWorkLeft)
        {
            yield break;
        }

        if (job.FinishBy is { } past && past < today)
        {
            yield return Problem.NeedsPerson(
                where, $"The day by which all is to be sewn down, {InWords(past)}, is past.", "Write another day, or remove the key.");
        }
        else if (job.FinishBy is { } day && evenings.Week is null && today is not null)
        {
            yield return Problem.Note(
                where, $"Whether all is sewn down by {InWords(day)} cannot be said: how long an evening is, is not known.",
                "Write for example \"evening\": \"2h\".");
        }

        if (evenings.Calendar is { IsInTime: false, DoneOn: { } done } calendar)
        {
            Said longer = calendar.LongerByMinutes is { } more
                ? (Said)$"Evenings that are {more:0} min longer would be enough. So would "
                : "Longer evenings alone are not enough. ";
            yield return Problem.NeedsPerson(
                where, $"If you begin today, all is sewn down on {InWords(done)}, {Days(done.DayNumber - calendar.FinishBy.DayNumber)} "
                    + $"after {InWords(calendar.FinishBy)}.",
                $"{longer}{(calendar.LongerByMinutes is null ? "A" : "a")}"
                    + $" plan that takes less time: the command plans shows what there is.");
        }
    }

    /// <summary>Whole cloths are dealt out: of fewer cloths than makers somebody gets none.</summary>
    private static IEnumerable<Problem> OnOneCloth(StripPlan plan, EveningWeek? week)
    {
        int sew = week?.People.Count(p => p.DoesMachine && p.Minutes.Sum() > 0) ?? 0;
        if (sew > plan.Cloths.Length && plan.Cloths.Length > 0)
        {
            yield return Problem.Note(
                new Where(JobReader.FileName, Key: LayoutKeys.Piece.Path),
                $"{sew} people sew, and all strips lie on {Cloths(plan.Cloths.Length)}. "
                    + $"A cloth lies under one machine, so not everybody gets one.",
                "For more cloths write \"stripsSideBySide\": 1 or shorter pieces into “strip”, for example \"piece\": \"1 m\".");
        }
    }

    private static Said Cloths(int count) => count == 1 ? "one cloth" : (Said)$"{count} cloths";

    private static Said Days(int days) => Wording.Count(days, "day");

    /// <summary>Such as <c>Tuesday 1 December 2026</c>.</summary>
    private static Said InWords(DateOnly day) => $"{day:dddd d MMMM yyyy}";
}
