using System.Collections.Immutable;
using NameBand.Common;
using NameBand.Job;
using NameBand.Lettering;

namespace NameBand.Layout.Lines;

/// <summary>Two names one above the other; or one, which stands on the upper line.</summary>
internal readonly record struct NamePair(LetteredName Upper, LetteredName? Lower)
{
    public IEnumerable<LetteredName> Names => Lower is { } lower ? [Upper, lower] : [Upper];
}

/// <summary>
/// Pairs names by length. Neighbours in the order of their widths lose least cloth beside the shorter one of each pair (by
/// exchange: any other pairing is no shorter). Which of the two is above is free: the one whose accents would else push the
/// lines apart, and where it does not matter the one that is listed first.
/// </summary>
internal static class NamePairing
{
    /// <summary>Clear height between the deepest tail above and the tallest letter below, in letter heights: our choice.</summary>
    public const double ClearFactor = 0.25;

    /// <summary>Differences of ink that are nothing to the eye, in letter heights.</summary>
    private const double FinePart = 0.01;

    /// <summary>The pairs in the order in which their first names are listed, and how far apart their base lines stand, in letter
    /// heights.</summary>
    /// <param name="settledStep">Where the lines are ruled already: names that do not fit between them stand alone. Null: as
    /// close as all names allow.</param>
    public static (ImmutableArray<NamePair> Pairs, double Step) Pair(IReadOnlyList<LetteredName> names, double? settledStep)
    {
        var couples = Couples(names);
        if (settledStep is { } settled)
        {
            return ([.. couples.SelectMany(c => Turned(c, double.PositiveInfinity, double.NegativeInfinity, settled))], settled);
        }

        var (top, bottom, step) = Closest(couples);
        return ([.. couples.SelectMany(c => Turned(c, top, bottom, step))], step);
    }

    /// <summary>Names by two of like length, in the order of the first of each; one of an odd number is the shortest.</summary>
    private static List<NamePair> Couples(IReadOnlyList<LetteredName> names)
    {
        var place = new Dictionary<LetteredName, int>(ReferenceEqualityComparer.Instance);
        for (int i = 0; i < names.Count; i++)
        {
            place.TryAdd(names[i], i);
        }

        var pairs = new List<NamePair>();

        // Names that are to come last are among themselves, and so are those of one place, size and way.
        foreach (var alike in names.GroupBy(n => (n.Name.IsPlannedLast, Kind(n))))
        {
            foreach (var two in alike.OrderByDescending(n => n.Ink.WidthMm).ThenBy(n => place[n]).Chunk(2))
            {
                var ordered = two.OrderBy(n => place[n]).ToList();
                pairs.Add(new NamePair(ordered[0], ordered.Count > 1 ? ordered[1] : null));
            }
        }

        return [.. pairs.OrderBy(p => place[p.Upper])];
    }

    /// <summary>How high the ink above may reach, how low the ink below, and the distance of the lines, so that the whole is
    /// lowest.</summary>
    private static (double Top, double Bottom, double Step) Closest(List<NamePair> pairs)
    {
        var best = (Top: double.PositiveInfinity, Bottom: double.NegativeInfinity, Step: 1 + ClearFactor);
        double least = double.PositiveInfinity;
        var all = pairs.SelectMany(p => p.Names).ToList();
        double[] tops = [.. all.Select(n => Math.Ceiling(n.Ink.TopMm / FinePart) * FinePart).Distinct().Order()];
        double[] bottoms = [.. all.Select(n => Math.Floor(n.Ink.BottomMm / FinePart) * FinePart).Append(0).Distinct().OrderDescending()];
        foreach (double top in tops)
        {
            foreach (double bottom in bottoms)
            {
                double step = 1 + ClearFactor;
                foreach (var pair in pairs)
                {
                    step = Math.Max(step, Math.Min(Need(pair.Upper, pair.Lower, top, bottom), Need(pair.Lower, pair.Upper, top, bottom)));
                    if (top + step - bottom >= least)
                    {
                        break;
                    }
                }

                if (top + step - bottom < least)
                {
                    (best, least) = ((top, bottom, step), top + step - bottom);
                }
            }
        }

        return best;
    }

    /// <summary>How far apart the lines stand for one name over another; without bound where that one may not be above, or the
    /// other not below.</summary>
    private static double Need(LetteredName? upper, LetteredName? lower, double top, double bottom)
    {
        if (upper is null || upper.Ink.TopMm > top + Tolerance.Rounding || lower?.Ink.BottomMm < bottom - Tolerance.Rounding)
        {
            return double.PositiveInfinity;
        }

        return lower is null ? 0 : lower.Ink.TopMm - upper.Ink.BottomMm + ClearFactor;
    }

    /// <summary>Whether two names may stand one above the other: they are of one place and size, and go one way.</summary>
    public static bool AreAlike(LetteredName one, LetteredName other) => Kind(one) == Kind(other);

    private static (int, int, double, bool, Way, bool) Kind(LetteredName name) => (
        name.Standing.Block, name.Standing.OwnRounds, name.Standing.HeightFactor, name.Standing.IsHeading, name.Way, name.IsInOneRun);

    /// <summary>Whether one name may stand below another at a distance of their base lines.</summary>
    public static bool CanStand(LetteredName upper, LetteredName lower, double step) =>
        Need(upper, lower, double.PositiveInfinity, double.NegativeInfinity) <= step + Tolerance.Rounding;

    private static IEnumerable<NamePair> Turned(NamePair pair, double top, double bottom, double step)
    {
        if (Need(pair.Upper, pair.Lower, top, bottom) <= step + Tolerance.Rounding)
        {
            return [pair];
        }

        return pair.Lower is { } lower && Need(lower, pair.Upper, top, bottom) <= step + Tolerance.Rounding
            ? [new NamePair(lower, pair.Upper)]
            : pair.Names.Select(n => new NamePair(n, null));
    }
}
