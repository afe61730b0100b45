using System.Diagnostics;
using NameBand.Cloth;
using NameBand.Common;
using NameBand.Lettering;
using NameBand.Lettering.Faces;
using NameBand.Names;
using NameBand.Stitching;
using NameBand.Stitching.Sewing;
using NameBand.Stitching.Shapes;

namespace NameBand.Benchmarks;

/// <summary>Where the time of a letter, or of a word of a joined script, goes: microseconds of processor time for each stage, one
/// core.</summary>
internal static class StitchStages
{
    private const double HeightMm = 10;

    public static int Run()
    {
        var shelf = new FaceShelf();
        Console.WriteLine("microseconds a piece         sampled  triangulated      read      ways  sewn once  travel over satin");
        One(shelf, "nunito-bold", [.. "ABEKMNRSWYaegks8mq".Select(c => c.ToString())]);
        One(shelf, "vollkorn-bold", [.. "ABEKMNRSWYaegks8mq".Select(c => c.ToString())]);
        One(shelf, "pacifico", ["Maren", "Quillon", "Bryony", "Sedgwick"]);
        return 0;
    }

    private static void One(FaceShelf shelf, string folder, string[] texts)
    {
        var face = shelf.Open(shelf.Cards.Single(c => c.Folder == folder)).Value!;
        var names = Letterer.Letter(
            new NameList([], [.. texts.Select(t => new Name(t, new RowRef("names.csv", 2)))]), face, shelf).Value!.Names;
        var pieces = names.SelectMany(n => n.Pieces).Select(p => p.Piece).ToList();
        var outlines = pieces.Select(p => p.Outline.Scaled(HeightMm)).ToList();
        double step = Math.Clamp(0.02 * HeightMm, 0.1, 0.5);
        var fabric = FabricTable.Find("quilting cotton")!;
        var satin = new SatinSettings(fabric);
        var regions = outlines.SelectMany(o => RegionSampler.Sample(o, step)).ToList();
        var meshes = regions.Select(r => Triangulation.Of(r)!).ToList();
        var columns = regions.Zip(meshes, (r, m) => Reading.Best(r, m, HeightMm)!).ToList();
        var ways = columns.Select(c => new PartWays(c, satin, false)).ToList();
        var runs = ways.Select(w =>
            w.Sew(null, w.Out[0], []).Needles.Select(n => new NeedleStep(NeedleAction.Stitch, n.Kind, n.At.ToPoint())).ToArray()).ToList();
        double[] all =
        [
            ProcessorTime.Best(30, () => outlines.Sum(o => RegionSampler.Sample(o, step).Count)),
            ProcessorTime.Best(30, () => regions.Sum(r => Triangulation.Of(r)!.Count)),
            ProcessorTime.Best(30, () => regions.Zip(meshes, (r, m) => Reading.Best(r, m, HeightMm)!.Count).Sum()),
            ProcessorTime.Best(30, () => columns.Sum(c => new PartWays(c, satin, false).Out.Count)),
            ProcessorTime.Best(30, () => ways.Sum(w => w.Sew(null, w.Out[0], []).Needles.Count)),
            ProcessorTime.Best(30, () => runs.Sum(r => (int)JoinSight.OverSatin(r, fabric.Thread.DiameterMm).OverMm)),
        ];
        Console.WriteLine($"{folder,-24}"
            + string.Concat(all.Select(s =>
                (1e6 * s / pieces.Count).ToString("0", System.Globalization.CultureInfo.InvariantCulture).PadLeft(11)))
            + FormattableString.Invariant(
                $"   ({columns.Average(c => c.Count):0.0} columns, {ways.Average(w => w.Out.Count):0} ways out)"));
    }
}
