using System.Collections.Immutable;
using NameBand.Common;
using NameBand.Estimating;
using NameBand.Job;
using NameBand.Layout;
using NameBand.Lettering;
using NameBand.Load;
using NameBand.Names;
using NameBand.Output;
using NameBand.Output.Drawing;
using NameBand.Output.Packet;
using NameBand.Pipeline.Resume;
using NameBand.Pipeline.Ways;
using NameBand.Reports;
using NameBand.Stitching;

namespace NameBand.Pipeline;

/// <summary>
/// The second half of the line: from a layout to the files. Each hooping is stitched, measured, written and let go
/// before the next, on as many cores as there are, so that memory does not grow with the number of names.
/// </summary>
internal static class Sewing
{
    public sealed record Sewn(Estimate Estimate, ImmutableArray<Problem> Problems);

    private const string CaptionFaceName = "Nunito Bold";

    /// <param name="wishes">What is printed too; null: nothing.</param>
    public static Sewn Run(
        Planning.Planned made, EarlierWorks earlier, OutFolder folder, PrintWishes? wishes, IProgress<Progress>? progress, CancellationToken cancel)
    {
        if (made.Keyed is { } keyed)
        {
            return KeyedSewing.Run(made, keyed, folder, wishes, progress, cancel);
        }

        if (made.Job.Way == Way.Traced)
        {
            return TracedSewing.Run(made, folder, wishes, progress, cancel);
        }

        var plan = made.Plan;
        var stitcher = new Stitcher(made.Fabric, plan.LetterHeightMm);
        using var captions = OpenCaptionFace();
        var works = new HoopingWorks(made, stitcher, earlier, folder, captions);
        var figures = new HoopingFigures[plan.Hoopings.Length];
        var loads = new HoopingLoad[plan.Hoopings.Length];
        int done = 0;
        int all = plan.Hoopings.Length + plan.Rounds.Length;
        var smallness = Task.Run(() => made.Smallness().ToImmutableArray(), cancel);

        ForEach(plan.Hoopings.Length, cancel, i =>
        {
            (figures[i], var path, double holes) = works.Make(plan.Hoopings[i]);
            loads[i] = new HoopingLoad(plan.Hoopings[i].Number, holes);
            WriteOtherForms(made, folder, plan.Hoopings[i], path);
            if (made.Job.Files.LoadMap)
            {
                Write(folder, OutPaths.LoadMap(plan.Hoopings[i].Number), stream =>
                    LoadMapProof.Draw(stream, plan, plan.Hoopings[i], path(), made.Fabric, LoadMeter.VerdictOf(holes, made.Fabric), captions));
            }

            if (wishes is { Playback: true })
            {
                Write(folder, OutPaths.Playback(plan.Hoopings[i].Number), stream => Playback.Write(stream, plan, plan.Hoopings[i], path(), made.Job.Show, made.Fabric.Thread.DiameterMm));
            }

            progress?.Report(new Progress("sewing the proofs", Interlocked.Increment(ref done), all));
        });

        var estimate = LoggedPace.AtOwnPace(Estimator.Make(made.Job, plan, [.. figures], made.Begun?.Log), made.Begun?.Log);
        var byNumber = estimate.ByNumber();
        ImmutableArray<Problem> problems =
            [.. works.Problems, .. stitcher.Problems, .. LoadAdvice.For(made.Fabric, loads), .. smallness.GetAwaiter().GetResult()];
        var found = made.Found(problems);
        ForEach(plan.Rounds.Length + 1, cancel, i =>
        {
            if (i == 0)
            {
                WritePapers(made, estimate, found.Needs, folder, captions);
                return;
            }

            works.MakeRound(plan.Rounds[i - 1], byNumber);
            progress?.Report(new Progress("drawing the rounds", Interlocked.Increment(ref done), all));
        });

        if (wishes is not null)
        {
            Printing.Run(PrintMatter(made, estimate, works.PathOf), wishes, name => stitcher.SewName(name.Lettered), folder, progress, cancel);
        }

        var origin = new PlanOrigin(made.Job.Lettering.Face, made.Job.Fabric, works.Origins, works.RoundOrigins);
        Write(folder, OutPaths.Plan, stream => PlanJson.Write(stream, made.Job.Title, plan, estimate, found, origin));
        return new Sewn(estimate, problems);
    }

    private static void WritePapers(Planning.Planned made, Estimate estimate, Needs needs, OutFolder folder, CaptionFace captions)
    {
        WriteCuttingPlan(made, folder, captions);
        Write(folder, OutPaths.Worksheet, stream => Worksheet.Write(stream, made.Plan, estimate));
        Write(folder, OutPaths.ReadMeFirst, stream => ReadMeFirst.Write(stream, made.Job.Title, made.Plan, made.Job.Strip.SewnBeforeCutting, needs));
    }

    /// <summary>How the cloth is cut, to scale; for every way.</summary>
    public static void WriteCuttingPlan(Planning.Planned made, OutFolder folder, CaptionFace captions) =>
        Write(folder, OutPaths.CuttingPlan, stream => CuttingPlan.Draw(
            stream, made.Plan, CutPlan.Of(made.Plan, made.Job.Shop, made.Job.Layout.IsBias), captions));

    public static PacketMatter PrintMatter(Planning.Planned made, Estimate estimate, Func<Hooping, NeedlePath> sewn) =>
        new(made.Job, made.Fabric, made.Plan, estimate, Shopping.For(made.Job, made.Plan, estimate), sewn);

    /// <summary>The needle path in the further forms that the job asks for.</summary>
    private static void WriteOtherForms(Planning.Planned made, OutFolder folder, Hooping hooping, Func<NeedlePath> path)
    {
        if (made.Job.Files.Svg)
        {
            Write(folder, OutPaths.NeedleDrawing(hooping.Number), stream =>
                NeedlePathSvg.Write(stream, made.Plan, hooping, path(), made.Fabric.Thread.DiameterMm));
        }

        if (made.Job.Files.Program)
        {
            Write(folder, OutPaths.NeedleProgram(hooping.Number), stream =>
                NeedlePathProgram.Write(stream, hooping, path(), made.Job.Program, made.Job.Machine.StitchesPerMinute));
        }
    }

    /// <summary>
    /// Does a piece of work for each number on as many cores as there are. A fault comes out as itself, not wrapped: the
    /// edge tells a full disk from a bug by its type.
    /// </summary>
    /// <param name="cores">At most so many at once.</param>
    internal static void ForEach(int count, CancellationToken cancel, Action<int> body, int? cores = null)
    {
        var options = new ParallelOptions { CancellationToken = cancel, MaxDegreeOfParallelism = cores ?? Environment.ProcessorCount };
        try
        {
            Parallel.For(0, count, options, body);
        }
        catch (AggregateException e) when (e.InnerExceptions.Count > 0)
        {
            System.Runtime.ExceptionServices.ExceptionDispatchInfo.Capture(e.InnerExceptions[0]).Throw();
        }
    }

    public static void Write(OutFolder folder, string relative, Action<Stream> write)
    {
        using var stream = folder.Create(relative);
        write(stream);
    }

    public static CaptionFace OpenCaptionFace() =>
        CaptionFace.FromFile(new FaceShelf().PathOf(CaptionFaceName)
            ?? throw new IOException("The face for the captions is missing: there is no fonts-open folder beside the program."));
}
