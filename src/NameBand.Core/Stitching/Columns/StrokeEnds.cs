using NameBand.Stitching.Geometry;
using NameBand.Stitching.Shapes;
using NameBand.Stitching.Strokes;

namespace NameBand.Stitching.Columns;

/// <summary>
/// Leads the two edges of a stroke to its ends: to the two corners of a square end, to the tip of a round or
/// pointed one, and a little under the other stroke where it butts.
/// </summary>
internal static class StrokeEnds
{
    // How a mouth that lies aslant is made squarer: by most of the lag between its edges, and by no more than 0.8 of the width. Our
    // assumption.
    private const double SquaringPart = 0.9;
    private const double MostSquaringPart = 0.8;
    private const double MostRoundCosine = 0.35; // The cosine of 70°: a round end is led at least so far round (docs/stitching.md).
    private const double CapMm = 0.13; // A third of a thread's width: what is left of a wide end must be covered by its last thread.
    // A cap no deeper than that the last thread still covers, so that its two corners may end the stroke.
    private const double MostCapMm = 0.12;
    private const double MostFaultPart = 1.4; // Widths: where the ends miss each other by more, straight ends are tried. Our assumption.

    /// <summary>From the tip of a round end to where its sides begin is a quarter of its circle: 0.79 × the width.</summary>
    private const double MostRoundPart = 1;
    // A corner of an end turns by more; letters' round ends do not, within the window it is read in. Our assumption.
    private const double CornerRad = 38 * Math.PI / 180;

    public static (List<Vec> Left, List<Vec> Right) Finish(Stroke stroke, double widthMm, double tuckMm, InsideMap inside)
    {
        var (left, right) =
            FinishEnd(stroke.Left, stroke.Right, new End(stroke.End, stroke.EndCap, stroke.EndOut, stroke.Start), widthMm, tuckMm, inside);
        var (turnedLeft, turnedRight) = FinishEnd(
            [.. Enumerable.Reverse(right)], [.. Enumerable.Reverse(left)],
            new End(stroke.Start, stroke.StartCap, stroke.StartOut, stroke.End), widthMm, tuckMm, inside);
        turnedLeft.Reverse();
        turnedRight.Reverse();
        return (turnedRight, turnedLeft);
    }

    /// <param name="Out">Where it points, if that is known; else zero.</param>
    /// <param name="Other">What the stroke's other end is.</param>
    private sealed record End(EndKind Kind, List<Vec> Cap, Vec Out, EndKind Other);

    private static (List<Vec> Left, List<Vec> Right) FinishEnd(
        List<Vec> left, List<Vec> right, End end, double width, double tuck, InsideMap inside)
    {
        var (kind, cap, known, other) = end;
        if (kind == EndKind.Meet)
        {
            return (left, right);
        }

        if (kind == EndKind.Butt)
        {
            return Tucked(left, right, width, tuck, inside);
        }

        var leftEdge = new ArcLengthPolyline(left);
        var rightEdge = new ArcLengthPolyline(right);
        double leftWindow = Math.Min(1.4 * width, 0.45 * leftEdge.Length);
        double rightWindow = Math.Min(1.4 * width, 0.45 * rightEdge.Length);
        var rim = rightEdge.Part(rightEdge.Length - rightWindow, rightEdge.Length);
        rim.AddRange(cap);
        rim.AddRange(Enumerable.Reverse(leftEdge.Part(leftEdge.Length - leftWindow, leftEdge.Length)));
        var edge = new ArcLengthPolyline(rim);
        var axis = ((leftEdge.At(leftEdge.Length - leftWindow) - leftEdge.At(leftEdge.Length - (2 * leftWindow))).Unit()
            + (rightEdge.At(rightEdge.Length - rightWindow) - rightEdge.At(rightEdge.Length - (2 * rightWindow))).Unit()).Unit();
        if (axis == default || (other != EndKind.Free && Math.Min(leftEdge.Length, rightEdge.Length) < 1.3 * width))
        {
            // Too short to have a direction of its own: straight away from where it butts.
            axis = (left[0] - right[0]).Unit().Left * -1;
        }

        var (rightEnd, leftEnd) = Ends(edge, axis, width);
        if (known != default)
        {
            // In a bend the direction farther back may not be that of the end: then one edge runs round the end.
            double Fault((double Right, double Left) ends) =>
                Math.Abs(ends.Right - rightWindow - (edge.Length - leftWindow - ends.Left)) + (2 * CapDepth(edge, ends));
            var straight = Ends(edge, known, width);
            double fault = Fault((rightEnd, leftEnd));
            if (fault > MostFaultPart * width && Fault(straight) < 0.5 * fault)
            {
                (rightEnd, leftEnd) = straight;
            }
        }

        var newRight = rightEdge.Part(0, rightEdge.Length - rightWindow);
        newRight.AddRange(edge.Part(0, rightEnd));
        var newLeft = leftEdge.Part(0, leftEdge.Length - leftWindow);
        newLeft.AddRange(Enumerable.Reverse(edge.Part(leftEnd, edge.Length)));
        return (newLeft, newRight);
    }

