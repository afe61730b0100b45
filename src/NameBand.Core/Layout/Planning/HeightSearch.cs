using System.Collections.Immutable;
using NameBand.Common;
using NameBand.Layout.BestFit;
using NameBand.Lettering;

namespace NameBand.Layout.Planning;

/// <summary>Finds the largest letter height, in tenths of a millimetre, at which all names fit.</summary>
/// <param name="isFree">Names may go round in any order, so that any of them may stand on any round.</param>
/// <param name="paired">How names share places, where they stand in two lines; null: each has its own.</param>
internal sealed class HeightSearch(
    Sizing sizing, double leastMm, bool isFree = false, Func<IReadOnlyList<LetteredName>, IReadOnlyList<LetteredName>>? paired = null)
{
    private readonly ImmutableArray<FreeInterval> _stretches =
        [.. Enumerable.Range(1, sizing.Hem.FixedRounds ?? 1).SelectMany(k => FreeInterval.Of(sizing.Hem, k))];

    private const int MostTenths = 2000; // Letters of 200 mm: no satin and no domestic hoop goes so far.

    /// <summary>Largest height that fits, never under the least; and what stops the next tenth.</summary>
    public (double HeightMm, HeightBound Bound) Largest(IReadOnlyList<LetteredName> names) => LargestOf(paired?.Invoke(names) ?? names);

    private (double HeightMm, HeightBound Bound) LargestOf(IReadOnlyList<LetteredName> names)
    {
        int least = (int)Math.Ceiling((leastMm * 10) - Tolerance.Rounding);
        int low = least;
        int high = MostTenths + 1;
        if (Obstacle(names, low / 10.0) is { } atLeast)
        {
            return (low / 10.0, atLeast);
        }

        while (high - low > 1)
        {
            int middle = (low + high) / 2;
            if (Obstacle(names, middle / 10.0) is null)
            {
                low = middle;
            }
            else
            {
                high = middle;
            }
        }

        return (low / 10.0, high > MostTenths ? HeightBound.None : Obstacle(names, high / 10.0)!.Value);
    }

    /// <summary>What keeps the names from fitting at a height; null when they fit.</summary>
    public HeightBound? Obstacle(IReadOnlyList<LetteredName> names, double heightMm)
    {
        // Names on rounds of their own have a line of their own, that is as deep and as high as only they are.
        double bottom = 0;
        double top = 0;
        int line = 0;
        foreach (var name in names)
        {
            if (name.Standing.OwnRounds != line)
            {
                if (!sizing.FitsZone(bottom, top, heightMm))
                {
                    return HeightBound.SewingZone;
                }

                (bottom, top, line) = (0, 0, name.Standing.OwnRounds);
            }

            if (!sizing.FitsField(name, heightMm))
            {
                return HeightBound.SewingField;
            }

            if (sizing.SharesBaseline(name))
            {
                bottom = Math.Min(bottom, name.Ink.BottomMm);
                top = Math.Max(top, name.Ink.TopMm);
            }
            else if (!sizing.FitsZone(name.Ink.BottomMm, name.Ink.TopMm, heightMm))
            {
                return HeightBound.SewingZone;
            }
        }

        if (!sizing.FitsZone(bottom, top, heightMm))
        {
            return HeightBound.SewingZone;
        }

        return FitsRounds(names, heightMm) ? null : HeightBound.Rounds;
    }

    private bool FitsRounds(IReadOnlyList<LetteredName> names, double heightMm)
    {
        if (sizing.Hem.FixedRounds is null)
        {
            double longest = _stretches.Max(s => s.LengthMm);
            return names.All(n => sizing.WidthMm(n, heightMm) <= longest);
        }

        if (!isFree)
        {
            return new OwnPlaces(sizing, heightMm, names, _stretches).Fit();
        }

        double gap = sizing.GapMm(heightMm);
        double[] needs = [.. names.Select(n => sizing.WidthMm(n, heightMm) + gap)];
        return BestFitRows.Fits(needs, [.. _stretches.Select(s => s.OfferMm(gap))]);
    }

    /// <summary>
    /// The rows that keep the height down, worst first, each with the height there would be without it and those
    /// before it; at most <paramref name="most"/>, and none after the last one that wins anything.
    /// </summary>
    public ImmutableArray<HeightLimit> Limits(IReadOnlyList<LetteredName> names, double heightMm, HeightBound bound, int most = 3)
    {
        var limits = new List<HeightLimit>();
        var left = names.ToList();
        int worthwhile = 0;
        double reached = heightMm;
        while (limits.Count < most && left.Count > 1 && bound is not (HeightBound.Given or HeightBound.None))
        {
            var worst = paired is not null && bound == HeightBound.SewingZone ? WorstInLines(left) : Worst(left, bound);
            left.Remove(worst);
            var because = Because(worst, bound);
            (double without, bound) = Largest(left);
            bool isGain = without > reached + Tolerance.HeightMm;
            limits.Add(new HeightLimit(worst, because, without, isGain));
            if (isGain)
            {
                worthwhile = limits.Count;
                reached = without;
            }
        }

        return [.. limits.Take(worthwhile)];
    }

    /// <summary>Of two lines an accent or a tail may be in the way of either edge or of the other line: whose going wins more.</summary>
    private LetteredName WorstInLines(List<LetteredName> all) => new[] { all.MaxBy(n => n.Ink.TopMm)!, all.MinBy(n => n.Ink.BottomMm)! }
        .MaxBy(n => Largest([.. all.Where(o => !ReferenceEquals(o, n))]).HeightMm)!;

    private LetteredName Worst(List<LetteredName> all, HeightBound bound)
    {
        if (bound != HeightBound.SewingZone)
        {
            return all.Where(n => bound != HeightBound.SewingField || !n.IsInOneRun).MaxBy(n => n.Ink.WidthMm)!;
        }

        var names = all.Where(sizing.SharesBaseline).ToList();
        var alone = all.Where(n => !sizing.SharesBaseline(n)).MaxBy(n => n.Ink.HeightMm);
        double together = names.Count == 0 ? 0 : names.Max(n => n.Ink.TopMm) - names.Min(n => n.Ink.BottomMm);
        if (alone is not null && alone.Ink.HeightMm > together)
        {
            return alone;
        }

        if (names.Count == 1)
        {
            return names[0];
        }

        // The zone is filled by the tallest and the deepest name together: take the one whose going wins more.
        var tallest = names.MaxBy(n => n.Ink.TopMm)!;
        var deepest = names.MinBy(n => n.Ink.BottomMm)!;
        double nextTop = names.Where(n => n != tallest).Max(n => n.Ink.TopMm);
        double nextBottom = names.Where(n => n != deepest).Min(n => n.Ink.BottomMm);
        return tallest.Ink.TopMm - nextTop >= nextBottom - deepest.Ink.BottomMm ? tallest : deepest;
    }

    private static Said Because(LetteredName name, HeightBound bound) => bound switch
    {
        HeightBound.SewingZone => name.Ink.TopMm - 1 > -name.Ink.BottomMm
            ? "its accents or tall letters reach highest"
            : "its tails reach lowest",
        HeightBound.SewingField => "it is the widest name for the sewing field",
        _ => "it takes the most room on the rounds",
    };
}
