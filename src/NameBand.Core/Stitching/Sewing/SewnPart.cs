using NameBand.Common;
using NameBand.Lettering;
using NameBand.Stitching.Columns;

namespace NameBand.Stitching.Sewing;

/// <summary>
/// A connected part of a letter piece, with the ways its sewing may start and end. Each way through is worked out
/// when it is first wanted, and kept.
/// </summary>
internal sealed class SewnPart
{
    /// <summary>Travel adds holes to the letter, so it is not worth a shorter hop, only a trim or a better hidden thread.</summary>
    private const double TravelWorth = 1;

    private readonly Func<int, int, NeedleStep[]> _sew;
    private readonly LockedRun?[] _kept;
    private readonly double[] _costs;

    private SewnPart(Point[] entries, Point[] starts, Point[] exits, double[] costs, Func<int, int, NeedleStep[]> sew)
    {
        Entries = entries;
        Starts = starts;
        Exits = exits;
        _costs = costs;
        _sew = sew;
        _kept = new LockedRun[exits.Length * (entries.Length + 1)];
    }

    /// <summary>Where the needle may come in; the sewing then travels to the start that belongs to the chosen exit.</summary>
    public Point[] Entries { get; }

    /// <summary>For each exit the place where the sewing starts when it does not travel first.</summary>
    public Point[] Starts { get; }

    /// <summary>Where the needle may leave, to a few tenths of a mm; the first is the one that the columns themselves prefer.</summary>
    public Point[] Exits { get; }

    public static SewnPart Fixed(NeedleStep[] run) => new([], [run[0].At], [run[^1].At], [0], (_, _) => run);

    /// <param name="finish">Holds the points inside what the layout counts on.</param>
    public static SewnPart Of(IReadOnlyList<Column> columns, double letterHeightMm, SatinSettings? satin, Func<SewnRun, NeedleStep[]> finish)
    {
        // A running stitch has nothing that would hide the travel.
        var ways = WaysThrough.Of(columns, letterHeightMm, leadIn: satin is not null);
        var (doors, outs) = (ways.In, ways.Out);
        var costs = new double[outs.Count * (doors.Count + 1)];
        for (int exit = 0; exit < outs.Count; exit++)
        {
            for (int entry = 0; entry <= doors.Count; entry++)
            {
                double travel = entry == doors.Count ? 0 : ColumnSewer.LeadInMm(columns, doors[entry], outs[exit]);
                costs[(exit * (doors.Count + 1)) + entry] = outs[exit].Concession + (TravelWorth * travel);
            }
        }

        return new SewnPart(
            [.. doors.Select(d => columns[d.Column].MiddleAt(d.At).ToPoint())],
            [.. outs.Select(o => columns[o.Tree.Root].MiddleAt(o.At).ToPoint())],
            [.. outs.Select(o => Exit(columns, o))],
            costs,
            (entry, exit) => finish(ColumnSewer.Sew(columns, outs[exit], entry == doors.Count ? null : doors[entry], satin)));
    }

    /// <summary>What a way through costs in mm of thread on the cloth, hops aside.</summary>
    public double Cost(int entry, int exit) => _costs[(exit * (Entries.Length + 1)) + entry];

    /// <summary>The stitches of a way through; the entry after the last one is the exit's own start.</summary>
    public LockedRun Run(int entry, int exit)
    {
        int index = (exit * (Entries.Length + 1)) + entry;
        var run = Volatile.Read(ref _kept[index]);
        if (run is null)
        {
            // Two threads may work it out at once: both come to the same.
            run = LockedRun.Of(_sew(entry, exit));
            Volatile.Write(ref _kept[index], run);
        }

        return run;
    }

    /// <summary>The stitches when nothing lies before or after.</summary>
    public NeedleStep[] Alone => Run(Entries.Length, 0).Steps;

    private static Point Exit(IReadOnlyList<Column> columns, WayOut way)
    {
        var column = columns[way.Tree.Root];
        if (way.LeaveFor is not { } next)
        {
            return column.MiddleAt(way.At).ToPoint();
        }

        var (left, right) = column.RungAt(way.At);
        return ((next - left).Length < (next - right).Length ? left : right).ToPoint();
    }
}
