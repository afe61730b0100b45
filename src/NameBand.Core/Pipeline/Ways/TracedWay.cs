using System.Collections.Immutable;
using NameBand.Cloth;
using NameBand.Common;
using NameBand.Garment;
using NameBand.Job;
using NameBand.Layout;
using NameBand.Layout.Planning;
using NameBand.Layout.Resuming;
using NameBand.Lettering;
using NameBand.Lettering.Faces;
using NameBand.Names;
using NameBand.Pipeline.Resume;
using NameBand.Pipeline.Stages;

namespace NameBand.Pipeline.Ways;

/// <summary>Names are traced from a template at true size, and sewn over free-motion or by hand.</summary>
/// <param name="way">That its names go.</param>
internal sealed class TracedWay(Way way) : IWay, ILetteredWay
{
    public Problem? NoSwatch { get; } = Problem.CannotUse(
        new Where(JobReader.FileName, Key: "way"),
        "A swatch is a needle path, and these names are traced and sewn over by hand or free-motion.",
        "Rule two crosses 100 mm apart on a piece of the cloth and trace and sew names between them."
        + " Press it, measure from cross to cross and how long the name came out, and say both: swatch JOB --measured 99.2 --under 62.");

    public Result<NamesRead> Letter(CheckedList list, FaceShelf shelf, CancellationToken cancel)
    {
        var (job, begun, matched) = (list.Job, list.Begun, list.Matched);
        var lettered = GroupLetterer.Letter(job, list.InOrder, list.Face, shelf, cancel);
        if (lettered.Value is not { } letters)
        {
            return Result.Fail<NamesRead>(lettered.Problems);
        }

        var rows = HeldRows.OfLetters(list.InOrder, letters.Held, names => WithoutHeadings.Letter(job, names, list.Face, shelf, cancel));
        var read = new NamesRead(job, list.Corrections, list.Face, Marked(letters), rows, this)
        {
            SewnThenChanged = matched?.Changed,
        };
        if (begun is null || matched is null)
        {
            return Result.Of(read, lettered.Problems);
        }

        var names = new NameList([], [.. NeedlePathWay.GoneOf(list, matched, t => t.IsFollowedByHand)]);
        var gone = names.Names.IsEmpty || WithoutHeadings.Letter(job, names, list.Face, shelf, cancel) is not { } drawn
            ? [] : Marked(drawn).Names;
        var from = job.IsHooped ? begun.From(job, matched, gone) : begun.NameByName(job, matched, gone);
        return Result.Of(read with { Sewn = (begun, from) }, lettered.Problems);
    }

    public Result<ImmutableHashSet<RowRef>> Able(CheckedList list, FaceShelf shelf, CancellationToken cancel) =>
        DrawnFaces.Able(list, shelf, cancel);

    private LetteredList Marked(LetteredList list) => list with { Names = [.. list.Names.Select(n => n with { Way = way })] };

    /// <summary>A line is traced where it is: nothing is added to its width.</summary>
    public Fabric On(Fabric fabric) => fabric with { PullCompensationMm = 0 };

    /// <summary>Nothing is hooped in a field of its own: a template is as long as its strip.</summary>
    public Result<StripPlan> LayOut(NamesRead names, HemPlan hem, Fabric fabric)
    {
        if (names.Sewn is { } sewn)
        {
            var going = UnderStitches.GoOn(OneRun.WithoutField(names.Job), sewn.Begun, job => LayoutResumer.Plan(
                job, EarlierEnds.Keep(hem, sewn.Begun.Plan), names.Lettered, fabric, sewn.From));
            return going with
            {
                Value = going.Value is { } begun
                    ? PlanSnap.Apply(OneRun.Of(RunSplit.Together(begun, sewn.Begun.Plan)) with { HasNeedlePaths = false }) : null,
            };
        }

        var laid = UnderStitches.Lay(OneRun.WithoutField(names.Job), job => LayoutPlanner.Plan(job, hem, names.Lettered, fabric));
        return laid with { Value = laid.Value is { } plan ? PlanSnap.Apply(OneRun.Of(plan) with { HasNeedlePaths = false }) : null };
    }

    public ImmutableArray<Problem> Doubts(LaidOut made) => [];

    public IPieceSewing Sew(LaidOut made) => new TracedSewing(made);

    public ImmutableArray<Face> Faces(NamesRead names, FaceShelf shelf) => DrawnFaces.Of(names, shelf);

    public LetteredList In(Face face, NamesRead names, FaceShelf shelf, CancellationToken cancel) =>
        Marked(GroupLetterer.Letter(names.Job, names.Rows, face, shelf, cancel).Value!);

    public double LeastHeightMm(LetteredList lettered, Face face, Fabric fabric, FaceShelf shelf) => 0;
}
