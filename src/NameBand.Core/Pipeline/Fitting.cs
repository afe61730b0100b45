using System.Collections.Immutable;
using NameBand.Cloth;
using NameBand.Common;
using NameBand.Estimating;
using NameBand.Garment;
using NameBand.Job;
using NameBand.Layout;
using NameBand.Lettering;
using NameBand.Lettering.Smallness;
using NameBand.Pipeline.Resume;
using NameBand.Pipeline.Ways;
using NameBand.Reports;
using NameBand.Stitching;

namespace NameBand.Pipeline;

/// <summary>Lays a job out in several ways, so that a maker can choose before deciding anything. Writes nothing.</summary>
internal static class Fitting
{
    private const int MostRounds = 6;

    public static FitReport Run(string jobFolder, IProgress<Progress>? progress, CancellationToken cancel)
    {
        var shelf = new FaceShelf();
        var read = Planning.ReadNames(jobFolder, shelf, cancel);
        var fabric = read.Value is { } known && JobCloth.Of(known.Job) is { } cloth ? known.Way.On(cloth) : null;
        var first = read.Value is { } job ? HemPlanner.Plan(job.Job) : null;
        ImmutableArray<Problem> problems = [.. read.Problems, .. first?.Problems.Where(p => p.Severity != Severity.Note) ?? []];
        if (read.Value is not { } names || fabric is null || problems.Any(p => p.Severity == Severity.CannotUse))
        {
            // Whatever keeps the job from being laid out is said as "make" says it.
            return new FitReport(
                ExitStatus.CannotUse, null, [],
                problems.Any(p => p.Severity == Severity.CannotUse) ? problems : Planning.Run(jobFolder, shelf, cancel).Problems);
        }

        var faces = names.Way.Faces(names, shelf);
        var choices = ImmutableArray.CreateBuilder<FitChoice>();
        for (int i = 0; i < faces.Length; i++)
        {
            progress?.Report(new Progress("trying faces and rounds", i, faces.Length));
            choices.AddRange(OfFace(faces[i], names, shelf, fabric, cancel));
        }

        return new FitReport(ExitStatus.AllPlaced, names.Job, choices.ToImmutable(), [.. problems.Where(p => p.Severity != Severity.Note)]);
    }

    /// <summary>One round, two and so on, as long as another one allows larger letters.</summary>
    private static IEnumerable<FitChoice> OfFace(Face face, NamesRead names, FaceShelf shelf, Fabric fabric, CancellationToken cancel)
    {
        // What is sewn is left out of it: a choice is made before anything is.
        var inFace = names with { Face = face, Lettered = names.Way.In(face, names, shelf, cancel), Sewn = null };
        double least = names.Way.LeastHeightMm(inFace.Lettered, face, fabric, shelf);
        double reached = 0;
        foreach (int rounds in Rounds(names.Job))
        {
            cancel.ThrowIfCancellationRequested();
            var job = names.Job with { Strip = names.Job.Strip with { Rounds = rounds } };
            if (HemPlanner.Plan(job).Value is not { } hem)
            {
                yield break;
            }

            if (LayOut(inFace with { Job = job.WithLanes(1) }, hem, fabric) is not { } single)
            {
                // Groups that want rounds of their own need more than these.
                continue;
            }

            var plan = single.Plan;

            // What make finds to meet its hem fits here too: nothing but the same verdict.
            double tooLong = plan.Fits.Where(f => !f.Meets).Sum(f => Math.Max(0, f.LengthMm - f.HemMm));
            if (plan.LetterHeightMm <= reached && tooLong <= 0)
            {
                yield break;
            }

            reached = tooLong > 0 ? 0 : plan.LetterHeightMm;
            var sewing = single.Way.Sew(single);
            var one = Counting.Of(single, sewing, Counting.Measure(single, sewing, null, null, cancel));
            var beside = LayOut(inFace with { Job = job.WithLanes(null) }, hem, fabric)!;
            int lanes = beside.Plan.Cloths.Select(c => c.Lanes).DefaultIfEmpty(1).Max();
            var besideSewing = lanes > 1 ? sewing.Of(beside) : null;
            var many = besideSewing is null ? one : Counting.Of(beside, besideSewing, Counting.Measure(beside, besideSewing, null, null, cancel));
            yield return new FitChoice(
                inFace.Lettered.FaceName, rounds, plan.LetterHeightMm, Math.Max(tooLong, 0), plan.Held.Length + inFace.Lettered.Held.Length,
                Hooped(plan), one.MachineMinutes.Likely, one.HandsOnMinutes.Likely,
                lanes, Hooped(lanes > 1 ? beside.Plan : plan), many.MachineMinutes.Likely, many.HandsOnMinutes.Likely)
            {
                LeastHeightMm = least,
            };
        }
    }

    /// <summary>Runs without a hoop beside hooped names are none.</summary>
    private static int Hooped(StripPlan plan) => plan.Hoopings.Count(h => !h.IsRun);

    private static LaidOut? LayOut(NamesRead names, HemPlan hem, Fabric fabric) => names.Way.LayOut(names, hem, fabric).Value is { } plan
        ? new LaidOut(names.Job, fabric, names.Face, names.Rows, plan, names.Way) : null;

    /// <summary>Rounds measured one by one are as many as were measured; a hem of unknown turn has one.</summary>
    private static IEnumerable<int> Rounds(BandJob job) =>
        job.Hem.Lengths.Length > 1 ? [job.Hem.Lengths.Length]
        : job.Hem.Skirt is null && job.Hem.Turn is null ? [1]
        : Enumerable.Range(1, MostRounds);

    /// <summary>Strips side by side; without a hoop, what is written: there is no field that could hold more of them.</summary>
    private static BandJob WithLanes(this BandJob job, int? lanes) =>
        job.IsHooped ? job with { Layout = job.Layout with { Lanes = lanes, AreLanesFree = false } } : job;
}
