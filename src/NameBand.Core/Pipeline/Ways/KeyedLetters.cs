using System.Collections.Concurrent;
using System.Collections.Immutable;
using NameBand.Cloth;
using NameBand.Common;
using NameBand.Garment;
using NameBand.Job;
using NameBand.Layout;
using NameBand.Layout.Resuming;
using NameBand.Lettering;
using NameBand.MachineLetters;
using NameBand.Names;
using NameBand.Pipeline.Resume;
using NameBand.PlanFile;

namespace NameBand.Pipeline.Ways;

/// <summary>What is known of the machine's letters, and the names it can sew: lays them out at one of its sizes.</summary>
/// <param name="way">That its names go.</param>
internal sealed class KeyedLetters(
    Way way, LetterKnowledge knowledge, IReadOnlyDictionary<string, LetteredName> shapes, ImmutableArray<Name> names)
    : ILetteredWay
{
    /// <summary>What is read back from a plan stands on thousandths of a millimetre.</summary>
    private const double SlightMm = 0.002;
    private const string LettersName = "the machine’s own letters";

    private readonly ConcurrentDictionary<SizeStep, NameComposer> _composers = [];

    /// <summary>The names that are to be measured before any other, the most telling first; empty once enough are.</summary>
    public ImmutableArray<Name> ToMeasure { get; init; } = [];

    public NameComposer At(SizeStep step) => _composers.GetOrAdd(step, s => new NameComposer(s, knowledge, shapes));

    public LetteredList Letter(SizeStep step) => new(LettersName, Composed(names, step), []);

    public ImmutableArray<LetteredName> Composed(ImmutableArray<Name> texts, SizeStep step) =>
        [.. texts.Select(At(step).Compose).OfType<LetteredName>().Select(n => n with { Way = way })];

    /// <summary>What to go on from: where strips are fed in one run, name by name.</summary>
    public Continuation GoOnFrom(BandJob job, Begun begun, MatchedList matched, ImmutableArray<LetteredName> gone) =>
        SewnWidths.Taken(
            job.IsHooped ? begun.From(job, matched, gone) : begun.NameByName(job, matched, gone), knowledge.OnStrip,
            SewingDirection.FirstLetterFirst(job.Letters));

    /// <summary>Built-in letters are measured as they come out: nothing is added to their widths.</summary>
    public Fabric On(Fabric fabric) => fabric with { PullCompensationMm = 0 };

    public ImmutableArray<Problem> Doubts(LaidOut made) => [];

    public IPieceSewing Sew(LaidOut made) => new KeyedSewing(made, this);

    /// <summary>The machine has its own letters; a face only draws them.</summary>
    public ImmutableArray<Face> Faces(NamesRead names, FaceShelf shelf) => [names.Face];

    public LetteredList In(Face face, NamesRead names, FaceShelf shelf, CancellationToken cancel) => names.Lettered;

    public double LeastHeightMm(LetteredList lettered, Face face, Fabric fabric, FaceShelf shelf) => 0;

    public ImmutableArray<SizeStep> Steps(BandJob job) => SizeSteps.Of(job.Letters, knowledge, Used);

    /// <summary>Letters of the names, each once.</summary>
    private ImmutableArray<string> Used => [.. names.SelectMany(n => knowledge.Keys.Of(n.Text)).Distinct(StringComparer.Ordinal).Order(StringComparer.Ordinal)];

    public LetteredList At(SizeStep step, LetteredList own) => Letter(step);

    public IEnumerable<Problem> Notes(BandJob job, SizeStep step)
    {
        foreach (var asked in KeyedMeasures.Asked(job, knowledge, ToMeasure, At(step)))
        {
            yield return asked;
        }

        if (knowledge.IsMeasured && !knowledge.IsReadAt(step.HeightMm))
        {
            yield return Problem.Note(
                new Where(job.Letters.Alphabet),
                FormattableString.Invariant($"Letters {step.HeightMm:0.##} mm high were not measured: their widths are taken in proportion from the sizes that were."),
                "Measure the first names that come out at this size.");
        }
    }

    /// <summary>Lays the names out at the largest setting of the machine at which they fit.</summary>
    public Result<StripPlan> LayOut(NamesRead names, HemPlan hem, Fabric fabric)
    {
        var job = names.Job;
        if (names.Sewn is { } sewn)
        {
            return GoOn(job, EarlierEnds.Keep(hem, sewn.Begun.Plan), fabric, sewn.Begun, sewn.From);
        }

        hem = EarlierEnds.KeepMade(hem, job.Folder);
        var chosen = LargestSetting.Choose(job, Steps(job), s => LayAt(names, hem, fabric, s));
        if (chosen.Value is not { } setting)
        {
            return Result.Fail<StripPlan>(chosen.Problems);
        }

        var plan = setting.Plan with { HasNeedlePaths = false };
        var shown = EarlierPlanFile.Read(job.Folder, "out/plan.json", EarlierPlanFile.Rounds).Value;
        return KeyedDrift.Taken(
            PlanSnap.Apply(job.Letters.Hooped ? plan : OneRun.Of(plan)), job, null, [.. chosen.Problems, .. Notes(job, setting.Step)], shown);
    }

    /// <summary>
    /// What is sewn stays where it was laid out, at the setting it was sewn in. The rest stays too as long as it comes out as
    /// wide as it was planned; else it is set out anew between what is sewn.
    /// </summary>
    private Result<StripPlan> GoOn(BandJob job, HemPlan hem, Fabric fabric, Begun begun, Continuation going)
    {
        var same = LargestSetting.At(Steps(job), going.HeightMm);
        if (same.IsEmpty)
        {
            return Result.Fail<StripPlan>(LargestSetting.NoSuchHeight(going.HeightMm));
        }

        var sewn = going.SewnRows();
        var step = same.MinBy(s => OffMm(going, Letter(s), _ => true))!;
        var lettered = Letter(step);
        if (OffMm(going, lettered, row => !sewn.Contains(row)) >= SlightMm)
        {
            going = going with { RestDiffers = true, KeepsBaseLine = true };
        }

        var atStep = job.With(step);
        var laid = UnderStitches.GoOn(
            job.Letters.Hooped ? atStep : OneRun.WithoutField(atStep), begun.Plan, j => LayoutResumer.Plan(j, hem, lettered, fabric, going));
        if (laid.Value is not { } plan)
        {
            return laid;
        }

        plan = plan with { HasNeedlePaths = false, SpacingMm = step.GapMm };
        plan = PlanSnap.Apply(job.Letters.Hooped ? plan : OneRun.Of(RunSplit.Together(plan, begun.Plan)));
        IEnumerable<Problem> beyond = going.TakesUpLengths ? SewnWidths.Beyond(plan, begun.Plan, sewn) : [];
        return KeyedDrift.Taken(plan, job, begun, [.. laid.Problems, .. beyond, .. Notes(job, step)]);
    }

    /// <summary>How far a name is from the width it was planned in.</summary>
    private static double OffMm(Continuation from, LetteredList lettered, Func<RowRef, bool> isAsked) => lettered.Names
        .Where(n => from.Before.ContainsKey(n.Name.Row) && isAsked(n.Name.Row))
        .Select(n => Math.Abs(n.WidthMm(from.HeightMm, 0) - from.Before[n.Name.Row].WidthMm)).DefaultIfEmpty(0).Max();

    private Result<StripPlan> LayAt(NamesRead names, HemPlan hem, Fabric fabric, SizeStep step)
    {
        var atStep = names.Job.With(step);
        var lettered = Letter(step);
        return UnderStitches.Lay(atStep.Letters.Hooped ? atStep : OneRun.WithoutField(atStep), j => LayoutPlanner.Plan(
            j, hem, lettered, fabric, names.Beside?.Of(plan => plan with { SpacingMm = step.GapMm, HasNeedlePaths = false })));
    }
}
