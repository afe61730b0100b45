using System.Collections.Immutable;

namespace NameBand.Layout.Pieces;

/// <summary>
/// Finds the fewest hoopings for strips that lie fast beside each other, each cut into its fewest segments. A dynamic
/// program, hooping by hooping, over the names at which the lanes stand.
/// </summary>
/// <remarks>
/// A hooping begins at the leftmost name not yet sewn (hoopings can always be put in that order, and their segments
/// exchanged so that each lane is sewn from left to right). A lane may end its segment early for the sake of the field
/// only where the rest still needs a segment less. It then takes as many names as it can, for among cuts with equally
/// many segments to go the one further on can do all that the other can; or it waits for a later hooping. Both are
/// tried, and places that others outdo are dropped.
/// </remarks>
/// <param name="isScouting">Quick, for comparing many places of the lanes: with several lanes it may count more than the fewest.</param>
internal sealed class HoopingSearch(IReadOnlyList<HoopingLane> lanes, double fieldMm, bool isScouting = false)
{
    /// <summary>So many places are kept, the furthest on; where many lanes have more, the result may be more than the fewest.</summary>
    private readonly int _mostKept = isScouting ? 8 : 64;

    /// <summary>Of lanes that could as well wait, so many are tried both ways in one hooping.</summary>
    private readonly int _mostUndecided = isScouting ? 2 : 6;

    private sealed record Place(int[] Next, Place? Before, int Hoopings);

    /// <summary>No division has fewer hoopings than the lane with the most segments.</summary>
    public static int Bound(IEnumerable<HoopingLane> lanes) => lanes.Max(l => l.Least(0));

    /// <summary>How many hoopings, or <paramref name="below"/> if there are not fewer than that.</summary>
    public int Count(int below) => Search(below)?.Hoopings ?? below;

    /// <summary>The hoopings from left to right, each with its share of the lanes that have names in it.</summary>
    public ImmutableArray<ImmutableArray<LaneCutter.Share>> Cut()
    {
        var hoopings = new List<ImmutableArray<LaneCutter.Share>>();
        for (var place = Search(int.MaxValue)!; place.Before is { } before; place = before)
        {
            hoopings.Add([.. Enumerable.Range(0, lanes.Count)
                .Where(l => place.Next[l] > before.Next[l])
                .Select(l => new LaneCutter.Share(l, before.Next[l], place.Next[l] - before.Next[l]))]);
        }

        hoopings.Reverse();
        return [.. hoopings];
    }

    private Place? Search(int below)
    {
        var level = new List<Place> { new(new int[lanes.Count], null, 0) };
        while (level[0].Hoopings < below)
        {
            if (level.Find(p => ToGo(p) == 0) is { } done)
            {
                return done;
            }

            var later = new List<Place>();
            foreach (var place in level)
            {
                foreach (int[] next in After(place.Next))
                {
                    Keep(later, new Place(next, place, place.Hoopings + 1));
                }
            }

            level = later.Count <= _mostKept ? later : [.. later.OrderBy(ToGo).Take(_mostKept)];
        }

        return null;
    }

    private int ToGo(Place place)
    {
        int segments = 0;
        for (int l = 0; l < lanes.Count; l++)
        {
            segments += lanes[l].Least(place.Next[l]);
        }

        return segments;
    }

    private void Keep(List<Place> places, Place place)
    {
        if (!places.Exists(p => IsAsFar(p.Next, place.Next)))
        {
            places.RemoveAll(p => IsAsFar(place.Next, p.Next));
            places.Add(place);
        }
    }

    private bool IsAsFar(int[] next, int[] other)
    {
        for (int l = 0; l < lanes.Count; l++)
        {
            if (!lanes[l].IsAsFar(next[l], other[l]))
            {
                return false;
            }
        }

        return true;
    }

    /// <summary>Where the lanes can stand after one hooping more.</summary>
    private IEnumerable<int[]> After(int[] next)
    {
        double left = double.PositiveInfinity;
        for (int l = 0; l < lanes.Count; l++)
        {
            left = next[l] < lanes[l].Count ? Math.Min(left, lanes[l].LeftMm(next[l])) : left;
        }

        int[] taken = [.. next];
        var undecided = new List<int>();
        for (int l = 0; l < lanes.Count; l++)
        {
            if (next[l] == lanes[l].Count)
            {
                continue;
            }

            int longest = lanes[l].Reach(next[l]);
            int to = lanes[l].LeftMm(next[l]) <= left ? longest : lanes[l].Within(next[l], left, fieldMm);
            if (lanes[l].Least(to) == lanes[l].Least(next[l]) - 1)
            {
                taken[l] = to;
                if (to < longest && undecided.Count < _mostUndecided)
                {
                    undecided.Add(l);
                }
            }
        }

        for (int waiting = 0; waiting < 1 << undecided.Count; waiting++)
        {
            int[] after = [.. taken];
            for (int u = 0; u < undecided.Count; u++)
            {
                after[undecided[u]] = (waiting & (1 << u)) == 0 ? after[undecided[u]] : next[undecided[u]];
            }

            yield return after;
        }
    }
}
