using System.Collections.Immutable;
using NameBand.Garment;
using NameBand.Job;

namespace NameBand.Layout.Resuming;

/// <summary>
/// Takes the runs of an earlier plan apart into stretches of sewn names and of names that are not, each as if it were a hooping
/// of its own, so that what is sewn lies fast and the rest is free; and puts what was laid out so together again.
/// </summary>
internal static class RunSplit
{
    /// <summary>What is read back from a plan stands on thousandths of a millimetre.</summary>
    private const double ReadBackMm = 0.002;

    /// <summary>The plan in stretches, and the numbers of those that are sewn.</summary>
    public static (EarlierPlan Plan, ImmutableHashSet<int> Sewn) Of(EarlierPlan plan, Func<EarlierName, bool> isSewn)
    {
        var flat = new FlatCloth(plan.Shortening);
        var hoopingOf = plan.Hoopings.SelectMany(h => h.Segments.Select(s => (s.Segment, Hooping: h)))
            .ToDictionary(p => p.Segment, p => p.Hooping);
        var hoopings = ImmutableArray.CreateBuilder<EarlierHooping>();
        var sewn = ImmutableHashSet.CreateBuilder<int>();
        int number = 0;
        ImmutableArray<EarlierRound> rounds = [.. plan.Rounds.Select(r => r with { Segments = [.. r.Segments.SelectMany(Apart)] })];
        return (plan with { Rounds = rounds, Hoopings = hoopings.ToImmutable() }, sewn.ToImmutable());

        IEnumerable<EarlierSegment> Apart(EarlierSegment segment)
        {
            // Of two names one above the other neither moves once one of them is sewn.
            var places = PlacesAlong.Of(segment.Names, n => (n.StartMm, n.StartMm + n.WidthMm, n.OnLine)).ToList();
            for (int from = 0, to; from < places.Count; from = to)
            {
                bool areSewn = places[from].Any(isSewn);
                to = from + 1;
                while (to < places.Count && places[to].Any(isSewn) == areSewn)
                {
                    to++;
                }

                ImmutableArray<EarlierName> names = [.. places[from..to].SelectMany(p => p)];

                number++;
                if (areSewn)
                {
                    sewn.Add(number);
                }

                var run = hoopingOf[segment.Number];
                double start = names.Min(n => n.StartMm);
                double end = names.Max(n => n.StartMm + n.WidthMm);
                double next = to == places.Count ? double.PositiveInfinity : places[to].Min(n => n.StartMm);
                double along = flat.OnClothMm(start - segment.StartMm);
                hoopings.Add(run with { Number = number, Segments = [new EarlierHooped(number, 0, 0)], OnClothMm = run.OnClothMm + along });
                yield return new EarlierSegment(
                    number, start, end - start, flat.OnClothMm(start), names)
                {
                    Motifs = [.. segment.Motifs.Where(m => m.StartMm > start && m.StartMm < next)],
                };
            }
        }
    }

    /// <summary>One run again for each piece of cloth; one that has the names of the earlier plan where it had them is that run.</summary>
    public static StripPlan Together(StripPlan plan, EarlierPlan earlier)
    {
        var pieces = plan.Cloths.SelectMany(c => c.Pieces).ToList();
        var numbers = new Numbers(earlier);
        var hoopings = new List<Hooping>();
        var rounds = ImmutableArray.CreateBuilder<Round>(plan.Rounds.Length);
        foreach (var round in plan.Rounds)
        {
            var runs = PlacesAlong.Of(round.Segments.SelectMany(s => s.Names)).SelectMany(p => p)
                .GroupBy(n => StripPiece.At(pieces, round.Number, n.StartMm)?.Number ?? 0)
                .Select(g => (Names: g.ToImmutableArray(), Before: numbers.Of(round.Number, [.. g])))
                .ToList();
            var motifs = round.Segments.SelectMany(s => s.Motifs).ToList();
            var segments = runs.Select(r => Segment(plan, r.Names, r.Before, motifs)).ToImmutableArray();
            var whole = round with { Segments = segments };
            rounds.Add(whole);
            hoopings.AddRange(segments.Zip(runs, (s, r) => Lying(plan, whole, s, r.Before, pieces)));
        }

        return plan with
        {
            Rounds = rounds.ToImmutable(),
            Hoopings = [.. hoopings.OrderBy(h => h.Number)],
            Cloths = [.. plan.Cloths.Select(c =>
                c with { Hoopings = [.. hoopings.Where(h => h.Cloth == c.Number).Select(h => h.Number).Order()] })],
        };
    }

    private static Segment Segment(StripPlan plan, ImmutableArray<PlacedName> names, Before before, List<PlacedName> motifs)
    {
        double start = names.Min(n => n.StartMm), end = names.Max(n => n.EndMm);
        if (before.Segment is { } known && IsSame(names, known))
        {
            (start, end) = (known.StartMm, known.StartMm + known.LengthMm);
        }

        return new Segment(before.SegmentNumber, start, end - start, plan.OnClothMm(start), names)
        {
            Motifs = [.. motifs.Where(m => m.StartMm >= start && m.EndMm <= end)],
        };
    }

    private static bool IsSame(ImmutableArray<PlacedName> names, EarlierSegment known)
    {
        bool isSame = names.Length == known.Names.Length && known.StartMm <= names.Min(n => n.StartMm)
            && names.Max(n => n.EndMm) <= known.StartMm + known.LengthMm + ReadBackMm;
        return isSame && names.OrderBy(n => n.StartMm).Zip(known.Names.OrderBy(n => n.StartMm))
            .All(p => Math.Abs(p.First.StartMm - p.Second.StartMm) < ReadBackMm);
    }

    private static Hooping Lying(StripPlan plan, Round round, Segment segment, Before before, List<StripPiece> pieces)
    {
        var piece = StripPiece.At(pieces, round.Number, segment.Names[0].StartMm);
        return new Hooping(before.HoopingNumber, [new HoopedSegment(round, segment, 0, 0)])
        {
            Cloth = piece?.Cloth ?? 1,
            OnClothMm = piece is null ? segment.ClothStartMm : piece.OnClothMm + plan.OnClothMm(segment.StartMm - piece.StartMm),
        };
    }

    /// <summary>Which run of the earlier plan one of now is.</summary>
    private readonly record struct Before(EarlierSegment? Segment, int SegmentNumber, int HoopingNumber);

    /// <summary>Numbers of runs: those of the earlier plan, each once, and new ones.</summary>
    private sealed class Numbers(EarlierPlan earlier)
    {
        private readonly ImmutableDictionary<int, int> _hoopingOf = earlier.HoopingOfSegment;
        private readonly HashSet<int> _taken = [];
        private int _last = earlier.Rounds.SelectMany(r => r.Segments).Select(s => s.Number).Concat(earlier.Hoopings.Select(h => h.Number))
            .DefaultIfEmpty(0).Max();

        public Before Of(int round, ImmutableArray<PlacedName> names)
        {
            var rows = names.Select(n => n.Order).ToHashSet();
            var known = earlier.Rounds.Where(r => r.Number == round).SelectMany(r => r.Segments).Where(s => !_taken.Contains(s.Number))
                .MaxBy(s => s.Names.Count(n => rows.Contains(n.Order)));
            if (known is null)
            {
                _last++;
                return new Before(null, _last, _last);
            }

            _taken.Add(known.Number);
            return new Before(known, known.Number, _hoopingOf[known.Number]);
        }
    }
}
