using System.Collections.Immutable;
using NameBand.Common;
using NameBand.Estimating;
using NameBand.Layout;
using NameBand.Lettering.Faces;
using NameBand.Load;
using NameBand.Output;
using NameBand.Output.Drawing;
using NameBand.Output.Packet;
using NameBand.Pipeline.Stages;
using NameBand.PlanFile;
using NameBand.Reports;
using NameBand.Stitching;

namespace NameBand.Pipeline;

/// <summary>
/// The last stages: make the sewing of each piece, count the work, write. Each hooping is sewn, measured, written and let
/// go before the next, on as many cores as there are, so that memory does not grow with the number of names.
/// </summary>
internal static class Sewing
{
    public sealed record Sewn(Estimate Estimate, ImmutableArray<Problem> Problems)
    {
        /// <summary>What was let out, where the last gate held something back; null: all of it.</summary>
        public LaidOut? LetOut { get; init; }

        public ImmutableArray<Verdict> Verdicts { get; init; } = [];

        /// <summary>Sheets of the paper rehearsal, by the word of the paper; empty where nothing is printed.</summary>
        public ImmutableSortedDictionary<string, int> RehearsalSheets { get; init; } = ImmutableSortedDictionary<string, int>.Empty;
    }

    private const string CaptionFamily = "Nunito";
    private const string CaptionFaceName = CaptionFamily + " Bold";

    /// <param name="wishes">What is printed too; null: nothing.</param>
    public static Sewn Run(
        LaidOut laid, PreviousOutput earlier, OutFolder folder, PrintWishes? wishes, IProgress<Progress>? progress,
        CancellationToken cancel)
    {
        var (made, plan) = (laid, laid.Plan);
        var sewing = made.Way.Sew(made);
        using var captions = OpenCaptionFace();
        var works = new HoopingWriter(made, sewing, earlier, folder, captions);
        var figures = new HoopingFigures[plan.Hoopings.Length];
        var loads = new HoopingLoad[plan.Hoopings.Length];
        var doubts = Task.Run(() => laid.Way.Doubts(laid), cancel);
        int done = 0;
        int all = plan.Hoopings.Length + plan.Rounds.Length;
        Cores.ForEach(plan.Hoopings.Length, cancel, i =>
        {
            var hooping = plan.Hoopings[i];
            (figures[i], var path, loads[i]) = works.Make(hooping);
            if (hooping.HasNeedlePath)
            {
                WriteOtherForms(made, folder, hooping, path);
                WritePictures(made, folder, hooping, (path, loads[i].HolesPerMm2), (wishes, captions));
            }

            progress?.Report(new Progress("sewing the proofs", Interlocked.Increment(ref done), all));
        });

        var estimate = Counting.Of(made, sewing, [.. figures]);
        var gate = LettingOut.Run(laid, estimate, folder);
        var drawing = works;
        if (!gate.Withdrawn.IsEmpty)
        {
            (made, plan) = (gate.Made, gate.Made.Plan);
            sewing = sewing.Of(made);
            drawing = new HoopingWriter(made, sewing, earlier, folder, captions);
            estimate = Counting.Of(made, sewing, [.. figures.Where(f => !gate.Withdrawn.Contains(f.Number))]);
        }

        var byNumber = estimate.ByNumber();
        var withPaths = plan.OfNeedlePaths.Hoopings.Select(h => h.Number).ToHashSet();
        HoopingLoad[] judged = [.. loads.Where(l => withPaths.Contains(l.Hooping))];
        ImmutableArray<Problem> problems =
        [
            .. gate.Problems, .. works.Problems, .. sewing.Problems,
            .. LoadAdvice.For(made.Fabric, judged),
            .. doubts.GetAwaiter().GetResult(),
            .. ApprovedLooks.Check(made, sewing),
        ];
        var found = made.Found(problems, LoadAdvice.All(made.Fabric, judged));
        Cores.ForEach(plan.Rounds.Length + 1, cancel, i =>
        {
            if (i == 0)
            {
                Write(folder, OutPaths.CuttingPlan, stream => CuttingPlan.Draw(
                    stream, plan, CutPlan.Of(plan, made.Job.Shop, made.Job.Layout.IsBias), captions));
                foreach (var (file, write) in sewing.Papers(estimate))
                {
                    Write(folder, file, write);
                }

                Write(folder, OutPaths.ReadMeFirst, stream => ReadMePage.Write(stream, made.Job.Title, found.Needs, sewing.ReadMe));

                return;
            }

            drawing.MakeRound(plan.Rounds[i - 1], byNumber);
            progress?.Report(new Progress("drawing the rounds", Interlocked.Increment(ref done), all));
        });

        var rehearsal = ImmutableSortedDictionary<string, int>.Empty;
        if (wishes is not null)
        {
            var matter = PrintMatter(made, estimate, sewing.PathOf) with
            {
                Verdicts = found.Verdicts,
                Tonight = Evenings.Of(made, sewing, estimate).Tonight,
                Shares = Evenings.Shares(made, estimate),
            };
            rehearsal = Printing.Run(matter, wishes, name => sewing.PathOf(name), folder, progress, cancel);
        }

        var origin = new PlanOrigin(
            made.Job.Lettering.Face, made.Job.Fabric, works.Origins, drawing.RoundOrigins)
        { Job = made.Job, Styles = works.Styles };
        Write(folder, OutPaths.Plan, stream => PlanJson.Write(stream, made.Job.Title, plan, estimate, found, origin));
        return new Sewn(
            estimate, problems)
        { LetOut = gate.Withdrawn.IsEmpty ? null : made, Verdicts = found.Verdicts, RehearsalSheets = rehearsal };
    }

    public static PacketMatter PrintMatter(LaidOut made, Estimate estimate, Func<Hooping, NeedlePath> sewn) =>
        new(made.Job, made.Fabric, made.Plan, estimate, Shopping.For(made.Job, made.Plan, estimate), sewn)
        {
            EaseMends = made.EaseMends,
        };

    private static void WritePictures(
        LaidOut made, OutFolder folder, Hooping hooping, (Func<NeedlePath> Path, double HolesPerMm2) sewn,
        (PrintWishes? Wishes, CaptionFace Captions) with)
    {
        var (plan, fabric) = (made.Plan, made.Fabric);
        if (made.Job.Files.LoadMap)
        {
            Write(folder, OutPaths.LoadMap(hooping.Number), stream =>
                LoadMapProof.Draw(
                    stream, plan, hooping, sewn.Path(), (fabric, LoadMeter.VerdictOf(sewn.HolesPerMm2, fabric)), with.Captions));
        }

        if (with.Wishes is { Playback: true })
        {
            Write(folder, OutPaths.Playback(hooping.Number), stream =>
                Playback.Write(stream, plan, hooping, sewn.Path(), made.Job.Show, fabric.Thread.DiameterMm));
        }
    }

    /// <summary>The needle path in the further forms that the job asks for.</summary>
    private static void WriteOtherForms(LaidOut made, OutFolder folder, Hooping hooping, Func<NeedlePath> path)
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

    public static void Write(OutFolder folder, string relative, Action<Stream> write)
    {
        using var stream = folder.Create(relative);
        write(stream);
    }

    public static CaptionFace OpenCaptionFace() =>
        CaptionFace.FromFile(new FaceShelf().PathOf(CaptionFaceName)
            ?? throw new IOException("The face for the captions is missing: there is no fonts-open folder beside the program."));
}
