using System.Collections.Immutable;
using NameBand.Choosing;
using NameBand.Common;
using NameBand.Estimating;
using NameBand.Job;
using NameBand.Layout;
using NameBand.Load;
using NameBand.Pipeline.Stages;
using NameBand.PlanFile;
using NameBand.Stitching;

namespace NameBand.Pipeline.Plans;

/// <summary>A plan with what its stitches take: what make would come to.</summary>
/// <param name="Found">What stands in the way of sewing it so, found while it was laid out and stitched.</param>
internal sealed record StitchedPlan(PlanTrial Trial, Estimate Estimate, ImmutableArray<Problem> Found)
{
    public LaidOut Laid => Trial.Laid!;

    public PlanFigures Figures => Trial.Figures(Estimate.Work, Estimate.Hoopings.Length);

    /// <summary>That of the plan that make would write.</summary>
    public string Mark { get; } = SheetMarks.Of(Trial.Laid!.Plan);

    public bool IsSound => Found.IsEmpty;

    /// <summary>Names of the lists that have no place because they are too wide for the field or too tall for the strip.</summary>
    public int TooLarge => Laid.Plan.Held.Count(h => h.IsForItsSize && h.Row.List != JobReader.FileName);

    /// <summary>Why it will not do; empty where it will.</summary>
    public ImmutableArray<Problem> Against => !Found.IsEmpty || TooLarge == 0 ? Found
        :
        [
            Problem.Note(
                new Where(JobReader.FileName),
                $"{TooLarge} of {TooLarge + Laid.Plan.NameCount} names are too large for the strip or for the hoop.",
                "Smaller letters, a wider strip or a larger hoop make room for them; the command make says what each of them takes."),
        ];
}

/// <summary>
/// Sees what plans take and whether the cloth bears it: by stitching them, or, where the same letters were stitched before, by
/// what these took.
/// </summary>
internal sealed class PlanStitching(CancellationToken cancel)
{
    /// <summary>So near what the cloth bears a plan is stitched after all: our choice, for a few letters stand for all.</summary>
    private const double NearLimit = 0.95;

    private readonly Dictionary<string, StitchedPlan> _stitched = new(StringComparer.Ordinal);
    private readonly List<StitchTable> _tables = [];

    /// <summary>Plans of which every name was stitched.</summary>
    public int Stitched { get; private set; }

    public StitchedPlan Of(PlanTrial trial)
    {
        if (!_stitched.TryGetValue(trial.Choice.Key, out var plan))
        {
            _stitched[trial.Choice.Key] = plan = LookedUp(trial) ?? Stitch(trial);
        }

        return plan;
    }

    /// <summary>A plan that is a measure only, and is not offered: other letters may stand for its own.</summary>
    public StitchedPlan Measure(PlanTrial trial) => _tables.Find(t => !t.IsEmpty) is not { } table ? Of(trial)
        : _stitched.TryGetValue(trial.Choice.Key, out var known) ? known
        : Look(trial, trial.Laid!.Way.Sew(trial.Laid), table, []).Plan;

    /// <summary>
    /// Null where it has to be stitched: letters of its own, or so small that some are sewn in another style, or so full that
    /// it cannot be told from a few of them whether the cloth bears all.
    /// </summary>
    private StitchedPlan? LookedUp(PlanTrial trial)
    {
        var laid = trial.Laid!;
        if (laid.Begun is not null || _tables.Find(t => t.Has(laid)) is not { } table)
        {
            return null;
        }

        var doubts = laid.Way.Doubts(laid);
        var sewing = laid.Way.Sew(laid);
        if (table.IsSmaller(laid) && !doubts.IsEmpty && !IsSewnAlike(laid, sewing))
        {
            return null;
        }

        var (plan, fullest) = Look(trial, sewing, table, doubts);
        return fullest <= NearLimit * laid.Fabric.MostPenetrationsPerMm2 ? plan : null;
    }

    /// <summary>No name is run, and all letters can be read, as those of the larger ones could.</summary>
    private bool IsSewnAlike(LaidOut laid, IPieceSewing sewing)
    {
        PlacedName[] names = [.. laid.Plan.Rounds.SelectMany(r => r.NamesAndMotifs)];
        bool[] isAlike = new bool[names.Length];
        Cores.ForEach(names.Length, cancel, i => isAlike[i] = sewing.AreStrokesRead(names[i]) && sewing.StyleOf(names[i]) != NameStyle.Run);
        return !isAlike.Contains(false);
    }

    private (StitchedPlan Plan, double Fullest) Look(
        PlanTrial trial, IPieceSewing sewing, StitchTable table, ImmutableArray<Problem> doubts)
    {
        var laid = trial.Laid!;
        var (figures, fullest) = table.Look(laid, sewing, cancel);
        return (new StitchedPlan(trial, Counting.Of(laid, sewing, figures), Hindering(trial.OfPlan.Concat(doubts))), fullest);
    }

    private StitchedPlan Stitch(PlanTrial trial)
    {
        Stitched++;
        var laid = trial.Laid!;

        // Letters are measured beside the stitching, on whichever core is free.
        var doubts = Task.Run(() => laid.Way.Doubts(laid), cancel);
        var sewing = laid.Way.Sew(laid);
        var loads = new HoopingLoad[laid.Plan.Hoopings.Length];
        var figures = Counting.Measure(laid, sewing, Look, null, cancel);
        ImmutableArray<Problem> stitched = Hindering(sewing.Problems.Concat(LoadAdvice.For(laid.Fabric, loads)));
        if (stitched.IsEmpty && MayBeLookedUp(laid, sewing))
        {
            _tables.Add(new StitchTable(laid, sewing, figures, loads.Max(l => l.HolesPerMm2)));
        }

        return new StitchedPlan(
            trial, Counting.Of(laid, sewing, figures), Hindering([.. trial.OfPlan, .. doubts.GetAwaiter().GetResult(), .. stitched]));

        // The worst spot is a note and hinders no plan.
        void Look(int i, NeedlePath path)
        {
            var hooping = laid.Plan.Hoopings[i];
            bool isJudged = laid.Plan.HasNeedlePaths && hooping.HasNeedlePath;
            loads[i] = new HoopingLoad(hooping.Number, isJudged ? LoadMeter.FullestPerMm2(path, laid.ClothOf(hooping.Number)) : 0);
        }
    }

    /// <summary>Names that are run may come to be sewn in satin at another height.</summary>
    private static bool MayBeLookedUp(LaidOut laid, IPieceSewing sewing) => laid.Begun is null && laid.Plan.NameCount > 0
        && !laid.Job.HasSeveralWays && laid.Plan.Rounds.SelectMany(r => r.Names).All(n => sewing.StyleOf(n) != NameStyle.Run);

    private static ImmutableArray<Problem> Hindering(IEnumerable<Problem> problems) =>
        [.. problems.Where(p => p.Severity != Severity.Note).Distinct()];
}
