using System.Collections.Immutable;
using NameBand.Cloth;
using NameBand.Common;
using NameBand.Garment;
using NameBand.Job;
using NameBand.Layout;
using NameBand.Layout.Drift;
using NameBand.Layout.Resuming;
using NameBand.Lettering;
using NameBand.Lettering.Smallness;
using NameBand.Names;
using NameBand.Output;
using NameBand.Pipeline.Resume;
using NameBand.Pipeline.Ways;
using NameBand.Reports;
using NameBand.Stitching;

namespace NameBand.Pipeline;

/// <summary>The first half of the line: from a job's folder to a layout. Writes nothing.</summary>
internal static class Planning
{
    /// <summary>A checked list with its faces: what the lists come to once the letters have been looked up.</summary>
    public sealed record NamesRead(BandJob Job, Corrections Corrections, Face Face, LetteredList Lettered, NameList Rows)
    {
        /// <summary>What is known of the machine’s own letters, where they are used.</summary>
        public KeyedPlanning.Basis? Keyed { get; init; }

        /// <summary>What to go on from, once something has been sewn.</summary>
        public (Begun Begun, Continuation From)? Sewn { get; init; }

        /// <summary>For each sewn name that was changed in the list since: what the list says. Null until something has been sewn.</summary>
        public ImmutableDictionary<RowRef, string>? SewnThenChanged { get; init; }
    }

    /// <param name="Rows">Every row with what finally became of it.</param>
    public sealed record Planned(BandJob Job, Fabric Fabric, Face Face, NameList Rows, StripPlan Plan)
    {
        public KeyedPlanning.Basis? Keyed { get; init; }

        /// <summary>Null until something has been sewn.</summary>
        public Begun? Begun { get; init; }

        /// <inheritdoc cref="NamesRead.SewnThenChanged"/>
        public ImmutableDictionary<RowRef, string>? SewnThenChanged { get; init; }

        /// <summary>What was found on the way here.</summary>
        public ImmutableArray<Problem> Problems { get; init; } = [];

        /// <summary>What is to stand in the plan of all that was found, here and while it was sewn.</summary>
        public PlanFound Found(IEnumerable<Problem> whileSewing) => new(Rows.Rows, Needs.Of(Rows, [.. Problems, .. whileSewing]));

        /// <summary>What a sewn hooping was sewn in, where the rest of the plan has another face, height or cloth.</summary>
        public SewnAs? SewnAs(int hooping) => Begun is not null && Begun.IsSewn(hooping) && Begun.SewnAs(hooping) is { } sewn
            && sewn != new SewnAs(Job.Lettering.Face, Job.Fabric, Plan.LetterHeightMm) ? sewn : null;

        /// <summary>Letters still to be sewn from needle paths that are too small for thread and needle.</summary>
        public IEnumerable<Problem> Smallness() => SmallnessAdvice.For(
            Fabric, Plan.LetterHeightMm,
            Plan.Hoopings.Where(h => Begun is null || !Begun.IsSewn(h.Number)).SelectMany(h => h.Segments)
                .SelectMany(s => s.Segment.NamesAndMotifs).Where(n => !n.IsGone).Select(n => n.Lettered),
            Face.Name, new FaceShelf());

        /// <summary>What is sewn lies on the cloth that it was sewn on, whatever the rest is planned for.</summary>
        public Fabric ClothOf(int hooping) =>
            SewnAs(hooping) is { } sewn ? JobCloth.Of(Job with { Fabric = sewn.Fabric }) ?? Fabric : Fabric;

        /// <summary>The needle path that a sewn hooping was sewn from; null where it is not sewn or its file is not whole.</summary>
        public NeedlePath? KeptPath(int hooping) =>
            Begun is not null && Begun.IsSewn(hooping) && Begun.Kept(hooping).Path is { } kept ? NeedlePathReading.Read(kept) : null;
    }

    public static Result<Planned> Run(string jobFolder, FaceShelf shelf, CancellationToken cancel) =>
        Lay(ReadNames(jobFolder, shelf, cancel));

