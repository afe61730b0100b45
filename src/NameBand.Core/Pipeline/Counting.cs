using System.Collections.Immutable;
using NameBand.Estimating;
using NameBand.Pipeline.Resume;
using NameBand.Pipeline.Stages;
using NameBand.Reports;
using NameBand.Stitching;

namespace NameBand.Pipeline;

/// <summary>Makes the sewing of each piece in memory, to see what it takes; writes nothing.</summary>
internal static class Counting
{
    /// <param name="look">Also given each hooping's index in the plan and its path; null: nobody looks.</param>
    /// <param name="cores">At most so many at once; null: all.</param>
    /// <exception cref="OperationCanceledException">The work was given up.</exception>
    public static ImmutableArray<HoopingFigures> Measure(
        LaidOut made, IPieceSewing sewing, Action<int, NeedlePath>? look, IProgress<Progress>? progress, CancellationToken cancel,
        int? cores = null)
    {
        var figures = new HoopingFigures[made.Plan.Hoopings.Length];
        int done = 0;
        Cores.ForEach(
            figures.Length, cancel, i =>
            {
                var path = sewing.PathOf(made.Plan.Hoopings[i]);
                figures[i] = sewing.FiguresOf(made.Plan.Hoopings[i], path);
                look?.Invoke(i, path);
                progress?.Report(new Progress("counting the stitches", Interlocked.Increment(ref done), figures.Length));
            },
            cores);
        return [.. figures];
    }

    /// <summary>What the whole job takes, at the maker's own pace where it was timed.</summary>
    /// <param name="figures">Of all hoopings, in the plan's order.</param>
    public static Estimate Of(LaidOut made, IPieceSewing sewing, ImmutableArray<HoopingFigures> figures)
    {
        var log = made.Begun?.Log;
        return LoggedPace.AtOwnPace(Estimator.Make(made.Job, made.Plan, figures, log, sewing.Acts), log);
    }
}
