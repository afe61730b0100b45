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
    private const int MostFaces = 12;

    public static FitReport Run(string jobFolder, IProgress<Progress>? progress, CancellationToken cancel)
    {
        var shelf = new FaceShelf();
        var read = Planning.ReadNames(jobFolder, shelf, cancel);
        var fabric = read.Value is { } known ? JobCloth.Of(known.Job) : null;
        var first = read.Value is { } job ? HemPlanner.Plan(job.Job) : null;
        ImmutableArray<Problem> problems = [.. read.Problems, .. first?.Problems.Where(p => p.Severity != Severity.Note) ?? []];
        if (read.Value is not { } names || fabric is null || problems.Any(p => p.Severity == Severity.CannotUse))
        {
            // Whatever keeps the job from being laid out is said as "make" says it.
            return new FitReport(
                ExitStatus.CannotUse, null, [],
                problems.Any(p => p.Severity == Severity.CannotUse) ? problems : Planning.Run(jobFolder, shelf, cancel).Problems);
        }

        var faces = Faces(names, shelf);
        var choices = ImmutableArray.CreateBuilder<FitChoice>();
        for (int i = 0; i < faces.Length; i++)
        {
            progress?.Report(new Progress("trying faces and rounds", i, faces.Length));
            choices.AddRange(OfFace(faces[i], names, shelf, fabric, cancel));
        }

        return new FitReport(ExitStatus.AllPlaced, names.Job, choices.ToImmutable(), [.. problems.Where(p => p.Severity != Severity.Note)]);
    }

    /// <summary>The job's own face, and those of the shelf that are made for most names; a machine's own letters have one face alone.</summary>
    private static ImmutableArray<Face> Faces(Planning.NamesRead names, FaceShelf shelf) => names.Keyed is not null ? [names.Face] :
    [
        .. shelf.Cards.Where(c => c.Fallback is null && c.Name != names.Face.Name)
            .Select(c => shelf.Open(c).Value).OfType<Face>()
            .OrderBy(f => f.Name, StringComparer.Ordinal)
            .Prepend(names.Face)
            .Take(MostFaces),
    ];

    /// <summary>One round, two and so on, as long as another one allows larger letters.</summary>
    private static IEnumerable<FitChoice> OfFace(Face face, Planning.NamesRead names, FaceShelf shelf, Fabric fabric, CancellationToken cancel)
    {
        var inFace = names.Keyed is not null ? names : names with
        {
            Face = face,
            Lettered = GroupLetterer.Letter(names.Job, names.Rows, face, shelf, cancel).Value!,
        };
        double least = LeastHeightMm(names.Job, inFace.Lettered.Names, face, shelf, fabric);
        double reached = 0;
        foreach (int rounds in Rounds(names.Job))
        {
            cancel.ThrowIfCancellationRequested();
            var job = names.Job with { Strip = names.Job.Strip with { Rounds = rounds } };
            if (HemPlanner.Plan(job).Value is null)
            {
                yield break;
            }

            if (Lay(inFace, job.WithLanes(1)) is not { } made)
            {
                // Groups that want rounds of their own need more than these.
                continue;
            }

            var plan = made.Plan;
            double tooLong = plan.Rounds.Sum(r => r.LengthMm - r.HemMm);
            if (plan.LetterHeightMm <= reached && tooLong <= 0)
            {
                yield break;
            }

            reached = tooLong > 0 ? 0 : plan.LetterHeightMm;
            var beside = Lay(inFace, job.WithLanes(null))!;
            var one = Reckoning.EstimateOf(made, null, cancel);
            int lanes = beside.Plan.Cloths.Select(c => c.Lanes).DefaultIfEmpty(1).Max();
            var many = lanes > 1 ? Reckoning.EstimateOf(beside, null, cancel) : one;
            yield return new FitChoice(
                names.Keyed is null ? face.Name : inFace.Lettered.FaceName, rounds, plan.LetterHeightMm, Math.Max(tooLong, 0),
                plan.Held.Length + inFace.Lettered.Held.Length, plan.Hoopings.Length, one.MachineMinutes.Likely, one.HandsOnMinutes.Likely,
                lanes, lanes > 1 ? beside.Plan.Hoopings.Length : plan.Hoopings.Length, many.MachineMinutes.Likely, many.HandsOnMinutes.Likely)
            {
                LeastHeightMm = least,
            };
        }
    }

    /// <summary>Laid out by the job's own way, as make lays it out with nothing sewn yet.</summary>
    private static Planning.Planned? Lay(Planning.NamesRead names, BandJob job) =>
        Planning.Lay(Result.Of(names with { Job = job, Sewn = null, SewnThenChanged = null })).Value;

    private static double LeastHeightMm(BandJob job, IEnumerable<LetteredName> names, Face face, FaceShelf shelf, Fabric fabric)
    {
        var rule = new SmallnessRule(fabric);
        return job.Way != Way.NeedlePath ? 0
            : FinestLetters.Of(names, face.Name, shelf).Select(l => rule.LeastHeightMm(l.Figures)).DefaultIfEmpty(0).Max();
    }

    /// <summary>Rounds measured one by one are as many as were measured; a hem of unknown turn has one.</summary>
    private static IEnumerable<int> Rounds(BandJob job) =>
        job.Hem.Lengths.Length > 1 ? [job.Hem.Lengths.Length]
        : job.Hem.Skirt is null && job.Hem.Turn is null ? [1]
        : Enumerable.Range(1, MostRounds);

    /// <summary>Strips side by side; without a hoop, what is written: there is no field that could hold more of them.</summary>
    private static BandJob WithLanes(this BandJob job, int? lanes) =>
        job.Way == Way.NeedlePath || (job.Way == Way.MachineLetters && job.Letters.Hooped)
            ? job with { Layout = job.Layout with { Lanes = lanes } } : job;
}
