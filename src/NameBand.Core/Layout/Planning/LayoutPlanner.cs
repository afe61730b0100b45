using System.Collections.Immutable;
using NameBand.Cloth;
using NameBand.Common;
using NameBand.Garment;
using NameBand.Job;
using NameBand.Layout.Lines;
using NameBand.Layout.Pieces;
using NameBand.Lettering;

namespace NameBand.Layout.Planning;

/// <summary>Finds the letter height and lays all names out on rounds, segments and hoopings.</summary>
internal static class LayoutPlanner
{
    /// <param name="choice">How strips lie side by side where the job leaves it free; null: one by one, or as the job has it.</param>
    public static Result<StripPlan> Plan(BandJob job, HemPlan hem, LetteredList lettered, Fabric fabric, LaneChoice? choice = null)
    {
        var sizing = new Sizing(
            lettered.FaceName, hem, job.Hoop.Along.Mm, job.Hoop.Across.Mm, job.Hoop.Spare.Mm, fabric.PullCompensationMm,
            job.Strip.Shortening, job.Lettering.Gap?.Mm)
        {
            Pull = fabric.Pull,
            MostGapMm = job.Layout.MostGap?.Mm,
            Motif = lettered.Motif,
            AreMotifsLater = lettered.AreMotifsLater,
            MarkReachMm = -MarkLineMm(job) + SegmentCutter.MarkArmMm,
            WidestPiece = lettered.Names.SelectMany(n => n.Pieces).Select(p => p.Piece.Ink.WidthMm).DefaultIfEmpty(0).Max(),
        };
        double markY = MarkLineMm(job);
        int lanes = Lanes.InUse(job, sizing, markY);
        sizing = sizing with { Hem = hem = hem with { Lanes = job.Layout.AreLanesFree ? 1 : lanes } };
        var sized = new Oversized(job, sizing, lettered.Names);
        var held = sized.Held;
        var ordered = Ordering.Order(sized.Fitting, job.Lettering.Order, job.Lettering.Collation);
        if (GroupAdvice.TooFewRounds(job, ordered, hem) is { } tooFew)
        {
            return Result.Fail<StripPlan>(tooFew);
        }

        bool isFree = job.Lettering.Order == NameOrder.BestFit;
        var lines = job.Layout.Lines > 1 ? new TwoLines() : null;
        var search = new HeightSearch(sizing, job.Lettering.Least.Mm, isFree, lines is null ? null : n => new TwoLines().Paired(n));
        if (job.Lettering.Height is null)
        {
            var odd = OddLongNames.Of(ordered, n => search.Largest(n).HeightMm);
            held = [.. held, .. odd.Select(o => o.Held)];
            ordered = odd.IsEmpty ? ordered : [.. ordered.Where(n => !odd.Any(o => ReferenceEquals(o.Name, n)))];
        }

        var one = lines?.Paired(ordered) ?? ordered;
        if (lines is not null && LineAdvice.TooNarrow(job, sizing, one) is { } tooNarrow)
        {
            return Result.Fail<StripPlan>(tooNarrow);
        }

        var (height, bound) = job.Lettering.Height is { } given
            ? (given.Mm, HeightBound.Given)
            : ordered.Count == 0 ? (job.Lettering.Least.Mm, HeightBound.None) : search.Largest(ordered);

        var limits = search.Limits(ordered, height, bound);
        sizing = sizing with { LineStep = lines?.Step ?? 0 };
        var baselines = new Baselines(one, height, sizing);
        var (laid, proof) = new RoundLayout(sizing, job.Lettering, height, baselines).Lay(one);
        var smaller = Lanes.Smaller(job, sizing, markY, choice);
        var plan = Cheapest(LanesToTry(job, sizing, markY, choice).Select(Beside), choice);
        return Result.Of(
            plan,
            [
                .. sized.Advice is { } advice ? [advice] : ImmutableArray<Problem>.Empty,
                .. LayoutAdvice.For(job, plan, one, sizing), .. LayoutNotes.For(job, plan, sizing),
                .. GroupAdvice.For(job, plan, ordered, lettered.Names, held, sizing),
                .. lines is null || ordered.Count == 0 ? ImmutableArray<Problem>.Empty
                    : [LineAdvice.OrderChanges(
                        ordered, plan.Rounds.SelectMany(r => r.Names).OrderBy(n => n.Order).Select(n => n.Lettered), isFree)],
            ]);

        StripPlan Beside(int lanes)
        {
            var (rounds, hoopings, cloths) = new ClothLayout(job, sizing, lanes, height, smaller).Lay(laid);
            var plan = new StripPlan(
                hem, height, bound, fabric.LettersReachMm(height), sizing.Shortening, sizing.FieldAlongMm, sizing.FieldAcrossMm,
                sizing.SpareMm, baselines.CommonMm, markY, rounds, hoopings,
                limits, [.. held.Where(h => h.Row.List != JobReader.FileName)])
            {
                Cloths = cloths,
                Marks = job.Holding.Marks,
                Hold = job.Holding.Hold,
                BestFit = proof is { } p ? p with { Hoopings = hoopings.Length, Bound = (p.Bound + lanes - 1) / lanes } : null,
                FreeLanes = job.Layout.AreLanesFree ? lanes : null,
            };
            return lines?.Apart(plan, sizing, areMotifsLaid: true) ?? plan;
        }
    }

    private static IEnumerable<int> LanesToTry(BandJob job, Sizing sizing, double markYMm, LaneChoice? choice)
    {
        if (!job.Layout.AreLanesFree || choice is null)
        {
            return [Lanes.InUse(job, sizing, markYMm)];
        }

        int most = Lanes.Most(job, sizing, markYMm);
        return choice.Kept is { } kept && kept <= most ? [kept] : Enumerable.Range(1, most);
    }

    /// <summary>The plan that costs least; of equal ones the first. All look the same.</summary>
    private static StripPlan Cheapest(IEnumerable<StripPlan> plans, LaneChoice? choice)
    {
        StripPlan? best = null;
        double least = double.PositiveInfinity;
        foreach (var plan in plans)
        {
            double cost = choice?.CostMinutes(plan) ?? 0;
            if (cost < least - Tolerance.Rounding)
            {
                (best, least) = (plan, cost);
            }

            if (plan.Cloths.Length <= 1)
            {
                break; // All strips lie side by side already.
            }
        }

        return best!;
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
