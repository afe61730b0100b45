using System.Collections.Immutable;
using NameBand.Common;

namespace NameBand.Layout.Pieces;

/// <summary>A field that a hooping may be sewn in.</summary>
/// <param name="LengthMm">Of flat cloth along the strips.</param>
/// <param name="Lanes">So many strips beside each other lie in it.</param>
/// <param name="Work">Of one hooping in it, where that of the largest field is 1.</param>
internal readonly record struct CoverField(double LengthMm, int Lanes, double Work);

/// <summary>
/// Finds the hoopings that cost least work for strips that lie fast beside each other: few hoopings, in quick frames, and few
/// segments in them. A dynamic program, hooping by hooping, over the names at which the lanes stand.
/// </summary>
/// <remarks>
/// A hooping begins at the leftmost name not yet sewn: hoopings can always be put in that order, and their segments
/// exchanged so that each lane is sewn from left to right. What is left to sew never costs more where a lane is further on,
/// for the same hoopings do for fewer names; so a lane takes in a hooping as many names as the field holds, or none and
/// keeps its segment for a later one. Places that another outdoes in all lanes and in work are dropped. A motif left over is not
/// further on, for it needs its other neighbour: where a segment ends before one, it is tried without its last name too.
/// </remarks>
/// <param name="fields">The first holds every name and all lanes; others are smaller and take less work.</param>
/// <param name="isScouting">Quick, for comparing many places of the lanes: with several lanes it may find more than the least.</param>
internal sealed class LaneCover(IReadOnlyList<HoopingLane> lanes, ImmutableArray<CoverField> fields, bool isScouting = false)
{
    /// <summary>
    /// Work of one segment more, its two marks, as a part of a hooping's, which is cloth, backing, frame and start: common
    /// practice, no source. docs/times.md has the minutes.
    /// </summary>
    public const double SegmentPart = 0.05;

    /// <summary>So many places are kept, the furthest on; where many lanes have more, the result may cost more than the least.</summary>
    private readonly int _mostKept = isScouting ? 12 : 400;

    /// <summary>Of lanes that could as well wait, so many are tried both ways in one hooping.</summary>
    private readonly int _mostUndecided = isScouting ? 2 : 6;

    private readonly double[][] _alone = [.. lanes.Select(l => Alone(l, fields))];

    public LaneCover(IReadOnlyList<HoopingLane> lanes, double fieldMm, bool isScouting = false)
        : this(lanes, [new CoverField(fieldMm, lanes.Count, 1)], isScouting)
    {
    }

    private sealed record Place(int[] Next, Place? Before, int Field, double Work);

    /// <summary>In one field no cover costs less: a hooping has at most one segment of each lane, and no lane fewer than alone.</summary>
    public static double Bound(IReadOnlyList<HoopingLane> lanes) =>
        lanes.Max(l => l.Least(0)) + (lanes.Sum(l => l.Least(0)) * SegmentPart);

    /// <summary>Work of the best cover, in hoopings, or <paramref name="below"/> if none costs less than that.</summary>
    public double LeastWork(double below) => Search(below)?.Work ?? below;

    /// <summary>The hoopings from left to right, each with its share of the lanes that have names in it.</summary>
    public ImmutableArray<ImmutableArray<LaneCutter.Share>> Cut() => [.. CutInFields().Select(c => c.Shares)];

    /// <summary>The hoopings from left to right, each with the field that it is sewn in.</summary>
    public ImmutableArray<(int Field, ImmutableArray<LaneCutter.Share> Shares)> CutInFields()
    {
        var hoopings = new List<(int, ImmutableArray<LaneCutter.Share>)>();
        for (var place = Search(double.PositiveInfinity)!; place.Before is { } before; place = before)
        {
            hoopings.Add((place.Field, [.. Enumerable.Range(0, lanes.Count)
                .Where(l => place.Next[l] > before.Next[l])
                .Select(l => new LaneCutter.Share(l, before.Next[l], place.Next[l] - before.Next[l]))]));
        }

        hoopings.Reverse();
        return [.. hoopings];
    }

    /// <summary>Work of the hoopings that a lane needs from each of its names on if it is sewn alone.</summary>
    private static double[] Alone(HoopingLane lane, ImmutableArray<CoverField> fields)
    {
        double[] least = new double[lane.Count + 1];
        for (int name = lane.Count - 1; name >= 0; name--)
        {
            least[name] = fields[0].Work + lane.Ends(name, lane.Reach(name)).Select(e => least[e]).DefaultIfEmpty(0).Min();
            for (int f = 1; f < fields.Length; f++)
            {
                int to = lane.Within(name, lane.LeftMm(name), fields[f].LengthMm);
                foreach (int end in to > name ? lane.Ends(name, to) : [])
                {
                    least[name] = Math.Min(least[name], fields[f].Work + least[end]);
                }
            }
        }

        return least;
    }

