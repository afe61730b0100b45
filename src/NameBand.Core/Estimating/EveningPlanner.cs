using System.Collections.Immutable;

namespace NameBand.Estimating;

/// <summary>Deals hoopings out to evenings and machines, whole ones only, so that all is done soonest.</summary>
public static class EveningPlanner
{
    private const double Slight = 1e-9;

    /// <param name="eveningMinutes">Length of an evening at the machines; null: sew until it is done.</param>
    public static EveningPlan Plan(IReadOnlyList<HoopingTime> hoopings, IReadOnlyList<SewingMachine> machines, double? eveningMinutes)
    {
        ArgumentOutOfRangeException.ThrowIfZero(machines.Count);
        return eveningMinutes is { } evening ? ByEvenings(hoopings, machines, evening) : InOneGo(hoopings, machines);
    }

    /// <summary>
    /// The fewest minutes any plan can take: all the work shared evenly, and, for each k, the k longest hoopings shared
    /// evenly by the k fastest machines, or k·n + 1 of them among equal machines with one machine doing n + 1.
    /// </summary>
    public static double LeastMinutes(IReadOnlyList<double> minutes, IReadOnlyList<double> factors)
    {
        double[] longest = [.. minutes.OrderDescending()];
        double[] fastest = [.. factors.Order()];
        double least = minutes.Sum() / factors.Sum(f => 1 / f);
        for (int k = 1; k <= Math.Min(longest.Length, fastest.Length); k++)
        {
            least = Math.Max(least, longest[..k].Sum() / fastest[..k].Sum(f => 1 / f));
        }

        bool areEqual = fastest[^1] - fastest[0] < Slight;
        for (int n = 1; areEqual && (n * fastest.Length) < longest.Length; n++)
        {
            double together = longest[((n * fastest.Length) - n)..((n * fastest.Length) + 1)].Sum();
            least = Math.Max(least, together * fastest[0]);
        }

        return least;
    }

    private static EveningPlan InOneGo(IReadOnlyList<HoopingTime> hoopings, IReadOnlyList<SewingMachine> machines)
    {
        double[] minutes = [.. hoopings.Select(h => h.Minutes)];
        double[] factors = [.. machines.Select(m => m.Factor)];
        double least = LeastMinutes(minutes, factors);
        int[] best = LongestFirst(minutes, factors);
        double reached = Longest(minutes, factors, best);
        double low = least;
        bool proven = reached <= least + Slight;
        for (int i = 0; i < 40 && !proven && reached - low > 1e-6 * reached; i++)
        {
            // The first question is whether the bound itself can be reached; after it, halfway.
            double target = i == 0 ? low : (low + reached) / 2;
            if (BinFilling.TryFill(minutes, [.. factors.Select(f => target / f)], out _, BinFilling.UsualTries / 10) is { } better)
            {
                best = better;
                reached = Math.Min(reached, Longest(minutes, factors, best));
                proven = reached <= least + Slight;
            }
            else
            {
                low = target;
            }
        }

        proven = proven || (BinFilling.TryFill(minutes, [.. factors.Select(f => (reached - 1e-6) / f)], out bool cannot) is null && cannot);
        var sittings = machines.Select((m, j) => Sit(1, m, hoopings, j, best)).Where(s => s.Hoopings.Length > 0);
        return new EveningPlan([.. sittings], hoopings.Count == 0 ? 0 : 1, reached, hoopings.Count == 0 ? 0 : 1, least, proven, []);
    }

