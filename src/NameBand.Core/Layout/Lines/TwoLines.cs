using System.Collections.Immutable;
using NameBand.Common;
using NameBand.Lettering;

namespace NameBand.Layout.Lines;

/// <summary>
/// Two lines of names on one strip. A layout knows one name at each place along a strip: what stands one above the other is
/// laid out as one, as wide and as high as both, and taken apart again when it lies in its place.
/// </summary>
/// <param name="settledStep">From one base line to the other in letter heights, where something is sewn; null: as the names allow.</param>
internal sealed class TwoLines(double? settledStep = null)
{
    private readonly Dictionary<LetteredName, NamePair> _pairs = new(ReferenceEqualityComparer.Instance);
    private readonly Dictionary<PlacedName, ImmutableArray<PlacedName>> _kept = new(ReferenceEqualityComparer.Instance);

    /// <summary>From one base line to the other in letter heights.</summary>
    public double Step { get; private set; } = settledStep ?? 0;

    /// <summary>Names paired by length, each pair as one, in the order of the first name of each.</summary>
    public IReadOnlyList<LetteredName> Paired(IReadOnlyList<LetteredName> names)
    {
        var (pairs, step) = NamePairing.Pair(names, settledStep);
        Step = step;
        return [.. pairs.Select(AsOne)];
    }

    /// <summary>A name as it stands with none below it.</summary>
    public LetteredName Alone(LetteredName name) => AsOne(new NamePair(name, null));

    /// <summary>Whether one name may stand below another where the lines are ruled.</summary>
    public bool CanStand(LetteredName upper, LetteredName lower) => NamePairing.CanStand(upper, lower, Step);

    /// <summary>Two names as they stand one above the other.</summary>
    public LetteredName AsOne(LetteredName upper, LetteredName lower) => AsOne(new NamePair(upper, lower));

    public IEnumerable<LetteredName> NamesOf(LetteredName paired) => _pairs[paired].Names;

    private LetteredName AsOne(NamePair pair)
    {
        double width = pair.Names.Max(n => n.Ink.WidthMm);
        double bottom = pair.Lower?.Ink.BottomMm ?? (Step + pair.Upper.Ink.BottomMm);
        var one = pair.Upper with
        {
            Pieces = [.. pair.Names.SelectMany(n => n.Pieces)],
            Ink = new Box(0, bottom, width, Step + pair.Upper.Ink.TopMm),
        };
        _pairs.Add(one, pair);
        return one;
    }

    /// <summary>The names of an earlier plan, those that stand one above the other as one.</summary>
    public KeptBlock Together(KeptBlock block, double lowerLineYMm) => block with
    {
        Names = [.. PlacesAlong.Of(block.Names).Select(p => Kept(p, lowerLineYMm))],
    };

    private PlacedName Kept(ImmutableArray<PlacedName> place, double lowerLineYMm)
    {
        var lettered = AsOne(new NamePair(place[0].Lettered, place.Length > 1 ? place[1].Lettered : null));
        double start = place.Min(n => n.StartMm);
        var one = new PlacedName(lettered, start, place.Max(n => n.EndMm) - start, lowerLineYMm, place.Min(n => n.Order))
        {
            IsGone = place.All(n => n.IsGone),
        };
        _kept.Add(one, place);
        return one;
    }

    /// <summary>The same plan with every name in its own place.</summary>
    /// <param name="areMotifsLaid">They stand on the lower line still, and belong in the middle between the two.</param>
    public StripPlan Apart(StripPlan plan, Sizing sizing, bool areMotifsLaid)
    {
        double stepMm = Step * plan.LetterHeightMm;
        var all = plan.Rounds.SelectMany(r => r.Names).OrderBy(n => n.Order).ToList();
        var apart = new Dictionary<PlacedName, ImmutableArray<PlacedName>>(ReferenceEqualityComparer.Instance);
        int order = all.Where(_kept.ContainsKey).SelectMany(n => _kept[n]).Select(n => n.Order).DefaultIfEmpty(0).Max();
        foreach (var one in all)
        {
            apart[one] = _kept.TryGetValue(one, out var kept) ? kept : [.. Each(one, _pairs[one.Lettered])];
        }

        ImmutableArray<Round> rounds = [.. plan.Rounds.Select(r => r with { Segments = [.. r.Segments.Select(Of)] })];
        var bySegment = rounds.SelectMany(r => r.Segments.Select(s => (Round: r, Segment: s))).ToDictionary(p => p.Segment.Number);
        return plan with
        {
            LineStepMm = stepMm,
            Rounds = rounds,
            Hoopings = [.. plan.Hoopings.Select(h => h with
            {
                Segments = [.. h.Segments.Select(s =>
                    s with { Round = bySegment[s.Segment.Number].Round, Segment = bySegment[s.Segment.Number].Segment })],
            })],
        };

        IEnumerable<PlacedName> Each(PlacedName one, NamePair pair)
        {
            foreach (var name in pair.Names)
            {
                bool isUpper = ReferenceEquals(name, pair.Upper);
                double width = sizing.WidthMm(name, plan.LetterHeightMm);
                yield return new PlacedName(
                    name, one.StartMm + ((one.WidthMm - width) / 2), width, one.BaselineYMm + (isUpper ? stepMm : 0), ++order)
                {
                    Line = isUpper ? 1 : 2,
                };
            }
        }

        Segment Of(Segment segment) => segment with
        {
            Names = [.. segment.Names.SelectMany(n => apart[n])],
            Motifs = areMotifsLaid
            ? [.. segment.Motifs.Select(m => m with { BaselineYMm = m.BaselineYMm + (stepMm / 2) })] : segment.Motifs,
        };
    }
}
