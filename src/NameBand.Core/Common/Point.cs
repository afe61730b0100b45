namespace NameBand.Common;

/// <summary>
/// A place on a plane, in millimetres: x to the right along the strip, y up. The room that hands
/// a point over says where its origin lies.
/// </summary>
public readonly record struct Point(double XMm, double YMm)
{
    public static Point operator +(Point a, Point b) => new(a.XMm + b.XMm, a.YMm + b.YMm);

    public static Point operator -(Point a, Point b) => new(a.XMm - b.XMm, a.YMm - b.YMm);

    public static Point operator *(Point a, double factor) => new(a.XMm * factor, a.YMm * factor);

    /// <summary>Distance in millimetres.</summary>
    public double DistanceTo(Point other) =>
        Math.Sqrt(((XMm - other.XMm) * (XMm - other.XMm)) + ((YMm - other.YMm) * (YMm - other.YMm)));
}

/// <summary>An upright rectangle in millimetres. An empty box has its left edge right of its right edge.</summary>
public readonly record struct Box(double LeftMm, double BottomMm, double RightMm, double TopMm)
{
    public static Box Empty { get; } =
        new(double.PositiveInfinity, double.PositiveInfinity, double.NegativeInfinity, double.NegativeInfinity);

    public bool IsEmpty => !(RightMm >= LeftMm);

    public double WidthMm => IsEmpty ? 0 : RightMm - LeftMm;

    public double HeightMm => IsEmpty ? 0 : TopMm - BottomMm;

    public Box Include(Point p) => new(
        Math.Min(LeftMm, p.XMm), Math.Min(BottomMm, p.YMm), Math.Max(RightMm, p.XMm), Math.Max(TopMm, p.YMm));

    public Box Include(Box other) => new(
        Math.Min(LeftMm, other.LeftMm), Math.Min(BottomMm, other.BottomMm),
        Math.Max(RightMm, other.RightMm), Math.Max(TopMm, other.TopMm));

    public Box Moved(Point by) => IsEmpty ? this : new(LeftMm + by.XMm, BottomMm + by.YMm, RightMm + by.XMm, TopMm + by.YMm);

    public Box Scaled(double factor) => IsEmpty ? this : new(LeftMm * factor, BottomMm * factor, RightMm * factor, TopMm * factor);
}
