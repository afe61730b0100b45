using NameBand.Common;

namespace NameBand.Estimating;

/// <summary>
/// Deals the work out to evenings and machines. Hoopings stay whole and, evening by evening, in their order along the cloth:
/// a machine never gets one from here and one from there of the same cloth.
/// </summary>
internal static class EveningPlanner
{
    /// <param name="hoopings">In their order along the cloth.</param>
    /// <param name="eveningMinutes">Length of an evening; null: sew until it is done.</param>
    /// <param name="other">All the other work; null for none.</param>
    public static EveningPlan Plan(
        IReadOnlyList<HoopingTime> hoopings, IReadOnlyList<SewingMachine> machines, double? eveningMinutes, OtherWork? other = null)
    {
        return Over(hoopings, machines, eveningMinutes is { } evening ? EveningLengths.Always(evening) : null, other);
    }

    /// <param name="hoopings">In their order along the cloth.</param>
    /// <param name="lengths">Of the evenings; null: sew until it is done.</param>
    /// <param name="other">All the other work; null for none.</param>
    public static EveningPlan Over(
        IReadOnlyList<HoopingTime> hoopings, IReadOnlyList<SewingMachine> machines, EveningLengths? lengths, OtherWork? other = null)
    {
        ArgumentOutOfRangeException.ThrowIfZero(machines.Count);
        return lengths is { People.Length: > 1 } ? ByPeople(hoopings, machines, lengths, other ?? OtherWork.None)
            : lengths is not null ? ByEvenings(hoopings, machines, lengths, other ?? OtherWork.None)
            : InOneGo(hoopings, machines, other ?? OtherWork.None);
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

        bool areEqual = fastest[^1] - fastest[0] < Tolerance.Rounding;
        for (int n = 1; areEqual && (n * fastest.Length) < longest.Length; n++)
        {
            double together = longest[((n * fastest.Length) - n)..((n * fastest.Length) + 1)].Sum();
            least = Math.Max(least, together * fastest[0]);
        }

        return least;
    }

    private static EveningPlan InOneGo(IReadOnlyList<HoopingTime> hoopings, IReadOnlyList<SewingMachine> machines, OtherWork other)
    {
        double[] factors = [.. machines.Select(m => m.Factor)];
        double[] atMost = [.. hoopings.Select(h => h.MachineMinutes + (h.HandMinutes / factors.Min()))];
        double least = LeastMinutes(AtLeast(hoopings, machines), factors);
        int[] best = LongestFirst(hoopings, machines);
        double reached = Longest(hoopings, machines, best);
        double low = least;
        bool proven = reached <= least + Tolerance.Rounding;
        for (int i = 0; i < 40 && !proven && reached - low > 1e-6 * reached; i++)
        {
            // The first question is whether the bound itself can be reached; after it, halfway.
            double target = i == 0 ? low : (low + reached) / 2;
            if (BinFilling.TryFill(atMost, [.. factors.Select(f => target / f)], out _, BinFilling.UsualTries / 10) is { } better)
            {
                best = better;
                reached = Math.Min(reached, Longest(hoopings, machines, best));
                proven = reached <= least + Tolerance.Rounding;
            }
            else
            {
                low = target;
            }
        }

        bool isExact = factors.Max() - factors.Min() < Tolerance.Rounding || hoopings.All(h => h.HandMinutes == 0);
        double[] alittleLess = [.. factors.Select(f => (reached - 1e-6) / f)];
        proven = proven || (isExact && BinFilling.TryFill(atMost, alittleLess, out bool cannot) is null && cannot);
        var sittings = machines.Select((m, j) => Sit(m, [.. hoopings.Where((_, i) => best[i] == j)]))
            .Where(s => s.Hoopings.Length > 0).ToList();
        if (other.Minutes > 0)
        {
            sittings.Add(new Sitting(1, "", [], other.Minutes) { Before = other.Before, After = other.After });
        }

        int evenings = sittings.Count == 0 ? 0 : 1;
        return new EveningPlan([.. sittings], evenings, reached, evenings, least, proven, []);
    }

