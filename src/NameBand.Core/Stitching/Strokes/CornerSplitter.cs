using NameBand.Stitching.Geometry;

namespace NameBand.Stitching.Strokes;

/// <summary>
/// Parts a stroke where it turns a sharp corner on both edges: one leg runs its full length, out to the outer
/// corner, and the other butts against it. The cut goes on straight along the inner edge of the leg that runs on.
/// </summary>
internal static class CornerSplitter
{
    // By how much an inner and an outer edge must turn at a corner, and where the inner one turns sharply, as at a rounded corner, how
    // little is enough outside. Our assumption.
    private const double InnerTurnRad = 50 * Math.PI / 180;
    private const double OuterTurnRad = 42 * Math.PI / 180;
    private const double SharpTurnRad = 75 * Math.PI / 180;
    private const double RoundedTurnRad = 30 * Math.PI / 180;
    private const int MostCorners = 24; // A count: no stroke of a letter has so many; a torn outline is left as it is.

    /// <summary>Of a turn a little less than any that counts.</summary>
    private static readonly double LeastTangent = 0.99 * Math.Tan(RoundedTurnRad);

    /// <summary>Legs that run on past a corner at slants as near as this to each other are alike.</summary>
    private const double AlikeSlant = 0.25;

    /// <summary>Of two legs alike the more upright one runs on, so that both sides of M do the same.</summary>
    private const double UprightPart = 0.1;

    /// <param name="window">Over how much of the stroke's width, to both sides, the inner edge has to turn.</param>
    public static List<Stroke> Split(Stroke stroke, double window)
    {
        var done = new List<Stroke>();
        var rest = stroke.Closed ? OpenedAwayFromCorners(stroke) : stroke;
        for (int i = 0; i < MostCorners; i++)
        {
            if (FirstCut(rest, window) is not { } cut)
            {
                break;
            }

            done.Add(cut.Before);
            if (cut.Tip is { } tip)
            {
                done.Add(tip);
            }

            rest = cut.After;
        }

        if (stroke.Closed)
        {
            return done.Count == 0 ? [rest with { Closed = true }] : [Joined(rest, done[0]), .. done.Skip(1)];
        }

        done.Add(rest);
        return done;
    }

    /// <summary>Area between the edges over their mean length.</summary>
    public static double WidthOf(Stroke stroke)
    {
        double twice = 0;
        double length = 0;
        var ring = new List<Vec>(stroke.Right);
        ring.AddRange(Enumerable.Reverse(stroke.Left));
        for (int i = 0, j = ring.Count - 1; i < ring.Count; j = i++)
        {
            twice += Vec.Cross(ring[j], ring[i]);
            length += (ring[i] - ring[j]).Length;
        }

        length -= (stroke.Left[0] - stroke.Right[0]).Length + (stroke.Left[^1] - stroke.Right[^1]).Length;
        return Math.Abs(twice) / Math.Max(1e-6, length);
    }

    private static Stroke Joined(Stroke first, Stroke second) => new(
        [.. first.Left, .. second.Left], [.. first.Right, .. second.Right],
        first.Start, second.End, first.StartCap, second.EndCap, false, first.StartOut, second.EndOut);

    private static Stroke OpenedAwayFromCorners(Stroke stroke)
    {
        var left = new ArcLengthPolyline(stroke.Left);
        var right = new ArcLengthPolyline(stroke.Right);
        double width = WidthOf(stroke);
        var bends = new List<Vec>();
        AddBends(left, width, bends);
        AddBends(right, width, bends);
        double best = double.NegativeInfinity;
        double opened = 0;
        for (double a = 0.02 * left.Length; a < left.Length; a += Math.Max(0.05, left.Length / 60))
        {
            var p = left.At(a);
            double away = bends.Count == 0 ? 0 : bends.Min(b => (b - p).Length);
            double score = Math.Min(away, 2 * width) - (0.5 * (right.At(right.Nearest(p)) - p).Length);
            if (score > best + 1e-9)
            {
                best = score;
                opened = a;
            }
        }

        double other = right.Nearest(left.At(opened));
        return stroke with { Left = Turned(left, opened), Right = Turned(right, other), Closed = false };
    }

    private static List<Vec> Turned(ArcLengthPolyline trace, double from) =>
        [.. trace.Part(from, trace.Length), .. trace.Part(0, from)];

    private static void AddBends(ArcLengthPolyline edge, double width, List<Vec> bends)
    {
        for (double s = 0; s < edge.Length; s += 0.15 * width)
        {
            if (Math.Abs(Bend(edge, s, 0.35 * width)) > OuterTurnRad)
            {
                bends.Add(edge.At(s));
            }
        }
    }