    /// <summary>Lays out names that have been read.</summary>
    public static Result<Planned> Lay(Result<NamesRead> read)
    {
        if (read.Value is not { } names || !read.IsUsable)
        {
            return Result.Fail<Planned>(read.Problems);
        }

        var fabric = JobCloth.Of(names.Job);
        var hem = HemPlanner.Plan(names.Job);
        ImmutableArray<Problem> problems = [.. read.Problems, .. hem.Problems, .. UnknownFabric(names.Job, fabric), .. SettledStitches.Notes(names.Job, fabric)];
        if (fabric is null || hem.Value is null || problems.Any(p => p.Severity == Severity.CannotUse))
        {
            return Result.Fail<Planned>(problems);
        }

        if (names.Job.Way != Way.NeedlePath)
        {
            // Built-in letters are measured as they come out, and a line is traced where it is: nothing is added to widths.
            fabric = fabric with { PullCompensationMm = 0 };
        }

        var drift = names.Job.Way == Way.NeedlePath ? DriftFile.Read(names.Job.Folder) : Result.Of(new DriftFile.Ends([]));
        var (ends, aside) = names.Sewn is { Begun: var begun } && drift.Value is { } said
            ? SpoiledDrift.Split(said.All, begun.Plan, begun.Log) : (drift.Value?.All ?? [], []);
        problems = [.. problems, .. drift.Problems, .. UnsewnDrift(drift.Value, names), .. aside];
        if (drift.Value is null || !drift.IsUsable)
        {
            return Result.Fail<Planned>(problems);
        }

        var laid = names.Keyed is { } keyed ? KeyedPlanning.Lay(names.Job, EarlierEnds.KeepMade(hem.Value, names.Job.Folder), keyed, fabric)
            : names.Job.Way == Way.Traced ? TracedSewing.Lay(names.Job, hem.Value, names.Lettered, fabric)
            : names.Sewn is { } sewn ? LayoutResumer.Plan(names.Job, EarlierEnds.Keep(hem.Value, sewn.Begun.Plan), names.Lettered, fabric, sewn.From with { Ends = ends })
            : LayoutPlanner.Plan(names.Job, hem.Value, names.Lettered, fabric);
        problems = [.. problems, .. laid.Problems, .. laid.Value is { } whole ? RoundEasing.Check(whole) : []];
        return laid.Value is { } plan
            ? Result.Of(
                new Planned(names.Job, fabric, names.Face, Merge(names.Rows, plan.Held), names.Keyed is null ? PlanSnap.Apply(plan) : plan)
                {
                    Keyed = names.Keyed,
                    Begun = names.Sewn?.Begun,
                    SewnThenChanged = names.SewnThenChanged,
                    Problems = problems,
                },
                problems)
            : Result.Fail<Planned>(problems);
    }

    public static Result<NamesRead> ReadNames(string jobFolder, FaceShelf shelf, CancellationToken cancel)
    {
        var log = Task.Run(() => Begun.Read(jobFolder), cancel);
        var job = JobReader.Read(jobFolder);
        if (job.Value is null || !job.IsUsable)
        {
            return Result.Fail<NamesRead>(job.Problems);
        }

        if (job.Value is { Way: Way.NeedlePath, Lettering: { AgreedFirst: true, Order: NameOrder.BestFit } })
        {
            job = job with { Problems = [.. job.Problems, BestFitBeforeAgreed] };
        }

        var (begun, begunProblems) = job.Value.Way == Way.NeedlePath ? log.GetAwaiter().GetResult() : (null, []);
        if (begun is not null)
        {
            var (settledJob, notes) = begun.Settle(job.Value);
            job = Result.Of(settledJob, [.. job.Problems, .. notes]);
        }

        var corrections = Corrections.Read(job.Value!.Folder);
        var face = shelf.Open(job.Value.Lettering.Face, job.Value.Folder);
        var list = corrections.Value is { } settled
            ? ListReader.Read(job.Value, settled)
            : Result.Fail<NameList>();
        ImmutableArray<Problem> problems = [.. job.Problems, .. begunProblems, .. corrections.Problems, .. list.Problems, .. face.Problems];
        if (list.Value is null || face.Value is null || problems.Any(p => p.Severity == Severity.CannotUse))
        {
            return Result.Fail<NamesRead>(problems);
        }

        cancel.ThrowIfCancellationRequested();
        var checkedJob = job.Value;
        var approvals = checkedJob.Lettering.AgreedFirst ? Approvals.Of(checkedJob.Folder, list.Value, corrections.Value!) : null;
        NameList InOrder(NameList names) => approvals is null ? names : Approvals.AgreedFirst(names, approvals);
        if (job.Value.Way == Way.MachineLetters)
        {
            var keyed = KeyedPlanning.ReadNames(job.Value, corrections.Value!, face.Value, InOrder(list.Value), shelf);
            return keyed with { Problems = [.. problems, .. keyed.Problems] };
        }

        var matched = begun?.Match(list.Value, job.Value.Groups);
        var lettered = GroupLetterer.Letter(job.Value, InOrder(matched?.Rows ?? list.Value), face.Value, shelf, cancel);
        if (lettered.Value is not { } letters)
        {
            return Result.Fail<NamesRead>([.. problems, .. lettered.Problems]);
        }

        var asked = AlsoForLetters(
            matched?.Rows ?? list.Value, letters.Held, names => LetterAlone(job.Value, names, face.Value, shelf, cancel));
        var rows = Merge(asked, letters.Held);
        var asSewn = begun is null ? null : new SewnLettering(job.Value, begun, shelf, cancel);
        if (asSewn is not null && matched is not null)
        {
            letters = letters with { Names = asSewn.Letter(letters.Names, n => matched.Before.GetValueOrDefault(n.Name.Row)) };
        }

        return Result.Of(
            new NamesRead(job.Value!, corrections.Value!, face.Value, letters, rows)
            {
                Sewn = begun is null || matched is null ? null : (begun, begun.From(job.Value, matched, LetterGone(job.Value, matched, face.Value, shelf, asSewn!, cancel))),
                SewnThenChanged = matched?.Changed,
            },
            [.. problems, .. matched?.Problems ?? [], .. lettered.Problems]);
    }

