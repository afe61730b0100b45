using NameBand.Common;

namespace NameBand.Stitching.Geometry;

/// <summary>A plane vector in mm, for the inside of this room.</summary>
internal readonly record struct Vec(double X, double Y)
{
    public double Length => Math.Sqrt((X * X) + (Y * Y));

    /// <summary>This vector turned a quarter to the left.</summary>
    public Vec Left => new(-Y, X);

    public static Vec operator +(Vec a, Vec b) => new(a.X + b.X, a.Y + b.Y);

    public static Vec operator -(Vec a, Vec b) => new(a.X - b.X, a.Y - b.Y);

    public static Vec operator *(Vec a, double k) => new(a.X * k, a.Y * k);

    public static double Dot(Vec a, Vec b) => (a.X * b.X) + (a.Y * b.Y);

    /// <summary>Positive when <paramref name="b"/> lies to the left of <paramref name="a"/>.</summary>
    public static double Cross(Vec a, Vec b) => (a.X * b.Y) - (a.Y * b.X);

    public static Vec Mix(Vec a, Vec b, double t) => new(a.X + ((b.X - a.X) * t), a.Y + ((b.Y - a.Y) * t));

    /// <summary>Signed angle from <paramref name="a"/> to <paramref name="b"/> in radians, left turns positive.</summary>
    public static double Angle(Vec a, Vec b) => Math.Atan2(Cross(a, b), Dot(a, b));

    public static Vec From(Point p) => new(p.XMm, p.YMm);

    public override string ToString() => FormattableString.Invariant($"({X:0.###}, {Y:0.###})");

    public Point ToPoint() => new(X, Y);

    /// <summary>Length 1, or the zero vector when there is no direction.</summary>
    public Vec Unit()
    {
        double length = Length;
        return length < 1e-12 ? default : new Vec(X / length, Y / length);
    }

    /// <summary>Distance from this point to the segment from <paramref name="a"/> to <paramref name="b"/>.</summary>
    public double DistanceToSegment(Vec a, Vec b)
    {
        var along = b - a;
        double square = Dot(along, along);
        double t = square < 1e-18 ? 0 : Math.Clamp(Dot(this - a, along) / square, 0, 1);
        return (this - Mix(a, b, t)).Length;
    }
}
