using NameBand.Common;
using NameBand.Stitching;
using NameBand.Stitching.Columns;
using NameBand.Stitching.Geometry;

namespace NameBand.Tests.StitchQuality;

/// <summary>
/// How square the crossings lie to their columns: the angle between a crossing, from a needle point to the middle of its two
/// neighbours on the other side, and the normal of the column's centre line beside it. A stretch of satin belongs to
/// the column that most of its crossings lie nearest to.
/// </summary>
internal readonly record struct SquarenessMeasure(double Median, double Worst95)
{
    private const int FewestPoints = 7;
    private const double ReachMm = 0.2;

    /// <param name="origin">Where the columns' own origin lies in the path.</param>
    public static SquarenessMeasure Of(NeedlePath path, IReadOnlyList<Column> columns, Point origin)
    {
        var angles = Read(path, columns, origin).Select(r => r.Degrees).Order().ToList();
        return angles.Count == 0 ? default : new SquarenessMeasure(angles[angles.Count / 2], angles[(int)(0.95 * (angles.Count - 1))]);
    }

    /// <summary>Every crossing with its angle to the normal.</summary>
    public static List<(Point From, Point To, double Degrees)> Read(NeedlePath path, IReadOnlyList<Column> columns, Point origin)
    {
        var angles = new List<(Point From, Point To, double Degrees)>();
        var stretch = new List<Vec>();
        foreach (var step in path.Steps)
        {
            if (step is { Action: NeedleAction.Stitch, Kind: StitchKind.Satin })
            {
                stretch.Add(Vec.From(step.At - origin));
                continue;
            }

            Add(stretch, columns, origin, angles);
            stretch.Clear();
        }

        Add(stretch, columns, origin, angles);
        return angles;
    }

    private static void Add(List<Vec> p, IReadOnlyList<Column> columns, Point origin, List<(Point From, Point To, double Degrees)> angles)
    {
        if (p.Count < FewestPoints || columns.Count == 0)
        {
            return;
        }

        var crossings = Enumerable.Range(1, p.Count - 2).Select(i => (From: p[i], To: Vec.Mix(p[i - 1], p[i + 1], 0.5))).ToList();
        var column = crossings.GroupBy(r => columns.MinBy(c => c.Nearest(Vec.Mix(r.From, r.To, 0.5)).Distance)).MaxBy(g => g.Count())!.Key!;
        foreach (var (from, to) in crossings)
        {
            double at = column.Nearest(Vec.Mix(from, to, 0.5)).At;
            var along = column.Closed
                ? column.MiddleAt(at + ReachMm) - column.MiddleAt(at - ReachMm)
                : column.MiddleAt(Math.Min(column.Length, at + ReachMm)) - column.MiddleAt(Math.Max(0, at - ReachMm));
            var across = to - from;
            if (across.Length > 0.2 && along.Length > 0.05)
            {
                double sine = Math.Abs(Vec.Dot(across, along)) / (across.Length * along.Length);
                angles.Add((from.ToPoint() + origin, to.ToPoint() + origin, Math.Asin(Math.Min(1, sine)) * 180 / Math.PI));
            }
        }
    }
}
