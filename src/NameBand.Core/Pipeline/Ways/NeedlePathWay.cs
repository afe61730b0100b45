using System.Collections.Immutable;
using NameBand.Cloth;
using NameBand.Common;
using NameBand.Garment;
using NameBand.Job;
using NameBand.Layout;
using NameBand.Layout.Drift;
using NameBand.Layout.Planning;
using NameBand.Layout.Resuming;
using NameBand.Lettering;
using NameBand.Lettering.Faces;
using NameBand.Lettering.Smallness;
using NameBand.Names;
using NameBand.Pipeline.Resume;
using NameBand.Pipeline.Stages;

namespace NameBand.Pipeline.Ways;

/// <summary>A machine follows coordinates: letters are worked out stitch by stitch, and what is sewn is kept and gone on from.</summary>
internal sealed class NeedlePathWay : IWay, ILetteredWay
{
    private const string JobFile = "job.json";

    private static readonly Problem BestFitBeforeAgreed = Problem.Note(
        new Where(JobFile, Key: "lettering.agreedFirst"),
        "“bestFit” puts the names in the order of the fewest hoopings, so names that are not agreed to do not come last.",
        "Take the order “listed” or “alphabetical” if they are to be sewn last, or take lettering.agreedFirst out.");

    /// <summary>What letters of its own measuring are known by, at every height that is tried.</summary>
    private readonly Lazy<FaceShelf> _shelf = new(() => new FaceShelf());

    public Problem? NoSwatch => null;

    public Result<NamesRead> Letter(CheckedList list, FaceShelf shelf, CancellationToken cancel)
    {
        var (job, begun, matched) = (list.Job, list.Begun, list.Matched);
        var lettered = GroupLetterer.Letter(job, list.InOrder, list.Face, shelf, cancel);
        if (lettered.Value is not { } letters)
        {
            return Result.Fail<NamesRead>(lettered.Problems);
        }

        var rows = HeldRows.OfLetters(list.InOrder, letters.Held, names => WithoutHeadings.Letter(job, names, list.Face, shelf, cancel));
        var asSewn = begun is null ? null : new SewnLettering(job, begun, shelf, cancel);
        if (asSewn is not null && matched is not null)
        {
            letters = letters with { Names = asSewn.Letter(letters.Names, n => matched.Before.GetValueOrDefault(n.Name.Row)) };
        }

        var read = new NamesRead(job, list.Corrections, list.Face, letters, rows, this)
        {
            Sewn = begun is null || matched is null
                ? null : (begun, begun.From(job, matched, LetterGone(list, matched, asSewn!, shelf, cancel))),
            SewnThenChanged = matched?.Changed,
        };
        bool bestFitComesFirst = job.Lettering is { AgreedFirst: true, Order: NameOrder.BestFit };
        return Result.Of(read, [.. bestFitComesFirst ? [BestFitBeforeAgreed] : Array.Empty<Problem>(), .. lettered.Problems]);
    }

    public Fabric On(Fabric fabric) => fabric;

    public Result<ImmutableHashSet<RowRef>> Able(CheckedList list, FaceShelf shelf, CancellationToken cancel) =>
        DrawnFaces.Able(list, shelf, cancel);

    public Result<StripPlan> LayOut(NamesRead names, HemPlan hem, Fabric fabric) => LayOrGoOn(names, hem, fabric);

    /// <summary>Lays names out, or goes on from what is sewn of them.</summary>
    public static Result<StripPlan> LayOrGoOn(NamesRead names, HemPlan hem, Fabric fabric)
    {
        var drift = DriftFile.Read(names.Job.Folder);
        var (ends, aside) = names.Sewn is { Begun: var begun } && drift.Value is { } said
            ? SpoiledDrift.Split(said.All, begun.Plan, begun.Log) : (drift.Value?.All ?? [], []);
        ImmutableArray<Problem> problems =
            [.. StitchSettingNotes.Notes(names.Job, fabric), .. drift.Problems, .. UnsewnDrift(drift.Value, names), .. aside];
        if (!drift.IsUsable)
        {
            return Result.Fail<StripPlan>(problems);
        }

        var laid = names.Sewn is { } sewn
            ? LayoutResumer.Plan(names.Job, EarlierEnds.Keep(hem, sewn.Begun.Plan), names.Lettered, fabric, sewn.From with { Ends = ends })
            : LayoutPlanner.Plan(names.Job, hem, names.Lettered, fabric, names.Beside);
        return new Result<StripPlan>(laid.Value is { } plan ? PlanSnap.Apply(plan) : null, [.. problems, .. laid.Problems]);
    }

    /// <summary>Letters still to be sewn that are too small for thread and needle.</summary>
    public ImmutableArray<Problem> Doubts(LaidOut made) =>
    [
        .. SmallnessAdvice.For(
            made.Fabric, made.Plan.LetterHeightMm,
            made.Plan.Hoopings.Where(h => !made.IsSewn(h.Number)).SelectMany(h => h.Segments)
                .SelectMany(s => s.Segment.NamesAndMotifs).Where(n => !n.IsGone).Select(n => n.Lettered),
            made.Face.Name, _shelf.Value),
    ];

    public IPieceSewing Sew(LaidOut made) => new NeedlePathSewing(made);

    public ImmutableArray<Face> Faces(NamesRead names, FaceShelf shelf) => DrawnFaces.Of(names, shelf);

    public LetteredList In(Face face, NamesRead names, FaceShelf shelf, CancellationToken cancel) =>
        GroupLetterer.Letter(names.Job, names.Rows, face, shelf, cancel).Value!;

    public double LeastHeightMm(LetteredList lettered, Face face, Fabric fabric, FaceShelf shelf)
    {
        var rule = new SmallnessRule(fabric);
        return FinestLetters.Of(lettered.Names, face.Name, shelf).Select(l => rule.LeastHeightMm(l.Figures)).DefaultIfEmpty(0).Max();
    }

    /// <summary>Names that are sewn and no longer in the list keep their letters; a heading is lettered with its group.</summary>
    private static ImmutableArray<LetteredName> LetterGone(
        CheckedList list, MatchedList matched, SewnLettering asSewn, FaceShelf shelf, CancellationToken cancel)
    {
        var names = new NameList([], [.. GoneOf(list, matched, t => t.FollowsCoordinates)]);
        var lettered = names.Names.IsEmpty ? [] : WithoutHeadings.Letter(list.Job, names, list.Face, shelf, cancel)?.Names ?? [];
        return asSewn.Letter(lettered, n => matched.Gone.FirstOrDefault(g => g.Row == n.Name.Row && g.Text == n.Name.Text));
    }

    /// <summary>Names that are sewn and no longer in the list; where names go several ways, those that went one of a kind.</summary>
    public static IEnumerable<Name> GoneOf(CheckedList list, MatchedList matched, Func<WayTraits, bool> isAsked) => matched.Gone
        .Where(g => !list.Job.HasSeveralWays || isAsked(WayTraits.Of(g.Way)))
        .Select(g => new Name(g.Text, g.Row) { Group = g.Group, Wish = new SewnWishes(list.Begun!, list.Job).Of(g) });

    private static IEnumerable<Problem> UnsewnDrift(DriftFile.Ends? ends, NamesRead names)
    {
        if (ends is { All.IsEmpty: false } && names.Sewn is null)
        {
            yield return Problem.NeedsPerson(
                new Where(DriftFile.FileName), "It says where sewn names ended, and no hooping is said to be sewn.",
                "Mark what is sewn with the command “sewn” first; until then the file changes nothing.");
        }
    }
}
