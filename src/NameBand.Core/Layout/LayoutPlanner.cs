using System.Collections.Immutable;
using NameBand.Cloth;
using NameBand.Common;
using NameBand.Garment;
using NameBand.Job;
using NameBand.Layout.Pieces;
using NameBand.Lettering;

namespace NameBand.Layout;

/// <summary>Finds the letter height and lays all names out on rounds, segments and hoopings.</summary>
public static class LayoutPlanner
{
    public static Result<StripPlan> Plan(BandJob job, HemPlan hem, LetteredList lettered, Fabric fabric)
    {
        var sizing = new Sizing(
            lettered.FaceName, hem, job.Hoop.Along.Mm, job.Hoop.Across.Mm, job.Hoop.Spare.Mm, fabric.PullCompensationMm,
            job.Strip.Shortening, job.Lettering.Gap?.Mm)
        {
            MostGapMm = job.Layout.MostGap?.Mm,
            Motif = lettered.Motif,
            MarkReachMm = -MarkLineMm(job) + SegmentCutter.MarkArmMm,
            WidestPiece = lettered.Names.SelectMany(n => n.Pieces).Select(p => p.Piece.Ink.WidthMm).DefaultIfEmpty(0).Max(),
        };
        double markY = MarkLineMm(job);
        int lanes = Lanes.InUse(job, sizing, markY);
        sizing = sizing with { Hem = hem = hem with { Lanes = lanes } };
        var sized = new Oversized(job, sizing, lettered.Names);
        var held = sized.Held;
        var ordered = Ordering.Order(sized.Fitting, job.Lettering.Order, job.Lettering.Collation);
        if (GroupAdvice.TooFewRounds(job, ordered, hem) is { } tooFew)
        {
            return Result.Fail<StripPlan>(tooFew);
        }

        var search = new HeightSearch(sizing, job.Lettering.Least.Mm, job.Lettering.Order == NameOrder.BestFit);
        var (height, bound) = job.Lettering.Height is { } given
            ? (given.Mm, HeightBound.Given)
            : ordered.Count == 0 ? (job.Lettering.Least.Mm, HeightBound.None) : search.Largest(ordered);

        var baselines = new Baselines(ordered, height, sizing);
        var (laid, proof) = new RoundLayout(sizing, job.Lettering, height, baselines).Lay(ordered);
        var (rounds, hoopings, cloths) = new ClothLayout(job, sizing, lanes, height).Lay(laid);
        var plan = new StripPlan(
            hem, height, bound, fabric.PullCompensationMm, sizing.Shortening, sizing.FieldAlongMm, sizing.FieldAcrossMm,
            sizing.SpareMm, baselines.CommonMm, markY, rounds, hoopings,
            search.Limits(ordered, height, bound), [.. held.Where(h => h.Row.List != JobReader.FileName)])
        {
            Cloths = cloths,
            Marks = job.Holding.Marks,
            Hold = job.Holding.Hold,
            BestFit = proof is { } p ? p with { Hoopings = hoopings.Length, Bound = (p.Bound + lanes - 1) / lanes } : null,
        };
        return Result.Of(
            plan,
            [
                .. sized.Advice is { } advice ? [advice] : ImmutableArray<Problem>.Empty,
                .. LayoutAdvice.For(job, plan, ordered, sizing), .. LayoutNotes.For(job, plan, sizing),
                .. GroupAdvice.For(job, plan, ordered, lettered.Names, held, sizing),
            ]);
    }

    /// <summary>
    /// The ruled line of the alignment marks: in the lower turn-in, out of sight once pressed, far enough below the
    /// finished edge for the arms of the crosses.
    /// </summary>
    private static double MarkLineMm(BandJob job)
    {
        double turnIn = job.Strip.TurnIn.Mm;
        double below = Math.Clamp(turnIn / 2, SegmentCutter.MarkArmMm + 1, 5);
        return -((job.Strip.CutWidth.Mm / 2) - turnIn) - below;
    }
}
