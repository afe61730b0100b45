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

namespace NameBand.Pipeline.Ways;

/// <summary>
/// Names that go different ways, laid out on one strip as if all were one: the same height of capitals, the same base line,
/// the same gaps. Where the letters of one of the ways come in settings, all take the height of one of these.
/// </summary>
internal sealed class SideBySideLetters(ImmutableArray<SideBySideLetters.Part> parts) : ILetteredWay
{
    public sealed record Part(Way Way, ILetteredWay Letters)
    {
        /// <summary>What it sews between names; null for nothing.</summary>
        public LetteredName? Motif { get; init; }
    }

    public static LetteredName? Widest(IEnumerable<LetteredName?> motifs) => motifs.OfType<LetteredName>().MaxBy(m => m.Ink.WidthMm);

    /// <summary>Lettered names in the order of a list, those marked that need no hoop beside others that do.</summary>
    public static ImmutableArray<LetteredName> InOrder(ImmutableArray<Name> order, IEnumerable<LetteredName> names, BandJob job)
    {
        var byRow = names.ToDictionary(n => n.Name.Row);
        return
        [
            .. order.Where(n => byRow.ContainsKey(n.Row)).Select(n => byRow[n.Row])
                .Select(n => n with { IsInOneRun = !job.IsHoopedIn(n.Way) }),
        ];
    }

    public Fabric On(Fabric fabric) => parts.Select(p => p.Letters.On(fabric)).MaxBy(f => f.PullCompensationMm)!;

    public Result<StripPlan> LayOut(NamesRead names, HemPlan hem, Fabric fabric)
    {
        var steps = parts.SelectMany(p => p.Letters.Steps(names.Job)).ToImmutableArray();
        if (steps.IsEmpty)
        {
            return Finished(names, NeedlePathWay.LayOrGoOn(names with { Job = WithoutBestFit(names.Job) }, hem, fabric));
        }

        var chosen = names.Sewn is { } sewn ? GoOn(names, sewn.From, steps, (step, going) => LayAt(step, going, hem, fabric))
            : LargestSetting.Choose(names.Job, steps, step => LayAt(step, names, hem, fabric));
        return chosen.Value is { } setting
            ? Finished(
                At(setting.Step, names),
                Result.Of(
                    setting.Plan,
                    [.. chosen.Problems, .. parts.SelectMany(p => p.Letters.Notes(names.Job, setting.Step)),
                    .. CameOut(names, setting.Plan)]))
            : Result.Fail<StripPlan>(chosen.Problems);
    }

    /// <summary>What is to be told of typed names as they came out: of gaps that took it up, and of marks that stay.</summary>
    private IEnumerable<Problem> CameOut(NamesRead names, StripPlan plan) => names.Job.Layout.IsCurved || names.Sewn is not { } sewn ? []
        :
        [
            .. sewn.From.TakesUpLengths ? SewnWidths.Beyond(plan, sewn.Begun.Plan, sewn.From.SewnRows()) : [],
            .. parts.SelectMany(p => p.Letters.CameOut(plan, sewn.Begun)),
        ];

    public IPieceSewing Sew(LaidOut made) => new SideBySideSewing(made, parts);

    public ImmutableArray<Problem> Doubts(LaidOut made) => [.. parts.SelectMany(p => p.Letters.Doubts(SideBySideSewing.Own(made, p)))];

    /// <summary>Those of the way that has the most: the others' letters are their own.</summary>
    public ImmutableArray<Face> Faces(NamesRead names, FaceShelf shelf) =>
        parts.Select(p => p.Letters.Faces(names, shelf)).MaxBy(f => f.Length);

    public LetteredList In(Face face, NamesRead names, FaceShelf shelf, CancellationToken cancel)
    {
        var wayOf = names.Lettered.Names.ToDictionary(n => n.Name.Row, n => n.Way);
        var lists = parts.Select(p => p.Letters.In(face, OwnOf(p, names), shelf, cancel)).ToList();
        var all = lists.SelectMany(l => l.Names).Where(n => wayOf.TryGetValue(n.Name.Row, out var way) && way == n.Way);
        return new LetteredList(
            face.Name, InOrder([.. names.Lettered.Names.Select(n => n.Name)], all, names.Job),
            [.. lists.SelectMany(l => l.Held).Distinct()])
        {
            Motif = Widest(lists.Select(l => l.Motif)),
            AreMotifsLater = true,
        };
    }

    public double LeastHeightMm(LetteredList lettered, Face face, Fabric fabric, FaceShelf shelf) =>
        parts.Max(p =>
            p.Letters.LeastHeightMm(lettered with { Names = [.. lettered.Names.Where(n => n.Way == p.Way)] }, face, fabric, shelf));

    /// <summary>The names of a way, headings among them.</summary>
    private static NamesRead OwnOf(Part part, NamesRead names)
    {
        ImmutableArray<LetteredName> own = [.. names.Lettered.Names.Where(n => n.Way == part.Way)];
        return names with
        {
            Job = WithoutHeadings.Of(names.Job),
            Lettered = names.Lettered with { Names = own, Motif = part.Motif },
            Rows = names.Rows with { Names = [.. own.Select(n => n.Name)] },
        };
    }

