using NameBand.Common;
using NameBand.Stitching.Geometry;
using NameBand.Stitching.Shapes;
using NameBand.Stitching.Strokes;

namespace NameBand.Stitching.Columns;

/// <summary>A stroke ready for satin: crossings from edge to edge, read by their place along the centre line.</summary>
internal sealed class Column
{
    // A count: a box is asked once for the twelve places in it, and a usual column has ten boxes. Our choice.
    private const int BoxPlaces = 12;
    private const double HairMm2 = 1e-6; // Of a square: a box is left aside only where it is farther by more than rounding.

    /// <summary>A mouth matters to the column's end alone: a bowl may come by its line once more.</summary>
    private const double MouthPart = 1.2;

    private readonly Vec[] _left;
    private readonly Vec[] _right;
    private readonly Vec[] _middle;
    private (Vec Lowest, Vec Highest)[]? _boxes;
    private readonly double[] _at;
    private readonly Vec _lowest;
    private readonly Vec _highest;

    /// <summary>No crossing between two of the column's own is longer than the longer one of them.</summary>
    private readonly double _widestMm;

    private Column(Vec[] left, Vec[] right, Stroke stroke, double widthMm)
    {
        _left = left;
        _right = right;
        Stroke = stroke;
        WidthMm = widthMm;
        _at = new double[left.Length];
        _middle = new Vec[left.Length];
        (_lowest, _highest) = (left[0], left[0]);
        for (int i = 0; i < left.Length; i++)
        {
            _middle[i] = Vec.Mix(left[i], right[i], 0.5);
            _widestMm = Math.Max(_widestMm, (left[i] - right[i]).Length);
            _lowest = new Vec(Math.Min(_lowest.X, Math.Min(left[i].X, right[i].X)), Math.Min(_lowest.Y, Math.Min(left[i].Y, right[i].Y)));
            _highest = new Vec(
                Math.Max(_highest.X, Math.Max(left[i].X, right[i].X)), Math.Max(_highest.Y, Math.Max(left[i].Y, right[i].Y)));
        }

        for (int i = 1; i < left.Length; i++)
        {
            double middle = (_middle[i] - _middle[i - 1]).Length;
            double sides = ((left[i] - left[i - 1]).Length + (right[i] - right[i - 1]).Length) / 2;
            _at[i] = _at[i - 1] + Math.Max(1e-9, Math.Max(middle, 0.5 * sides));
        }
    }

    public Stroke Stroke { get; }

    /// <summary>Mean width of the stroke.</summary>
    public double WidthMm { get; }

    public double Length => _at[^1];

    public bool Closed => Stroke.Closed;

    public static Column? Of(Stroke stroke, double stepMm, double tuckMm, InsideMap inside)
    {
        double width = CornerSplitter.WidthOf(stroke);
        var (left, right) = stroke.Closed
            ? (stroke.Left, stroke.Right)
            : StrokeEnds.Finish(stroke, width, Math.Min(tuckMm, width), inside);
        var leftEdge = new ArcLengthPolyline(left);
        var rightEdge = new ArcLengthPolyline(right);
        if (leftEdge.Points.Length < 2 || rightEdge.Points.Length < 2 || leftEdge.Length + rightEdge.Length < 0.1)
        {
            return null;
        }

        width = Math.Max(width, 0.05);
        var pairs = EdgeMatcher.Match(leftEdge, rightEdge, width, stepMm, stroke.Closed, inside);
        var (lefts, rights) = (new Vec[pairs.Length], new Vec[pairs.Length]);
        for (int i = 0; i < pairs.Length; i++)
        {
            (lefts[i], rights[i]) = (leftEdge.At(pairs[i].Left), rightEdge.At(pairs[i].Right));
        }

        return new Column(lefts, rights, stroke, width);
    }

    public (Vec Left, Vec Right) CrossingAt(double s)
    {
        if (Closed)
        {
            s -= Math.Floor(s / Length) * Length;
        }

        int i = SegmentAt(s);
        double t = Math.Clamp((s - _at[i]) / (_at[i + 1] - _at[i]), 0, 1);
        return (Vec.Mix(_left[i], _left[i + 1], t), Vec.Mix(_right[i], _right[i + 1], t));
    }

    public Vec MiddleAt(double s)
    {
        var (left, right) = CrossingAt(s);
        return Vec.Mix(left, right, 0.5);
    }

