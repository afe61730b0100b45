using System.Collections.Immutable;
using NameBand.Common;
using NameBand.Garment;
using NameBand.Job;
using NameBand.Lettering;

namespace NameBand.Layout;

/// <summary>Names on a stretch, in the order in which they follow one another.</summary>
/// <param name="IsPinned">The stretch is that of one pinned name, no longer than it is.</param>
/// <param name="Pins">Whether a pinned name stands before it and after it, clear of it by <see cref="OwnPlaces.ClearMm"/>.</param>
internal readonly record struct Row(
    FreeInterval Stretch, IReadOnlyList<LetteredName> Names, bool IsPinned = false, (bool Before, bool After) Pins = default);

/// <summary>
/// Divides names over the stretches of the rounds, in their order. A name that has a place of its own is put there first, and the
/// others go around it: a pinned name parts its stretch in two, one with a round of its own takes its room there from the others.
/// </summary>
internal sealed class OwnPlaces
{
    private readonly Sizing _sizing;
    private readonly double _heightMm;
    private readonly double _gap;
    private readonly IReadOnlyList<LetteredName> _names;
    private readonly List<FreeInterval> _stretches;
    private readonly Dictionary<FreeInterval, LetteredName> _pinned = [];
    private readonly List<LetteredName> _moved = [];
    private readonly List<LetteredName> _free;

    /// <param name="names">In their order.</param>
    public OwnPlaces(Sizing sizing, double heightMm, IReadOnlyList<LetteredName> names, IEnumerable<FreeInterval> stretches)
    {
        (_sizing, _heightMm, _names, _stretches) = (sizing, heightMm, names, [.. stretches]);
        _gap = sizing.GapMm(heightMm);
        _free = [.. names];
        if (names.Any(IsPlaced) && names.All(n => n.Standing.OwnRounds == 0))
        {
            Pin();
        }
    }

    public static bool IsPlaced(LetteredName name) => name.Name.Wish is { } wish && (wish.Pin is not null || wish.Round is not null);

    /// <summary>Whether all names fit their rounds.</summary>
    public bool Fit()
    {
        var (open, offers, _) = Open();
        return offers.All(o => o >= -Tolerance.RoundingMm) && RoundDivider.Fits(Needs(_free), offers, GroupSeparation.Of(_free, open));
    }

    public ImmutableArray<Row> Rows()
    {
        var (open, offers, moved) = Open();
        var apart = GroupSeparation.Of(_free, open);
        var counts = _sizing.Hem.FixedRounds is null
            ? RoundDivider.FillAsNeeded(Needs(_free), i => offers[i - 1], offers.Length, apart)
            : RoundDivider.Divide(Needs(_free), offers, apart, RoundDivider.ByLength([.. open.Select(s => s.LengthMm)]));
        var shares = new Dictionary<FreeInterval, IReadOnlyList<LetteredName>>();
        int next = 0;
        for (int i = 0; i < open.Count; i++)
        {
            int count = i < counts.Length ? counts[i] : 0;
            if (count > 0 || moved.Contains(open[i]) || i < counts.Length)
            {
                shares[open[i]] = InOrder([.. _free.Skip(next).Take(count), .. moved[open[i]]]);
            }

            next += count;
        }

        // The last round begun keeps all its stretches, names or not.
        int last = _stretches.FindLastIndex(s => shares.ContainsKey(s) || _pinned.ContainsKey(s)) is var at and >= 0
            ? _stretches[at].Round : 0;
        return [.. _stretches.TakeWhile(s => s.Round <= last).Select(s => _pinned.TryGetValue(s, out var own)
            ? new Row(s, [own], IsPinned: true) : new Row(s, shares.GetValueOrDefault(s, []), Pins: Pins(s)))];
    }

    /// <summary>Stretches without those of pinned names, what each offers the names that go by their order, and who has been moved
    /// there.</summary>
    private (List<FreeInterval> Stretches, double[] Offers, ILookup<FreeInterval, LetteredName> Moved) Open()
    {
        var open = _pinned.Count == 0 ? _stretches : [.. _stretches.Where(s => !_pinned.ContainsKey(s))];
        double[] offers = [.. open.Select(s => s.OfferMm(_gap))];
        return (open, offers, Move(open, offers));
    }

    private double[] Needs(IEnumerable<LetteredName> names) => [.. names.Select(n => _sizing.WidthMm(n, _heightMm) + _gap)];