    /// <summary>Turn of the edge over a window on both sides of a place; left positive.</summary>
    private static double Bend(ArcLengthPolyline edge, double s, double reach)
    {
        var p = edge.At(s);
        return Vec.Angle(p - edge.At(Math.Max(0, s - reach)), edge.At(Math.Min(edge.Length, s + reach)) - p);
    }

    /// <summary>The same to one side; 0 where it is less than any turn that counts.</summary>
    private static double BendOver(ArcLengthPolyline edge, double s, double reach, int sign)
    {
        var p = edge.At(s);
        var (into, outOf) = (p - edge.At(Math.Max(0, s - reach)), edge.At(Math.Min(edge.Length, s + reach)) - p);
        double cross = sign * Vec.Cross(into, outOf);
        double dot = Vec.Dot(into, outOf);
        return cross <= 0 || cross < LeastTangent * dot ? 0 : Math.Atan2(cross, dot);
    }

    /// <summary>At the first corner at which the stroke can be parted.</summary>
    private static CornerCut? FirstCut(Stroke stroke, double window)
    {
        double width = WidthOf(stroke);
        var left = new ArcLengthPolyline(stroke.Left);
        var right = new ArcLengthPolyline(stroke.Right);
        var onRight = Corners(right, left, width, window, -1).Select(at => (At: at, Part: at / right.Length, IsRight: true));
        var onLeft = Corners(left, right, width, window, 1).Select(at => (At: at, Part: at / left.Length, IsRight: false));
        foreach (var (at, _, isRight) in onRight.Concat(onLeft).OrderBy(c => c.Part))
        {
            if ((isRight ? Cut(stroke, right, left, at, width, true) : Cut(stroke, left, right, at, width, false)) is { } cut)
            {
                return cut;
            }
        }

        return null;
    }

    /// <summary>
    /// Arcs of the sharp inner corners (sign -1: the edge bends right) that have a corner of the outer edge about them, up to the
    /// first sharp bend that has none: past one of those the bowls of ß and s would be taken for corners.
    /// </summary>
    private static IEnumerable<double> Corners(ArcLengthPolyline inner, ArcLengthPolyline outer, double width, double window, int sign)
    {
        double reach = window * width;
        double step = StepMm(width);
        double best = -1;
        double most = InnerTurnRad;
        for (double s = 0.6 * reach; s < inner.Length - (0.6 * reach); s += step)
        {
            double bend = BendOver(inner, s, reach, sign);
            if (bend > most)
            {
                most = bend;
                best = s;
            }
            else if (best >= 0 && s > best + (2 * reach))
            {
                double at = Sharpest(inner, best, step);
                if (!HasCornerOutside(outer, inner.At(at), width, most, sign))
                {
                    yield break;
                }

                yield return at;
                (best, most) = (-1, InnerTurnRad);
            }
        }

        if (best >= 0 && Sharpest(inner, best, step) is var last && HasCornerOutside(outer, inner.At(last), width, most, sign))
        {
            yield return last;
        }
    }

    /// <summary>How far apart an edge is looked at.</summary>
    private static double StepMm(double width) => Math.Max(0.02, 0.08 * width);

    private static bool HasCornerOutside(ArcLengthPolyline outer, Vec innerCorner, double width, double turn, int sign)
    {
        double limit = 1.6 * width / Math.Max(0.35, Math.Cos(Math.Min(turn, 2.6) / 2));
        for (double s = 0; s <= outer.Length; s += StepMm(width))
        {
            if ((outer.At(s) - innerCorner).Length < limit
                && BendOver(outer, s, 0.4 * width, sign) > (turn > SharpTurnRad ? RoundedTurnRad : OuterTurnRad))
            {
                return true;
            }
        }

        return false;
    }

    private static double Sharpest(ArcLengthPolyline edge, double near, double step)
    {
        double best = near;
        double most = 0;
        for (int i = 1; i + 1 < edge.Points.Length; i++)
        {
            if (Math.Abs(edge.ArcOf(i) - near) > 2 * step)
            {
                continue;
            }

            double turn = Math.Abs(Vec.Angle(edge.Points[i] - edge.Points[i - 1], edge.Points[i + 1] - edge.Points[i]));
            if (turn > most)
            {
                most = turn;
                best = edge.ArcOf(i);
            }
        }

        return most > 0.3 ? best : near;
    }

