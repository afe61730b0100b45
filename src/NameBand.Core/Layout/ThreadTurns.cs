using System.Collections.Immutable;
using NameBand.Common;
using NameBand.Job;

namespace NameBand.Layout;

/// <summary>The threads of one hooping.</summary>
/// <param name="Order">In the order in which they are sewn; one where it has no choice.</param>
/// <param name="ChangesBefore">It begins with another thread than the hooping before it ended with.</param>
/// <param name="Inside">Changes while it is sewn.</param>
public sealed record HoopingThreads(ImmutableArray<CssColour> Order, bool ChangesBefore, int Inside);

/// <summary>
/// In which order the threads of each hooping are sewn, so that over all hoopings, one after another, the thread is changed as seldom as
/// can be. Names that are keyed in or traced come one by one along the strip, and have no such choice.
/// </summary>
public sealed record ThreadTurns(ImmutableDictionary<int, HoopingThreads> All, ImmutableArray<CssColour> Threads)
{
    /// <summary>One thread for all.</summary>
    public static ThreadTurns None { get; } = new(ImmutableDictionary<int, HoopingThreads>.Empty, []);

    public bool AreSeveral => Threads.Length > 1;

    /// <summary>Changes over the whole job.</summary>
    public int Changes => All.Values.Sum(h => h.Inside + (h.ChangesBefore ? 1 : 0));

    /// <summary>Null where the whole job has one thread.</summary>
    public HoopingThreads? Of(int hooping) => All.GetValueOrDefault(hooping);

    public static CssColour ThreadOf(StripPlan plan, PlacedName name) => plan.Colours.OfThread(name) ?? ColourSettings.UsualThread;

    /// <param name="sewn">Of hoopings that are sewn the order in which they were: it is not planned again.</param>
    public static ThreadTurns Of(StripPlan plan, IReadOnlyDictionary<int, ImmutableArray<CssColour>>? sewn = null)
    {
        ImmutableArray<CssColour> threads = [.. NumbersIn(plan).Select(CssColour.Of)];
        if (threads.Length < 2)
        {
            return None with { Threads = threads };
        }

        var hoopings = plan.Hoopings.OrderBy(h => h.Number).Select(h => (h.Number, Orders: OrdersOf(plan, h, sewn)))
            .Where(h => !h.Orders.IsEmpty).ToList();
        var orders = Fewest([.. hoopings.Select(h => h.Orders)]);
        var all = ImmutableDictionary.CreateBuilder<int, HoopingThreads>();
        for (int i = 0; i < orders.Length; i++)
        {
            bool changes = i > 0 && orders[i - 1][^1] != orders[i][0];
            int inside = orders[i].Zip(orders[i].Skip(1)).Count(p => p.First != p.Second);
            all.Add(hoopings[i].Number, new HoopingThreads([.. orders[i].Distinct()], changes, inside));
        }

        return new ThreadTurns(all.ToImmutable(), threads);
    }

    /// <summary>Numbers of the colours that are sewn, the lowest first.</summary>
    internal static List<int> NumbersIn(StripPlan plan)
    {
        var numbers = new SortedSet<int>();
        foreach (var hooped in plan.Hoopings.SelectMany(h => h.Segments))
        {
            foreach (var name in hooped.Segment.NamesAndMotifs.Where(n => !n.IsGone))
            {
                numbers.Add(ThreadOf(plan, name).Number);
            }
        }

        return [.. numbers];
    }

    /// <summary>The orders that a hooping's threads may be sewn in; none where it holds no name.</summary>
    internal static ImmutableArray<ImmutableArray<CssColour>> OrdersOf(
        StripPlan plan, Hooping hooping, IReadOnlyDictionary<int, ImmutableArray<CssColour>>? sewn = null)
    {
        var along = Along(plan, hooping);
        return along.IsEmpty ? []
            : sewn?.GetValueOrDefault(hooping.Number) is { IsDefaultOrEmpty: false } was && was.ToHashSet().SetEquals(along) ? [was]
            : hooping.HasNeedlePath ? Free(along) : [along];
    }

    /// <summary>Of each hooping the one of its orders by which all together ask for the fewest changes between hoopings.</summary>
    /// <param name="orders">For each hooping the orders it may have; of equal ones the first is taken.</param>
    internal static ImmutableArray<ImmutableArray<T>> Fewest<T>(ImmutableArray<ImmutableArray<ImmutableArray<T>>> orders)
        where T : IEquatable<T>
    {
        // From the last hooping back: what the rest costs from each order on, and which order follows.
        int[][] costs = new int[orders.Length][];
        int[][] next = new int[orders.Length][];
        for (int i = orders.Length - 1; i >= 0; i--)
        {
            costs[i] = new int[orders[i].Length];
            next[i] = new int[orders[i].Length];
            for (int j = 0; j < orders[i].Length && i + 1 < orders.Length; j++)
            {
                var options = orders[i + 1].Select((o, k) => (Cost: costs[i + 1][k] + (orders[i][j][^1].Equals(o[0]) ? 0 : 1), Index: k));
                (costs[i][j], next[i][j]) = options.MinBy(o => o.Cost);
            }
        }

        var taken = ImmutableArray.CreateBuilder<ImmutableArray<T>>(orders.Length);
        for (int i = 0, at = orders.IsEmpty ? 0 : Array.IndexOf(costs[0], costs[0].Min()); i < orders.Length; at = next[i++][at])
        {
            taken.Add(orders[i][at]);
        }

        return taken.ToImmutable();
    }

    /// <summary>Every thread once; only which comes first and which last bears on the changes.</summary>
    internal static ImmutableArray<ImmutableArray<T>> Free<T>(ImmutableArray<T> sewn)
        where T : IEquatable<T>
    {
        ImmutableArray<T> own = [.. sewn.Distinct()];
        return own.Length == 1
            ? [own]
            : [.. from first in own from last in own
                where !first.Equals(last) select (ImmutableArray<T>)[first, .. own.Where(t => !t.Equals(first) && !t.Equals(last)), last]];
    }

    private static ImmutableArray<CssColour> Along(StripPlan plan, Hooping hooping) =>
        [.. hooping.Segments.SelectMany(s => s.Segment.NamesAndMotifs).Where(n => !n.IsGone).Select(n => ThreadOf(plan, n))];
}
