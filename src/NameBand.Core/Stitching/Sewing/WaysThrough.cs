using NameBand.Stitching.Columns;
using NameBand.Stitching.Geometry;

namespace NameBand.Stitching.Sewing;

/// <summary>
/// The few places where the needle may come to a connected part, and those where it may leave it: on the left and on
/// the right, at the base line and at the height where most small letters are widest.
/// </summary>
internal sealed record WaysThrough(IReadOnlyList<Door> In, IReadOnlyList<WayOut> Out)
{
    /// <summary>Middle of a small letter, as part of the letter height: common practice, no source.</summary>
    private const double WaistPart = 0.36;
    private const double SamePlaceMm = 0.5;
    private const double TurnedOrderMm = 2;
    private const double SeamMm = 2;
    private const double SecondChoiceMm = 0.5;
    private const double TowardsNext = 0.05;

    public static WaysThrough Of(IReadOnlyList<Column> columns, double letterHeightMm, bool leadIn)
    {
        var trees = ColumnTree.From(columns);
        var root = columns[trees[0].Root];
        bool fromEnd = StartScore(root.MiddleAt(root.Length)) < StartScore(root.MiddleAt(0));
        var first = new WayOut(trees[0], fromEnd ? root.Length : 0, null, 0);
        List<Door> doors = [];
        List<WayOut> ways = [first];
        var (left, right, bottom, top) = BoxOf(columns);
        foreach (bool onLeft in new[] { true, false })
        {
            foreach (double height in new[] { 0, WaistPart * letterHeightMm, top, bottom })
            {
                var corner = new Vec(onLeft ? left : right, Math.Clamp(height, bottom, top));
                var door = Nearest(columns, corner);
                if (!doors.Any(d => IsSame(columns, d, door)))
                {
                    doors.Add(door);
                    if (trees.FirstOrDefault(t => t.Root == door.Column) is { } tree)
                    {
                        ways.Add(Way(columns, trees[0], tree, door, onLeft, WaistPart * letterHeightMm));
                    }
                }
            }
        }

        return new WaysThrough(leadIn ? doors : [], ways);
    }

    private static double StartScore(Vec p) => p.X + Math.Abs(p.Y);

    private static WayOut Way(IReadOnlyList<Column> columns, ColumnTree best, ColumnTree tree, Door door, bool onLeft, double waistMm)
    {
        var column = columns[door.Column];
        var place = column.MiddleAt(door.At);
        bool hasSeam = !column.Closed && door.At > 0 && door.At < column.Length;

        // The next letter lies beside, and below a dot or above a cedilla.
        var next = new Vec(onLeft ? -column.WidthMm : column.WidthMm, Math.Clamp(waistMm - place.Y, -TowardsNext, TowardsNext) * column.WidthMm);
        return new WayOut(
            tree, door.At, place + next, SecondChoiceMm + (TurnedOrderMm * (tree.Cost - best.Cost)) + (hasSeam ? SeamMm : 0));
    }

    private static Door Nearest(IReadOnlyList<Column> columns, Vec p)
    {
        double least = double.PositiveInfinity;
        var best = default(Door);
        for (int i = 0; i < columns.Count; i++)
        {
            var (at, distance) = columns[i].Nearest(p);
            if (distance < least)
            {
                double near = columns[i].Closed ? 0 : ColumnSewer.NearEndMm(columns[i]);
                least = distance;
                best = new Door(i, at <= near ? 0 : at >= columns[i].Length - near ? columns[i].Length : at);
            }
        }

        return best;
    }

    private static bool IsSame(IReadOnlyList<Column> columns, Door a, Door b) =>
        a.Column == b.Column && (columns[a.Column].MiddleAt(a.At) - columns[b.Column].MiddleAt(b.At)).Length < SamePlaceMm;

    private static (double Left, double Right, double Bottom, double Top) BoxOf(IReadOnlyList<Column> columns)
    {
        const int Steps = 16;
        var points = columns.SelectMany(c => Enumerable.Range(0, Steps + 1).Select(i => c.MiddleAt(c.Length * Math.Min((double)i / Steps, 1 - 1e-9)))).ToList();
        return (points.Min(p => p.X), points.Max(p => p.X), points.Min(p => p.Y), points.Max(p => p.Y));
    }
}
