using System.Collections.Immutable;
using NameBand.Estimating;
using NameBand.Job;
using NameBand.Layout;
using NameBand.MachineLetters;
using NameBand.Output;
using NameBand.Output.Keying;
using NameBand.Output.Sheets;
using NameBand.Pipeline.Resume;
using NameBand.Reports;
using NameBand.Stitching;

namespace NameBand.Pipeline.Ways;

/// <summary>
/// The second half of the line for names that are keyed in: no needle paths, but the sheet to sew by. The proofs show a
/// similar face, stretched letter by letter to the machine's widths.
/// </summary>
internal static class KeyedSewing
{
    public static Sewing.Sewn Run(
        Planning.Planned made, KeyedPlanning.Basis basis, OutFolder folder, PrintWishes? wishes, IProgress<Progress>? progress, CancellationToken cancel)
    {
        var plan = made.Plan;
        var letters = made.Job.Letters;
        var job = JobOf(made.Job);
        var step = StepOf(plan);
        var names = NamesOf(made, basis);
        var stitcher = new Stitcher(made.Fabric, plan.LetterHeightMm);
        using var captions = Sewing.OpenCaptionFace();
        var figures = new HoopingFigures[plan.Hoopings.Length];
        int done = 0;
        int all = plan.Hoopings.Length + plan.Rounds.Length;
        Sewing.ForEach(plan.Hoopings.Length, cancel, i =>
        {
            var hooping = plan.Hoopings[i];
            var path = PathOf(made, stitcher, hooping);
            figures[i] = Timed(made, job, hooping, path, names);
            Sewing.Write(folder, OutPaths.HoopingProof(hooping.Number), stream =>
                HoopingProof.Draw(stream, plan, hooping, path, figures[i], captions, made.Job.Strip.SewnBeforeCutting, made.Fabric.Thread.DiameterMm));
            progress?.Report(new Progress("drawing the proofs", Interlocked.Increment(ref done), all));
        });

        var estimate = Total(made, job, [.. figures], names);
        var byNumber = estimate.ByNumber();
        Sewing.ForEach(plan.Rounds.Length, cancel, i =>
        {
            Sewing.Write(folder, OutPaths.RoundProof(plan.Rounds[i].Number), stream =>
                RoundProof.Draw(stream, plan, plan.Rounds[i], byNumber, name => stitcher.SewName(name.Lettered), captions, made.Fabric.Thread.DiameterMm));
            progress?.Report(new Progress("drawing the rounds", Interlocked.Increment(ref done), all));
        });

        foreach (var paper in Paper.Both)
        {
            Sewing.Write(folder, OutPaths.KeyIn(paper.Word), stream => KeyInSheet.Write(stream, paper, made.Job.Title, plan, names, step, letters));
        }

        Sewing.WriteCuttingPlan(made, folder, captions);
        if (wishes is not null)
        {
            var matter = Sewing.PrintMatter(made, estimate, h => PathOf(made, stitcher, h));
            Printing.Run(matter, wishes, name => stitcher.SewName(name.Lettered), folder, progress, cancel);
        }

        Sewing.Write(folder, OutPaths.KeyInTable, stream => KeyInCsv.Write(stream, names, step));
        var found = made.Found(stitcher.Problems);
        Sewing.Write(folder, OutPaths.Plan, stream => PlanJson.Write(stream, made.Job.Title, plan, estimate, found));
        Sewing.Write(folder, OutPaths.ReadMeFirst, stream => KeyInReadMe.Write(stream, made.Job.Title, found.Needs));
        return new Sewing.Sewn(estimate, stitcher.Problems);
    }

    /// <summary>The hours alone.</summary>
    public static Estimate Reckon(Planning.Planned made, KeyedPlanning.Basis basis, CancellationToken cancel)
    {
        var plan = made.Plan;
        var names = NamesOf(made, basis);
        var stitcher = new Stitcher(made.Fabric, plan.LetterHeightMm);
        var job = JobOf(made.Job);
        var figures = ImmutableArray.CreateBuilder<HoopingFigures>(plan.Hoopings.Length);
        foreach (var hooping in plan.Hoopings)
        {
            cancel.ThrowIfCancellationRequested();
            figures.Add(Timed(made, job, hooping, PathOf(made, stitcher, hooping), names));
        }

        return Total(made, job, figures.ToImmutable(), names);
    }

    /// <summary>What to key in for each name, in the order of sewing.</summary>
    public static ImmutableArray<KeyInName> NamesOf(Planning.Planned made, KeyedPlanning.Basis basis) =>
        KeyInPlan.Of(made.Plan, basis.At(StepOf(made.Plan)), made.Job.Letters);

    private static SizeStep StepOf(StripPlan plan) => new(plan.LetterHeightMm, plan.SpacingMm ?? 0);

    private static BandJob JobOf(BandJob job) => job.Letters.Hooped ? job : KeyedWork.WithoutHoops(job);

    private static NeedlePath PathOf(Planning.Planned made, Stitcher stitcher, Hooping hooping)
    {
        var path = stitcher.SewHooping(made.Plan, hooping);
        return made.Job.Letters.Hooped ? path : WithoutMarks(path);
    }

    private static HoopingFigures Timed(
        Planning.Planned made, BandJob job, Hooping hooping, NeedlePath path, ImmutableArray<KeyInName> names) =>
        KeyedWork.Timed(
            HoopingMeter.Measure(hooping, made.Plan, path, made.Fabric, job.Machine),
            Keys(names.Where(n => n.Hooping == hooping.Number)), Seconds(names, hooping.Number), job.Machine);

    private static Estimate Total(Planning.Planned made, BandJob job, ImmutableArray<HoopingFigures> figures, ImmutableArray<KeyInName> names)
    {
        int pieces = names.Sum(n => n.Parts.Length);
        int keys = Keys(names);
        return Estimator.Make(job, made.Plan, figures, null, KeyedWork.Acts(job, pieces, keys));
    }

    private static int Keys(IEnumerable<KeyInName> names) => names.Sum(n => n.Parts.Sum(p => Letters.Of(p.Keyed).Count));

    private static double? Seconds(ImmutableArray<KeyInName> names, int hooping)
    {
        var here = names.Where(n => n.Hooping == hooping).ToList();
        return here.All(n => n.Seconds is not null) ? here.Sum(n => n.Seconds) : null;
    }

    /// <summary>A strip fed under the presser foot has marks drawn by hand, none sewn: the path begins after the stop that follows them.</summary>
    private static NeedlePath WithoutMarks(NeedlePath path)
    {
        int stop = path.Steps.Select(s => s.Action).ToList().IndexOf(NeedleAction.Stop);
        return new NeedlePath([.. path.Steps.Skip(stop + 1)]);
    }
}
