using System.Collections.Immutable;
using NameBand.Common;
using NameBand.Job;
using NameBand.Layout.BestFit;
using NameBand.Lettering;

namespace NameBand.Layout.Resuming;

/// <summary>
/// Sets all unsewn names out again in the room between the sewn ones, by the same wishes as the first plan: the order, the
/// place where the list begins, places kept clear, the narrowest and the widest gap, strips side by side.
/// </summary>
internal sealed class FullRelayout(
    Sizing sizing, double heightMm, double[] hemsMm, LetteringSettings lettering, SettledBaseline baseline,
    ImmutableArray<StripCloth> cloths)
{
    private double LeastGapMm => sizing.GapMm(heightMm) * GapPart;

    /// <summary>For each round the group whose own it is; 0 for names of all others.</summary>
    public required ImmutableArray<int> GroupOfRound { get; init; }

    /// <summary>How much of the narrowest gap is kept.</summary>
    public double GapPart { get; init; } = 1;

    /// <summary>Whether all names lie on their rounds at the gap that was given.</summary>
    public bool HasFitted { get; private set; }

    /// <summary>On which round each name was planned, where it is to stay there if it can; empty: rounds share names out anew.</summary>
    public IReadOnlyDictionary<RowRef, int> PlannedRounds { get; init; } = ImmutableDictionary<RowRef, int>.Empty;

    /// <summary>Whether all names lie on the rounds they were planned on.</summary>
    public bool HasKeptRounds { get; private set; } = true;

    /// <param name="names">All names, sewn ones too: those are passed over.</param>
    public ImmutableArray<KeptBlock> Place(ImmutableArray<KeptBlock> sewn, IReadOnlyList<LetteredName> names)
    {
        var lying = sewn.SelectMany(b => b.Names).Select(n => n.Lettered).ToHashSet();
        var rest = Ordering.Order([.. names.Where(n => !lying.Contains(n))], lettering.Order, lettering.Collation);
        int order = sewn.SelectMany(b => b.Names).Select(n => n.Order).DefaultIfEmpty(0).Max();
        var placed = new List<(int Round, PlacedName Name)>();
        foreach (var (stretch, row) in rest.GroupBy(n => n.Standing.OwnRounds).OrderBy(g => g.Key)
            .SelectMany(g => Divide(sewn, [.. g], g.Key)))
        {
            placed.AddRange(Spread(row, stretch, ref order).Select(n => (stretch.Round, n)));
        }

        HasFitted = placed.TrueForAll(p =>
            p.Name.EndMm + (sizing.Hem.Closed ? LeastGapMm / 2 : 0) <= hemsMm[p.Round - 1] + Tolerance.RoundingMm);
        return [.. sewn, .. new Rehooping(sizing, hemsMm, cloths).Cut(sewn, placed)];
    }

    /// <summary>With the room that is kept free left blank, if they fit so; else they may have that too.</summary>
    /// <param name="group">Names of a group with rounds of its own go on those alone.</param>
    private IEnumerable<(FreeStretch Stretch, IReadOnlyList<LetteredName> Names)> Divide(
        ImmutableArray<KeptBlock> sewn, IReadOnlyList<LetteredName> rest, int group)
    {
        int[] rounds = [.. Enumerable.Range(1, hemsMm.Length).Where(r => GroupOfRound[r - 1] == group).DefaultIfEmpty(hemsMm.Length)];
        double[] needs = [.. rest.Select(n => sizing.WidthMm(n, heightMm) + LeastGapMm)];
        var frugal = InOrder(KeptSegments.Stretches(sewn, hemsMm, sizing.Hem, cloths).Where(s => rounds.Contains(s.Round)));
        var all = InOrder(KeptSegments.Stretches(sewn, hemsMm, sizing.Hem.WithNothingKeptFree(), cloths)
            .Where(s => rounds.Contains(s.Round)));
        var past = PastTheHem(sewn, rounds[^1]);
        if (!RoundDivider.Fits(needs, Offers(all))
            && !all.Exists(s => s.Round == past.Round && s.EndMm >= past.StartMm - sizing.Hem.EndMarginMm - Tolerance.RoundingMm))
        {
            all.Add(past);
        }

        if (lettering.Order == NameOrder.BestFit && (BestFit(rest, needs, frugal) ?? BestFit(rest, needs, all)) is { } fit)
        {
            return fit;
        }

        var chosen = frugal.Count > 0 && RoundDivider.Fits(needs, Offers(frugal)) ? frugal : all;
        int[]? planned = AsPlanned(rest, needs, chosen);
        HasKeptRounds &= planned is not null;
        int[] counts = planned ?? Counts(needs, chosen);
        int[] firsts = [.. counts.Select((_, i) => counts.Take(i).Sum())];
        return chosen.Select((s, i) => (s, (IReadOnlyList<LetteredName>)[.. rest.Skip(firsts[i]).Take(counts[i])]));
    }

    /// <summary>Stretches as the list fills them: round by round, from where the list begins.</summary>
    private List<FreeStretch> InOrder(IEnumerable<FreeStretch> stretches) =>
        [.. stretches.OrderBy(s => s.Round).ThenBy(s => s.StartMm < ListStartMm(s.Round) - Tolerance.RoundingMm).ThenBy(s => s.StartMm)];

    private double ListStartMm(int round) => sizing.Hem.StartMm * sizing.Hem.RoundMm(round) / sizing.Hem.EdgeLengthMm;

    private double[] Offers(IEnumerable<FreeStretch> stretches) => [.. stretches.Select(s => s.OfferMm(LeastGapMm, sizing.Hem.Closed))];

    /// <summary>The unsewn names in the order of the fewest hoopings; null where they do not all fit.</summary>
    private IEnumerable<(FreeStretch, IReadOnlyList<LetteredName>)>? BestFit(
        IReadOnlyList<LetteredName> rest, double[] needs, List<FreeStretch> stretches)
    {
        if (rest.Count == 0)
        {
            return null;
        }

        double narrowest = needs.Min();
        var roomy = stretches.Where(s => s.OfferMm(LeastGapMm, sizing.Hem.Closed) >= narrowest - Tolerance.RoundingMm).ToList();
        if (roomy.Count == 0 || !BestFitRows.Fits(needs, Offers(roomy)))
        {
            return null;
        }

        var rows = new BestFitRows(sizing, heightMm, lettering.Spread)
            .Arrange(rest, [.. roomy.Select(s => s.AsStretch(LeastGapMm, sizing.Hem.Closed))], asNeeded: false, (_, _, _) => null).Rows;
        return roomy.Take(rows.Length).Select((s, i) => (s, (IReadOnlyList<LetteredName>)rows[i]));
    }

    /// <summary>How many names each stretch takes where every name stays on its round; null where they cannot.</summary>
    private int[]? AsPlanned(IReadOnlyList<LetteredName> rest, double[] needs, List<FreeStretch> stretches)
    {
        double[] offers = Offers(stretches);
        double narrowest = needs.DefaultIfEmpty(0).Min();
        if (PlannedRounds.Count == 0 || stretches.Where((_, i) => offers[i] >= narrowest).GroupBy(s => s.Round).Any(r => r.Count() > 1))
        {
            return null;
        }

        int[] counts = new int[stretches.Count];
        int next = 0;
        for (int i = 0; i < counts.Length; i++)
        {
            double room = offers[i] + Tolerance.RoundingMm;
            while (next < needs.Length && PlannedRounds.GetValueOrDefault(rest[next].Name.Row) == stretches[i].Round && needs[next] <= room)
            {
                room -= needs[next++];
                counts[i]++;
            }
        }

        return next == needs.Length ? counts : null;
    }

    /// <summary>
    /// How many names each stretch takes: as evenly full as can be where all fit, else each full and the rest on the one that
    /// reaches furthest: from there they run over the hem's end, which is told, and not over what is sewn or kept clear.
    /// </summary>
    private int[] Counts(double[] needs, List<FreeStretch> stretches)
    {
        double[] offers = Offers(stretches);
        if (RoundDivider.Fits(needs, offers))
        {
            return [.. RoundDivider.Divide(needs, offers, weights: RoundDivider.ByLength(offers))];
        }

        int[] counts = new int[stretches.Count];
        int next = 0;
        for (int i = 0; i < counts.Length; i++)
        {
            double room = offers[i];
            while (next < needs.Length && needs[next] <= room)
            {
                room -= needs[next++];
                counts[i]++;
            }
        }

        int last = Enumerable.Range(0, counts.Length).MaxBy(i => (stretches[i].Round, stretches[i].EndMm));
        counts[last] += needs.Length - next;
        return counts;
    }

    /// <summary>Where names go that have no room on their rounds: past the end of the last one, behind all that is sewn there.</summary>
    private FreeStretch PastTheHem(ImmutableArray<KeptBlock> sewn, int round)
    {
        double lastSewn = sewn.Where(b => b.Round == round).Select(b => b.LastMm).DefaultIfEmpty(0).Max();
        double from = Math.Max(hemsMm[round - 1], lastSewn);
        return new FreeStretch(round, from, from, lastSewn >= from - Tolerance.RoundingMm, false);
    }

    private ImmutableArray<PlacedName> Spread(IReadOnlyList<LetteredName> row, FreeStretch stretch, ref int order)
    {
        if (row.Count == 0)
        {
            return [];
        }

        double[] widths = [.. row.Select(n => sizing.WidthMm(n, heightMm))];
        double slack = stretch.EndMm - stretch.StartMm - widths.Sum();
        var (leftParts, rightParts) = stretch.Ends(1, sizing.Hem.Closed);
        double parts = row.Count - 1 + leftParts + rightParts;
        double gap = lettering.Spread && parts > 0 ? Math.Max(LeastGapMm, Math.Min(slack / parts, sizing.MostGapMm ?? double.MaxValue))
            : LeastGapMm;
        double at = stretch.StartMm + (leftParts * gap);
        var placed = ImmutableArray.CreateBuilder<PlacedName>(row.Count);
        for (int i = 0; i < row.Count; i++)
        {
            placed.Add(new PlacedName(row[i], at, widths[i], baseline.For(row[i]), ++order));
            at += widths[i] + gap;
        }

        return placed.ToImmutable();
    }
}