    private IReadOnlyList<LetteredName> InOrder(ImmutableArray<LetteredName> names)
    {
        if (_moved.Count == 0 || names.Length < 2)
        {
            return names;
        }

        var place = _names.Select((n, i) => (n, i)).ToDictionary(
            p => p.n, p => p.i, ReferenceEqualityComparer.Instance as IEqualityComparer<LetteredName>);
        return [.. names.OrderBy(n => place[n])];
    }

    private void Pin()
    {
        int most = _sizing.Hem.FixedRounds ?? RoundsNeeded();
        foreach (var name in _names.Where(IsPlaced))
        {
            var wish = name.Name.Wish!;
            int round = wish.Round ?? 1;
            if (round > most)
            {
                continue;
            }

            if (wish.Pin is null)
            {
                _moved.Add(name);
                _free.Remove(name);
            }
            else if (Part(round, wish.Pin, _sizing.WidthMm(name, _heightMm)) is { } own)
            {
                _pinned.Add(own, name);
                _free.Remove(name);
            }
        }
    }

    /// <summary>Rounds that the names begin where each has its place in the order alone.</summary>
    private int RoundsNeeded()
    {
        double[] offers = [.. _stretches.Select(s => s.OfferMm(_gap))];
        int used = RoundDivider.FillAsNeeded(Needs(_names), i => offers[i - 1], offers.Length).Length;
        return used == 0 ? 1 : _stretches[used - 1].Round;
    }

    /// <summary>Parts a stretch of a round around a name; the name's own stretch, or null where no stretch has room for it.</summary>
    private FreeInterval? Part(int round, PinPlace pin, double widthMm)
    {
        if (GarmentMiddles.PinMm(_sizing.Hem, pin, round) is not { } middle)
        {
            return null;
        }

        var best = _stretches.Where(s => s.Round == round && !_pinned.ContainsKey(s)).Select(
            s => (Stretch: s, AtMm: Nearest(s, middle - (widthMm / 2), widthMm)))
            .Where(p => p.AtMm is not null).OrderBy(p => Math.Abs(p.AtMm!.Value + (widthMm / 2) - middle)).FirstOrDefault();
        if (best.AtMm is not { } at)
        {
            return null;
        }

        double clear = ClearMm(best.Stretch, _gap);
        var own = new FreeInterval(round, at, widthMm, HasOpenEnds: true);
        var left = best.Stretch with { LengthMm = at - clear - best.Stretch.StartMm };
        double after = Math.Min(at + widthMm + clear, best.Stretch.EndMm);
        var right = best.Stretch with { StartMm = after, LengthMm = best.Stretch.EndMm - after };
        int place = _stretches.IndexOf(best.Stretch);
        _stretches.RemoveAt(place);
        _stretches.InsertRange(place, left.LengthMm > 0 ? [left, own, right] : [own, right]);
        return own;
    }

    /// <summary>Where open ends may be touched, the whole gap is kept clear beside the name; else half of it, as at the end of every
    /// stretch.</summary>
    public static double ClearMm(FreeInterval stretch, double gapMm) => stretch.HasOpenEnds ? gapMm : gapMm / 2;

    private (bool Before, bool After) Pins(FreeInterval stretch)
    {
        double clear = ClearMm(stretch, _gap);
        return (IsAt(p => p.EndMm + clear, stretch.StartMm), IsAt(p => p.StartMm - clear, stretch.EndMm));

        bool IsAt(Func<FreeInterval, double> edge, double at) => _pinned.Keys.Any(
            p => p.Round == stretch.Round && Math.Abs(edge(p) - at) < Tolerance.RoundingMm);
    }

    private double? Nearest(FreeInterval stretch, double wishedMm, double widthMm)
    {
        double edge = stretch.HasOpenEnds ? 0 : _gap / 2;
        double first = stretch.StartMm + edge;
        double last = stretch.EndMm - edge - widthMm;
        return last < first - Tolerance.RoundingMm ? null : Math.Clamp(wishedMm, first, Math.Max(first, last));
    }

    /// <summary>Gives each name with a round of its own the stretch there with the most room, and takes its room from it.</summary>
    private ILookup<FreeInterval, LetteredName> Move(List<FreeInterval> open, double[] offers)
    {
        var moved = new List<(FreeInterval Stretch, LetteredName Name)>();
        foreach (var name in _moved)
        {
            int best = -1;
            for (int i = 0; i < offers.Length; i++)
            {
                bool isThere = open[i].Round == name.Name.Wish!.Round;
                best = isThere && (best < 0 || offers[i] > offers[best]) ? i : best;
            }

            offers[best] -= _sizing.WidthMm(name, _heightMm) + _gap;
            moved.Add((open[best], name));
        }

        return moved.ToLookup(m => m.Stretch, m => m.Name);
    }
}
