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
        double floor = job.Lettering.Height?.Mm ?? job.Lettering.Least.Mm;
        var (names, held) = HoldOversized(lettered.Names, sizing, floor);
        var ordered = Ordering.Order(names, job.Lettering.Order, job.Lettering.Collation);
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
            BestFit = proof is { } p ? p with { Hoopings = hoopings.Length, Bound = (p.Bound + lanes - 1) / lanes } : null,
        };
        return Result.Of(
            plan,
            [
                .. LayoutAdvice.For(job, plan, ordered, sizing), .. LayoutNotes.For(job, plan, sizing),
                .. GroupAdvice.For(job, plan, ordered, lettered.Names, held, sizing),
            ]);
    }

    private static (List<LetteredName> Names, ImmutableArray<HeldRow> Held) HoldOversized(
        ImmutableArray<LetteredName> all, Sizing sizing, double heightMm)
    {
        var names = new List<LetteredName>(all.Length);
        var held = ImmutableArray.CreateBuilder<HeldRow>();
        foreach (var name in all)
        {
            if (!sizing.FitsField(name, heightMm))
            {
                held.Add(new HeldRow(name.Name.Row, FormattableString.Invariant(
                    $"too wide for one hooping: at letters {heightMm:0.#} mm high the name is {sizing.WidthMm(name, heightMm):0} mm long and the field holds {sizing.LongestSegmentMm:0} mm. Agree a shorter form with its owner, or use a longer hoop"))
                {
                    IsForItsSize = true,
                });
            }
            else if (!sizing.FitsZone(name.Ink.BottomMm, name.Ink.TopMm, heightMm))
            {
                held.Add(new HeldRow(name.Name.Row, FormattableString.Invariant(
                    $"too tall for the strip: at letters {heightMm:0.#} mm high its ink is {(name.Ink.HeightMm * heightMm) + (2 * sizing.PullCompensationMm):0.0} mm from top to bottom and the sewing zone is {sizing.Hem.Strip.SewingZoneMm:0.0} mm. Use a wider strip or smaller letters"))
                {
                    IsForItsSize = true,
                });
            }
            else
            {
                names.Add(name);
            }
        }

        return (names, held.ToImmutable());
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
