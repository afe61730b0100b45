using System.Collections.Concurrent;
using NameBand.Common;
using NameBand.Stitching.Columns;
using NameBand.Stitching.Geometry;

namespace NameBand.Stitching.Sewing;

/// <summary>
/// A connected part of a letter piece, with the ways its sewing may start and end. Each way through is worked out
/// when it is first wanted, and kept.
/// </summary>
internal sealed class SewnPart
{
    /// <summary>Travel under satin to come costs little but holes.</summary>
    private const double TravelWorth = 0.15;

    /// <summary>The second thread beside the first one is seen more than the first alone.</summary>
    private const double DoubledWorth = 2.5;

    /// <summary>What has more is a word or a piece of one, and sewing it for each way out would take long.</summary>
    private const int MostColumnsOfALetter = 12;

    /// <summary>How far inside its edge the needle comes in to a part.</summary>
    public const double InsideMm = 0.3;

    private readonly Func<int, int, NeedleStep[]> _sew;
    private readonly Lazy<double[]> _costs;
    private readonly LockedRun?[] _kept;
    private readonly double[] _overSatin;

    /// <summary>For each exit the first one whose columns are sewn in the same order; null where each is judged by itself.</summary>
    private readonly int[]? _order;

    private SewnPart(
        WayIn[] entries, Point[] starts, Point[] exits, Func<double[]> costs, Func<int, int, NeedleStep[]> sew, int[]? order = null)
    {
        _order = order;
        Entries = entries;
        Starts = starts;
        Exits = exits;
        _costs = new Lazy<double[]>(costs);
        _sew = sew;
        _kept = new LockedRun[exits.Length * (entries.Length + 1)];
        _overSatin = new double[exits.Length];
        _overSatin.AsSpan().Fill(double.NaN);
    }

    /// <summary>Where the needle may come in; the sewing then travels to the start that belongs to the chosen exit.</summary>
    public WayIn[] Entries { get; }

    /// <summary>For each exit the place where the sewing starts when it does not travel first.</summary>
    public Point[] Starts { get; }

    /// <summary>The last hole of every way out; the first is the one that the columns themselves prefer, and only near by.</summary>
    public Point[] Exits { get; }

    /// <summary>Others are sewn on the way through it.</summary>
    public bool HasGuests { get; private init; }

    /// <summary>Null for a part without strokes.</summary>
    public Reach? Reach { get; private init; }

    /// <summary>A part that is always sewn in the same way.</summary>
    public static SewnPart Fixed(NeedleStep[] run) => new(
        [new WayIn(default, run[0].At, run[0].At)], [run[0].At, run[0].At], [run[^1].At, run[^1].At], () => [0, 0, 0, 0], (_, _) => run);

    /// <summary>Running stitch has nothing that would hide travel: it ends where it starts.</summary>
    public static SewnPart Run(IReadOnlyList<Column> columns, Func<SewnRun, NeedleStep[]> finish)
    {
        var outs = WaysThrough.Of(columns, ColumnTree.From(columns), fromAllSides: true).Out;
        Point[] at = [.. outs.Select(o => columns[o.Tree.Root].MiddleAt(o.At).ToPoint())];
        int entries = at.Length - 1;
        double[] costs = new double[at.Length * at.Length];
        costs.AsSpan().Fill(double.PositiveInfinity);
        for (int exit = 0; exit < at.Length; exit++)
        {
            costs[(exit * at.Length) + entries] = outs[exit].Concession;
            if (exit > 0)
            {
                costs[(exit * at.Length) + exit - 1] = outs[exit].Concession;
            }
        }

        return new SewnPart(
            [.. at.Skip(1).Select(p => new WayIn(default, p, p))], at, at, () => costs,
            (_, exit) => finish(new ColumnSewer(columns, outs[exit], null).Sew()))
        {
            Reach = new Reach(columns),
        };
    }

    /// <param name="finish">Holds the points inside what the layout counts on.</param>
    /// <param name="guests">Sewn on the way.</param>
    public static SewnPart Satin(
        PartWays ways, Func<SewnRun, NeedleStep[]> finish, IReadOnlyList<Guest>? guests = null, double seenTwiceMm = 0)
    {
        var (entries, outs) = (ways.In, ways.Out);
        return new SewnPart(
            [.. entries], [.. outs.Select(o => ways.Columns[o.Tree.Root].MiddleAt(o.At).ToPoint())], [.. ways.Last], Costs,
            (entry, exit) => finish(ways.Sew(entry == entries.Count ? null : entries[entry], outs[exit], guests ?? [])),
            ways.Columns.Count > MostColumnsOfALetter ? Orders(outs) : null)
        {
            Reach = ways.Reach,
            HasGuests = guests is not null,
        };

        double[] Costs()
        {
            double[] costs = new double[outs.Count * (entries.Count + 1)];
            for (int exit = 0; exit < outs.Count; exit++)
            {
                double concession = outs[exit].Concession + (DoubledWorth * seenTwiceMm);
                var travel = ways.TravelMm(exit);
                for (int entry = 0; entry < entries.Count; entry++)
                {
                    costs[(exit * (entries.Count + 1)) + entry] = concession + (TravelWorth * travel[entry]);
                }

                costs[(exit * (entries.Count + 1)) + entries.Count] = concession;
            }

            return costs;
        }
    }

