using System.Collections.Immutable;

namespace NameBand.Common;

/// <summary>One closed ring of an outline; the last point is joined to the first and not repeated.</summary>
public sealed record Ring(ImmutableArray<Point> Points)
{
    /// <summary>Signed area in mm²: positive when the ring runs counter-clockwise (y up).</summary>
    public double SignedAreaMm2()
    {
        double twice = 0;
        for (int i = 0, j = Points.Length - 1; i < Points.Length; j = i++)
        {
            twice += (Points[j].XMm * Points[i].YMm) - (Points[i].XMm * Points[j].YMm);
        }

        return twice / 2;
    }
}

/// <summary>
/// The outline of a letter or of several joined ones, as rings without overlaps: outer rings run
/// counter-clockwise, holes clockwise (y up). Outlines from the Lettering room are drawn at a letter
/// height of 1 mm, baseline at y = 0; <see cref="Scaled"/> makes them real.
/// </summary>
public sealed record Outline(ImmutableArray<Ring> Rings)
{
    public static Outline Empty { get; } = new(ImmutableArray<Ring>.Empty);

    public Outline Scaled(double factor) =>
        new([.. Rings.Select(r => new Ring([.. r.Points.Select(p => p * factor)]))]);

    public Outline Moved(Point by) =>
        new([.. Rings.Select(r => new Ring([.. r.Points.Select(p => p + by)]))]);

    public Box Bounds()
    {
        var box = Box.Empty;
        foreach (var ring in Rings)
        {
            foreach (var p in ring.Points)
            {
                box = box.Include(p);
            }
        }

        return box;
    }

    /// <summary>Area inside in mm², holes taken off.</summary>
    public double AreaMm2() => Rings.Sum(r => r.SignedAreaMm2());
}
