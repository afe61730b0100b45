using System.Collections.Immutable;
using NameBand.Cloth;
using NameBand.Common;
using NameBand.Estimating;
using NameBand.Garment;
using NameBand.Job;
using NameBand.Layout;
using NameBand.Lettering;
using NameBand.Output;
using NameBand.Output.Sheets;
using NameBand.Output.Tracing;
using NameBand.Pipeline.Resume;
using NameBand.Reports;

namespace NameBand.Pipeline.Ways;

/// <summary>The second half of the line for names that are traced: a template at true size, and the hours by length of line.</summary>
internal static class TracedSewing
{
    /// <summary>What is fed under the presser foot, or traced, has no field’s end.</summary>
    private const double NoFieldMm = 10_000_000;

    /// <summary>Nothing is hooped in a field of its own: a template is as long as its strip.</summary>
    public static Result<StripPlan> Lay(BandJob job, HemPlan hem, LetteredList lettered, Fabric fabric)
    {
        var laid = LayoutPlanner.Plan(WithoutField(job), hem, lettered, fabric);
        return laid with { Value = laid.Value is { } plan ? InOneRun(plan) with { HasNeedlePaths = false } : null };
    }

    /// <summary>A job whose field is endless. The best fit is to the field; where there is none, the order stays as it is listed.</summary>
    public static BandJob WithoutField(BandJob job) => job with
    {
        Hoop = new HoopSettings(Length.FromMm(NoFieldMm), job.Strip.CutWidth, Length.FromMm(0)),

        // No hoop holds the ends: the cloth is as long as its strip is cut.
        Layout = job.Layout with { EndCloth = Length.FromMm(0) },
        Lettering = job.Lettering.Order == NameOrder.BestFit ? job.Lettering with { Order = NameOrder.Listed } : job.Lettering,
    };

    /// <summary>A strip sewn in one run has a field as long as it is.</summary>
    public static StripPlan InOneRun(StripPlan plan) => plan with
    {
        FieldAlongMm = plan.Rounds.SelectMany(r => r.Segments).Select(s => plan.OnClothMm(s.LengthMm)).DefaultIfEmpty(0).Max(),
    };

    public static Sewing.Sewn Run(
        Planning.Planned made, OutFolder folder, PrintWishes? wishes, IProgress<Progress>? progress, CancellationToken cancel)
    {
        var plan = made.Plan;
        var traced = made.Job.Traced;
        var lines = new TraceLines(plan.LetterHeightMm, traced.AlongOutline);
        using var captions = Sewing.OpenCaptionFace();
        var estimate = Reckon(made, lines, cancel);
        int done = 0;
        int all = plan.Hoopings.Length + plan.Rounds.Length;
        var figures = estimate.ByNumber();
        Sewing.ForEach(plan.Hoopings.Length, cancel, i =>
        {
            var run = plan.Hoopings[i];
            Sewing.Write(folder, OutPaths.HoopingProof(run.Number), stream =>
                HoopingProof.Draw(stream, plan, run, lines.Path(plan, run), figures[run.Number], captions, made.Job.Strip.SewnBeforeCutting, made.Fabric.Thread.DiameterMm));
            progress?.Report(new Progress("drawing the proofs", Interlocked.Increment(ref done), all));
        });

        Sewing.ForEach(plan.Rounds.Length, cancel, i =>
        {
            Sewing.Write(folder, OutPaths.RoundProof(plan.Rounds[i].Number), stream =>
                RoundProof.Draw(stream, plan, plan.Rounds[i], figures, name => lines.Path(name.Lettered), captions, made.Fabric.Thread.DiameterMm));
            progress?.Report(new Progress("drawing the rounds", Interlocked.Increment(ref done), all));
        });

        foreach (var paper in Paper.Both)
        {
            Sewing.Write(folder, OutPaths.Template(paper.Word), stream =>
                Template.Write(stream, paper, made.Job.Title, plan, lines, traced.Mirrored));
        }

        Sewing.WriteCuttingPlan(made, folder, captions);
        if (wishes is not null)
        {
            Printing.Run(Sewing.PrintMatter(made, estimate, h => lines.Path(plan, h)), wishes, name => lines.Path(name.Lettered), folder, progress, cancel);
        }

        var found = made.Found([]);
        Sewing.Write(folder, OutPaths.Plan, stream => PlanJson.Write(stream, made.Job.Title, plan, estimate, found));
        Sewing.Write(folder, OutPaths.ReadMeFirst, stream => TemplateReadMe.Write(stream, made.Job.Title, found.Needs));
        return new Sewing.Sewn(estimate, []);
    }

    public static Estimate Reckon(Planning.Planned made, CancellationToken cancel) =>
        Reckon(made, new TraceLines(made.Plan.LetterHeightMm, made.Job.Traced.AlongOutline), cancel);

    private static Estimate Reckon(Planning.Planned made, TraceLines lines, CancellationToken cancel)
    {
        var plan = made.Plan;
        var job = KeyedWork.WithoutHoops(made.Job);
        var figures = ImmutableArray.CreateBuilder<HoopingFigures>(plan.Hoopings.Length);
        foreach (var run in plan.Hoopings)
        {
            cancel.ThrowIfCancellationRequested();
            var drawn = HoopingMeter.Measure(run, plan, lines.Path(plan, run), made.Fabric, job.Machine);
            figures.Add(TracedWork.Timed(drawn, lines.LengthMm(run), job.Traced));
        }

        double length = plan.Hoopings.Sum(lines.LengthMm);
        return Estimator.Make(job, plan, figures.ToImmutable(), null, TracedWork.Acts(length));
    }
}
