using NameBand.Common;
using SkiaSharp;

namespace NameBand.Lettering.Outlines;

/// <summary>Turns the curves of a Skia path (y down) into closed rings of points (y up).</summary>
internal static class PathRings
{
    private const int MostStepsPerCurve = 200; // A count: a curve of a letter takes some twenty; the bound holds off a damaged one.

    /// <summary>Farthest a chord may lie from its curve, at a letter height of 1 mm.</summary>
    private const double FlatnessMm = 0.0004;

    /// <param name="scale">Millimetres of a unit of the path at a letter height of 1 mm.</param>
    public static List<Point[]> Flatten(SKPath path, double scale)
    {
        const double tolerance = FlatnessMm; // At a letter height of 1 mm, as all that is flattened here.
        Point Up(SKPoint at) => new(at.X * scale, -at.Y * scale);
        var rings = new List<Point[]>();
        var ring = new List<Point>();
        var p = new SKPoint[4];
        using var verbs = path.CreateRawIterator();
        for (var verb = verbs.Next(p); verb != SKPathVerb.Done; verb = verbs.Next(p))
        {
            switch (verb)
            {
                case SKPathVerb.Move:
                    Close(ring, rings);
                    ring.Add(Up(p[0]));
                    break;
                case SKPathVerb.Line:
                    ring.Add(Up(p[1]));
                    break;
                case SKPathVerb.Quad:
                    Quad(ring, Up(p[0]), Up(p[1]), Up(p[2]), tolerance);
                    break;
                case SKPathVerb.Cubic:
                    Cubic(ring, Up(p[0]), Up(p[1]), Up(p[2]), Up(p[3]), tolerance);
                    break;
                case SKPathVerb.Conic:
                    throw new InvalidOperationException("Font outlines and what is made of them hold no conics.");
            }
        }

        Close(ring, rings);
        return rings;
    }

    private static void Close(List<Point> ring, List<Point[]> rings)
    {
        if (ring.Count > 2)
        {
            rings.Add([.. ring]);
        }

        ring.Clear();
    }

    private static void Quad(List<Point> ring, Point a, Point b, Point c, double tolerance)
    {
        int steps = Steps(0.25 * (a - (b * 2) + c).DistanceTo(default), tolerance);
        for (int i = 1; i <= steps; i++)
        {
            double t = (double)i / steps, u = 1 - t;
            ring.Add(i == steps ? c : (a * (u * u)) + (b * (2 * u * t)) + (c * (t * t)));
        }
    }

    private static void Cubic(List<Point> ring, Point a, Point b, Point c, Point d, double tolerance)
    {
        double bend = Math.Max((a - (b * 2) + c).DistanceTo(default), (b - (c * 2) + d).DistanceTo(default));
        int steps = Steps(0.75 * bend, tolerance);
        for (int i = 1; i <= steps; i++)
        {
            double t = (double)i / steps, u = 1 - t;
            ring.Add(i == steps ? d : (a * (u * u * u)) + (b * (3 * u * u * t)) + (c * (3 * u * t * t)) + (d * (t * t * t)));
        }
    }

    /// <summary>Equal steps in the parameter that keep every chord within the tolerance (Wang's bound).</summary>
    private static int Steps(double bend, double tolerance) =>
        Math.Clamp((int)Math.Ceiling(Math.Sqrt(bend / tolerance)), 1, MostStepsPerCurve);
}
