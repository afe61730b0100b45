using System.Diagnostics;
using NameBand.Cloth;
using NameBand.Common;
using NameBand.Lettering;
using NameBand.Names;
using NameBand.Stitching;

namespace NameBand.Benchmarks;

/// <summary>Speed on one core: letters worked out for the first time, and names whose letters are known.</summary>
internal static class WarmStitching
{
    private static readonly string[] Faces = ["nunito-bold", "vollkorn-bold", "roboto-slab-bold", "pacifico"];

    private const string Alphabet = "ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz";

    public static int Run()
    {
        var shelf = new FaceShelf();
        var fabric = FabricTable.Find("quilting cotton")!;
        Console.WriteLine("face                letters/s cold   stitches/s cold   stitches/s warm   (per second of processor time, 10 mm)");
        foreach (string folder in Faces)
        {
            var face = shelf.Open(shelf.Cards.Single(c => c.Folder == folder)).Value!;
            var letters = Lettered(Alphabet.Select(c => c.ToString()), face, shelf).SelectMany(n => n.Pieces).Select(p => p.Piece).ToList();
            Cold(letters, fabric, 10.01);
            double cold = double.PositiveInfinity;
            int stitches = 0;
            for (int round = 0; round < 10; round++)
            {
                double start = ProcessorSeconds();
                stitches = Cold(letters, fabric, 10);
                cold = Math.Min(cold, ProcessorSeconds() - start);
            }

            double warm = Warm(Lettered(["Maren Aldous", "Quillon Tavish", "Bryony Sedgwick", "Ottoline Farrow"], face, shelf), fabric);
            Console.WriteLine(FormattableString.Invariant(
                $"{folder,-20} {letters.Count / cold,12:0}   {stitches / cold,15:0}   {warm,15:0}"));
        }

        return 0;
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
                start = ProcessorSeconds();
                stitches = 0;
            }

            var steps = stitcher.SewName(names[i % names.Count]).Steps;
            foreach (var step in steps)
            {
                stitches += step.Action == NeedleAction.Stitch ? 1 : 0;
            }
        }

        return stitches / (ProcessorSeconds() - start);
    }

    /// <summary>Time the processor spent on this process, so that other work on the machine does not count.</summary>
    private static double ProcessorSeconds()
    {
        using var self = Process.GetCurrentProcess();
        return self.TotalProcessorTime.TotalSeconds;
    }
}
