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

        var estimate = EstimateOf(made, progress, cancel);
        var shopping = Shopping.For(made.Job, made.Plan, estimate);
        double? evening = eveningMinutes ?? made.Job.EveningMinutes;
        var evenings = evening is null && made.Job.Machine.Names.Length < 2 ? null : Deal(made, estimate, evening);
        var (machine, hands) = LoggedPace.Of(made.Begun?.Log, LoggedPace.Reckoned(estimate));
        return new HoursReport(ExitStatus.AllPlaced, made.Job, made.Plan, estimate, shopping, evenings, planned.Problems)
        {
            Machine = machine,
            Hands = hands,
            Left = made.Plan.HasNeedlePaths ? estimate.WorkLeft : null,
        };
    }

    /// <summary>The hours of a job that is laid out, counted by its way and at the pace that its log shows.</summary>
    public static Estimate EstimateOf(Planning.Planned made, IProgress<Progress>? progress, CancellationToken cancel) =>
        made.Keyed is { } keyed ? KeyedSewing.Reckon(made, keyed, cancel)
        : made.Job.Way == Way.Traced ? TracedSewing.Reckon(made, cancel)
        : LoggedPace.AtOwnPace(Estimator.Make(made.Job, made.Plan, Measure(made, progress, cancel), made.Begun?.Log), made.Begun?.Log);

    /// <summary>The needle path of a hooping: as it was sewn, where it was.</summary>
    public static NeedlePath PathOf(Planning.Planned made, Stitcher stitcher, Hooping hooping) =>
        made.KeptPath(hooping.Number) ?? stitcher.SewHooping(made.Plan, hooping);

    public static HoopingFigures FiguresOf(Planning.Planned made, Hooping hooping, NeedlePath path) =>
        HoopingMeter.Measure(hooping, made.Plan, path, made.ClothOf(hooping.Number), made.Job.Machine) with
        {
            IsSewn = made.Begun?.IsSewn(hooping.Number) ?? false,
        };

    private static EveningPlan Deal(Planning.Planned made, Estimate estimate, double? eveningMinutes)
    {
        var names = made.Job.Machine.Names;
        var log = made.Begun?.Log;
        var reckoned = LoggedPace.Reckoned(estimate);
        SewingMachine[] machines = names.IsEmpty
            ? [new SewingMachine("", LoggedPace.Factor(log, reckoned, null))]
            : [.. names.Select(n => new SewingMachine(n, LoggedPace.Factor(log, reckoned, n)))];
        return EveningWork.Plan(estimate, made.Plan, machines, eveningMinutes);
    }

    private static ImmutableArray<HoopingFigures> Measure(Planning.Planned made, IProgress<Progress>? progress, CancellationToken cancel)
    {
        var stitcher = new Stitcher(made.Fabric, made.Plan.LetterHeightMm);
        var figures = new HoopingFigures[made.Plan.Hoopings.Length];
        int done = 0;
        Sewing.ForEach(figures.Length, cancel, i =>
        {
            var hooping = made.Plan.Hoopings[i];
            figures[i] = FiguresOf(made, hooping, PathOf(made, stitcher, hooping));
            progress?.Report(new Progress("reckoning the hours", Interlocked.Increment(ref done), figures.Length));
        });

        return [.. figures];
    }
}
