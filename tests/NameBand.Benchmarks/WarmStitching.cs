using System.Diagnostics;
using NameBand.Cloth;
using NameBand.Common;
using NameBand.Lettering;
using NameBand.Lettering.Faces;
using NameBand.MachineLetters.Alphabets;
using NameBand.Names;
using NameBand.Stitching;
using NameBand.Stitching.Sewing;
using NameBand.Stitching.Shapes;
using NetTopologySuite.Geometries;
using NetTopologySuite.Triangulate;

namespace NameBand.Benchmarks;

/// <summary>
/// Speed on one core: letters worked out for the first time, beside their triangulation alone and beside a Voronoi diagram
/// of the same outlines read at the same points, and names whose letters are known.
/// </summary>
internal static class WarmStitching
{
    private static readonly string[] Faces = ["nunito-bold", "vollkorn-bold", "roboto-slab-bold", "pacifico"];

    private const double HeightMm = 10;

    private const string Alphabet = "ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz";

    public static int Run()
    {
        var shelf = new FaceShelf();
        var fabric = FabricTable.Find("quilting cotton")!;
        Console.WriteLine("Letters and stitches in a second of processor time, letter height 10 mm, best of ten rounds");
        Console.WriteLine(
            "face                 cold letters   stitches   triangulated   Voronoi diagrams   satin : triangulation   Voronoi : satin   warm stitches");
        foreach (string folder in Faces)
        {
            var face = shelf.Open(shelf.Cards.Single(c => c.Folder == folder)).Value!;
            var letters = Lettered(Alphabet.Select(c => c.ToString()), face, shelf).SelectMany(n => n.Pieces).Select(p => p.Piece).ToList();
            var outlines = letters.Select(l => l.Outline.Scaled(HeightMm)).ToList();
            double step = Math.Clamp(0.02 * HeightMm, 0.1, 0.5);
            int stitches = 0;
            double cold = ProcessorTime.Best(10, () => stitches = Cold(letters, fabric, HeightMm));
            double triangulated =
                ProcessorTime.Best(10, () => outlines.Sum(o => RegionSampler.Sample(o, step).Sum(r => Triangulation.Of(r)?.Count ?? 0)));
            double voronoi = ProcessorTime.Best(10, () => outlines.Sum(o => RegionSampler.Sample(o, step).Sum(VoronoiCells)));
            double warm = Warm(Lettered(["Maren Aldous", "Quillon Tavish", "Bryony Sedgwick", "Ottoline Farrow"], face, shelf), fabric);
            Console.WriteLine(FormattableString.Invariant(
                $"{folder,-20} {letters.Count / cold,12:0} {stitches / cold,10:0} {letters.Count / triangulated,14:0} {letters.Count / voronoi,18:0} {cold / triangulated,23:0.0} {voronoi / cold,17:0.0} {warm,15:0}"));
        }

        Joined(shelf, fabric);
        return 0;
    }

    /// <summary>Letters worked out anew, alone: so many rounds that the compiler is done with them.</summary>
    public static int RunCold()
    {
        var shelf = new FaceShelf();
        var fabric = FabricTable.Find("quilting cotton")!;
        foreach (string folder in Faces)
        {
            var face = shelf.Open(shelf.Cards.Single(c => c.Folder == folder)).Value!;
            var letters = Lettered(Alphabet.Select(c => c.ToString()), face, shelf).SelectMany(n => n.Pieces).Select(p => p.Piece).ToList();
            int stitches = 0;
            double cold = ProcessorTime.Best(40, () => stitches = Cold(letters, fabric, HeightMm));
            Console.WriteLine(
                FormattableString.Invariant($"{folder,-20} {letters.Count / cold,12:0} letters a second {stitches / cold,10:0} stitches"));
        }

        return 0;
    }

    /// <summary>The joined scripts alone.</summary>
    public static int RunJoined()
    {
        Joined(new FaceShelf(), FabricTable.Find("quilting cotton")!);
        return 0;
    }

    /// <summary>
    /// In a joined script a name is a few connected pieces of outline. Each is worked out once: a name made of pieces that came
    /// before, here the same given names with the same family names in another order, costs a copy.
    /// </summary>
    private static void Joined(FaceShelf shelf, Fabric fabric)
    {
        string[] given = ["Maren", "Quillon", "Bryony", "Ottoline", "Ludovic", "Sunniva"];
        string[] family = ["Aldous", "Tavish", "Sedgwick", "Farrow", "Penhale", "Quill"];
        Console.WriteLine();
        Console.WriteLine("joined script        names a second, all new   names a second, of known pieces");
        foreach (string folder in new[] { "pacifico", "grand-hotel" })
        {
            var face = shelf.Open(shelf.Cards.Single(c => c.Folder == folder)).Value!;
            var first = Lettered(given.Select((g, i) => g + " " + family[i]), face, shelf);
            var others = Lettered(given.SelectMany((g, i) => family.Where((_, k) => k != i).Select(f => g + " " + f)), face, shelf);
            double fresh = ProcessorTime.Best(20, () => SewAll(new Stitcher(fabric, HeightMm), first));
            var stitcher = new Stitcher(fabric, HeightMm);
            SewAll(stitcher, first);
            SewAll(stitcher, others);
            double known = ProcessorTime.Best(10, () => Enumerable.Range(0, 100).Sum(_ => SewAll(stitcher, others))) / 100;
            Console.WriteLine(FormattableString.Invariant($"{folder,-20} {first.Count / fresh,23:0} {others.Count / known,33:0}"));
        }
    }

    private static int SewAll(Stitcher stitcher, IReadOnlyList<LetteredName> names) => names.Sum(n => stitcher.SewName(n).Steps.Length);

    /// <summary>The bare diagram: cutting it to a box, as the builder would, takes longer and fails on some letters.</summary>
    private static int VoronoiCells(Region region)
    {
        var builder = new VoronoiDiagramBuilder();
        builder.SetSites([.. region.Points.Select(p => new Coordinate(p.X, p.Y))]);
        return builder.GetSubdivision().GetVoronoiCellPolygons(GeometryFactory.Default).Count;
    }

    private static IReadOnlyList<LetteredName> Lettered(IEnumerable<string> texts, Face face, FaceShelf shelf) =>
        Letterer.Letter(new NameList([], [.. texts.Select(t => new Name(t, new RowRef("names.csv", 2)))]), face, shelf).Value!.Names;

    private static int Cold(List<LetterPiece> letters, Fabric fabric, double height)
    {
        var stitcher = new Stitcher(fabric, height);
        return letters.Sum(l => stitcher.Sewn(l).Parts.Sum(p => p.Alone.Length));
    }

    /// <summary>A fixed number of names, every needle row counted from the path that was made; the first part only warms up.</summary>
    private static double Warm(IReadOnlyList<LetteredName> names, Fabric fabric)
    {
        const int WarmUp = 4_000;
        const int Counted = 20_000;
        var stitcher = new Stitcher(fabric, 10);
        long stitches = 0;
        double start = 0;
        for (int i = 0; i < WarmUp + Counted; i++)
        {
            if (i == WarmUp)
            {
                start = ProcessorTime.Seconds();
                stitches = 0;
            }

            var steps = stitcher.SewName(names[i % names.Count]).Steps;
            foreach (var step in steps)
            {
                stitches += step.Action == NeedleAction.Stitch ? 1 : 0;
            }
        }

        return stitches / (ProcessorTime.Seconds() - start);
    }
}