    private static readonly Problem BestFitBeforeAgreed = Problem.Note(
        new Where("job.json", Key: "lettering.agreedFirst"),
        "“bestFit” puts the names in the order of the fewest hoopings, so names that are not agreed to do not come last.",
        "Take the order “listed” or “alphabetical” if they are to be sewn last, or take lettering.agreedFirst out.");

    private static ImmutableArray<LetteredName> LetterGone(BandJob job, MatchedList matched, Face face, FaceShelf shelf, SewnLettering asSewn, CancellationToken cancel)
    {
        var names = new NameList([], [.. matched.Gone.Select(g => new Name(g.Text, g.Row) { Group = g.Group })]);
        var lettered = names.Names.IsEmpty ? [] : LetterAlone(job, names, face, shelf, cancel)?.Names ?? [];
        return asSewn.Letter(lettered, n => matched.Gone.FirstOrDefault(g => g.Row == n.Name.Row && g.Text == n.Name.Text));
    }

    /// <summary>Names without what is sewn beside them: headings.</summary>
    private static LetteredList? LetterAlone(BandJob job, NameList names, Face face, FaceShelf shelf, CancellationToken cancel)
    {
        var plain = job with { Groups = job.Groups with { All = [.. job.Groups.All.Select(g => g with { Heading = null })] } };
        return GroupLetterer.Letter(plain, names, face, shelf, cancel).Value;
    }

    /// <summary>
    /// Held rows that would be held for their letters as well say so at once: one answer settles both, where two after each
    /// other would undo one another.
    /// </summary>
    /// <param name="letter">Letters names as they would be sewn.</param>
    public static NameList AlsoForLetters(NameList list, ImmutableArray<HeldRow> held, Func<NameList, LetteredList?> letter)
    {
        var known = held.Select(h => h.Row).ToHashSet();
        var asked = list.Rows.Where(r => r.Outcome == RowOutcome.Held && r.HeldFor is HeldFor.Doubt or HeldFor.Wish && !known.Contains(r.Row)
            && r.WouldBe.Length is > 0 and <= NameText.Longest).ToList();
        var names = new NameList([], [.. asked.Select(r => new Name(r.WouldBe, r.Row) { Group = r.Group })]);
        var both = (names.Names.IsEmpty ? null : letter(names)?.Held)?.ToDictionary(h => h.Row);
        return both is not { Count: > 0 } ? list : list with
        {
            Rows = [.. list.Rows.Select(r => both.TryGetValue(r.Row, out var why)
                ? r.HeldBecause(HeldFor.Letters, $"{r.Reason}; and {why.Reason}", why.Offer)
                : r)],
        };
    }

    /// <summary>Rows that a later room holds back lose their place among the names.</summary>
    public static NameList Merge(NameList list, ImmutableArray<HeldRow> held)
    {
        if (held.IsEmpty)
        {
            return list;
        }

        var reasons = held.ToDictionary(h => h.Row);
        return new NameList(
            [.. list.Rows.Select(r => reasons.TryGetValue(r.Row, out var why) ? r.HeldBecause(why.IsForItsSize ? HeldFor.Size : HeldFor.Letters, why.Reason, why.Offer) : r)],
            [.. list.Names.Where(n => !reasons.ContainsKey(n.Row))]);
    }

    private static IEnumerable<Problem> UnsewnDrift(DriftFile.Ends? ends, NamesRead names)
    {
        if (ends is { All.IsEmpty: false } && names.Sewn is null && names.Job.Way == Way.NeedlePath)
        {
            yield return Problem.NeedsPerson(
                new Where(DriftFile.FileName), "It says where sewn names ended, and no hooping is said to be sewn.",
                "Mark what is sewn with the command “sewn” first; until then the file changes nothing.");
        }
    }

    private static IEnumerable<Problem> UnknownFabric(BandJob job, Fabric? fabric)
    {
        if (fabric is null)
        {
            string known = string.Join(", ", FabricTable.All.Select(f => f.Name));
            string near = NearestWord.Find(job.Fabric, FabricTable.All.Select(f => f.Name)) is { } word ? $"Did you mean “{word}”? " : "";
            yield return Problem.CannotUse(
                new Where("job.json", Key: "fabric"),
                $"There is no cloth “{PlainText.Short(job.Fabric)}” in the table of cloths.",
                $"{near}The table has: {known}.");
        }
    }
}
