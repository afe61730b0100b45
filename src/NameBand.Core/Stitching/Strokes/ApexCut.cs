using NameBand.Stitching.Geometry;
using NameBand.Stitching.Shapes;

namespace NameBand.Stitching.Strokes;

/// <summary>
/// Parts a stroke at an apex, such as that of A or V, where both legs are alike: they end on one line through the crotch, square to the
/// middle line between them, and what lies beyond it is a short stroke of its own. So neither leg runs over the other, and a letter that is
/// the same from left and right is sewn so.
/// </summary>
internal static class ApexCut
{
    // As docs/stitching.md says; a wider angle is a corner, as that of L. Our assumption.
    private const double MostBetweenLegsRad = 66 * Math.PI / 180;

    /// <summary>The apex points up or down, or as far aside as the outer ones of M and N.</summary>
    private const double MostAslant = 0.35;
    // Of the longer leg's width: legs that differ by more are a thick and a thin stroke. Our assumption.
    private const double MostUneven = 0.2;
    private const double MostAside = 0.2; // Of the width across: a tip that lies farther aside belongs to one leg. Our assumption.
    // Of the width across at the crotch a lower tip is no column and a higher one a stroke; of the stroke's width, farther than the last
    // no apex has its sides. Our assumption.
    private const double LeastTipPart = 0.35;
    private const double TopPart = 0.95; // Of the tip's height: what lies higher is its top. Our assumption.
    public const double MostTipPart = 1.2;
    private const double MostReachPart = 1.6;

    /// <summary>So much of the tip's height belongs to its sides, the rest to its end.</summary>
    private const double SidePart = 0.6;
    // Of the corner's width: where a leg's edge is read, near the apex, in the middle and far off, to see that it is straight; and by how
    // much it may bend, or its tip lie off the middle. Our assumption.
    private const double NearPart = 0.1;
    private const double MiddlePart = 0.55;
    private const double FarPart = 1;
    private const double MostBendRad = 10 * Math.PI / 180;
    private const double MostOffRad = 15 * Math.PI / 180;

    /// <param name="into">Direction in which the inner edge comes to the crotch.</param>
    /// <param name="outOf">Direction in which it leaves it.</param>
    /// <returns>Null where the legs are not alike, or not so steep that a person would call it an apex.</returns>
    public static CornerCut? Of(Stroke stroke, InnerCorner corner, ArcLengthPolyline outer, Vec into, Vec outOf)
    {
        var up = (into - outOf).Unit();
        double between = Math.PI - Math.Abs(Vec.Angle(into, outOf));
        if (between > MostBetweenLegsRad || Math.Abs(up.X) > MostAslant)
        {
            return null;
        }

        var crotch = corner.Inner.At(corner.At);
        var across = corner.InnerIsRight ? up.Left : up.Left * -1;
        if (outer.FirstHit(crotch, across, 1e-6) is not var (first, near)
            || outer.FirstHit(crotch, across * -1, 1e-6) is not var (second, far)
            || first >= second || !AreStraight(corner, outer, first, second) || Math.Max(near, far) > MostReachPart * corner.WidthMm
                || Math.Abs(near - far) > MostUneven * Math.Max(near, far))
        {
            return null;
        }

        var rim = new ArcLengthPolyline(outer.Part(first, second));
        var (height, aside) = Top([.. rim.Points], crotch, up, across);
        double wide = near + far;
        return height < LeastTipPart * wide || height > MostTipPart * wide || Math.Abs(aside - ((near - far) / 2)) > MostAside * wide
            ? null : Parted(stroke, corner, outer, (first, second), Tip(rim, crotch, up, SidePart * height, corner.InnerIsRight));
    }

    /// <summary>How far the top of a tip lies above a place, and its middle aside of it: a flat one has two corners.</summary>
    private static (double Height, double Aside) Top(Vec[] tip, Vec from, Vec up, Vec across)
    {
        double height = Math.Max(0, tip.Max(p => Vec.Dot(p - from, up)));
        double[] aside = [.. tip.Where(p => Vec.Dot(p - from, up) >= TopPart * height).Select(p => Vec.Dot(p - from, across))];
        return (height, aside.Length == 0 ? 0 : (aside.Min() + aside.Max()) / 2);
    }

    /// <summary>Both edges of both legs, as far as the stroke is wide: a loop that narrows to a point is no apex.</summary>
    private static bool AreStraight(InnerCorner corner, ArcLengthPolyline outer, double first, double second) =>
        IsStraight(corner.Inner, corner.At, -corner.WidthMm) && IsStraight(corner.Inner, corner.At, corner.WidthMm)
        && IsStraight(outer, first, -corner.WidthMm) && IsStraight(outer, second, corner.WidthMm);

