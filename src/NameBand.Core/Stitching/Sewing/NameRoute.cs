using System.Runtime.InteropServices;
using NameBand.Common;

namespace NameBand.Stitching.Sewing;

/// <summary>A connected part at its place in a name, with the way it is sewn.</summary>
/// <param name="IsJoined">The thread comes from the part before without a cut.</param>
internal readonly record struct RoutedPart(SewnPart Part, Placing At, int Entry, int Exit, bool IsJoined)
{
    public LockedRun Run => Part.Run(Entry, Exit);
}

/// <summary>
/// The way through a name: for every connected part where the sewing comes in and where it leaves, in which order the
/// parts of one letter (a stem and its dot, a letter and its accents) are sewn, and which gaps a short stitch joins;
/// all others are cut. Letters keep their reading order. The cheapest way is found exactly, for the places on offer; a join
/// of which more turns out to be in sight than may be is taken from them, and the way is sought again.
/// </summary>
internal sealed class NameRoute(SewingSettings settings, JoinShelf joins)
{
    /// <summary>Thread that leads to a cut is cut away: it only takes time.</summary>
    private const double CutHopWorth = 0.25;
    private const int MostInAnyOrder = 4; // Parts of one letter: four come in 24 orders, five in 120; a letter with more keeps their order.
    // A count: the way is sought anew whenever a join turns out to be too long, and that has to end. Our choice.
    private const int MostTries = 20;

    private static readonly int[][][] Orders = [.. Enumerable.Range(0, MostInAnyOrder + 1).Select(n => Permutations(n).ToArray())];

    /// <summary>One for each way out of a part, and so the cheapest way to it.</summary>
    /// <param name="OverSatin">What its travel over satin was taken to cost.</param>
    private readonly record struct Node(int Before, int Layer, int Entry, int Exit, Point Leaves, double Cost, double OverSatin);

    /// <summary>A part that is sewn next, with its nodes, which follow each other.</summary>
    private readonly record struct Layer(SewnPart Part, Placing At, int First);

    private readonly List<(SewnPiece Piece, Placing At)> _letters = [];
    private readonly List<Node> _nodes = new(512);
    private readonly List<Layer> _layers = new(64);
    private readonly HashSet<(int Before, int Layer, int Entry)> _tooLong = [];

    /// <summary>Their dots and accents are sewn apart, because too much of the thread to them is in sight.</summary>
    private readonly HashSet<SewnPiece> _apart = [];
    private readonly List<int> _before = [];
    private readonly List<int> _open = [];
    private readonly List<int> _joined = [];
    private double[] _reached = [];
    private int[] _from = [];

    /// <summary>Adds the parts of the next letter.</summary>
    public void Add(SewnPiece piece, Placing at)
    {
        if (!piece.Parts.IsEmpty)
        {
            _letters.Add((piece, at));
        }
    }

    /// <summary>The cheapest way, from the first part to the last.</summary>
    public List<RoutedPart> Best()
    {
        for (int tries = 0; ; tries++)
        {
            var way = Cheapest();
            while (IsDearer(way))
            {
                way = Cheapest();
            }

            if (!SendsTooFar(way) && !HasTooLong(way))
            {
                return [.. way.Select(Routed)];
            }

            if (tries >= MostTries)
            {
                return Cut([.. way.Select(Routed)]);
            }
        }
    }

    private RoutedPart Routed(int node)
    {
        var (_, layer, entry, exit, _, _, _) = _nodes[node];
        var part = _layers[layer].Part;
        return new RoutedPart(part, _layers[layer].At, entry, exit, entry < part.Entries.Length);
    }

    /// <summary>Whether more of a join is in sight than may be; those are not offered again.</summary>
    private bool HasTooLong(List<int> way)
    {
        bool found = false;
        for (int i = 1; i < way.Count; i++)
        {
            var (one, next) = (Routed(way[i - 1]), Routed(way[i]));
            if (next.IsJoined && joins.SeenMm(one.Run, one.At, next.Run, next.At) > settings.LongestJoinMm)
            {
                _tooLong.Add((way[i - 1], _nodes[way[i]].Layer, next.Entry));
                found = true;
            }
        }

        return found;
    }

    /// <summary>Whether a thread to a dot or an accent and back shows more than it may; that letter is not sewn so again.</summary>
    private bool SendsTooFar(List<int> way)
    {
        int before = _apart.Count;
        foreach (var routed in way.Select(Routed).Where(r => r.Part.HasGuests && joins.WithinMm(r.Run) > settings.LongestJoinMm))
        {
            _apart.Add(_letters.First(l => l.Piece.Together.Contains(routed.Part)).Piece);
        }

        if (_apart.Count > before)
        {
            _tooLong.Clear();
        }

        return _apart.Count > before;
    }

    /// <summary>
    /// Whether a way out costs more than was known till now, because travel then lies over satin. What a way out costs does not
    /// hang on the name, so the way that is found does not on what was known before.
    /// </summary>
    private bool IsDearer(List<int> way)
    {
        bool found = false;
        foreach (int node in way)
        {
            // Not what is known by now but what this way was found with: another name may have come to know it in between.
            var routed = Routed(node);
            found |= joins.OverSatin(routed.Part, routed.Exit) > _nodes[node].OverSatin;
        }

        return found;
    }

