using System.Collections.Immutable;
using NameBand.Cloth;
using NameBand.Common;
using NameBand.Garment;
using NameBand.Job;
using NameBand.Layout;
using NameBand.Lettering;
using NameBand.Names;

namespace NameBand.Pipeline.Ways;

/// <summary>Names are traced from a template at true size, and sewn over free-motion or by hand.</summary>
/// <param name="way">That its names go.</param>
internal sealed class TracedWay(Way way) : IWay, ILetteredWay
{
    public Problem? NoLog { get; } = Problem.CannotUse(
        new Where("job.json", Key: "way"), "The command sewn keeps what was sewn from needle paths, and this job has none.",
        "Tick the names off on the template.");

    public Problem? NoSwatch { get; } = Problem.CannotUse(
        new Where(JobReader.FileName, Key: "way"),
        "A swatch is a needle path, and these names are traced and sewn over by hand or free-motion.",
        "Rule two crosses 100 mm apart on a piece of the cloth and trace and sew names between them."
        + " Press it, measure from cross to cross, and say it: swatch JOB --measured 99.2.");

    public Result<NamesRead> Letter(CheckedList list, FaceShelf shelf, CancellationToken cancel)
    {
        var lettered = GroupLetterer.Letter(list.Job, list.InOrder, list.Face, shelf, cancel);
        return lettered.Value is { } letters
            ? Result.Of(
                new NamesRead(list.Job, list.Corrections, list.Face, Marked(letters), HeldRows.OfLetters(list.InOrder, letters.Held, names => WithoutHeadings.Letter(list.Job, names, list.Face, shelf, cancel)), this), lettered.Problems)
            : Result.Fail<NamesRead>(lettered.Problems);
    }

    public Result<ImmutableHashSet<RowRef>> Able(CheckedList list, FaceShelf shelf, CancellationToken cancel) =>
        DrawnFaces.Able(list, shelf, cancel);

    private LetteredList Marked(LetteredList list) => list with { Names = [.. list.Names.Select(n => n with { Way = way })] };

    /// <summary>A line is traced where it is: nothing is added to its width.</summary>
    public Fabric On(Fabric fabric) => fabric with { PullCompensationMm = 0 };

    /// <summary>Nothing is hooped in a field of its own: a template is as long as its strip.</summary>
    public Result<StripPlan> LayOut(NamesRead names, HemPlan hem, Fabric fabric)
    {
        var laid = LayoutPlanner.Plan(OneRun.WithoutField(names.Job), hem, names.Lettered, fabric);
        return laid with { Value = laid.Value is { } plan ? PlanSnap.Apply(OneRun.Of(plan) with { HasNeedlePaths = false }) : null };
    }

    public ImmutableArray<Problem> Doubts(LaidOut made) => [];

    public IPieceSewing Sew(LaidOut made) => new TracedSewing(made);

    public ImmutableArray<Face> Faces(NamesRead names, FaceShelf shelf) => DrawnFaces.Of(names, shelf);

    public LetteredList In(Face face, NamesRead names, FaceShelf shelf, CancellationToken cancel) =>
        Marked(GroupLetterer.Letter(names.Job, names.Rows, face, shelf, cancel).Value!);

    public double LeastHeightMm(LetteredList lettered, Face face, Fabric fabric, FaceShelf shelf) => 0;
}
