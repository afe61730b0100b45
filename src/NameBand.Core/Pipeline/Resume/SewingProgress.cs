using System.Collections.Immutable;
using NameBand.Common;
using NameBand.Job;
using NameBand.Layout.Resuming;
using NameBand.Lettering;
using NameBand.Names;
using NameBand.Output;

namespace NameBand.Pipeline.Resume;

/// <summary>What has been sewn of a job so far, and the plan it was sewn from.</summary>
internal sealed record SewingProgress(SewingLog Log, EarlierPlan Plan, SewnArchive Archive)
{
    private const string JobFile = "job.json";

    /// <summary>Reads how far a job is sewn.</summary>
    /// <returns>Null where nothing is sewn yet, or where a problem says why it cannot be told.</returns>
    public static (SewingProgress? Begun, ImmutableArray<Problem> Problems) Read(string jobFolder)
    {
        var log = SewingLogFile.Read(jobFolder);
        if (!log.HasBegun)
        {
            return (null, log.Problems);
        }

        var archive = new SewnArchive(jobFolder);
        var plan = archive.Plan(log);
        if (plan.Value is not { } earlier)
        {
            return (null, [.. log.Problems, .. plan.Problems, Problem.CannotUse(
                new Where(SewingLogFile.FileName),
                    "The log says that something is sewn, and the plan it was sewn from cannot be read, so NameBand does not know where "
                    + "it lies.",
                $"Put the folder “{SewnFolder.Name}” back from a copy. If nothing is sewn after all, move {SewingLogFile.FileName} out of the job's folder.")]);
        }

        var known = earlier.Hoopings.Select(h => h.Number).ToHashSet();
        var strangers = log.Sewn.Where(h => !known.Contains(h)).Select(h => Problem.NeedsPerson(
            new Where(SewingLogFile.FileName),
            $"The log says that hooping {h} is sewn, and the plan has no hooping {h}.",
            "Perhaps its number was mistyped: say it again with the right one, and mark this one with --mistake."));
        var numbers = earlier.Names.Select(n => n.Order).ToHashSet();
        var unknown = log.OfNames.Sewn.Where(n => !numbers.Contains(n)).Select(n => Problem.NeedsPerson(
            new Where(SewingLogFile.FileName),
            $"The log says that name n{n} is sewn, and the plan has no such name.",
            "Perhaps its number was mistyped: say it again with the right one, and mark this one with --mistake."));
        return (new SewingProgress(log, earlier, archive), [.. log.Problems, .. plan.Problems, .. strangers, .. unknown]);
    }

    /// <summary>The files of a sewn hooping.</summary>
    public KeptHooping Kept(int hooping) =>
        Archive.Hooping(hooping, Log.Last(hooping)?.Path ?? "", Plan.Hoopings.FirstOrDefault(h => h.Number == hooping));

    public bool IsSewn(int hooping) => Log.IsSewn(hooping);

    /// <summary>In which order the threads of each sewn hooping were sewn.</summary>
    public IReadOnlyDictionary<int, ImmutableArray<CssColour>> SewnThreads =>
        Plan.Hoopings.Where(h => IsSewn(h.Number) && !h.Threads.IsEmpty).ToImmutableDictionary(h => h.Number, h => h.Threads);

    /// <summary>Hoopings of which nothing moves: those that are sewn, and those that hold a name that is.</summary>
    private ImmutableHashSet<int> Fast =>
        [.. Log.Sewn, .. Plan.Hoopings.Where(h => !h.HasNeedlePath && NamesIn(h).Any(IsSewn)).Select(h => h.Number)];

    private bool HasNeedlePaths => Plan.Hoopings.Any(h => h.HasNeedlePath);

    /// <summary>Whether a name is sewn: its hooping, or itself where it is keyed in or traced.</summary>
    public bool IsSewn(EarlierName name) => Log.OfNames.IsSewn(name.Order);

