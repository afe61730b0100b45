using NameBand.Stitching.Columns;
using NameBand.Stitching.Geometry;

namespace NameBand.Stitching.Sewing;

/// <summary>
/// The places on the edges of a connected part where the needle may come in from another part, and those where it may
/// leave it: on its silhouette as seen from the left and the right, and, for parts of a letter with dots or accents, from
/// above and below.
/// </summary>
internal sealed record WaysThrough(IReadOnlyList<EdgePlace> In, IReadOnlyList<WayOut> Out)
{
    // Places on an edge are looked at twice as often as they are kept: a way in or out in every row of two threads' width
    // (docs/stitching.md).
    private const double StepMm = 0.45;
    private const double RowMm = 0.9;
    // In mm of thread in sight, as docs/stitching.md says: a column sewn out of order, all of them at most, and a seam. Our assumption.
    private const double TurnedOrderMm = 2;
    private const double MostForOrderMm = 6;
    private const double SeamMm = 1;

    /// <summary>A last hole lies no nearer than that to the one before it.</summary>
    private const double LeastWidthMm = 0.6;

    /// <summary>The ends that the columns themselves prefer come first among the ways out.</summary>
    public static WaysThrough Of(IReadOnlyList<Column> columns, IReadOnlyList<ColumnTree> trees, bool fromAllSides)
    {
        var first = trees[0];
        var root = columns[first.Root];
        bool fromEnd = StartScore(root.MiddleAt(root.Length)) < StartScore(root.MiddleAt(0));
        List<WayOut> ways = [new WayOut(first, fromEnd ? root.Length : 0, null, 0)];
        var seen = Silhouette(columns, fromAllSides);
        foreach (var (place, canLeave, isEnd) in seen)
        {
            if (canLeave && trees.FirstOrDefault(t => t.Root == place.Column) is { } tree)
            {
                double order = Math.Min(MostForOrderMm, TurnedOrderMm * (tree.Cost - first.Cost));
                ways.Add(new WayOut(tree, place.At, place.Side, order + (isEnd || columns[place.Column].Closed ? 0 : SeamMm)));
            }
        }

        return new WaysThrough([.. seen.Select(s => s.Place)], ways);
    }

    private static double StartScore(Vec p) => p.X + Math.Abs(p.Y);

    private static List<(EdgePlace Place, bool CanLeave, bool IsEnd)> Silhouette(IReadOnlyList<Column> columns, bool fromAllSides)
    {
        var places = Places(columns);
        bool[] outer = new bool[places.Count];
        for (int i = 0; i < places.Count; i++)
        {
            outer[i] = places[i].IsEnd;
        }

        foreach (bool canLeave in new[] { false, true })
        {
            AddOuter(places, p => p.Y, p => p.X, canLeave, outer);
            if (fromAllSides)
            {
                AddOuter(places, p => p.X, p => p.Y, canLeave, outer);
            }
        }

        return
        [
            .. places.Where((p, i) => outer[i] && !IsCovered(columns, p.Place.Column, p.At))
                .Select(p => (p.Place, p.CanLeave, p.IsEnd)),
        ];
    }

    /// <summary>In every row the first and the last place.</summary>
    private static void AddOuter(
        List<EdgePoint> places, Func<Vec, double> row, Func<Vec, double> along, bool canLeave, bool[] outer)
    {
        var ends = new Dictionary<int, (int First, int Last)>();
        for (int i = 0; i < places.Count; i++)
        {
            if (canLeave && !places[i].CanLeave)
            {
                continue;
            }

            int key = (int)Math.Floor(row(places[i].At) / RowMm);
            double at = along(places[i].At);
            var (first, last) = ends.TryGetValue(key, out var known) ? known : (i, i);
            ends[key] = (at < along(places[first].At) ? i : first, at > along(places[last].At) ? i : last);
        }

        foreach (var (first, last) in ends.Values)
        {
            outer[first] = true;
            outer[last] = true;
        }
    }

    private readonly record struct EdgePoint(EdgePlace Place, Vec At, bool CanLeave, bool IsEnd);

    private static List<EdgePoint> Places(IReadOnlyList<Column> columns)
    {
        var places = new List<EdgePoint>();
        for (int i = 0; i < columns.Count; i++)
        {
            var column = columns[i];
            double near = column.Closed ? 0 : ColumnSewer.NearEndMm(column);
            int steps = Math.Max(1, (int)(column.Length / StepMm));
            for (int k = 0; k < steps; k++)
            {
                double at = column.Length * (k + 0.5) / steps;
                Add(at, at, at >= near && at <= column.Length - near, false);
            }

            if (ColumnEnd.IsFree(column, 0))
            {
                Add(0, Math.Min(0.1, 0.1 * column.Length), true, true);
            }

            if (ColumnEnd.IsFree(column, column.Length))
            {
                Add(column.Length, column.Length - Math.Min(0.1, 0.1 * column.Length), true, true);
            }

            void Add(double at, double read, bool canLeave, bool isEnd)
            {
                var (left, right) = column.CrossingAt(read);
                bool isWide = (left - right).Length >= LeastWidthMm;
                places.Add(new EdgePoint(new EdgePlace(i, at, 0), left, canLeave && isWide, isEnd));
                places.Add(new EdgePoint(new EdgePlace(i, at, 1), right, canLeave && isWide, isEnd));
            }
        }

        return places;
    }

    private static bool IsCovered(IReadOnlyList<Column> columns, int own, Vec p)
    {
        for (int i = 0; i < columns.Count; i++)
        {
            if (i != own && columns[i].Covers(p))
            {
                return true;
            }
        }

        return false;
    }
}
