using System.Collections.Immutable;
using NameBand.Common;

namespace NameBand.Layout;

/// <summary>
/// In which order cloths are sewn, so that the thread is changed as seldom as can be. On one cloth hoopings follow each other from left to
/// right, since what came out longer or shorter is taken up by the gaps that follow; cloths know nothing of each other.
/// </summary>
/// <remarks>
/// Exact: cloths that cost the same whatever thread comes before and after are one kind, and a dynamic program runs over how many of each
/// kind are left and the thread that is in the needle. Of orders that cost the same the one nearest to that of the rounds is taken.
/// </remarks>
internal static class ClothTurns
{
    /// <summary>
    /// States looked through at most; beyond them cloths keep the order of their rounds. Our choice: a few hundredths of a second.
    /// </summary>
    private const long MostStates = 200_000;

    /// <summary>The plan with its hoopings numbered in that order. Only for a plan of which nothing is sewn.</summary>
    public static StripPlan Ordered(StripPlan plan)
    {
        if (ThreadTurns.NumbersIn(plan).Count < 2)
        {
            return plan;
        }

        ImmutableArray<ImmutableArray<Hooping>> cloths = [.. plan.Hoopings.GroupBy(h => h.Cloth).OrderBy(g => g.Min(h => h.Number))
            .Select(g => g.OrderBy(h => h.Number).ToImmutableArray())];
        ImmutableArray<ImmutableArray<ImmutableArray<ImmutableArray<CssColour>>>> options =
            [.. cloths.Select(c => c.Select(h => ThreadTurns.OrdersOf(plan, h)).Where(o => !o.IsEmpty).ToImmutableArray())];
        var order = Fewest(options);
        var numbers = plan.Hoopings.Select(h => h.Number).Order().ToList();
        var numberOf = order.SelectMany(c => cloths[c]).Select((h, i) => (h.Number, New: numbers[i]))
            .ToDictionary(p => p.Number, p => p.New);
        return plan with
        {
            Hoopings = [.. plan.Hoopings.Select(h => h with { Number = numberOf[h.Number] }).OrderBy(h => h.Number)],
            Cloths = [.. plan.Cloths.Select(c => c with { Hoopings = [.. c.Hoopings.Select(h => numberOf[h])] })],
        };
    }

    /// <summary>The order of the cloths that asks for the fewest changes between and on them.</summary>
    /// <param name="cloths">For each cloth its hoopings in their order, and for each of those the orders of threads it may have.</param>
    internal static ImmutableArray<int> Fewest<T>(ImmutableArray<ImmutableArray<ImmutableArray<ImmutableArray<T>>>> cloths)
        where T : IEquatable<T>
    {
        ImmutableArray<T> threads = [.. cloths.SelectMany(c => c).SelectMany(h => h).SelectMany(o => o).Distinct()];
        var costs = cloths.Select(c => Between(c, threads)).ToList();
        var kinds = costs.Select(c => string.Join(',', c)).Distinct().ToList();
        int[] kindOf = [.. costs.Select(c => kinds.IndexOf(string.Join(',', c)))];
        int[] all = [.. Enumerable.Range(0, kinds.Count).Select(k => kindOf.Count(of => of == k))];
        if (threads.IsEmpty || all.Aggregate((long)threads.Length, (states, of) => Math.Min(states, MostStates) * (of + 1)) > MostStates)
        {
            return [.. Enumerable.Range(0, cloths.Length)];
        }

        int[] left = [.. all];
        int[][] cost = [.. Enumerable.Range(0, kinds.Count).Select(k => costs[Array.IndexOf(kindOf, k)])];
        var known = new Dictionary<(long Left, int Thread), int>();
        var order = ImmutableArray.CreateBuilder<int>(cloths.Length);
        var waiting = Enumerable.Range(0, cloths.Length).ToList();

        // A thread for each way to arrive: several are kept, since a cloth may end with one or another at the same price.
        int[] now = [.. Enumerable.Repeat(0, threads.Length)];
        while (waiting.Count > 0)
        {
            var (best, then) = waiting.DistinctBy(c => kindOf[c]).Select(c => (Cloth: c, Then: After(now, kindOf[c])))
                .MinBy(c => Enumerable.Range(0, threads.Length).Min(t => c.Then[t] + Rest(Without(kindOf[c.Cloth]), t)));
            order.Add(best);
            waiting.Remove(best);
            left[kindOf[best]]--;
            now = then;
        }

        return order.MoveToImmutable();

        int[] After(int[] before, int kind) =>
            [.. Enumerable.Range(0, threads.Length).Select(to => Enumerable.Range(0, threads.Length)
                .Min(from => before[from] + cost[kind][(from * threads.Length) + to]))];

        int[] Without(int kind)
        {
            int[] fewer = [.. left];
            fewer[kind]--;
            return fewer;
        }

        int Rest(int[] of, int thread)
        {
            long key = of.Zip(all).Aggregate(0L, (sum, kind) => (sum * (kind.Second + 1)) + kind.First);
            if (known.TryGetValue((key, thread), out int least))
            {
                return least;
            }

            least = of.All(c => c == 0) ? 0 : int.MaxValue;
            for (int kind = 0; kind < of.Length; kind++)
            {
                if (of[kind] > 0)
                {
                    of[kind]--;
                    for (int to = 0; to < threads.Length; to++)
                    {
                        int step = cost[kind][(thread * threads.Length) + to];
                        least = step >= Never ? least : Math.Min(least, step + Rest(of, to));
                    }

                    of[kind]++;
                }
            }

            return known[(key, thread)] = least;
        }
    }

    /// <summary>More than any plan has changes, and small enough to be added up.</summary>
    private const int Never = 1_000_000;

    /// <summary>
    /// Changes of a cloth from each thread in the needle before it to each one after it; <see cref="Never"/> where it cannot end so.
    /// </summary>
    private static int[] Between<T>(ImmutableArray<ImmutableArray<ImmutableArray<T>>> hoopings, ImmutableArray<T> threads)
        where T : IEquatable<T>
    {
        int[] costs = new int[threads.Length * threads.Length];
        for (int from = 0; from < threads.Length; from++)
        {
            int[] now = [.. threads.Select((_, t) => t == from ? 0 : Never)];
            foreach (var orders in hoopings)
            {
                int[] then = [.. Enumerable.Repeat(Never, threads.Length)];
                foreach (var order in orders)
                {
                    int inside = order.Zip(order.Skip(1)).Count(p => !p.First.Equals(p.Second));
                    int first = threads.IndexOf(order[0]);
                    int to = threads.IndexOf(order[^1]);
                    then[to] = Math.Min(then[to], now.Select((cost, t) => cost + (t == first ? 0 : 1)).Min() + inside);
                }

                now = [.. then.Select(c => Math.Min(c, Never))];
            }

            now.CopyTo(costs, from * threads.Length);
        }

        return costs;
    }
}