    private static CornerCut? Cut(
        Stroke stroke, ArcLengthPolyline inner, ArcLengthPolyline outer, double at, double width, bool innerIsRight)
    {
        var c = inner.At(at);
        var into = (inner.At(Math.Max(0, at - (0.12 * width))) - inner.At(Math.Max(0, at - (0.9 * width)))).Unit();
        var outOf = (inner.At(Math.Min(inner.Length, at + (0.9 * width))) - inner.At(Math.Min(inner.Length, at + (0.12 * width)))).Unit();
        var first = outer.FirstHit(c, into, 0.05 * width);
        var second = outer.FirstHit(c, outOf * -1, 0.05 * width);
        if ((first is null || first.Value.Distance > 3.5 * width) && (second is null || second.Value.Distance > 3.5 * width))
        {
            return null;
        }

        double slantFirst = Slant(outer, first, into, width);
        double slantSecond = Slant(outer, second, outOf, width);
        bool isUnlike = Math.Abs(slantFirst - slantSecond) > AlikeSlant;
        if (!isUnlike && ApexCut.Of(stroke, new InnerCorner(inner, at, width, innerIsRight), outer, into, outOf) is { } apex)
        {
            return apex;
        }

        double upright = Math.Abs(into.Y) - Math.Abs(outOf.Y);
        bool firstRunsOn = isUnlike ? slantFirst < slantSecond
            : Math.Abs(upright) > UprightPart ? upright > 0
            : at >= inner.Length - at;
        return firstRunsOn
            ? CutFor(stroke, inner, outer, (at, first!.Value.Arc), into, innerIsRight)
            : CutAfter(stroke, inner, outer, (at, second!.Value.Arc), outOf, innerIsRight);
    }

    private static double Slant(ArcLengthPolyline outer, (double Arc, double Distance)? hit, Vec direction, double width) =>
        hit is null || hit.Value.Distance > 3.5 * width
            ? 10
            : Math.Abs(Vec.Dot(outer.Direction(hit.Value.Arc, 0.1 * width), direction));

    /// <summary>The leg before the corner runs on: it gets the outer corner, the leg after it butts.</summary>
    private static CornerCut? CutFor(
        Stroke stroke, ArcLengthPolyline inner, ArcLengthPolyline outer, (double Inner, double Outer) arcs, Vec into, bool innerIsRight)
    {
        var (at, cut) = arcs;
        var c = inner.At(at);
        var normal = innerIsRight ? into.Left : into.Left * -1;
        double opposite = outer.FirstHit(c, normal, 1e-6) is { } hit && hit.Arc < cut ? hit.Arc : Math.Min(outer.Nearest(c), cut);
        if (opposite <= 1e-6 || cut >= outer.Length - 1e-6)
        {
            return null;
        }

        var innerBefore = inner.Part(0, at);
        var innerAfter = inner.Part(at, inner.Length);
        var outerBefore = outer.Part(0, opposite);
        var outerAfter = outer.Part(cut, outer.Length);
        var cap = outer.Part(opposite, cut);
        if (innerIsRight)
        {
            cap.Reverse();
            cap.Insert(0, c);
            return new CornerCut(stroke with { Left = outerBefore, Right = innerBefore, End = EndKind.Free, EndCap = cap, EndOut = into },
                stroke with { Left = outerAfter, Right = innerAfter, Start = EndKind.Butt, StartCap = [], StartOut = default });
        }

        cap.Add(c);
        return new CornerCut(stroke with { Left = innerBefore, Right = outerBefore, End = EndKind.Free, EndCap = cap, EndOut = into },
            stroke with { Left = innerAfter, Right = outerAfter, Start = EndKind.Butt, StartCap = [], StartOut = default });
    }

    /// <summary>The leg after the corner runs on: the same seen from the other end.</summary>
    private static CornerCut? CutAfter(
        Stroke stroke, ArcLengthPolyline inner, ArcLengthPolyline outer, (double Inner, double Outer) arcs, Vec outOf, bool innerIsRight)
    {
        var turnedInner = new ArcLengthPolyline([.. Enumerable.Reverse(inner.Points.ToArray())]);
        var turnedOuter = new ArcLengthPolyline([.. Enumerable.Reverse(outer.Points.ToArray())]);
        var made = CutFor(
            stroke.Reversed(), turnedInner, turnedOuter, (inner.Length - arcs.Inner, outer.Length - arcs.Outer), outOf * -1, !innerIsRight);
        return made is { } m ? new CornerCut(m.After.Reversed(), m.Before.Reversed()) : null;
    }
}
