using System.Collections.Immutable;
using NameBand.Job;
using NameBand.Layout.BestFit;
using NameBand.Lettering;

namespace NameBand.Layout.Planning;

/// <summary>Divides the names over the rounds' stretches, spaces them and cuts them into segments.</summary>
internal sealed class RoundLayout(Sizing sizing, LetteringSettings lettering, double heightMm, Baselines baselines)
{
    private const int MostRounds = 200; // The most that strip.rounds takes: a hem with more has a unit mistaken.

    /// <param name="names">In the order of the list; for the best fit that order is only where it does not matter.</param>
    public (ImmutableArray<LaidRound> Rounds, BestFitProof? Proof) Lay(IReadOnlyList<LetteredName> names)
    {
        var stretches = sizing.Hem.FixedRounds is { } fixedRounds
            ? Stretches(fixedRounds)
            : names.Count == 0 ? [] : Stretches(UsableRounds());
        if (lettering.Order == NameOrder.BestFit && names.Count > 0)
        {
            var fit = new BestFitRows(sizing, heightMm, lettering.Spread);
            var (rows, proof) = fit.Arrange(names, stretches, asNeeded: sizing.Hem.FixedRounds is null, KeptGap);
            return (Place([.. rows.Select((r, i) => new Row(stretches[i], r))]), proof);
        }

        return (Place(new OwnPlaces(sizing, heightMm, names, stretches).Rows()), null);
    }

    private ImmutableArray<FreeInterval> Stretches(int rounds) =>
        [.. Enumerable.Range(1, rounds).SelectMany(k => FreeInterval.Of(sizing.Hem, k))];

    private int UsableRounds()
    {
        int rounds = 1;
        while (rounds < MostRounds && sizing.Hem.RoundMm(rounds + 1) > Math.Max(sizing.Hem.OverlapMm, 50))
        {
            rounds++;
        }

        return rounds;
    }

    /// <summary>The gap a round keeps from the one before it: of as many rounds as needed, the last one's names stand no wider.</summary>
    private double? KeptGap(FreeInterval stretch, int lastRound, double? before) =>
        sizing.Hem.FixedRounds is null && stretch.Round > 1 && stretch.Round == lastRound ? before : null;

    private ImmutableArray<LaidRound> Place(ImmutableArray<Row> rows)
    {
        var rounds = ImmutableArray.CreateBuilder<LaidRound>();
        int order = 1;
        int last = rows.IsEmpty ? 0 : rows[^1].Stretch.Round;
        double? before = null;
        foreach (var group in rows.GroupBy(r => r.Stretch.Round))
        {
            var names = new List<PlacedName>();
            double over = 0;
            double least = double.PositiveInfinity;
            var places = new Dictionary<FreeInterval, (RowLayout.Gaps Gaps, int First)>();
            foreach (var row in group)
            {
                var gaps = RowLayout.Beside(
                    row.Names.Sum(n => sizing.WidthMm(n, heightMm)), row, new RowLayout.GapWish(
                        sizing.GapMm(heightMm), lettering.Spread, KeptGap(row.Stretch, last, before), sizing.MostGapMm));
                places.Add(row.Stretch, (gaps, order));
                order += row.Names.Count;
                least = row.Names.Count > 0 && !row.IsPinned ? Math.Min(least, gaps.GapMm) : least;
            }

            foreach (var row in group.OrderBy(r => r.Stretch.StartMm))
            {
                // Where names run over, what follows along the strip moves on.
                var (gaps, first) = places[row.Stretch];
                names.AddRange(RowLayout.Place(row.Names, gaps, (row.Stretch.StartMm + over, first), heightMm, sizing, baselines));
                over += gaps.LengthMm - row.Stretch.LengthMm;
            }

            // Beside a pinned name a gap may be narrower than the others.
            bool isParted = group.Any(r => r.IsPinned);
            least = isParted ? names.Zip(names.Skip(1), (a, b) => b.StartMm - a.EndMm).Append(least).Min() : least;
            double gap = double.IsInfinity(least) ? sizing.GapMm(heightMm) : least;
            double hem = sizing.Hem.RoundMm(group.Key);
            rounds.Add(new LaidRound(group.Key, hem + Math.Max(over, 0), hem, gap, [.. names], isParted ? FreeInterval.Of(
                sizing.Hem, group.Key) : [.. group.Select(r => r.Stretch)]));
            before = gap;
        }

        return rounds.ToImmutable();
    }
}