    /// <summary>
    /// The holes of a crossing, neither of them farther past a mouth of the column than stated: where crossings lie square and
    /// the mouth aslant, the last ones would reach far over the other column.
    /// </summary>
    public (Vec Left, Vec Right) BeforeMouths((Vec Left, Vec Right) holes, double at, double pastMm)
    {
        double reach = MouthPart * WidthMm;
        if (Stroke.Start == EndKind.Butt && at < reach)
        {
            var (a, b) = (Stroke.Left[0], Stroke.Right[0]);
            holes = Before(holes, a, (a - b).Unit().Left, pastMm);
        }

        if (Stroke.End == EndKind.Butt && at > Length - reach)
        {
            var (a, b) = (Stroke.Left[^1], Stroke.Right[^1]);
            holes = Before(holes, a, (b - a).Unit().Left, pastMm);
        }

        return holes;
    }

    private static (Vec Left, Vec Right) Before((Vec Left, Vec Right) holes, Vec mouth, Vec outward, double pastMm)
    {
        double left = Vec.Dot(holes.Left - mouth, outward) - pastMm;
        double right = Vec.Dot(holes.Right - mouth, outward) - pastMm;
        if (left > 0 == right > 0)
        {
            return holes;
        }

        var on = Vec.Mix(holes.Left, holes.Right, left / (left - right));
        return left > 0 ? (on, holes.Right) : (holes.Left, on);
    }

    /// <summary>From edge to edge half way along.</summary>
    public Vec MiddleCrossing => _right[_right.Length / 2] - _left[_left.Length / 2];

    public double WidthAt(double s)
    {
        var (left, right) = CrossingAt(s);
        return (left - right).Length;
    }

    /// <summary>Place along the centre line nearest to a point, with the distance.</summary>
    /// <param name="within">Only what lies nearer is sought; the distance is this where nothing does.</param>
    public (double At, double Distance) Nearest(Vec p, double within = double.PositiveInfinity)
    {
        double best = within;
        double at = 0;
        var boxes = _boxes ??= Boxes(_middle);
        for (int i = 0; i + 1 < _middle.Length; i++)
        {
            if (i % BoxPlaces == 0 && IsFarther(p, boxes[i / BoxPlaces], best))
            {
                i += BoxPlaces - 1;
                continue;
            }

            var a = _middle[i];
            var b = _middle[i + 1];
            double distance = p.DistanceToSegment(a, b);
            if (distance < best)
            {
                best = distance;
                var along = b - a;
                double t = Math.Clamp(Vec.Dot(p - a, along) / Math.Max(1e-18, Vec.Dot(along, along)), 0, 1);
                at = _at[i] + ((_at[i + 1] - _at[i]) * t);
            }
        }

        return (at, best);
    }

    /// <summary>How far each stretch of the centre line reaches: most of them are nowhere near a point.</summary>
    private static (Vec Lowest, Vec Highest)[] Boxes(Vec[] middle)
    {
        var boxes = new (Vec, Vec)[(middle.Length + BoxPlaces - 2) / BoxPlaces];
        for (int b = 0; b < boxes.Length; b++)
        {
            var (lowest, highest) = (middle[b * BoxPlaces], middle[b * BoxPlaces]);
            for (int i = b * BoxPlaces; i <= Math.Min((b + 1) * BoxPlaces, middle.Length - 1); i++)
            {
                lowest = new Vec(Math.Min(lowest.X, middle[i].X), Math.Min(lowest.Y, middle[i].Y));
                highest = new Vec(Math.Max(highest.X, middle[i].X), Math.Max(highest.Y, middle[i].Y));
            }

            boxes[b] = (lowest, highest);
        }

        return boxes;
    }

    private static bool IsFarther(Vec p, (Vec Lowest, Vec Highest) box, double mm)
    {
        double x = Math.Max(0, Math.Max(box.Lowest.X - p.X, p.X - box.Highest.X));
        double y = Math.Max(0, Math.Max(box.Lowest.Y - p.Y, p.Y - box.Highest.Y));
        return (x * x) + (y * y) > (mm * mm) + HairMm2;
    }

    /// <summary>Whether a point lies under the satin of the column, or so much past its edges.</summary>
    public bool Covers(Vec p, double pastMm = 0)
    {
        if (p.X < _lowest.X - pastMm || p.Y < _lowest.Y - pastMm || p.X > _highest.X + pastMm || p.Y > _highest.Y + pastMm)
        {
            return false;
        }

        double most = (0.5 * _widestMm) + pastMm + Tolerance.RoundingMm;
        var (at, distance) = Nearest(p, most);
        return distance < most && distance <= (0.5 * WidthAt(at)) + pastMm;
    }

    /// <summary>The crossings stand almost evenly, so a guess is a step or two off at most.</summary>
    private int SegmentAt(double s)
    {
        int last = _at.Length - 2;
        int i = Math.Clamp((int)(s / Length * (last + 1)), 0, last);
        while (i < last && _at[i + 1] <= s)
        {
            i++;
        }

        while (i > 0 && _at[i] > s)
        {
            i--;
        }

        return i;
    }
}
