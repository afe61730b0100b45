using System.Collections.Immutable;
using NameBand.Choosing;
using NameBand.Cloth;
using NameBand.Common;
using NameBand.Garment;
using NameBand.Job;
using NameBand.Layout;
using NameBand.Lettering.Faces;
using NameBand.Names;
using NameBand.Output;
using NameBand.Pipeline.Resume;
using NameBand.Pipeline.Stages;
using NameBand.Pipeline.Ways;

namespace NameBand.Pipeline;

/// <summary>The first stages of every verb: read, check, letter, lay out. Writes nothing.</summary>
internal static class Planning
{
    /// <param name="kept">What the plan before chose where the job leaves it free; null: as the folder <c>out</c> of the job has
    /// it.</param>
    public static Result<LaidOut> Run(string jobFolder, FaceShelf shelf, CancellationToken cancel, Func<KeptChoices?>? kept = null)
    {
        var warming = Task.CompletedTask;
        try
        {
            return Lay(ReadNames(jobFolder, shelf, cancel, begun: job => warming = JitWarmUp.LayOut(job)), kept);
        }
        finally
        {
            // Nothing goes on reading in the job's folder when the command is done, or given up.
            Task.WhenAny(warming).GetAwaiter().GetResult();
        }
    }

    /// <summary>Reads and checks the lists of a job, and letters their names.</summary>
    /// <param name="given">The job as it is to be taken; null: as its job.json has it.</param>
    /// <param name="begun">Told of the job before its lists are read.</param>
    public static Result<NamesRead> ReadNames(
        string jobFolder, FaceShelf shelf, CancellationToken cancel, Result<BandJob>? given = null, Action<BandJob>? begun = null)
    {
        var log = Task.Run(() => SewingProgress.Read(jobFolder), cancel);
        var job = given ?? JobReader.Read(jobFolder);
        if (!job.IsUsable)
        {
            return Result.Fail<NamesRead>(job.Problems);
        }

        begun?.Invoke(job.Value);
        var way = WayChoice.Of(job.Value.Ways);
        var (sewn, begunProblems) = log.GetAwaiter().GetResult();
        if (sewn is not null)
        {
            var (settledJob, notes) = sewn.Settle(job.Value);
            job = Result.Of(settledJob, [.. job.Problems, .. notes]);
        }

        var corrections = Corrections.Read(job.Value!.Folder);
        var face = shelf.Open(job.Value.Lettering.Face, job.Value.Folder);
        var list = corrections.Value is { } settled
            ? Read(job.Value, settled)
            : Result.Fail<NameList>();
        ImmutableArray<Problem> problems = [.. job.Problems, .. begunProblems, .. corrections.Problems, .. list.Problems, .. face.Problems];
        if (list.Value is null || face.Value is null || problems.Any(p => p.Severity == Severity.CannotUse))
        {
            return Result.Fail<NamesRead>(problems);
        }

        cancel.ThrowIfCancellationRequested();
        var approvals = job.Value.Lettering.AgreedFirst ? Approvals.Of(job.Value.Folder, list.Value, corrections.Value!) : null;
        var wished = NameWishing.Applied(job.Value.Wishes, list.Value);
        problems = [.. problems, .. wished.Problems];
        var matched = sewn?.Match(wished.Value!, job.Value.Groups) is { } found ? new SewnWishes(sewn, job.Value).Settled(found) : null;
        var rows = matched?.Rows ?? wished.Value!;
        var inOrder = approvals is null ? rows : Approvals.AgreedFirst(rows, approvals);
        var lettered = way.Letter(new CheckedList(job.Value, corrections.Value!, face.Value, inOrder, sewn, matched), shelf, cancel);
        return lettered with { Problems = [.. problems, .. matched?.Problems ?? [], .. lettered.Problems] };
    }

    /// <summary>The lists without those whose owners answered no.</summary>
    private static Result<NameList> Read(BandJob job, Corrections corrections)
    {
        var list = ListReader.Read(job, corrections);
        var heeded = list.Value is { } names ? OwnersNo.Heeded(job.Folder, names) : list;
        return list.Value is null ? list : Result.Of(heeded.Value!, [.. list.Problems, .. heeded.Problems]);
    }

    /// <summary>Lays out names that have been read.</summary>
    /// <param name="findsMends">Whether mends are looked for where a strip cannot be attached; they show in nothing that is laid
    /// out.</param>
    /// <inheritdoc cref="Run"/>
    public static Result<LaidOut> Lay(Result<NamesRead> read, Func<KeptChoices?>? kept = null, bool findsMends = true)
    {
        if (read.Value is not { } names || !read.IsUsable)
        {
            return Result.Fail<LaidOut>(read.Problems);
        }

        var known = JobCloth.Of(names.Job);
        var hem = HemPlanner.Plan(names.Job);
        ImmutableArray<Problem> problems = [.. read.Problems, .. hem.Problems, .. UnknownFabric(names.Job, known)];
        if (known is null || hem.Value is null || problems.Any(p => p.Severity == Severity.CannotUse))
        {
            return Result.Fail<LaidOut>(problems);
        }

        var fabric = names.Way.On(known);
        kept ??= () => PreviousOutput.KeptIn(Path.Combine(names.Job.Folder, OutFolder.Name));
        (names, var laid) = FreeLaying.LayOut(names, hem.Value, fabric, kept);
        if (laid.Value is not { } plan)
        {
            return Result.Fail<LaidOut>([.. problems, .. laid.Problems]);
        }

        plan = NameNumbers.Keep(
            plan, names.Job, names.Sewn?.Begun.Plan) with
        { Colours = new PlanColours(names.Job.Colours, names.Job.Groups) };
        plan = names.Sewn is null ? ClothTurns.Ordered(plan) : plan;
        plan = plan with { Threads = ThreadTurns.Of(plan, names.Sewn?.Begun.SewnThreads) };
        ImmutableArray<Problem> settled = [.. HemFits.Settled(plan, laid.Problems)];
        var mends = findsMends ? EaseMends.For(names with { Beside = null }, fabric, plan, [.. hem.Problems, .. settled]) : [];
        problems = [.. problems, .. settled, .. RoundEasing.Check(plan, mends), .. ThreadColours.Check(names.Job, plan),
            .. Latecomers.Check(plan, names.Sewn?.Begun.Log), .. LateJob.Told(names.Job.Folder, names.Rows), .. WishAdvice.For(
                names, plan)];
        return Result.Of(
            new LaidOut(names.Job, fabric, names.Face, HeldRows.Merge(names.Rows, plan.Held), plan, names.Way)
            {
                Begun = names.Sewn?.Begun,
                SewnThenChanged = names.SewnThenChanged,
                Problems = problems,
                EaseMends = mends,
            },
            problems);
    }

    private static IEnumerable<Problem> UnknownFabric(BandJob job, Fabric? fabric)
    {
        if (fabric is null)
        {
            string known = string.Join(", ", FabricTable.All.Select(f => f.Name.English));
            Said near = NearestWord.Find(job.Fabric, FabricTable.All.Select(f => f.Name.English)) is { } word ? (Said)$"Did you mean “{word}”? " : "";
            yield return Problem.CannotUse(
                new Where("job.json", Key: "fabric"),
                $"There is no cloth “{PlainText.Short(job.Fabric)}” in the table of cloths.",
                $"{near}The table has: {known}.");
        }
    }
}