    private IEnumerable<EarlierName> NamesIn(EarlierHooping hooping)
    {
        var lying = hooping.Segments.Select(s => s.Segment).ToHashSet();
        return Plan.Rounds.SelectMany(r => r.Segments).Where(s => lying.Contains(s.Number)).SelectMany(s => s.Names);
    }

    /// <summary>
    /// The job as the sewn hoopings have settled it: face, cloth and kind of marks are theirs, unless the job says that the rest may
    /// differ, and so is what was measured.
    /// </summary>
    public (BandJob Job, ImmutableArray<Problem> Notes) Settle(BandJob job)
    {
        var (shortening, left) = MeasuredStrips.Shortening(Log, Plan, job.Strip.Shortening);
        var strip = job.Strip with { Shortening = shortening };
        bool areMarksSettled = HasNeedlePaths && (!job.RestMayDiffer || job.Holding.AreMarksFree);
        var holding = areMarksSettled ? job.Holding with { Marks = Plan.Holding.Marks } : job.Holding;
        var settled = job.RestMayDiffer
            ? job with { Strip = strip, Holding = holding }
            : job with { Strip = strip, Holding = holding, Fabric = Plan.Fabric, Lettering = job.Lettering with { Face = Plan.Face } };
        settled = settled with { Layout = settled.Layout with { Lines = SewnLines } };
        return (settled,
            [.. left, .. Differences(job).Select(d => Told(job, d.Key, d.Wished, d.Sewn)), .. OtherLines(job), .. OtherMarks(job)]);
    }

    private int SewnLines => Plan.LineStepMm > 0 ? 2 : 1;

    /// <summary>Every strip of a job has as many lines of names as its first.</summary>
    private IEnumerable<Problem> OtherLines(BandJob job)
    {
        if (job.Layout.Lines != SewnLines)
        {
            yield return Problem.NeedsPerson(
                new Where(JobFile, Key: LayoutKeys.Lines.Path),
                $"The job asks for names in {Lines(job.Layout.Lines)}, and what is sewn has {Lines(SewnLines)}; the rest is planned to match what is sewn.",
                $"Write \"lines\": {SewnLines} in the group “strip” of {JobFile}, so that the file says what is done.");
        }

        static Said Lines(int lines) => lines == 1 ? "one line" : "two lines";
    }

    /// <summary>Marks show on nothing that is sewn, so they are only a note; the sheets of one cloth are of one kind.</summary>
    private IEnumerable<Problem> OtherMarks(BandJob job)
    {
        var (wished, sewn) = (job.Holding.Marks, Plan.Holding.Marks);
        if (HasNeedlePaths && !job.RestMayDiffer && !job.Holding.AreMarksFree && wished != sewn)
        {
            yield return Problem.Note(
                new Where(JobFile, Key: HoldingKeys.Marks.Path),
                $"The job asks for marks that are \"{HoldingKeys.Word(wished)}\", and the cloth is begun with "
                    + $"\"{HoldingKeys.Word(sewn)}\"; the rest goes on so.",
                "If the rest may have other marks, write \"sewing\": { \"restMayDiffer\": true }.");
        }
    }

    private IEnumerable<(string Key, Said Wished, Said Sewn)> Differences(BandJob job)
    {
        // Beside a machine’s letters an unnamed face is chosen to look like them.
        if (job.Lettering.Face != Plan.Face && (job.Lettering.IsFaceNamed || !job.HasSeveralWays))
        {
            yield return ("lettering.face", $"the face {job.Lettering.Face}", Said.Plain(Plan.Face));
        }

        if (job.Fabric != Plan.Fabric)
        {
            yield return ("fabric", $"the cloth {job.Fabric}", Said.Plain(Plan.Fabric));
        }

        if (job.Lettering.Height is { } height && HeightDiffers(height.Mm))
        {
            yield return ("lettering.height", $"letters {height.InMillimetres()} high", Length.FromMm(Plan.LetterHeightMm).InMillimetres());
        }
    }

