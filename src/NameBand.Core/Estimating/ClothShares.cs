using System.Collections.Immutable;
using NameBand.Common;

namespace NameBand.Estimating;

/// <summary>
/// Shares whole cloths out to those who sew: a cloth lies under one machine, and a hooping that holds parts of two pieces belongs
/// with both.
/// </summary>
/// <remarks>
/// Each has so many minutes of evenings in a week; the cloths are shared out so that the last is done as soon as can be. Up to
/// <see cref="MostTried"/> cloths all ways are looked at, longest first, and left aside as soon as they cannot win; of more, each
/// goes to whoever would be done with it soonest.
/// </remarks>
internal static class ClothShares
{
    private const int MostTried = 12; // Cloths: two people have 4096 ways to share them, four have 16 million, most left aside at once.

    /// <returns>Whose each cloth is.</returns>
    public static ImmutableDictionary<int, PersonEvenings> Of(IReadOnlyList<HoopingTime> hoopings, IReadOnlyList<PersonEvenings> people)
    {
        PersonEvenings[] sew = [.. people.Where(p => p.DoesMachine && p.Minutes.Sum() > 0)];
        var cloths = hoopings.Where(h => h.Cloth > 0).GroupBy(h => h.Cloth)
            .Select(g => (Cloth: g.Key, Minutes: g.Sum(Minutes), Longest: g.Max(Minutes))).OrderByDescending(c => c.Minutes)
                .ThenBy(c => c.Cloth).ToList();
        if (sew.Length == 0)
        {
            return ImmutableDictionary<int, PersonEvenings>.Empty;
        }

        // Nobody begins a cloth of which a hooping is longer than any evening of hers, where somebody else has longer ones.
        double longest = sew.Max(p => p.Minutes.Max());
        var may = cloths.ConvertAll(c => Enumerable.Range(0, sew.Length)
            .Where(p => sew[p].Minutes.Max() >= Math.Min(c.Longest, longest) - Tolerance.Rounding).ToArray());
        double[] rate = [.. sew.Select(p => p.Minutes.Sum())];
        int[] now = new int[cloths.Count];
        int[] best = [];
        double soonest = double.PositiveInfinity;
        Try(0, new double[sew.Length]);
        return cloths.Select((c, i) => (c.Cloth, Whose: sew[best[i]])).ToImmutableDictionary(c => c.Cloth, c => c.Whose);

        void Try(int cloth, double[] load)
        {
            double end = load.Select((minutes, p) => minutes / rate[p]).Max();
            if (end >= soonest - Tolerance.Rounding)
            {
                return;
            }

            if (cloth == cloths.Count)
            {
                (best, soonest) = ([.. now], end);
                return;
            }

            var inTurn = may[cloth].OrderBy(p => (load[p] + cloths[cloth].Minutes) / rate[p]).ThenBy(p => p);
            foreach (int p in cloths.Count <= MostTried ? inTurn : inTurn.Take(1))
            {
                now[cloth] = p;
                load[p] += cloths[cloth].Minutes;
                Try(cloth + 1, load);
                load[p] -= cloths[cloth].Minutes;
            }
        }

        static double Minutes(HoopingTime hooping) => hooping.MachineMinutes + hooping.HandMinutes;
    }
}