    private static EveningPlan ByEvenings(IReadOnlyList<HoopingTime> hoopings, IReadOnlyList<SewingMachine> machines, double evening)
    {
        double fastest = machines.Min(m => m.Factor);
        var tooLong = hoopings.Where(h => h.Minutes * fastest > evening + Slight).ToList();
        var rest = hoopings.Where(h => h.Minutes * fastest <= evening + Slight).ToList();
        double[] minutes = [.. rest.Select(h => h.Minutes)];
        double[] sizes = [.. machines.Select(m => evening / m.Factor)];
        int proven = LeastEvenings(minutes, sizes);
        int[]? bins = InOrder(minutes, sizes, proven);
        for (int evenings = proven; bins is null; evenings++)
        {
            bins = BinFilling.TryFill(minutes, [.. Enumerable.Range(0, evenings).SelectMany(_ => sizes)], out bool cannot);
            proven = bins is null && cannot && proven == evenings ? evenings + 1 : proven;
            bins = bins is null ? null : InOrder(minutes, sizes, evenings) ?? bins;
        }

        // Evenings in the order of their first hooping, so that the work goes through the rounds as far as it can.
        int used = rest.Count == 0 ? 0 : bins.Max() / machines.Count + 1;
        int[] order = [.. Enumerable.Range(0, used).OrderBy(e => rest.Where((_, i) => bins[i] / machines.Count == e).Select(h => h.Number).DefaultIfEmpty(int.MaxValue).Min())];
        var sittings = new List<Sitting>();
        foreach (var (e, place) in order.Select((e, place) => (e, place)))
        {
            sittings.AddRange(machines.Select((m, j) => Sit(place + 1, m, rest, (e * machines.Count) + j, bins)).Where(s => s.Hoopings.Length > 0));
        }

        var best = machines.MinBy(m => m.Factor)!;
        foreach (var (hooping, i) in tooLong.Select((h, i) => (h, i)))
        {
            sittings.Add(new Sitting(used + i + 1, best.Name, [hooping.Number], hooping.Minutes * best.Factor));
        }

        double total = sittings.GroupBy(s => s.Evening).Sum(g => g.Max(s => s.Minutes));
        double leastMinutes = LeastMinutes([.. hoopings.Select(h => h.Minutes)], [.. machines.Select(m => m.Factor)]);
        return new EveningPlan(
            [.. sittings], used + tooLong.Count, total, proven + tooLong.Count, hoopings.Count == 0 ? 0 : leastMinutes,
            used == proven, [.. tooLong.Select(h => h.Number)]);
    }

    /// <summary>
    /// Evenings that no plan can do without: all the work over an evening's time, and all the hoopings over as many of
    /// the shortest as fit one evening.
    /// </summary>
    private static int LeastEvenings(double[] minutes, double[] sizes)
    {
        if (minutes.Length == 0)
        {
            return 0;
        }

        double[] shortest = [.. minutes.Order()];
        int inOne = sizes.Sum(size =>
        {
            int count = 0;
            for (double sum = 0; count < shortest.Length && sum + shortest[count] <= size + Slight; count++)
            {
                sum += shortest[count];
            }

            return count;
        });
        return Math.Max((int)Math.Ceiling((minutes.Sum() / sizes.Sum()) - Slight), (minutes.Length + inOne - 1) / inOne);
    }

    /// <summary>The hoopings in their own order, evening after evening, if that takes no more than the fewest evenings.</summary>
    private static int[]? InOrder(double[] minutes, double[] sizes, int most)
    {
        int[] bins = new int[minutes.Length];
        int evening = 0;
        double[] left = [.. sizes];
        for (int i = 0; i < minutes.Length; i++)
        {
            int machine = Fullest(left, minutes[i]);
            if (machine < 0)
            {
                evening++;
                left = [.. sizes];
                machine = Fullest(left, minutes[i]);
            }

            if (evening >= most || machine < 0)
            {
                return null;
            }

            left[machine] -= minutes[i];
            bins[i] = (evening * sizes.Length) + machine;
        }

        return bins;
    }

    private static int Fullest(double[] left, double minutes)
    {
        int best = -1;
        for (int j = 0; j < left.Length; j++)
        {
            if (left[j] + Slight >= minutes && (best < 0 || left[j] > left[best] + Slight))
            {
                best = j;
            }
        }

        return best;
    }

    /// <summary>Longest processing time first: each to the machine that would be done with it soonest.</summary>
    private static int[] LongestFirst(double[] minutes, double[] factors)
    {
        double[] load = new double[factors.Length];
        int[] machine = new int[minutes.Length];
        foreach (int i in Enumerable.Range(0, minutes.Length).OrderByDescending(i => minutes[i]).ThenBy(i => i))
        {
            int best = Enumerable.Range(0, factors.Length).MinBy(j => load[j] + (minutes[i] * factors[j]));
            machine[i] = best;
            load[best] += minutes[i] * factors[best];
        }

        return machine;
    }

    private static double Longest(double[] minutes, double[] factors, int[] machine)
    {
        double[] load = new double[factors.Length];
        for (int i = 0; i < minutes.Length; i++)
        {
            load[machine[i]] += minutes[i] * factors[machine[i]];
        }

        return load.Max();
    }

    private static Sitting Sit(int evening, SewingMachine machine, IReadOnlyList<HoopingTime> hoopings, int bin, int[] bins)
    {
        var here = hoopings.Where((_, i) => bins[i] == bin).OrderBy(h => h.Number).ToList();
        return new Sitting(evening, machine.Name, [.. here.Select(h => h.Number)], here.Sum(h => h.Minutes) * machine.Factor);
    }
}
