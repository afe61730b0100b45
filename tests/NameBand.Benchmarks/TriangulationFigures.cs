using System.Globalization;
using NameBand.Common;
using NameBand.Lettering;
using NameBand.Lettering.Faces;
using NameBand.Names;
using NameBand.Stitching.Geometry;
using NameBand.Stitching.Shapes;
using NetTopologySuite.Geometries;
using NetTopologySuite.Triangulate.Polygon;

namespace NameBand.Benchmarks;

/// <summary>
/// Our triangulation of letters beside the constrained Delaunay triangulation of NetTopologySuite, on the same points: processor
/// time on one core, triangles that both have, and letters that one of them cannot do.
/// </summary>
internal static class TriangulationFigures
{
    private const double HeightMm = 10;

    public static int Run()
    {
        var shelf = new FaceShelf();
        Console.WriteLine("face                     pieces  points  ours, µs  library's, µs  triangles in both  failed, ours / library's");
        foreach (string folder in new[] { "nunito-bold", "vollkorn-bold", "pacifico", "roboto-slab-bold" })
        {
            if (shelf.Cards.FirstOrDefault(c => c.Folder == folder) is { } card)
            {
                One(shelf, card);
            }
        }

        return 0;
    }

    private static void One(FaceShelf shelf, FaceCard card)
    {
        var face = shelf.Open(card).Value!;
        var letters = "ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz&ÅØæß8"
            .Select(c => new Name(c.ToString(), new RowRef("names.csv", 2)));
        var pieces = Letterer.Letter(new NameList([], [.. letters]), face, shelf).Value!.Names.SelectMany(n => n.Pieces);
        var regions = pieces.SelectMany(p => RegionSampler.Sample(p.Piece.Outline.Scaled(HeightMm), 0.2)).ToList();
        var polygons = regions.Select(PolygonOf).ToList();
        int both = 0;
        int all = 0;
        int failedOurs = 0;
        int failedTheirs = 0;
        foreach (var (region, polygon) in regions.Zip(polygons))
        {
            var ours = Triangulation.Of(region);
            var theirs = Theirs(polygon);
            failedOurs += ours is null ? 1 : 0;
            failedTheirs += theirs is null ? 1 : 0;
            if (ours is not null && theirs is not null)
            {
                var known = Enumerable.Range(0, theirs.NumGeometries)
                    .Select(i => Key(theirs.GetGeometryN(i).Coordinates.Take(3).Select(c => new Vec(c.X, c.Y)))).ToHashSet();
                all += ours.Count;
                both += Enumerable.Range(0, ours.Count)
                    .Count(t => known.Contains(Key(Enumerable.Range(0, 3).Select(k => region.Points[ours.Corners[(3 * t) + k]]))));
            }
        }

        double mine = ProcessorTime.Best(20, () => regions.Sum(r => Triangulation.Of(r)?.Count ?? 0));
        double library = ProcessorTime.Best(5, () => polygons.Sum(p => Theirs(p)?.NumGeometries ?? 0));
        Console.WriteLine(string.Create(
            CultureInfo.InvariantCulture,
            $"{card.Folder,-24} {regions.Count,6}  {regions.Sum(r => r.Points.Length),6}  {1e6 * mine / regions.Count,8:0}  {1e6 * library / regions.Count,13:0}  {100.0 * both / Math.Max(1, all),15:0.0} %  {failedOurs} / {failedTheirs}"));
    }

    private static Geometry? Theirs(Polygon polygon)
    {
        try
        {
            return ConstrainedDelaunayTriangulator.Triangulate(polygon);
        }
        catch (InvalidOperationException)
        {
            return null;
        }
    }

    private static string Key(IEnumerable<Vec> corners) =>
        string.Join(' ', corners.Select(c => $"{c.X:R},{c.Y:R}").Order(StringComparer.Ordinal));

    private static Polygon PolygonOf(Region region)
    {
        var rings = region.RingStarts.Select((start, r) =>
        {
            int end = r + 1 < region.RingStarts.Length ? region.RingStarts[r + 1] : region.Points.Length;
            return new LinearRing([.. region.Points[start..end].Append(region.Points[start]).Select(p => new Coordinate(p.X, p.Y))]);
        }).ToList();
        return new Polygon(rings[0], [.. rings.Skip(1)]);
    }
}