    private double BoundFrom(int[] next)
    {
        double most = 0;
        int all = 0;
        for (int l = 0; l < next.Length; l++)
        {
            (most, all) = (Math.Max(most, _alone[l][next[l]]), all + lanes[l].Least(next[l]));
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
                    best = place.Work < (best?.Work ?? below) - Tolerance.Rounding ? place : best;
                    continue;
                }

                for (int field = 0; field < fields.Length; field++)
                {
                    foreach (var (next, segments) in After(place.Next, field))
                    {
                        var after = new Place(next, place, field, place.Work + fields[field].Work + (segments * SegmentPart));
                        if (after.Work + BoundFrom(next) < (best?.Work ?? below) - Tolerance.Rounding)
                        {
                            Keep(later, after);
                        }
                    }
                }
            }

            level = later.Count <= _mostKept ? later : [.. later.OrderBy(p => BoundFrom(p.Next) + p.Work).Take(_mostKept)];
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

    private void Keep(List<Place> places, Place place)
    {
        if (!places.Exists(p => Outdoes(p, place)))
        {
            places.RemoveAll(p => Outdoes(place, p));
            places.Add(place);
        }
    }

    private bool Outdoes(Place place, Place other)
    {
        for (int l = 0; l < place.Next.Length; l++)
        {
            if (!lanes[l].IsAsFarOn(place.Next[l], other.Next[l]))
            {
                return false;
            }
        }

        return place.Work <= other.Work + Tolerance.Rounding;
    }

    /// <summary>Where the lanes can stand after one hooping more in a field, and how many segments it takes.</summary>
    private IEnumerable<(int[] Next, int Segments)> After(int[] next, int field)
    {
        int first = -1;
        for (int l = 0; l < lanes.Count; l++)
        {
            bool isOpen = next[l] < lanes[l].Count;
            first = isOpen && (first < 0 || lanes[l].LeftMm(next[l]) < lanes[first].LeftMm(next[first])) ? l : first;
        }

        int beside = Math.Min(fields[field].Lanes, lanes.Count);
        for (int top = Math.Max(0, first - beside + 1); top <= Math.Min(first, lanes.Count - beside); top++)
        {
            foreach (var after in After(next, field, first, (top, top + beside)))
            {
                yield return after;
            }
        }
    }

    /// <param name="under">The lanes that lie in the field: the first, and the one after the last.</param>
    private IEnumerable<(int[] Next, int Segments)> After(int[] next, int field, int first, (int From, int To) under)
    {
        double left = lanes[first].LeftMm(next[first]);
        int farthest = field == 0 ? lanes[first].Reach(next[first]) : lanes[first].Within(next[first], left, fields[field].LengthMm);
        if (farthest == next[first])
        {
            yield break;
        }

        int[] taken = [.. next];
        int sure = 0;
        var undecided = new List<(int Lane, int[] Ends)>();
        for (int l = under.From; l < under.To; l++)
        {
            int to = l == first ? farthest
                : next[l] == lanes[l].Count ? next[l] : lanes[l].Within(next[l], left, fields[field].LengthMm);
            if (to == next[l])
            {
                continue;
            }

            int[] ends = l == first ? lanes[l].Ends(next[l], to)
                : [.. lanes[l].Ends(next[l], to), .. to < lanes[l].Reach(next[l]) ? [next[l]] : Array.Empty<int>()];
            taken[l] = to;
            bool isOpen = ends.Length > 1 && undecided.Count < _mostUndecided;
            sure += isOpen ? 0 : 1;
            undecided.AddRange(isOpen ? [(l, ends)] : []);
        }

        int ways = undecided.Aggregate(1, (all, u) => all * u.Ends.Length);
        for (int way = 0; way < ways; way++)
        {
            int[] after = [.. taken];
            int segments = sure;
            int rest = way;
            foreach (var (lane, ends) in undecided)
            {
                (rest, int end) = Math.DivRem(rest, ends.Length);
                after[lane] = ends[end];
                segments += ends[end] > next[lane] ? 1 : 0;
            }

            yield return (after, segments);
        }
    }
}