    private static bool IsStraight(ArcLengthPolyline edge, double at, double reach)
    {
        var (near, middle, far) = (edge.At(at + (NearPart * reach)), edge.At(at + (MiddlePart * reach)), edge.At(at + (FarPart * reach)));
        return at + reach >= 0 && at + reach <= edge.Length && Math.Abs(Vec.Angle(middle - near, far - middle)) < MostBendRad;
    }

    /// <summary>Whether two straight legs alike leave a point of the outline, with the middle of a mouth straight on between
    /// them.</summary>
    /// <param name="mouth">Two points of the outline; what lies from the first on to the second is the tip.</param>
    public static bool IsCrotch(Region region, int point, (int One, int Other) mouth, double strokeMm)
    {
        if (LegFrom(region, point, region.Next, strokeMm) is not { } one
            || LegFrom(region, point, region.Previous, strokeMm) is not { } other)
        {
            return false;
        }

        var crotch = region.Points[point];
        var up = (one + other).Unit() * -1;
        var (first, second) = (region.Points[mouth.One], region.Points[mouth.Other]);
        var (near, far) = ((first - crotch).Length, (second - crotch).Length);
        Vec[] tip = [.. region.Walk(mouth.One, mouth.Other)!.Select(i => region.Points[i])];
        return Math.Abs(Vec.Angle(one, other)) < MostBetweenLegsRad && Math.Abs(up.X) <= MostAslant
            && Math.Abs(Vec.Angle(up, Vec.Mix(first, second, 0.5) - crotch)) < MostOffRad
            && Math.Abs(Top(tip, Vec.Mix(first, second, 0.5), up, up.Left).Aside) <= MostAside * (near + far)
                && Math.Abs(near - far) <= MostUneven * Math.Max(near, far);
    }

    /// <summary>Direction of the outline beside a point; null where it is not straight.</summary>
    private static Vec? LegFrom(Region region, int point, int[] step, double strokeMm)
    {
        Vec Off(double reach)
        {
            int at = step[point];
            while (at != point && (region.Points[at] - region.Points[point]).Length < reach * strokeMm)
            {
                at = step[at];
            }

            return region.Points[at];
        }

        var (near, middle, far) = (Off(NearPart), Off(MiddlePart), Off(FarPart));
        return (far - near).Length < 1e-9 || Math.Abs(Vec.Angle(middle - near, far - middle)) > MostBendRad ? null : (far - near).Unit();
    }

    private static Stroke Tip(ArcLengthPolyline rim, Vec crotch, Vec up, double sideMm, bool innerIsRight)
    {
        double first = 0;
        double second = rim.Length;
        while (first < second && Vec.Dot(rim.At(first) - crotch, up) < sideMm)
        {
            first += rim.Length / 200;
        }

        while (second > first && Vec.Dot(rim.At(second) - crotch, up) < sideMm)
        {
            second -= rim.Length / 200;
        }

        var one = rim.Part(0, first);
        var cap = rim.Part(first, second);
        List<Vec> other = [.. Enumerable.Reverse(rim.Part(second, rim.Length))];
        return innerIsRight
            ? new Stroke(one, other, EndKind.Meet, EndKind.Free, [], [.. Enumerable.Reverse(cap)], false)
            : new Stroke(other, one, EndKind.Meet, EndKind.Free, [], cap, false);
    }

    private static CornerCut Parted(
        Stroke stroke, InnerCorner corner, ArcLengthPolyline outer, (double First, double Second) line, Stroke tip)
    {
        var innerBefore = corner.Inner.Part(0, corner.At);
        var innerAfter = corner.Inner.Part(corner.At, corner.Inner.Length);
        var outerBefore = outer.Part(0, line.First);
        var outerAfter = outer.Part(line.Second, outer.Length);
        var (before, after) = corner.InnerIsRight
            ? (stroke with { Left = outerBefore, Right = innerBefore }, stroke with { Left = outerAfter, Right = innerAfter })
            : (stroke with { Left = innerBefore, Right = outerBefore }, stroke with { Left = innerAfter, Right = outerAfter });
        return new CornerCut(
            before with { End = EndKind.Meet, EndCap = [], EndOut = default },
            after with { Start = EndKind.Meet, StartCap = [], StartOut = default }, tip);
    }
}

/// <summary>A sharp corner of the edge on the inner side of a turn.</summary>
/// <param name="At">Its place on that edge.</param>
/// <param name="WidthMm">Of the stroke.</param>
internal readonly record struct InnerCorner(ArcLengthPolyline Inner, double At, double WidthMm, bool InnerIsRight);

/// <summary>A stroke parted at a corner.</summary>
/// <param name="Tip">What lies beyond both legs, at an apex.</param>
internal sealed record CornerCut(Stroke Before, Stroke After, Stroke? Tip = null);