    private static EveningPlan ByEvenings(
        IReadOnlyList<HoopingTime> hoopings, IReadOnlyList<SewingMachine> machines, EveningLengths lengths, OtherWork other)
    {
        double evening = lengths.LongestMinutes;
        var tooLong = hoopings.Where(h => Quickest(h, machines) > evening + Tolerance.Rounding).ToList();
        var rest = hoopings.Where(h => Quickest(h, machines) <= evening + Tolerance.Rounding).ToList();
        var diary = new EveningDiary(machines, lengths);
        diary.Begin(other.Before);
        foreach (var hooping in rest)
        {
            diary.Sew(hooping);
        }

        foreach (var hooping in tooLong)
        {
            diary.SewAlone(hooping, machines.MinBy(hooping.TakesMinutes)!);
        }

        diary.End(other.After);
        double[] sizes = [.. machines.Select(m => evening / m.Factor)];
        double all = rest.Sum(h => Quickest(h, machines)) + other.Minutes;
        int least = Math.Max(
            LeastEvenings(AtLeast(rest, machines), sizes), (int)Math.Ceiling((all / evening / machines.Count) - Tolerance.Rounding));
        double leastMinutes = hoopings.Count == 0 ? 0 : LeastMinutes(AtLeast(hoopings, machines), [.. machines.Select(m => m.Factor)]);
        double total = diary.Sittings.GroupBy(s => s.Evening).Sum(g => g.Max(s => s.Minutes));
        int used = diary.Sittings.Select(s => s.Evening).DefaultIfEmpty(0).Max();
        return new EveningPlan(
            diary.Sittings, used, total, least + tooLong.Count, leastMinutes, used == least + tooLong.Count,
            [.. tooLong.Select(h => h.Number)]);
    }

    private static EveningPlan ByPeople(
        IReadOnlyList<HoopingTime> hoopings, IReadOnlyList<SewingMachine> machines, EveningLengths lengths, OtherWork other)
    {
        var sittings = PeopleDiary.Fill(hoopings, machines, lengths, other);
        int used = sittings.Select(s => s.Evening).DefaultIfEmpty(0).Max();
        double all = hoopings.Sum(h => Quickest(h, machines)) + other.Minutes;
        int least = 0;
        for (double left = all; left > Tolerance.Rounding && least < used; left -= lengths.People.Sum(p => lengths.LengthMinutes(p, least)))
        {
            least++;
        }

        double longest = lengths.People.Where(p => p.DoesMachine).SelectMany(p => p.Minutes).DefaultIfEmpty(0).Max();
        return new EveningPlan(
            sittings, used, sittings.GroupBy(s => s.Evening).Sum(g => g.Max(s => s.Minutes)), least, all / lengths.People.Length,
            used == least,
            [.. hoopings.Where(h => Quickest(h, machines) > longest + Tolerance.Rounding).Select(h => h.Number)]);
    }

    private static double Quickest(HoopingTime hooping, IReadOnlyList<SewingMachine> machines) => machines.Min(hooping.TakesMinutes);

    /// <summary>
    /// Minutes at a machine of the set pace that each hooping takes at least: on none of the machines less than this times
    /// the machine's factor. Exact where hands do nothing, or all machines are alike.
    /// </summary>
    private static double[] AtLeast(IReadOnlyList<HoopingTime> hoopings, IReadOnlyList<SewingMachine> machines)
    {
        double slowest = machines.Max(m => m.Factor);
        return [.. hoopings.Select(h => h.MachineMinutes + (h.HandMinutes / slowest))];
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
            for (double sum = 0; count < shortest.Length && sum + shortest[count] <= size + Tolerance.Rounding; count++)
            {
                sum += shortest[count];
            }

            return count;
        });
        return Math.Max((int)Math.Ceiling((minutes.Sum() / sizes.Sum()) - Tolerance.Rounding), (minutes.Length + inOne - 1) / inOne);
    }

    /// <summary>Longest processing time first: each to the machine that would be done with it soonest.</summary>
    private static int[] LongestFirst(IReadOnlyList<HoopingTime> hoopings, IReadOnlyList<SewingMachine> machines)
    {
        double[] load = new double[machines.Count];
        int[] machine = new int[hoopings.Count];
        foreach (int i in Enumerable.Range(0, hoopings.Count).OrderByDescending(i => hoopings[i].TakesMinutes(machines[0])).ThenBy(i => i))
        {
            int best = Enumerable.Range(0, machines.Count).MinBy(j => load[j] + hoopings[i].TakesMinutes(machines[j]));
            machine[i] = best;
            load[best] += hoopings[i].TakesMinutes(machines[best]);
        }

        return machine;
    }

    private static double Longest(IReadOnlyList<HoopingTime> hoopings, IReadOnlyList<SewingMachine> machines, int[] machine)
    {
        double[] load = new double[machines.Count];
        for (int i = 0; i < hoopings.Count; i++)
        {
            load[machine[i]] += hoopings[i].TakesMinutes(machines[machine[i]]);
        }

        return load.Max();
    }

    private static Sitting Sit(SewingMachine machine, IReadOnlyList<HoopingTime> here) =>
        new(1, machine.Name, [.. here.Select(h => h.Number)], here.Sum(h => h.TakesMinutes(machine)));
}
