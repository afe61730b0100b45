using System.Collections.Immutable;
using NameBand.Common;
using NameBand.Lettering;

namespace NameBand.Layout.BestFit;

/// <summary>
/// Puts names that may go round in any order onto the stretches of the rounds so that they need the fewest hoopings.
/// Names with the gap that follows them are the pieces, the sewing field with one gap is the bin; widths are counted
/// to the next hundredth of a millimetre.
/// </summary>
internal sealed class BestFitRows(Sizing sizing, double heightMm, bool spread)
{
    // Widths are rounded up to it: a hundred names lose less than a millimetre to it, which no ruler shows.
    private const double UnitMm = 0.01;
    // A count: the knapsack takes a cell for each and each kind of piece, so that a very long field is counted more coarsely.
    private const int MostUnits = 60_000;

    /// <summary>Whether the names, gaps included, can be put on the stretches: the largest first, each where most of the room is
    /// left.</summary>
    public static bool Fits(IReadOnlyList<double> needsMm, IReadOnlyList<double> offersMm) =>
        needsMm.Sum() <= offersMm.Sum() + Tolerance.RoundingMm && Spread(needsMm, offersMm).Left.All(l => l >= -Tolerance.RoundingMm);

    /// <param name="keptGap">The gap that a stretch keeps from the round before it, given the last round in use and that gap.</param>
    /// <returns>The names of every stretch that is used, in order, and what is known of the number of hoopings.</returns>
    public (ImmutableArray<ImmutableArray<LetteredName>> Rows, BestFitProof Proof) Arrange(
        IReadOnlyList<LetteredName> names, ImmutableArray<FreeInterval> stretches, bool asNeeded,
        Func<FreeInterval, int, double?, double?> keptGap)
    {
        var divisions = asNeeded
            ? [AsNeeded(names, stretches)]
            : stretches.Length == 1 ? [[[.. names]]] : Divisions(names, stretches);
        var best = divisions.Select(d => Ordered(d, stretches, keptGap)).MinBy(o => (o.OverMm, o.Hoopings));
        var whole = Pack(names, best.LeastGapMm, sizing.LongestSegmentMm, BinPacker.Budget / 2, forBound: true);
        return (best.Rows, new BestFitProof(best.Hoopings, whole.Bound, whole.PatternHoopings, best.LeastGapMm));
    }

    private readonly record struct Laid(ImmutableArray<ImmutableArray<LetteredName>> Rows, double OverMm, int Hoopings, double LeastGapMm);

    /// <summary>Every stretch's names in the order of the fewest segments at the gap they will have there.</summary>
    private Laid Ordered(
        IReadOnlyList<List<LetteredName>> division, ImmutableArray<FreeInterval> stretches,
        Func<FreeInterval, int, double?, double?> keptGap)
    {
        var rows = ImmutableArray.CreateBuilder<ImmutableArray<LetteredName>>();
        double over = 0;
        int hoopings = 0;
        double least = double.PositiveInfinity;
        double? before = null;
        int last = stretches[division.Count - 1].Round;
        for (int i = 0; i < division.Count; i++)
        {
            var names = division[i];
            var gaps = RowLayout.Space(
                names.Sum(n => sizing.WidthMm(n, heightMm)), names.Count, stretches[i],
                new RowLayout.GapWish(sizing.GapMm(heightMm), spread, keptGap(stretches[i], last, before), sizing.MostGapMm));
            var packing = Pack(names, gaps.GapMm, sizing.LongestSegmentMm, BinPacker.Budget / (16 * division.Count));
            rows.Add([.. packing.Bins.Select(b => b.Order().ToList()).OrderBy(b => b[0]).SelectMany(b => b).Select(n => names[n])]);
            over += gaps.LengthMm - stretches[i].LengthMm;
            hoopings += packing.Bins.Length;
            least = names.Count > 0 ? Math.Min(least, gaps.GapMm) : least;
            before = i + 1 < division.Count && stretches[i + 1].Round != stretches[i].Round ? gaps.GapMm : before;
        }

        return new Laid(rows.ToImmutable(), Math.Round(over, 6), hoopings, least);
    }

    private List<List<LetteredName>> ByName(IReadOnlyList<LetteredName> names, ImmutableArray<FreeInterval> stretches)
    {
        double gap = sizing.GapMm(heightMm);
        var (places, _) = Spread([.. names.Select(n => sizing.WidthMm(n, heightMm) + gap)], [.. stretches.Select(s => s.OfferMm(gap))]);
        return [.. stretches.Select((_, s) => names.Where((_, n) => places[n] == s).ToList())];
    }

