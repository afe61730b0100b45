using System.Collections.Immutable;
using NameBand.Cloth;
using NameBand.Common;
using NameBand.Garment;
using NameBand.Job;
using NameBand.Lettering;

namespace NameBand.Layout;

/// <summary>Finds the letter height and lays all names out on rounds, segments and hoopings.</summary>
public static class LayoutPlanner
{
    private const int MostRounds = 200;

    public static Result<StripPlan> Plan(BandJob job, HemPlan hem, LetteredList lettered, Fabric fabric)
    {
        var sizing = new Sizing(
            lettered.FaceName, hem, job.Hoop.Along.Mm, job.Hoop.Across.Mm, job.Hoop.Spare.Mm, fabric.PullCompensationMm,
            job.Strip.Shortening, job.Lettering.Gap?.Mm);
        double floor = job.Lettering.Height?.Mm ?? job.Lettering.Least.Mm;
        var (names, held) = HoldOversized(lettered.Names, sizing, floor);
        var ordered = Ordering.Order(names, job.Lettering.Order, job.Lettering.Collation);

        var search = new HeightSearch(sizing, job.Lettering.Least.Mm);
        var (height, bound) = job.Lettering.Height is { } given
            ? (given.Mm, HeightBound.Given)
            : ordered.Count == 0 ? (job.Lettering.Least.Mm, HeightBound.None) : search.Largest(ordered);

        var baselines = new Baselines(ordered, height, sizing);
        var rounds = LayRounds(ordered, height, job.Lettering.Spread, sizing, baselines);
        var plan = new StripPlan(
            hem, height, bound, fabric.PullCompensationMm, sizing.Shortening, sizing.FieldAlongMm, sizing.FieldAcrossMm,
            sizing.SpareMm, baselines.CommonMm, MarkLineMm(job), rounds, Hoop(rounds),
            search.Limits(ordered, height, bound), held);
        return Result.Of(plan, LayoutAdvice.For(job, plan, ordered, sizing));
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
                    $"too wide for one hooping: at letters {heightMm:0.#} mm high the name is {sizing.WidthMm(name, heightMm):0} mm long and the field holds {sizing.LongestSegmentMm:0} mm. Agree a shorter form with its owner, or use a longer hoop")));
            }
            else if (!sizing.FitsZone(name.Ink.BottomMm, name.Ink.TopMm, heightMm))
            {
                held.Add(new HeldRow(name.Name.Row, FormattableString.Invariant(
                    $"too tall for the strip: at letters {heightMm:0.#} mm high its ink is {(name.Ink.HeightMm * heightMm) + (2 * sizing.PullCompensationMm):0.0} mm from top to bottom and the sewing zone is {sizing.Hem.Strip.SewingZoneMm:0.0} mm. Use a wider strip or smaller letters")));
            }
            else
            {
                names.Add(name);
            }
        }

        return (names, held.ToImmutable());
    }

    private static ImmutableArray<Round> LayRounds(
        IReadOnlyList<LetteredName> names, double heightMm, bool spread, Sizing sizing, Baselines baselines)
    {
        double leastGap = sizing.GapMm(heightMm);
        double[] needs = [.. names.Select(n => sizing.WidthMm(n, heightMm) + leastGap)];
        bool asNeeded = sizing.Hem.FixedRounds is null;
        var counts = asNeeded
            ? RoundDivider.FillAsNeeded(needs, k => sizing.OfferMm(k, leastGap), UsableRounds(sizing.Hem))
            : RoundDivider.Divide(needs, [.. Enumerable.Range(1, sizing.Hem.FixedRounds!.Value).Select(k => sizing.OfferMm(k, leastGap))]);

        var rounds = ImmutableArray.CreateBuilder<Round>(counts.Length);
        int next = 0;
        int order = 1;
        int segment = 1;
        for (int k = 1; k <= counts.Length; k++)
        {
            var row = names.Skip(next).Take(counts[k - 1]).ToList();
            next += row.Count;
            double? kept = asNeeded && k > 1 && k == counts.Length ? rounds[^1].GapMm : null;
            var gaps = RowLayout.Space(
                row.Sum(n => sizing.WidthMm(n, heightMm)), row.Count, sizing.Hem.RoundMm(k), leastGap, spread, kept, sizing);
            var placed = RowLayout.Place(row, gaps, heightMm, sizing, baselines, ref order);
            rounds.Add(new Round(k, gaps.LengthMm, sizing.Hem.RoundMm(k), gaps.GapMm, Segments(placed, gaps.LengthMm, sizing, ref segment)));
        }

        return rounds.ToImmutable();
    }

    private static ImmutableArray<Segment> Segments(ImmutableArray<PlacedName> names, double roundMm, Sizing sizing, ref int number)
    {
        var segments = ImmutableArray.CreateBuilder<Segment>();
        int next = 0;
        foreach (int count in SegmentCutter.Cut(names, sizing))
        {
            var row = names.Slice(next, count);
            next += count;
            var (start, length) = SegmentCutter.Extent(row[0], row[^1], roundMm, sizing);
            segments.Add(new Segment(number++, start, length, start / (1 - sizing.Shortening), row));
        }

        return segments.ToImmutable();
    }

    private static ImmutableArray<Hooping> Hoop(ImmutableArray<Round> rounds) =>
        [.. rounds.SelectMany(r => r.Segments.Select(s => new Hooping(s.Number, [new HoopedSegment(r, s, 0, 0)])))];

    private static int UsableRounds(HemPlan hem)
    {
        int rounds = 1;
        while (rounds < MostRounds && hem.RoundMm(rounds + 1) > Math.Max(hem.OverlapMm, 50))
        {
            rounds++;
        }

        return rounds;
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
