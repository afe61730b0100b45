using System.Collections.Immutable;
using NameBand.Choosing;
using NameBand.Common;
using NameBand.Estimating;
using NameBand.Load;
using NameBand.Pipeline.Ways;
using NameBand.PlanFile;
using NameBand.Stitching;

namespace NameBand.Pipeline.Plans;

/// <summary>A plan with every name stitched in memory: what make would come to.</summary>
/// <param name="Found">What stands in the way of sewing it so, found while it was laid out and stitched.</param>
internal sealed record StitchedPlan(PlanTrial Trial, IPieceSewing Sewing, Estimate Estimate, ImmutableArray<Problem> Found)
{
    public LaidOut Laid => Trial.Laid!;

    public PlanFigures Figures => Trial.Figures(Estimate.Work, Estimate.Hoopings.Length);

    /// <summary>That of the plan that make would write.</summary>
    public string Mark { get; } = SheetMarks.Of(Trial.Laid!.Plan);

    public bool IsSound => Found.IsEmpty;
}

/// <summary>Stitches plans to see what they take and whether the cloth bears it; letters of one height are worked out once.</summary>
internal sealed class PlanStitching(CancellationToken cancel)
{
    private readonly Dictionary<string, StitchedPlan> _stitched = new(StringComparer.Ordinal);

    public StitchedPlan Of(PlanTrial trial)
    {
        if (!_stitched.TryGetValue(trial.Choice.Key, out var plan))
        {
            _stitched[trial.Choice.Key] = plan = Stitch(trial);
        }

        return plan;
    }

    private StitchedPlan Stitch(PlanTrial trial)
    {
        var laid = trial.Laid!;
        var alike = _stitched.Values.FirstOrDefault(
            s => ReferenceEquals(s.Laid.Way, laid.Way) && s.Laid.Plan.LetterHeightMm == laid.Plan.LetterHeightMm);
        var sewing = alike?.Sewing.Of(laid) ?? laid.Way.Sew(laid);
        var loads = new HoopingLoad?[laid.Plan.Hoopings.Length];
        var figures = Counting.Measure(laid, sewing, Look, null, cancel);
        var estimate = Counting.Of(laid, sewing, figures);
        var stitched = sewing.Problems.Concat(LoadAdvice.For(laid.Fabric, [.. loads.OfType<HoopingLoad>()]));
        return new StitchedPlan(
            trial, sewing, estimate,
            [.. trial.OfPlan.Concat(laid.Way.Doubts(laid)).Concat(stitched).Where(p => p.Severity != Severity.Note).Distinct()]);

        void Look(int i, NeedlePath path)
        {
            var hooping = laid.Plan.Hoopings[i];
            if (laid.Plan.HasNeedlePaths && hooping.HasNeedlePath)
            {
                var load = LoadMeter.Measure(path, laid.ClothOf(hooping.Number));
                loads[i] = new HoopingLoad(hooping.Number, load.WorstLetterPerMm2, load.Spot);
            }
        }
    }
}