    /// <summary>
    /// Names one by one, and whole hoopings packed at the gap that all stretches would share or a little more: on the
    /// stretch that gets the wider gaps its hoopings then still hold.
    /// </summary>
    private List<List<LetteredName>>[] Divisions(IReadOnlyList<LetteredName> names, ImmutableArray<FreeInterval> stretches)
    {
        double least = sizing.GapMm(heightMm);
        double slack = stretches.Sum(s => s.LengthMm) - names.Sum(n => sizing.WidthMm(n, heightMm));
        double shared = spread ? Math.Max(least, slack / names.Count) : least;
        double[] wider = spread ? [0, 0.5, 1.5, 4] : [0];
        return [ByName(names, stretches), .. wider.Select(w => ByHooping(names, stretches, shared, w))];
    }

    /// <summary>Whole hoopings go onto the stretches, so that few of them are broken at a stretch's end.</summary>
    private List<List<LetteredName>> ByHooping(
        IReadOnlyList<LetteredName> names, ImmutableArray<FreeInterval> stretches, double shared, double wider)
    {
        var bins = Pack(names, shared + wider, sizing.LongestSegmentMm, BinPacker.Budget / 16).Bins;
        var (places, _) = Spread(
            [.. bins.Select(b => b.Sum(n => sizing.WidthMm(names[n], heightMm) + shared))], [.. stretches.Select(s => s.OfferMm(shared))]);
        var where = new int[names.Count];
        for (int b = 0; b < bins.Length; b++)
        {
            foreach (int name in bins[b])
            {
                where[name] = places[b];
            }
        }

        return [.. stretches.Select((_, s) => names.Where((_, n) => where[n] == s).ToList())];
    }

    private List<List<LetteredName>> AsNeeded(IReadOnlyList<LetteredName> names, ImmutableArray<FreeInterval> stretches)
    {
        double gap = sizing.GapMm(heightMm);
        LetteredName[] row =
            [.. Pack(names, gap, sizing.LongestSegmentMm, BinPacker.Budget / 4).Bins.SelectMany(b => b.Order()).Select(n => names[n])];
        var counts = RoundDivider.FillAsNeeded(
            [.. row.Select(n => sizing.WidthMm(n, heightMm) + gap)], i => stretches[i - 1].OfferMm(gap), stretches.Length);
        var division = new List<List<LetteredName>>();
        int next = 0;
        var place = names.Select((n, i) => (n, i))
            .ToDictionary(e => e.n, e => e.i, ReferenceEqualityComparer.Instance as IEqualityComparer<LetteredName>);
        foreach (int count in counts)
        {
            division.Add([.. row.Skip(next).Take(count).OrderBy(n => place[n])]);
            next += count;
        }

        return division;
    }

    /// <param name="forBound">
    /// Widths are rounded down and the field up, so that no order can do with fewer hoopings than are found to be needed; else
    /// the other way about, so that what is packed does fit.
    /// </param>
    private Packing Pack(IReadOnlyList<LetteredName> names, double gapMm, double longestMm, long budget, bool forBound = false)
    {
        double unit = Math.Max(UnitMm, (longestMm + gapMm) / MostUnits);
        double field = (longestMm + gapMm) / unit;
        int capacity = (int)(forBound ? Math.Ceiling(field - 1e-6) : Math.Floor(field + 1e-6));
        int Units(LetteredName name)
        {
            double width = (sizing.WidthMm(name, heightMm) + gapMm) / unit;
            return Math.Clamp((int)(forBound ? Math.Floor(width + 1e-6) : Math.Ceiling(width - 1e-6)), 1, capacity);
        }

        return BinPacker.Pack(new PackingProblem([.. names.Select(Units)], capacity), budget);
    }

    /// <summary>
    /// The largest first, each where most room is left, or the largest part of it, so that short and long rounds come out alike; where
    /// it fits, if it fits anywhere. The place of every one, and the room left at the end.
    /// </summary>
    private static (int[] Places, double[] Left) Spread(IReadOnlyList<double> needs, IReadOnlyList<double> offers)
    {
        const double alike = 1.2; // The longest to the shortest: up to here as much room on each looks as even, and breaks fewer hoopings.
        bool areAlike = offers.Count > 0 && offers.Max() <= alike * offers.Min();
        double[] left = [.. offers];
        var places = new int[needs.Count];
        foreach (int item in Enumerable.Range(0, needs.Count).OrderByDescending(i => needs[i]))
        {
            int roomiest = Enumerable.Range(0, left.Length)
                .MaxBy(s => (left[s] >= needs[item], areAlike || offers[s] <= 0 ? left[s] : left[s] / offers[s]));
            places[item] = roomiest;
            left[roomiest] -= needs[item];
        }

        return (places, left);
    }
}