    /// <summary>What the ways through to an exit cost in mm of thread in sight, joins aside: from each way in, and last from the
    /// exit's own start.</summary>
    public ReadOnlySpan<double> Costs(int exit) => _costs.Value.AsSpan(exit * (Entries.Length + 1), Entries.Length + 1);

    private static int[] Orders(IReadOnlyList<WayOut> outs)
    {
        var first = new Dictionary<int, int>();
        for (int exit = 0; exit < outs.Count; exit++)
        {
            first.TryAdd(outs[exit].Tree.Root, exit);
        }

        return [.. outs.Select(o => first[o.Tree.Root])];
    }

    /// <summary>The exit whose stitches tell how much travel lies over satin on the way to this one: in a word the order of its
    /// columns decides that.</summary>
    public int OrderOf(int exit) => _order is null ? exit : _order[exit];

    /// <summary>What it costs more that travel lies over satin when the sewing leaves there; not a number until it is known.</summary>
    public double OverSatin(int exit) => Volatile.Read(ref _overSatin[OrderOf(exit)]);

    public void SetOverSatin(int exit, double cost) => Volatile.Write(ref _overSatin[OrderOf(exit)], cost);

    /// <summary>The stitches of a way through; the entry after the last one is the exit's own start.</summary>
    public LockedRun Run(int entry, int exit)
    {
        int index = (exit * (Entries.Length + 1)) + entry;
        var run = Volatile.Read(ref _kept[index]);
        if (run is null)
        {
            // Two threads may work it out at once: both come to the same.
            run = new LockedRun(_sew(entry, exit));
            Volatile.Write(ref _kept[index], run);
        }

        return run;
    }

    /// <summary>The stitches when nothing lies before or after.</summary>
    public NeedleStep[] Alone => Run(Entries.Length, 0).Steps;
}

/// <summary>The ways through the columns of one part that is sewn in satin.</summary>
internal sealed class PartWays
{
    private readonly SatinSettings _satin;
    private readonly ConcurrentDictionary<(int Root, double At), double[]> _travel = new();

    /// <param name="fromAllSides">Other parts of the same letter lie above or below.</param>
    public PartWays(IReadOnlyList<Column> columns, SatinSettings satin, bool fromAllSides)
    {
        _satin = satin;
        Columns = columns;
        var trees = ColumnTree.From(columns);
        Graph = new ContactGraph(columns, trees[0]);
        var ways = WaysThrough.Of(columns, trees, fromAllSides);
        In = [.. ways.In.Select(Door)];
        Out = ways.Out;
        Last = [.. Out.Select(LastHole)];
        Reach = new Reach(columns);
    }

    public IReadOnlyList<Column> Columns { get; }

    public ContactGraph Graph { get; }

    public IReadOnlyList<WayIn> In { get; }

    public IReadOnlyList<WayOut> Out { get; }

    /// <summary>The last hole of each way out.</summary>
    public IReadOnlyList<Point> Last { get; }

    public Reach Reach { get; }

    /// <summary>How far it is from every way in to where the sewing of a way out starts.</summary>
    public double[] TravelMm(int exit)
    {
        var key = (Out[exit].Tree.Root, Out[exit].At);
        return _travel.GetOrAdd(
            key,
            k =>
            {
                var far = Graph.To(k.Root, k.At).Far;
                return [.. In.Select(d => Graph.From(d.Place, k.Root, k.At, far).Mm)];
            });
    }

    public SewnRun Sew(WayIn? entry, WayOut exit, IReadOnlyList<Guest> guests)
    {
        var sewer = new ColumnSewer(Columns, exit, _satin, guests);
        if (entry is { } door)
        {
            sewer.LeadIn(door, Graph.Legs(door.Place, exit.Tree.Root, exit.At));
        }

        return sewer.Sew();
    }

    private WayIn Door(EdgePlace place)
    {
        var (left, right) = Columns[place.Column].CrossingAt(place.At);
        var (edge, other) = place.Side == 0 ? (left, right) : (right, left);
        double width = (other - edge).Length;
        var hole = width < 1e-6 ? edge : Vec.Mix(edge, other, Math.Min(0.5, SewnPart.InsideMm / width));
        return new WayIn(place, EdgeHole(place).ToPoint(), hole.ToPoint());
    }

    private Point LastHole(WayOut way) =>
        (way.Side is { } side ? EdgeHole(new EdgePlace(way.Tree.Root, way.At, side)) : Columns[way.Tree.Root].MiddleAt(way.At)).ToPoint();

    private Vec EdgeHole(EdgePlace place)
    {
        var column = Columns[place.Column];
        var (left, right) = SatinLayer.Ends(column, ColumnEnd.LastPlace(column, place.At, _satin), _satin);
        return place.Side == 0 ? left : right;
    }
}
