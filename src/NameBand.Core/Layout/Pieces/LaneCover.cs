using System.Collections.Immutable;

namespace NameBand.Layout.Pieces;

/// <summary>
/// Finds the hoopings that cost least work for strips that lie fast beside each other: few hoopings, and few segments in
/// them. A dynamic program, hooping by hooping, over the names at which the lanes stand.
/// </summary>
/// <remarks>
/// A hooping begins at the leftmost name not yet sewn: hoopings can always be put in that order, and their segments
/// exchanged so that each lane is sewn from left to right. What is left to sew never costs more where a lane is further on,
/// for the same hoopings do for fewer names; so a lane takes in a hooping as many names as the field holds, or none and
/// keeps its segment for a later one. Places that another outdoes in all lanes and in segments are dropped.
/// </remarks>
/// <param name="isScouting">Quick, for comparing many places of the lanes: with several lanes it may find more than the least.</param>
internal sealed class LaneCover(IReadOnlyList<HoopingLane> lanes, double fieldMm, bool isScouting = false)
{
    /// <summary>
    /// Work of one segment more, its two marks, as a part of a hooping's, which is cloth, backing, frame and start: common
    /// practice, no source. docs/times.md has the minutes.
    /// </summary>
    public const double SegmentPart = 0.05;

    private const double Slight = 1e-9;

    /// <summary>So many places are kept, the furthest on; where many lanes have more, the result may cost more than the least.</summary>
    private readonly int _mostKept = isScouting ? 12 : 400;

    /// <summary>Of lanes that could as well wait, so many are tried both ways in one hooping.</summary>
    private readonly int _mostUndecided = isScouting ? 2 : 6;

    private sealed record Place(int[] Next, Place? Before, int Hoopings, int Segments)
    {
        public double Work => Hoopings + (Segments * SegmentPart);
    }

    /// <summary>No cover costs less: a hooping has at most one segment of each lane, and no lane has fewer than if it were sewn alone.</summary>
    public static double Bound(IReadOnlyList<HoopingLane> lanes) => BoundFrom(lanes, new int[lanes.Count]);

    /// <summary>Work of the best cover, in hoopings, or <paramref name="below"/> if none costs less than that.</summary>
    public double LeastWork(double below) => Search(below)?.Work ?? below;

    /// <summary>The hoopings from left to right, each with its share of the lanes that have names in it.</summary>
    public ImmutableArray<ImmutableArray<LaneCutter.Share>> Cut()
    {
        var hoopings = new List<ImmutableArray<LaneCutter.Share>>();
        for (var place = Search(double.PositiveInfinity)!; place.Before is { } before; place = before)
        {
            hoopings.Add([.. Enumerable.Range(0, lanes.Count)
                .Where(l => place.Next[l] > before.Next[l])
                .Select(l => new LaneCutter.Share(l, before.Next[l], place.Next[l] - before.Next[l]))]);
        }

        hoopings.Reverse();
        return [.. hoopings];
    }

    private static double BoundFrom(IReadOnlyList<HoopingLane> lanes, int[] next)
    {
        int most = 0;
        int all = 0;
        for (int l = 0; l < next.Length; l++)
        {
            int least = lanes[l].Least(next[l]);
            (most, all) = (Math.Max(most, least), all + least);
        }

        return most + (all * SegmentPart);
    }

    private Place? Search(double below)
    {
        Place? best = null;
        var level = new List<Place> { new(new int[lanes.Count], null, 0, 0) };
        while (level.Count > 0)
        {
            var later = new List<Place>();
            foreach (var place in level)
            {
                if (IsDone(place))
                {
                    best = place.Work < (best?.Work ?? below) - Slight ? place : best;
                    continue;
                }

                foreach (var (next, segments) in After(place.Next))
                {
                    var after = new Place(next, place, place.Hoopings + 1, place.Segments + segments);
                    if (after.Work + BoundFrom(lanes, next) < (best?.Work ?? below) - Slight)
                    {
                        Keep(later, after);
                    }
                }
            }

            level = later.Count <= _mostKept ? later : [.. later.OrderBy(p => BoundFrom(lanes, p.Next) + p.Work).Take(_mostKept)];
        }

        return best;
    }

    private bool IsDone(Place place)
    {
        for (int l = 0; l < lanes.Count; l++)
        {
            if (place.Next[l] < lanes[l].Count)
            {
                return false;
            }
        }

        return true;
    }

    private static void Keep(List<Place> places, Place place)
    {
        if (!places.Exists(p => Outdoes(p, place)))
        {
            places.RemoveAll(p => Outdoes(place, p));
            places.Add(place);
        }
    }

    private static bool Outdoes(Place place, Place other)
    {
        for (int l = 0; l < place.Next.Length; l++)
        {
            if (place.Next[l] < other.Next[l])
            {
                return false;
            }
        }

        return place.Segments <= other.Segments;
    }

    /// <summary>Where the lanes can stand after one hooping more, and how many segments it takes.</summary>
    private IEnumerable<(int[] Next, int Segments)> After(int[] next)
    {
        int first = -1;
        for (int l = 0; l < lanes.Count; l++)
        {
            bool isOpen = next[l] < lanes[l].Count;
            first = isOpen && (first < 0 || lanes[l].LeftMm(next[l]) < lanes[first].LeftMm(next[first])) ? l : first;
        }

        double left = lanes[first].LeftMm(next[first]);
        int[] taken = [.. next];
        taken[first] = lanes[first].Reach(next[first]);
        int sure = 1;
        var undecided = new List<int>();
        for (int l = 0; l < lanes.Count; l++)
        {
            int to = l == first || next[l] == lanes[l].Count ? next[l] : lanes[l].Within(next[l], left, fieldMm);
            if (to > next[l])
            {
                taken[l] = to;
                bool mayWait = to < lanes[l].Reach(next[l]) && undecided.Count < _mostUndecided;
                sure += mayWait ? 0 : 1;
                undecided.AddRange(mayWait ? [l] : []);
            }
        }

        for (int waiting = 0; waiting < 1 << undecided.Count; waiting++)
        {
            int[] after = [.. taken];
            for (int u = 0; u < undecided.Count; u++)
            {
                after[undecided[u]] = (waiting & (1 << u)) == 0 ? after[undecided[u]] : next[undecided[u]];
            }

            yield return (after, sure + undecided.Count - System.Numerics.BitOperations.PopCount((uint)waiting));
        }
    }
}