    private static Problem Told(BandJob job, string key, Said wished, Said sewn) => job.RestMayDiffer
        ? Problem.Note(
            new Where(JobFile, Key: key),
            $"The rest is planned with {wished}, and what is sewn has {sewn}, because the job says that the rest may differ.",
            $"Take {WorkKeys.RestMayDiffer.Path} out of {JobFile} if it is to match.")
        : Problem.NeedsPerson(
            new Where(JobFile, Key: key),
            $"The job asks for {wished}, and what is sewn has {sewn}; the rest is planned to match what is sewn.",
            $"Write in {JobFile} what is sewn, so that the file says what is done; or, if the rest is to differ, write \"sewing\": {{ \"restMayDiffer\": true }}.");

    private bool HeightDiffers(double heightMm) => Math.Abs(heightMm - Plan.LetterHeightMm) > 0.001;

    /// <summary>Letter height of what is not sewn yet: the plan's, unless the job gives another one and may.</summary>
    public double RestHeightMm(BandJob job) =>
        job is { RestMayDiffer: true, Lettering.Height: { } height } && HeightDiffers(height.Mm) ? height.Mm : Plan.LetterHeightMm;

    /// <summary>What a hooping of the plan was planned in; null where there is no such hooping.</summary>
    public SewnAs? SewnAs(int hooping) => Plan.Hoopings.FirstOrDefault(h => h.Number == hooping) is { } known
        ? known.SewnAs ?? new SewnAs(Plan.Face, Plan.Fabric, Plan.LetterHeightMm)
        : null;

    /// <summary>Whether what is not sewn comes out otherwise than it was planned.</summary>
    private bool RestDiffers(BandJob settled)
    {
        var rest = new SewnAs(settled.Lettering.Face, settled.Fabric, RestHeightMm(settled));
        return Plan.Hoopings.Any(h => !IsSewn(h.Number) && SewnAs(h.Number) != rest);
    }

    /// <summary>The rows of the list whose names are sewn, with the way they went.</summary>
    public Dictionary<RowRef, Way> SewnRows(MatchedList matched)
    {
        var sewn = SewnNames();
        return matched.Before.Where(b => sewn.Contains(b.Value)).ToDictionary(b => b.Key, b => b.Value.Way);
    }

    public HashSet<EarlierName> SewnNames()
    {
        var hoopingOf = Plan.HoopingOfSegment;
        return [.. Plan.Rounds.SelectMany(r => r.Segments).SelectMany(s => s.Names.Where(n => IsSewn(hoopingOf[s.Number]) || IsSewn(n)))];
    }

    /// <summary>Whether anything that went a way is sewn, or was and is gone from the list.</summary>
    public bool HasSewn(Way way) => SewnNames().Any(n => n.Way == way);

    public MatchedList Match(NameList list, GroupSettings groups)
    {
        var sewnNames = SewnNames();
        return SewnMatching.Match(
            list, Plan, sewnNames.Contains, h => h.Row.Line <= groups.All.Length && groups.All[h.Row.Line - 1].Heading == h.Text);
    }

    /// <param name="settled">The job as <see cref="Settle"/> gave it back.</param>
    public Continuation From(BandJob settled, MatchedList matched, ImmutableArray<LetteredName> gone) =>
        new(Plan, Fast, matched.Before, gone) { HeightMm = RestHeightMm(settled), RestDiffers = RestDiffers(settled) };

    /// <summary>Of strips that are sewn in one run each: every name is fast, or free, by itself.</summary>
    /// <inheritdoc cref="From"/>
    public Continuation NameByName(BandJob settled, MatchedList matched, ImmutableArray<LetteredName> gone)
    {
        var split = RunSplit.Of(Plan, IsSewn);
        return From(settled, matched, gone) with { Earlier = split.Plan, Sewn = split.Sewn };
    }
}