    private List<RoutedPart> Cut(List<RoutedPart> way)
    {
        for (int i = 1; i < way.Count; i++)
        {
            way[i] = way[i] with
            {
                IsJoined = way[i].IsJoined && joins.SeenMm(way[i - 1].Run, way[i - 1].At, way[i].Run, way[i].At) <= settings.LongestJoinMm,
            };
        }

        return way;
    }

    private List<int> Cheapest()
    {
        _nodes.Clear();
        _layers.Clear();
        List<int> last = [];
        foreach (var (piece, at) in _letters)
        {
            _open.Clear();
            AddInAnyOrder(piece.Parts, at, last);
            if (!piece.Together.IsEmpty && !_apart.Contains(piece) && settings.LongestJoinMm > 0)
            {
                AddInAnyOrder(piece.Together, at, last);
            }

            last.Clear();
            last.AddRange(_open);
        }

        int best = -1;
        foreach (int layer in last)
        {
            for (int i = 0; i < _layers[layer].Part.Exits.Length; i++)
            {
                int node = _layers[layer].First + i;
                best = best < 0 || _nodes[node].Cost < _nodes[best].Cost ? node : best;
            }
        }

        var way = new List<int>();
        for (; best >= 0; best = _nodes[best].Before)
        {
            way.Add(best);
        }

        way.Reverse();
        return way;
    }

    private void AddInAnyOrder(IReadOnlyList<SewnPart> parts, Placing at, List<int> last)
    {
        foreach (int[] order in parts.Count <= MostInAnyOrder ? Orders[parts.Count] : [[.. Enumerable.Range(0, parts.Count)]])
        {
            _before.Clear();
            _before.AddRange(last);
            for (int k = 0; k < order.Length; k++)
            {
                Step(parts[order[k]], at, isSameLetter: k > 0);
            }

            _open.AddRange(_before);
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
        int layer = _layers.Count;
        FindJoins(part, at, isSameLetter, layer);
        int cheapest = CheapestBefore();
        _layers.Add(new Layer(part, at, _nodes.Count));
        for (int exit = 0; exit < part.Exits.Length; exit++)
        {
            var (least, before) = ByCut(at.Of(part.Starts[exit]), cheapest);
            int best = entries;
            double over = part.OverSatin(exit) is var known && double.IsNaN(known) ? 0 : known;
            var costs = part.Costs(exit);
            least += costs[entries] + over;
            foreach (int entry in CollectionsMarshal.AsSpan(_joined))
            {
                double cost = _reached[entry] + costs[entry] + over;
                if (cost < least)
                {
                    (least, before, best) = (cost, _from[entry], entry);
                }
            }

            _nodes.Add(new Node(before, layer, best, exit, at.Of(part.Exits[exit]), least, over));
        }

        _before.Clear();
        _before.Add(layer);
    }

    /// <summary>For each way in to a part the cheapest short stitch to it from what was sewn before.</summary>
    private void FindJoins(SewnPart part, Placing at, bool isSameLetter, int layer)
    {
        int entries = part.Entries.Length;
        if (_reached.Length < entries)
        {
            _reached = new double[entries];
            _from = new int[entries];
        }

        _joined.Clear();
        _reached.AsSpan(0, entries).Fill(double.PositiveInfinity);
        foreach (int l in _before)
        {
            var before = _layers[l];
            foreach (var join in joins.Between(before.Part, before.At, part, at, isSameLetter))
            {
                int node = before.First + join.Exit;
                double cost = _nodes[node].Cost + join.Cost;
                if (cost < _reached[join.Entry] && (_tooLong.Count == 0 || !_tooLong.Contains((node, layer, join.Entry))))
                {
                    (_reached[join.Entry], _from[join.Entry]) = (cost, node);
                }
            }
        }

        for (int entry = 0; entry < entries; entry++)
        {
            if (_reached[entry] < double.PositiveInfinity)
            {
                _joined.Add(entry);
            }
        }
    }

    private int CheapestBefore()
    {
        int cheapest = -1;
        foreach (int l in _before)
        {
            var before = _layers[l];
            for (int i = 0; i < before.Part.Exits.Length; i++)
            {
                cheapest = cheapest < 0 || _nodes[before.First + i].Cost < _nodes[cheapest].Cost ? before.First + i : cheapest;
            }
        }

        return cheapest;
    }

    /// <summary>The cheapest way to a place by a cut after what was sewn before.</summary>
    private (double Cost, int Before) ByCut(Point to, int cheapest)
    {
        if (cheapest < 0)
        {
            return (0, -1);
        }

        int best = cheapest;
        var nodes = CollectionsMarshal.AsSpan(_nodes);
        double least = nodes[cheapest].Cost + (CutHopWorth * nodes[cheapest].Leaves.DistanceTo(to));
        foreach (int l in _before)
        {
            var before = _layers[l];
            for (int i = before.First; i < before.First + before.Part.Exits.Length; i++)
            {
                ref var node = ref nodes[i];
                if (node.Cost < least && node.Cost + (CutHopWorth * node.Leaves.DistanceTo(to)) is var cost && cost < least)
                {
                    (least, best) = (cost, i);
                }
            }
        }

        return (least + settings.CutWorthMm, best);
    }
}
