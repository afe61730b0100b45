using NetTopologySuite.Geometries;
using NetTopologySuite.Operation.OverlayNG;
using NetTopologySuite.Operation.Polygonize;
using Point = NameBand.Common.Point;

namespace NameBand.Lettering.Outlines;

/// <summary>
/// Resolves overlaps the slow and safe way: every line is cut where it meets another, the cells between the
/// lines are kept or not by their winding number, and the kept ones are joined.
/// </summary>
internal static class RobustUnion
{
    /// <summary>Points are rounded to this at a letter height of 1 mm first, so that near-coincident lines become one.</summary>
    private const double GridMm = 1.0 / 16384;

    /// <param name="glyphs">The contours of each glyph at a letter height of 1 mm, filled by the nonzero rule.</param>
    public static List<Point[]> Unite(IReadOnlyList<List<Point[]>> glyphs)
    {
        var factory = new GeometryFactory();
        var rounded = glyphs.Select(g => g.Select(r => Rounded(r)).Where(r => r.Length > 3).ToList()).ToList();
        var lines = factory.CreateMultiLineString([.. rounded.SelectMany(g => g).Select(r => factory.CreateLineString(r))]);
        var cut = OverlayNGRobust.Union((Geometry)lines);
        var cells = new Polygonizer();
        cells.Add(cut);
        var kept = new List<Geometry>();
        foreach (var cell in cells.GetPolygons())
        {
            var inside = cell.InteriorPoint.Coordinate;
            if (rounded.Any(g => g.Sum(r => Winding(r, inside)) != 0))
            {
                kept.Add(cell);
            }
        }

        var rings = new List<Point[]>();
        if (kept.Count == 0)
        {
            return rings;
        }

        var joined = OverlayNGRobust.Union(factory.BuildGeometry(kept));
        for (int i = 0; i < joined.NumGeometries; i++)
        {
            if (joined.GetGeometryN(i) is Polygon polygon)
            {
                rings.Add(PointsOf(polygon.ExteriorRing));
                rings.AddRange(polygon.InteriorRings.Select(PointsOf));
            }
        }

        return rings;
    }

    private static Coordinate[] Rounded(Point[] ring)
    {
        var points = new List<Coordinate>(ring.Length + 1);
        foreach (var p in ring)
        {
            var at = new Coordinate(Math.Round(p.XMm / GridMm) * GridMm, Math.Round(p.YMm / GridMm) * GridMm);
            if (points.Count == 0 || !points[^1].Equals2D(at))
            {
                points.Add(at);
            }
        }

        if (points.Count > 0 && !points[^1].Equals2D(points[0]))
        {
            points.Add(points[0].Copy());
        }

        return [.. points];
    }

    private static int Winding(Coordinate[] ring, Coordinate p)
    {
        int winding = 0;
        for (int i = 1; i < ring.Length; i++)
        {
            var (a, b) = (ring[i - 1], ring[i]);
            if (a.Y > p.Y != b.Y > p.Y && p.X < ((b.X - a.X) * (p.Y - a.Y) / (b.Y - a.Y)) + a.X)
            {
                winding += b.Y > a.Y ? 1 : -1;
            }
        }

        return winding;
    }

    private static Point[] PointsOf(LineString ring) => [.. ring.Coordinates.SkipLast(1).Select(c => new Point(c.X, c.Y))];
}
