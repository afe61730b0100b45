using System.Runtime.InteropServices;
using NameBand.Stitching.Columns;
using NameBand.Stitching.Geometry;
using NameBand.Stitching.Shapes;
using NameBand.Stitching.Strokes;

namespace NameBand.Stitching.Sewing;

/// <summary>The columns of one region's strokes. Different readings find many of the same strokes: each is worked out once.</summary>
internal sealed class ReadColumns(Region region, Triangulation mesh, InsideMap inside, InsideMap coarse, double stepMm)
{
    // A spur less deep is a dent of the outline, a third of a thread's width, and no stroke. Our assumption.
    private const double ShallowMm = 0.15;

    private readonly double _strokeMm = region.StrokeWidth();
    private readonly List<(Skeleton Skeleton, List<Stroke> Strokes)> _strokes = [];
    private readonly Dictionary<(Stroke Stroke, double Window), List<Stroke>> _legs = new(SameStroke.InWindow);
    private readonly Dictionary<Stroke, FilledColumn?> _columns = new(SameStroke.Alone);

    /// <summary>The columns of the region, parted at its strokes' corners.</summary>
    /// <param name="spurDepth">As of <see cref="SpurRule"/>.</param>
    /// <param name="cornerWindow">As of <see cref="CornerSplitter.Split"/>.</param>
    public List<FilledColumn> Of(double spurDepth, double cornerWindow)
    {
        var columns = new List<FilledColumn>();
        foreach (var stroke in Strokes(spurDepth))
        {
            if (!_legs.TryGetValue((stroke, cornerWindow), out var legs))
            {
                _legs[(stroke, cornerWindow)] = legs = CornerSplitter.Split(stroke, cornerWindow);
            }

            columns.AddRange(legs.Select(Filled).OfType<FilledColumn>());
        }

        return columns;
    }

    /// <summary>The region as one column, where it is a mark no longer than stated; else none.</summary>
    public List<FilledColumn> AsOne(double longestMm) =>
        CompactStroke.Of(region, longestMm) is { } stroke && Filled(stroke) is { } column ? [column] : [];

    private FilledColumn? Filled(Stroke stroke)
    {
        if (!_columns.TryGetValue(stroke, out var column))
        {
            _columns[stroke] = column = Column.Of(stroke, stepMm, ColumnSewer.TuckMm, inside) is { } made
                ? FilledColumn.Of(made, coarse) : null;
        }

        return column;
    }

    private List<Stroke> Strokes(double spurDepth)
    {
        var skeleton = Skeleton.Of(region, mesh, new SpurRule(spurDepth, ShallowMm, _strokeMm));
        foreach (var (known, found) in _strokes)
        {
            if (known.IsSameAs(skeleton))
            {
                return found;
            }
        }

        var strokes = StrokeFinder.Find(region, skeleton);
        _strokes.Add((skeleton, strokes));
        return strokes;
    }

    /// <summary>Strokes are the same when they have the same points.</summary>
    private sealed class SameStroke : IEqualityComparer<Stroke>, IEqualityComparer<(Stroke Stroke, double Window)>
    {
        private static readonly SameStroke Both = new();

        public static IEqualityComparer<Stroke> Alone => Both;

        public static IEqualityComparer<(Stroke Stroke, double Window)> InWindow => Both;

        public bool Equals(Stroke? a, Stroke? b) =>
            ReferenceEquals(a, b) || (a is not null && b is not null
                && (a.Start, a.End, a.Closed, a.StartOut, a.EndOut) == (b.Start, b.End, b.Closed, b.StartOut, b.EndOut)
                && Same(a.Left, b.Left) && Same(a.Right, b.Right) && Same(a.StartCap, b.StartCap) && Same(a.EndCap, b.EndCap));

        public int GetHashCode(Stroke s) => HashCode.Combine(s.Left.Count, s.Right.Count, s.Left[0], s.Right[^1]);

        public bool Equals((Stroke Stroke, double Window) a, (Stroke Stroke, double Window) b) =>
            a.Window == b.Window && Equals(a.Stroke, b.Stroke);

        public int GetHashCode((Stroke Stroke, double Window) s) => GetHashCode(s.Stroke);

        private static bool Same(List<Vec> a, List<Vec> b) => CollectionsMarshal.AsSpan(a).SequenceEqual(CollectionsMarshal.AsSpan(b));
    }
}
