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

namespace NameBand.Pipeline.Ways;

/// <summary>
/// Names that go different ways, laid out on one strip as if all were one: the same height of capitals, the same base line,
/// the same gaps. Where the letters of one of the ways come in settings, all take the height of one of these.
/// </summary>
internal sealed class SideBySideLetters(ImmutableArray<SideBySideLetters.Part> parts) : ILetteredWay
{
    /// <summary>What is read back from a plan stands on thousandths of a millimetre.</summary>
    private const double SlightMm = 0.002;

    public sealed record Part(Way Way, ILetteredWay Letters);

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
            return Finished(NeedlePathWay.LayOrGoOn(names with { Job = WithoutBestFit(names.Job) }, hem, fabric));
        }

        var chosen = names.Sewn is { } sewn ? GoOn(names, sewn.From, steps, (step, going) => LayAt(step, going, hem, fabric))
            : LargestSetting.Choose(names.Job, steps, step => LayAt(step, names, hem, fabric));
        return chosen.Value is { } setting
            ? Finished(Result.Of(setting.Plan, [.. chosen.Problems, .. parts.SelectMany(p => p.Letters.Notes(names.Job, setting.Step))]))
            : Result.Fail<StripPlan>(chosen.Problems);
    }

    public IPieceSewing Sew(LaidOut made) => new SideBySideSewing(made, parts);

    public ImmutableArray<Problem> Doubts(LaidOut made) => [.. parts.SelectMany(p => p.Letters.Doubts(SideBySideSewing.Own(made, p)))];

    /// <summary>Those of the way that has the most: the others' letters are their own.</summary>
    public ImmutableArray<Face> Faces(NamesRead names, FaceShelf shelf) =>
        parts.Select(p => p.Letters.Faces(names, shelf)).MaxBy(f => f.Length);

    public LetteredList In(Face face, NamesRead names, FaceShelf shelf, CancellationToken cancel)
    {
        var wayOf = names.Lettered.Names.ToDictionary(n => n.Name.Row, n => n.Way);
        var lists = parts.Select(p => p.Letters.In(face, OwnOf(p, names, wayOf), shelf, cancel)).ToList();
        var all = lists.SelectMany(l => l.Names).Where(n => wayOf.TryGetValue(n.Name.Row, out var way) && way == n.Way);
        return new LetteredList(face.Name, InOrder(names.Rows.Names, all, names.Job), [.. lists.SelectMany(l => l.Held).Distinct()]);
    }

    public double LeastHeightMm(LetteredList lettered, Face face, Fabric fabric, FaceShelf shelf) =>
        parts.Max(p => p.Letters.LeastHeightMm(lettered with { Names = [.. lettered.Names.Where(n => n.Way == p.Way)] }, face, fabric, shelf));

    private static NamesRead OwnOf(Part part, NamesRead names, Dictionary<RowRef, Way> wayOf) => names with
    {
        Lettered = names.Lettered with { Names = [.. names.Lettered.Names.Where(n => n.Way == part.Way)] },
        Rows = names.Rows with { Names = [.. names.Rows.Names.Where(n => wayOf.TryGetValue(n.Row, out var way) && way == part.Way)] },
    };

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
        var own = parts.Where(p => !p.Letters.Steps(names.Job).IsEmpty)
            .SelectMany(p => p.Letters.At(step, names.Lettered).Names).ToDictionary(n => (n.Way, n.Name.Row));
        return names with
        {
            Lettered = names.Lettered with
            {
                Names = [.. names.Lettered.Names.Select(n => own.TryGetValue((n.Way, n.Name.Row), out var sized)
                    ? sized with { Standing = n.Standing, IsInOneRun = n.IsInOneRun } : n)],
            },
        };
    }

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
        bool areAsPlanned = OffMm(At(step, names), begun) < SlightMm;
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

    private static Result<StripPlan> Finished(Result<StripPlan> laid) => laid with
    {
        Value = laid.Value is { } plan ? plan with { HasNeedlePaths = plan.Hoopings.IsEmpty || plan.Hoopings.Any(h => h.HasNeedlePath) } : null,
    };
}