    private static (double Right, double Left) Ends(ArcLengthPolyline edge, Vec axis, double width)
    {
        var corners = FindCorners(edge, axis, width);
        return (corners is { } found && CapDepth(edge, found) <= MostCapMm ? corners : null)
            ?? FindRound(edge, axis, width) ?? corners ?? FindTip(edge, axis);
    }

    private static (List<Vec> Left, List<Vec> Right) Tucked(
        List<Vec> left, List<Vec> right, double width, double tuck, InsideMap inside)
    {
        var leftEdge = new ArcLengthPolyline(left);
        var rightEdge = new ArcLengthPolyline(right);
        double reach = 0.5 * width;
        var direction = ((left[^1] - leftEdge.At(leftEdge.Length - reach)).Unit()
            + (right[^1] - rightEdge.At(rightEdge.Length - reach)).Unit()).Unit();

        // A mouth that lies aslant is made squarer by leading the edge that ends first farther under.
        double lag = Vec.Dot(right[^1] - left[^1], direction);
        double most = MostSquaringPart * width;
        double leftMore = Math.Clamp(lag * SquaringPart, 0, most);
        double rightMore = Math.Clamp(-lag * SquaringPart, 0, most);
        return ([.. left, Under(left[^1], direction, tuck + leftMore, inside)],
            [.. right, Under(right[^1], direction, tuck + rightMore, inside)]);
    }

    /// <summary>Goes on from the mouth as far as there is a stroke to hide under.</summary>
    private static Vec Under(Vec from, Vec direction, double tuck, InsideMap inside)
    {
        const int Parts = 8; // A count: an eighth of the tuck of 0.2 mm is a fortieth of a millimetre, finer than it can be sewn.
        int within = 0;
        while (within < Parts && inside.Has(from + (direction * (tuck * (within + 1) / Parts))))
        {
            within++;
        }

        return from + (direction * (tuck * Math.Max(within, 0.5) / Parts));
    }

    private static double Bend(ArcLengthPolyline edge, double s, double reach)
    {
        var p = edge.At(s);
        return Vec.Angle(p - edge.At(Math.Max(0, s - reach)), edge.At(Math.Min(edge.Length, s + reach)) - p);
    }

    /// <summary>The two convex corners of a straight end, or null where there are none.</summary>
    private static (double Right, double Left)? FindCorners(ArcLengthPolyline edge, Vec axis, double width)
    {
        double reach = 0.2 * width;
        var corners = new List<(double Arc, double Bend)>();
        for (int i = 1; i + 1 < edge.Points.Length; i++)
        {
            double s = edge.ArcOf(i);
            double bend = Bend(edge, s, reach);
            if (bend < CornerRad)
            {
                continue;
            }

            if (corners.Count > 0 && s - corners[^1].Arc < 1.5 * reach)
            {
                if (bend > corners[^1].Bend)
                {
                    corners[^1] = (s, bend);
                }

                continue;
            }

            corners.Add((s, bend));
        }

        (double, double)? best = null;
        double least = 1.0;
        foreach (var a in corners)
        {
            foreach (var b in corners)
            {
                if (b.Arc <= a.Arc)
                {
                    continue;
                }

                var p = edge.At(a.Arc);
                var q = edge.At(b.Arc);
                double length = (q - p).Length;
                double bulge = (b.Arc - a.Arc) / Math.Max(1e-9, length);
                if (length < 0.4 * width || length > 2.2 * width || bulge > 1.25)
                {
                    continue;
                }

                double beyond = 0;
                foreach (var r in edge.Points)
                {
                    beyond = Math.Max(beyond, Vec.Dot(r - Vec.Mix(p, q, 0.5), axis));
                }

                double slant = Math.Abs(Vec.Dot((q - p).Unit(), axis));
                double cost = (0.55 * slant) + (2 * (bulge - 1)) + (0.25 * Math.Abs((length / width) - 1)) + (0.25 * beyond / width);
                if (cost < least)
                {
                    least = cost;
                    best = (a.Arc, b.Arc);
                }
            }
        }

        return best;
    }

