using NameBand.Common;

namespace NameBand.Stitching.Sewing;

/// <summary>A connected part at its place in a name, with the way it is sewn.</summary>
internal readonly record struct RoutedPart(SewnPart Part, Point Origin, int Entry, int Exit);

/// <summary>
/// The way through a name: for every connected part where the sewing starts and ends, and in which order the parts of
/// one letter (a stem and its dot, a letter and its accents) are sewn, so that the thread that lies on the cloth between
/// them is short. Letters keep their reading order. The cheapest way is found exactly, for the places on offer.
/// </summary>
internal sealed class NameRoute(double longestUntrimmedMm)
{
    /// <summary>A trim takes a domestic machine some seconds: as long as far more than this of stitches. Common practice, no source.</summary>
    private const double TrimWorthMm = 20;

    /// <summary>
    /// A short thread on the cloth is clipped away: a millimetre less of it is not worth a millimetre more of travel,
    /// which adds holes to a letter.
    /// </summary>
    private const double HopWorth = 0.25;

    /// <summary>Inside one letter the hops only choose the order: its quality goes before a mm of thread.</summary>
    private const double InnerHopWorth = 0.01;

    /// <summary>Where the last hole comes to lie is known to this only.</summary>
    private const double DoubtMm = 0.3;
    private const int MostInAnyOrder = 3;

    private static readonly int[][][] Orders =
    [
        [[]], [[0]], [[0, 1], [1, 0]], [[0, 1, 2], [0, 2, 1], [1, 0, 2], [1, 2, 0], [2, 0, 1], [2, 1, 0]],
    ];

    private readonly record struct Node(int Before, RoutedPart Way, Point Leaves, double Cost);

    private readonly List<Node> _nodes = new(256);
    private readonly List<int> _last = [];
    private readonly List<int> _open = [];
    private readonly List<int> _layer = [];
    private readonly List<int> _next = [];

    /// <summary>Adds the parts of the next letter.</summary>
    public void Add(SewnPiece piece, Point origin)
    {
        var parts = piece.Parts;
        if (parts.IsEmpty)
        {
            return;
        }

        _open.Clear();
        foreach (int[] order in parts.Length <= MostInAnyOrder ? Orders[parts.Length] : [[.. Enumerable.Range(0, parts.Length)]])
        {
            _layer.Clear();
            _layer.AddRange(_last);
            foreach (int i in order)
            {
                Step(parts[i], origin);
            }

            _open.AddRange(_layer);
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

    /// <summary>One part more: for each of its exits the cheapest way to it.</summary>
    private void Step(SewnPart part, Point origin)
    {
        Span<double> reached = stackalloc double[part.Entries.Length];
        Span<int> from = stackalloc int[part.Entries.Length];
        for (int entry = 0; entry < reached.Length; entry++)
        {
            (reached[entry], from[entry]) = Reach(part.Entries[entry] + origin, origin);
        }

        _next.Clear();
        for (int exit = 0; exit < part.Exits.Length; exit++)
        {
            var (least, before) = Reach(part.Starts[exit] + origin, origin);
            int best = reached.Length;
            least += part.Cost(best, exit);
            for (int entry = 0; entry < reached.Length; entry++)
            {
                double cost = reached[entry] + part.Cost(entry, exit);
                if (cost < least)
                {
                    (least, before, best) = (cost, from[entry], entry);
                }
            }

            _next.Add(_nodes.Count);
            _nodes.Add(new Node(before, new RoutedPart(part, origin, best, exit), part.Exits[exit] + origin, least));
        }

        _layer.Clear();
        _layer.AddRange(_next);
    }

    /// <summary>The cheapest way to a place by a hop from what was sewn before.</summary>
    private (double Cost, int Before) Reach(Point to, Point letter)
    {
        if (_layer.Count == 0)
        {
            return (0, -1);
        }

        double least = double.PositiveInfinity;
        int best = -1;
        foreach (int i in _layer)
        {
            var node = _nodes[i];
            double hop = node.Leaves.DistanceTo(to);
            double cost = node.Cost + ((node.Way.Origin == letter ? InnerHopWorth : HopWorth) * hop) + (hop > longestUntrimmedMm - DoubtMm ? TrimWorthMm : 0);
            if (cost < least)
            {
                (least, best) = (cost, i);
            }
        }

        return (least, best);
    }
}
