using System.Collections.Concurrent;
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
using NameBand.MachineLetters;
using NameBand.Names;
using NameBand.Pipeline.Resume;
using NameBand.Pipeline.Stages;
using NameBand.PlanFile;

namespace NameBand.Pipeline.Ways;

/// <summary>What is known of the machine's letters, and the names it can sew: lays them out at one of its sizes.</summary>
/// <param name="way">That its names go.</param>
internal sealed class KeyedLetters(
    Way way, LetterKnowledge knowledge, IReadOnlyDictionary<string, LetteredName> shapes, ImmutableArray<Name> names)
    : ILetteredWay
{
    private static readonly string LettersName = ((Said)"the machine’s own letters").English;

    private readonly ConcurrentDictionary<SizeStep, NameComposer> _composers = [];

    /// <summary>The names that are to be measured before any other, the most telling first; empty once enough are.</summary>
    public ImmutableArray<Name> ToMeasure { get; init; } = [];

    /// <summary>Where names stand in groups: how each stands, and which of the machine's heights it has; null where there are
    /// none.</summary>
    public (GroupOrder Order, GroupSizes Sizes)? Groups { get; init; }

    public NameComposer At(SizeStep step) => _composers.GetOrAdd(step, s => new NameComposer(s, knowledge, shapes));

    /// <summary>What the machine sews between names; null for nothing.</summary>
    public MachineMotif? Motif { get; init; }

    public LetteredList Letter(SizeStep step) => new(LettersName, Composed(names, step), [])
    {
        Motif = Motif?.At(At(step)) is { } motif ? motif with { Way = way } : null,
        AreMotifsLater = true,
    };

    public ImmutableArray<LetteredName> Composed(ImmutableArray<Name> texts, SizeStep step)
    {
        if (Groups is not { } groups)
        {
            return [.. texts.Select(At(step).Compose).OfType<LetteredName>().Select(n => n with { Way = way })];
        }

        var scales = new Dictionary<double, ScaledName>();
        return [.. texts.Select(Of).OfType<LetteredName>()];

        LetteredName? Of(Name name)
        {
            double factor = groups.Sizes.FactorOf(name, step.HeightMm);
            if (!scales.TryGetValue(factor, out var scale))
            {
                scales[factor] = scale = new ScaledName(factor);
            }

            return At(StepOf(step, factor)).Compose(name) is not { } made ? null
                : scale.Of(made) with { Way = way, Standing = groups.Order.Of(name) with { HeightFactor = factor } };
        }
    }

    /// <summary>The setting of names whose letters are so many times as high as the others.</summary>
    public SizeStep StepOf(SizeStep step, double factor)
    {
        if (factor == 1)
        {
            return step;
        }

        // As it is written, so that nothing is lost by way of a plan read back.
        double heightMm = knowledge.SizesMm.MinBy(h => Math.Abs(h - (factor * step.HeightMm)));
        return new SizeStep(heightMm, knowledge.HasSpacingChoice ? step.GapMm : knowledge.GapMm(heightMm, Used));
    }

    public double? FactorAt(SizeStep step, string? group) => Groups?.Sizes.FactorOf(group, step.HeightMm);

    /// <summary>What to go on from: where strips are fed in one run, name by name.</summary>
    public Continuation GoOnFrom(BandJob job, SewingProgress begun, MatchedList matched, ImmutableArray<LetteredName> gone) =>
        job.Layout.IsCurved ? begun.From(job, matched, gone) : SewnWidths.Taken(
            job.IsHooped ? begun.From(job, matched, gone) : begun.NameByName(job, matched, gone), knowledge.OnStrip,
            knowledge.IsForward);

    /// <summary>Built-in letters are measured as they come out: nothing is added to their widths.</summary>
    public Fabric On(Fabric fabric) => fabric with { PullCompensationMm = 0 };

    public ImmutableArray<Problem> Doubts(LaidOut made) => [];

    public IPieceSewing Sew(LaidOut made) => new KeyedSewing(made, this);

    /// <summary>The machine has its own letters; a face only draws them.</summary>
    public ImmutableArray<Face> Faces(NamesRead names, FaceShelf shelf) => [names.Face];

    public LetteredList In(Face face, NamesRead names, FaceShelf shelf, CancellationToken cancel) => names.Lettered;

    public double LeastHeightMm(LetteredList lettered, Face face, Fabric fabric, FaceShelf shelf) => 0;

    public ImmutableArray<SizeStep> Steps(BandJob job) =>
        [.. SizeSteps.Of(job.Letters, knowledge, Used).Where(s => Groups?.Sizes.Has(s.HeightMm) ?? true)];

    /// <summary>Letter heights of the names at a setting.</summary>
    private IEnumerable<double> HeightsMm(SizeStep step) => Groups is not { } groups ? [step.HeightMm]
        : names.Select(n => StepOf(step, groups.Sizes.FactorOf(n, step.HeightMm)).HeightMm).Distinct().OrderDescending();

    /// <summary>Letters of the names, each once.</summary>
    private ImmutableArray<string> Used =>
        [.. names.SelectMany(n => knowledge.Keys.Of(n.Text)).Distinct(StringComparer.Ordinal).Order(StringComparer.Ordinal)];

    public LetteredList At(SizeStep step, LetteredList own) => Letter(step);

    public IEnumerable<Problem> Notes(BandJob job, SizeStep step)
    {
        foreach (var asked in KeyedMeasures.Asked(job, knowledge, ToMeasure, At(step)))
        {
            yield return asked;
        }

        foreach (var note in Groups?.Sizes.Notes(step.HeightMm) ?? [])
        {
            yield return note;
        }

        foreach (double heightMm in HeightsMm(step).Where(h => knowledge.IsMeasured && !knowledge.IsReadAt(h)))
        {
            yield return Problem.Note(
                new Where(job.Letters.Alphabet),
                $"Letters {heightMm:0.##} mm high were not measured: their widths are taken in proportion from the sizes that were.",
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
        return WithMotifs(setting.Step, KeyedDrift.Taken(
            PlanSnap.Apply(job.Letters.Hooped ? plan : OneRun.Of(plan)), job, null, [.. chosen.Problems, .. Notes(job, setting.Step)],
            shown));
    }

    /// <summary>Words that leave the curve of their strip too far, for each stands straight.</summary>
    private IEnumerable<Problem> TooStraight(StripPlan plan, SizeStep step)
    {
        var far = plan.Rounds.Where(_ => plan.Hem.IsCurved)
            .SelectMany(r => r.Names.SelectMany(n => n.Lettered.Name.Text.Split(' ', StringSplitOptions.RemoveEmptyEntries).Select(w => (
                Word: w, OffMm: StraightOnArc.OffMm(At(StepOf(step, n.Lettered.Standing.HeightFactor)) is var own
                ? own.LengthMm(own.Keys.Of(w)) : 0, StripCurve.Of(plan.Hem, r.Number)!, n.BaselineYMm)))))
            .Where(w => w.OffMm > StraightOnArc.MostOffMm).OrderByDescending(w => w.OffMm).ToList();
        if (far.Count > 0)
        {
            Said words = Said.Plain(string.Join(", ", far.Take(3).Select(w => $"“{PlainText.Short(w.Word)}”")))
                + (far.Count > 3 ? " and others" : "");
            yield return Problem.NeedsPerson(
                new Where(JobReader.FileName, Key: LayoutKeys.Shape.Path),
                $"A machine types a word on a straight line, and the strip is cut to the curve: the middle of {words} stands up to {far[0].OffMm:0.0} mm off its line; over {StraightOnArc.MostOffMm} mm is seen.",
                "Take smaller letters (lettering.height), write \"shape\": \"straight\", or let such names go from needle paths.");
        }
    }

    /// <summary>Motifs stand between the names as they stand at last.</summary>
    private Result<StripPlan> WithMotifs(SizeStep step, Result<StripPlan> laid)
    {
        laid = laid.Value is { } curved ? laid with { Problems = [.. laid.Problems, .. TooStraight(curved, step)] } : laid;
        if (laid.Value is not { } plan || Letter(step).Motif is not { } motif)
        {
            return laid;
        }

        plan = PlanSnap.Apply(RunMotifs.Placed(plan, _ => motif));
        return Result.Of(plan, [.. laid.Problems, .. LayoutNotes.WithoutMotif(plan, motif)]);
    }

    /// <summary>
    /// What is sewn stays where it was laid out, at the setting it was sewn in. The rest stays too as long as it comes out as
    /// wide as it was planned; else it is set out anew between what is sewn.
    /// </summary>
    private Result<StripPlan> GoOn(BandJob job, HemPlan hem, Fabric fabric, SewingProgress begun, Continuation going)
    {
        var same = LargestSetting.At(Steps(job), going.HeightMm);
        if (same.IsEmpty)
        {
            return Result.Fail<StripPlan>(LargestSetting.NoSuchHeight(going.HeightMm));
        }

        var sewn = going.SewnRows();
        double along = StripCurve.WidestFactor(hem, going.HeightMm);
        var step = same.MinBy(s => OffMm(going, Letter(s), along, _ => true))!;
        var lettered = Letter(step);
        if (OffMm(going, lettered, along, row => !sewn.Contains(row)) >= Tolerance.ReadBackMm)
        {
            going = going with { RestDiffers = true, KeepsBaseLine = true };
        }

        var atStep = job.With(step);
        var laid = UnderStitches.GoOn(
            job.Letters.Hooped ? atStep : OneRun.WithoutField(atStep), begun, j => LayoutResumer.Plan(j, hem, lettered, fabric, going));
        if (laid.Value is not { } plan)
        {
            return laid;
        }

        plan = plan with { HasNeedlePaths = false, SpacingMm = step.GapMm };
        plan = PlanSnap.Apply(job.Letters.Hooped ? plan : OneRun.Of(job.Layout.IsCurved ? plan : RunSplit.Together(plan, begun.Plan)));
        IEnumerable<Problem> beyond = going.TakesUpLengths
            ? SewnWidths.Beyond(plan, begun.Plan, sewn) : job.Layout.IsCurved ? [] : CameOut(plan, begun);
        return WithMotifs(step, KeyedDrift.Taken(plan, job, begun, [.. laid.Problems, .. beyond, .. Notes(job, step)]));
    }

    public IEnumerable<Problem> CameOut(StripPlan plan, SewingProgress begun) =>
        SewnWidths.KeptMarks(plan, begun, knowledge.OnStrip, knowledge.IsForward);

    /// <summary>How far a name is from the width it was planned in.</summary>
    /// <param name="along">Length along the strip for one on the base line.</param>
    private static double OffMm(Continuation from, LetteredList lettered, double along, Func<RowRef, bool> isAsked) => lettered.Names
        .Where(n => from.Before.ContainsKey(n.Name.Row) && isAsked(n.Name.Row))
        .Select(n => Math.Abs((along * n.WidthMm(from.HeightMm, 0)) - from.Before[n.Name.Row].WidthMm)).DefaultIfEmpty(0).Max();

    private Result<StripPlan> LayAt(NamesRead names, HemPlan hem, Fabric fabric, SizeStep step)
    {
        var atStep = names.Job.With(step);
        var lettered = Letter(step);
        return UnderStitches.Lay(atStep.Letters.Hooped ? atStep : OneRun.WithoutField(atStep), j => LayoutPlanner.Plan(
            j, hem, lettered, fabric, names.Beside?.Of(plan => plan with { SpacingMm = step.GapMm, HasNeedlePaths = false })));
    }
}