    private Result<StripPlan> LayAt(SizeStep step, NamesRead names, HemPlan hem, Fabric fabric) =>
        NeedlePathWay.LayOrGoOn(
            At(step, names) with
            {
                Job = WithoutBestFit(names.Job).With(step),
                Beside = names.Beside?.Of(plan => plan with { SpacingMm = step.GapMm }),
            },
            hem, fabric);

    private NamesRead At(SizeStep step, NamesRead names)
    {
        var scales = new Dictionary<double, ScaledName>();
        var own = parts.Where(p => !p.Letters.Steps(names.Job).IsEmpty)
            .SelectMany(p => p.Letters.At(step, names.Lettered).Names).ToDictionary(n => (n.Way, n.Name.Row));
        return names with
        {
            Lettered = names.Lettered with
            {
                Names = [.. names.Lettered.Names.Select(n => own.TryGetValue((n.Way, n.Name.Row), out var sized)
                    ? sized with { IsInOneRun = n.IsInOneRun } : AsHighAsTyped(n))],
                Motif = Widest(parts.Select(p => MotifOf(p, step, names))),
            },
        };

        // A group's drawn letters are as high as the machine has them for that group.
        LetteredName AsHighAsTyped(LetteredName name)
        {
            double factor = parts.Select(p => p.Letters.FactorAt(step, name.Standing.Group)).FirstOrDefault(
                f => f is not null) is { } ofGroup
                ? ofGroup * (name.Name.Wish?.HeightFactor ?? 1) : name.Standing.HeightFactor;
            if (factor == name.Standing.HeightFactor)
            {
                return name;
            }

            double by = factor / name.Standing.HeightFactor;
            if (!scales.TryGetValue(by, out var scale))
            {
                scales[by] = scale = new ScaledName(by);
            }

            return scale.Of(name) with { Standing = name.Standing with { HeightFactor = factor } };
        }
    }

    /// <summary>What a way sews between names at a setting.</summary>
    private static LetteredName? MotifOf(Part part, SizeStep step, NamesRead names) => part.Letters.Steps(names.Job).IsEmpty
        ? part.Motif : part.Letters.At(step, names.Lettered).Motif;

    /// <summary>
    /// What is sewn has settled the height; of the settings that have it, the one whose names are as wide as they were planned.
    /// Names that come out otherwise now are set out anew.
    /// </summary>
    private Result<LargestSetting.Chosen> GoOn(
        NamesRead names, Continuation begun, ImmutableArray<SizeStep> steps, Func<SizeStep, NamesRead, Result<StripPlan>> layAt)
    {
        var same = LargestSetting.At(steps, begun.HeightMm);
        if (same.IsEmpty)
        {
            return Result.Fail<LargestSetting.Chosen>(LargestSetting.NoSuchHeight(begun.HeightMm));
        }

        var step = same.MinBy(s => OffMm(At(s, names), begun))!;
        bool areAsPlanned = OffMm(At(step, names), begun) < Tolerance.ReadBackMm;
        var laid = layAt(step, areAsPlanned ? names : names with { Sewn = (names.Sewn!.Value.Begun, begun with { RestDiffers = true }) });
        return laid.Value is { } plan
            ? Result.Of(new LargestSetting.Chosen(step, plan with { SpacingMm = step.GapMm }), laid.Problems)
            : Result.Fail<LargestSetting.Chosen>(laid.Problems);
    }

    /// <summary>How far any name that comes in settings is from the width it was planned in.</summary>
    private static double OffMm(NamesRead names, Continuation begun) => names.Lettered.Names
        .Where(n => begun.Before.ContainsKey(n.Name.Row) && WayTraits.Of(n.Way).HasLettersOfItsOwn)
        .Select(n => Math.Abs(n.WidthMm(begun.HeightMm, 0) - begun.Before[n.Name.Row].WidthMm)).DefaultIfEmpty(0).Max();

    /// <summary>The best fit is to the field, and some names need none: their order stays as it is listed.</summary>
    private static BandJob WithoutBestFit(BandJob job) => !job.IsHooped ? OneRun.WithoutField(job)
        : job.Lettering.Order == NameOrder.BestFit ? job with { Lettering = job.Lettering with { Order = NameOrder.Listed } } : job;

    /// <param name="names">At the setting that was chosen.</param>
    private Result<StripPlan> Finished(NamesRead names, Result<StripPlan> laid)
    {
        if (laid.Value is not { } plan)
        {
            return laid;
        }

        plan = plan with { HasNeedlePaths = plan.Hoopings.IsEmpty || plan.Hoopings.Any(h => h.HasNeedlePath) };
        if (names.Lettered.Motif is not { } widest)
        {
            return laid with { Value = plan };
        }

        // A hooping that is sewn has the motifs that it was sewn with.
        var sewn = names.Sewn?.From.Sewn ?? [];
        var fast = plan.Hoopings.Where(h => h.HasNeedlePath && sewn.Contains(h.Number)).SelectMany(h => h.Segments)
            .Select(s => s.Segment.Number).ToHashSet();
        var step = new SizeStep(plan.LetterHeightMm, plan.SpacingMm ?? 0);
        plan = PlanSnap.Apply(RunMotifs.Placed(
            plan, way => parts.Where(p => p.Way == way).Select(p => MotifOf(p, step, names)).FirstOrDefault(),
            s => fast.Contains(s.Number)));
        return Result.Of(plan, [.. laid.Problems, .. LayoutNotes.WithoutMotif(plan, widest)]);
    }
}
