using System.Collections.Immutable;
using NameBand.Common;
using NameBand.Estimating;
using NameBand.Job;
using NameBand.Layout;
using NameBand.Lettering;
using NameBand.Pipeline.Resume;
using NameBand.Pipeline.Ways;
using NameBand.Reports;
using NameBand.Stitching;

namespace NameBand.Pipeline;

/// <summary>Lays a job out and stitches it in memory to see what it takes. Writes nothing.</summary>
internal static class Reckoning
{
    public static HoursReport Run(string jobFolder, double? eveningMinutes, IProgress<Progress>? progress, CancellationToken cancel)
    {
        var planned = Planning.Run(jobFolder, new FaceShelf(), cancel);
        if (planned.Value is not { } made || !planned.IsUsable)
        {
            return new HoursReport(ExitStatus.CannotUse, null, null, null, null, null, planned.Problems);
        }

        var sewing = made.Way.Sew(made);
        var estimate = Counting.Of(made, sewing, Counting.Measure(made, sewing, null, progress, cancel));
        var shopping = Shopping.For(made.Job, made.Plan, estimate);
        double? evening = eveningMinutes ?? made.Job.EveningMinutes;
        var evenings = evening is null && made.Job.Machine.Names.Length < 2 ? null : Deal(made, estimate, evening);
        var (machine, hands) = LoggedPace.Of(made.Begun?.Log, LoggedPace.Reckoned(estimate));
        ImmutableArray<Problem> problems =
            [.. planned.Problems, .. sewing.Problems.Concat(made.Way.Doubts(made)).Where(p => p.Severity == Severity.NeedsPerson)];
        return new HoursReport(Judging.StatusOf(made, problems), made.Job, made.Plan, estimate, shopping, evenings, problems)
        {
            Machine = machine,
            Hands = hands,
        };
    }

    private static EveningPlan Deal(LaidOut made, Estimate estimate, double? eveningMinutes)
    {
        var names = made.Job.Machine.Names;
        var log = made.Begun?.Log;
        var reckoned = LoggedPace.Reckoned(estimate);
        SewingMachine[] machines = names.IsEmpty
            ? [new SewingMachine("", LoggedPace.Factor(log, reckoned, null))]
            : [.. names.Select(n => new SewingMachine(n, LoggedPace.Factor(log, reckoned, n)))];
        return EveningWork.Plan(estimate, made.Plan, machines, eveningMinutes);
    }
}