    /// <summary>How far the outline reaches beyond the last crossing.</summary>
    private static double CapDepth(ArcLengthPolyline edge, (double Right, double Left) ends)
    {
        var p = edge.At(ends.Right);
        var outward = (edge.At(ends.Left) - p).Unit().Left * -1;
        double depth = 0;
        for (int i = 0; i < edge.Points.Length; i++)
        {
            if (edge.ArcOf(i) > ends.Right && edge.ArcOf(i) < ends.Left)
            {
                depth = Math.Max(depth, Vec.Dot(edge.Points[i] - p, outward));
            }
        }

        return depth;
    }

    /// <summary>
    /// The places of a round end where the outline has turned most of the way across: what lies beyond is covered by
    /// the thread of the last crossing.
    /// </summary>
    private static (double Right, double Left)? FindRound(ArcLengthPolyline edge, Vec axis, double width)
    {
        // What is left of a wide round end must not be deeper than the thread reaches.
        double flat = Math.Max(0, 1 - (2 * CapMm / width));
        double cosine = Math.Min(MostRoundCosine, Math.Sqrt(1 - (flat * flat)));
        double tip = FindTip(edge, axis).Right;
        double right = -1;
        double left = -1;
        int last = edge.Points.Length - 2;
        double Along(int side) => Vec.Dot((edge.Points[side + 1] - edge.Points[side]).Unit(), axis);

        // The points of a large letter lie far apart: between the middles of two sides the outline is taken to turn evenly.
        double Turned(int side, double along, double otherwise)
        {
            if (side < 0 || side >= last
                || Vec.Angle(edge.Points[side + 1] - edge.Points[side], edge.Points[side + 2] - edge.Points[side + 1]) > CornerRad)
            {
                return otherwise;
            }

            double part = (Along(side) - along) / (Along(side) - Along(side + 1));
            double middle = (edge.ArcOf(side) + edge.ArcOf(side + 1)) / 2;
            double next = (edge.ArcOf(side + 1) + edge.ArcOf(side + 2)) / 2;
            return part is >= 0 and <= 1 ? middle + (part * (next - middle)) : otherwise;
        }

        for (int i = 0; i <= last; i++)
        {
            var side = (edge.Points[i + 1] - edge.Points[i]).Unit();
            if (Math.Abs(edge.ArcOf(i) - tip) > MostRoundPart * width)
            {
                continue;
            }

            if (edge.ArcOf(i) < tip && right < 0 && Vec.Dot(side, axis) < cosine && Vec.Cross(axis, side) > 0)
            {
                right = Turned(i - 1, cosine, edge.ArcOf(i));
            }

            if (edge.ArcOf(i + 1) > tip && Vec.Dot(side, axis) > -cosine && Vec.Cross(axis, side) > 0)
            {
                left = Turned(i, -cosine, edge.ArcOf(i + 1));
            }
        }

        if (right < 0 || left < 0 || left <= right)
        {
            return null;
        }

        return (right, left);
    }

    /// <summary>The point farthest along the stroke: both edges run to it.</summary>
    private static (double Right, double Left) FindTip(ArcLengthPolyline edge, Vec axis)
    {
        double most = double.NegativeInfinity;
        double first = 0;
        double last = 0;
        for (int i = 0; i < edge.Points.Length; i++)
        {
            double along = Vec.Dot(edge.Points[i], axis);
            if (along > most + 1e-4)
            {
                most = along;
                first = edge.ArcOf(i);
                last = first;
            }
            else if (along > most - 1e-4)
            {
                last = edge.ArcOf(i);
            }
        }

        double middle = (first + last) / 2;
        return (middle, middle);
    }
}
