using NameBand.Common;

namespace NameBand.Stitching.Sewing;

/// <summary>A connected part at its place in a name, with the way it is sewn.</summary>
/// <param name="IsJoined">The thread comes from the part before without a cut.</param>
internal readonly record struct RoutedPart(SewnPart Part, Placing At, int Entry, int Exit, bool IsJoined);

/// <summary>
/// The way through a name: for every connected part where the sewing comes in and where it leaves, in which order the
/// parts of one letter (a stem and its dot, a letter and its accents) are sewn, and which gaps a short stitch joins;
/// all others are cut. Letters keep their reading order. The cheapest way is found exactly, for the places on offer.
/// </summary>
internal sealed class NameRoute(SewingSettings settings, double letterHeightMm)
{
    /// <summary>Thread that leads to a cut is cut away: it only takes time.</summary>
    private const double CutHopWorth = 0.25;

    /// <summary>A thread over satin that is sewn already is seen more than one on the cloth.</summary>
    private const double OverSatinWorth = 6;
    private const int MostInAnyOrder = 4;

    private static readonly int[][][] Orders = [.. Enumerable.Range(0, MostInAnyOrder + 1).Select(n => Permutations(n).ToArray())];

    private readonly record struct Node(int Before, RoutedPart Way, Point Leaves, double Cost);

    private readonly List<Node> _nodes = new(512);
    private readonly List<int> _last = [];
    private readonly List<int> _open = [];
    private readonly List<int> _layer = [];
    private readonly List<int> _next = [];

    /// <summary>Adds the parts of the next letter.</summary>
    public void Add(SewnPiece piece, Placing at)
    {
        if (piece.Parts.IsEmpty)
        {
            return;
        }

        _open.Clear();
        AddInAnyOrder(piece.Parts, at);
        if (!piece.Together.IsEmpty && settings.LongestJoinMm >= SewingSettings.UsualLongestJoinMm)
        {
            AddInAnyOrder(piece.Together, at);
        }

        _last.Clear();
        _last.AddRange(_open);
    }

    /// <summary>The cheapest way, from the first part to the last.</summary>
    public List<RoutedPart> Best()
    {
        var way = new List<RoutedPart>();
        int at = _last.Count == 0 ? -1 : _last.MinBy(i => _nodes[i].Cost);
        for (; at >= 0; at = _nodes[at].Before)
        {
            way.Add(_nodes[at].Way);
        }

        way.Reverse();
        return way;
    }

    private void AddInAnyOrder(IReadOnlyList<SewnPart> parts, Placing at)
    {
        foreach (int[] order in parts.Count <= MostInAnyOrder ? Orders[parts.Count] : [[.. Enumerable.Range(0, parts.Count)]])
        {
            _layer.Clear();
            _layer.AddRange(_last);
            for (int k = 0; k < order.Length; k++)
            {
                Step(parts[order[k]], at, isSameLetter: k > 0);
            }

            _open.AddRange(_layer);
        }
    }

    private static IEnumerable<int[]> Permutations(int n)
    {
        if (n == 0)
        {
            yield return [];
            yield break;
        }

        foreach (int[] fewer in Permutations(n - 1))
        {
            for (int i = 0; i < n; i++)
            {
                yield return [.. fewer[..i], n - 1, .. fewer[i..]];
            }
        }
    }

    /// <summary>One part more: for each of its exits the cheapest way to it.</summary>
    private void Step(SewnPart part, Placing at, bool isSameLetter)
    {
        int entries = part.Entries.Length;
        double[] reached = new double[entries];
        int[] from = new int[entries];
        for (int entry = 0; entry < entries; entry++)
        {
            (reached[entry], from[entry]) = Join(part.Entries[entry], at, isSameLetter);
        }

        _next.Clear();
        for (int exit = 0; exit < part.Exits.Length; exit++)
        {
            var (least, before) = Cut(at.Of(part.Starts[exit]));
            int best = entries;
            least += part.Cost(entries, exit);
            for (int entry = 0; entry < entries; entry++)
            {
                double cost = reached[entry] + part.Cost(entry, exit);
                if (cost < least)
                {
                    (least, before, best) = (cost, from[entry], entry);
                }
            }

            _next.Add(_nodes.Count);
            _nodes.Add(new Node(before, new RoutedPart(part, at, best, exit, best < entries), at.Of(part.Exits[exit]), least));
        }

        _layer.Clear();
        _layer.AddRange(_next);
    }

    /// <summary>The cheapest way to a place by a cut after what was sewn before.</summary>
    private (double Cost, int Before) Cut(Point to)
    {
        double least = _layer.Count == 0 ? 0 : double.PositiveInfinity;
        int best = -1;
        foreach (int i in _layer)
        {
            var node = _nodes[i];
            double cost = node.Cost + settings.CutWorthMm + (CutHopWorth * node.Leaves.DistanceTo(to));
            if (cost < least)
            {
                (least, best) = (cost, i);
            }
        }

        return (least, best);
    }

    /// <summary>The cheapest way to a place by a short stitch from what was sewn before; without end where the gap is too wide.</summary>
    private (double Cost, int Before) Join(WayIn entry, Placing at, bool isSameLetter)
    {
        double least = double.PositiveInfinity;
        int best = -1;
        var edge = at.Of(entry.Edge);
        foreach (int i in _layer)
        {
            var node = _nodes[i];
            if (node.Way.Exit == 0 || Math.Abs(node.Leaves.XMm - edge.XMm) > settings.LongestJoinMm)
            {
                continue;
            }

            double far = node.Leaves.DistanceTo(edge);
            if (far > settings.LongestJoinMm)
            {
                continue;
            }

            double cost = node.Cost + far + (isSameLetter ? 0 : HeightPrice(entry.Edge, node.Way.Part.Exits[node.Way.Exit]));
            if (cost < least && node.Way.Part.Reach is { } reach)
            {
                cost += OverSatinWorth * reach.OverMm(node.Way.Part.Exits[node.Way.Exit], node.Way.At.Back(edge));
            }

            if (cost < least)
            {
                (least, best) = (cost, i);
            }
        }

        return (least, best);
    }

    /// <summary>A join at the base line reads as nothing, one at the waist between two stems as a crossbar. Our assumption.</summary>
    private double HeightPrice(Point a, Point b)
    {
        double part = (a.YMm + b.YMm) / (2 * letterHeightMm);
        const double Waist = 2.5;
        const double Shoulder = 1.2;
        return part <= 0.12 ? 0
            : part < 0.3 ? Waist * (part - 0.12) / 0.18
            : part < 0.55 ? Waist
            : part < 0.68 ? Waist - ((Waist - Shoulder) * (part - 0.55) / 0.13)
            : Shoulder;
    }
}
