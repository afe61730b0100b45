using NameBand.MachineLetters.Alphabets;
using NameBand.Stitching;
using NameBand.Stitching.Sewing;
using NameBand.Tests.StitchQuality;
using SkiaSharp;

namespace NameBand.Benchmarks;

/// <summary>Draws the letters in which strokes meet in most ways, one sheet for each face, to be looked at beside those of an
/// earlier build.</summary>
internal static class ContactSheets
{
    private const string Letters = "ABEKMNRSWY&gesak8æßÆØŴQ@";
    private const double HeightMm = 12;
    private const double ThreadMm = 0.36;
    private const int Columns = 12;

    private static readonly (string Folder, string[] Joins)[] Faces =
    [
        ("nunito-bold", []), ("lato-bold", []), ("vollkorn-bold", []), ("roboto-slab-bold", []),
        ("pacifico", ["ry", "os", "Br", "ub"]), ("grand-hotel", ["ry", "os", "Br", "ub"]),
    ];

    /// <param name="ending">What the names of the sheets end with.</param>
    public static int Run(string project, string folder, string ending, float pixelsPerMm)
    {
        Directory.CreateDirectory(folder);
        foreach (var (face, joins) in Faces)
        {
            string file = Directory.GetFiles(Path.Combine(project, "fonts-open", face))
                .First(f => f.EndsWith("tf", StringComparison.OrdinalIgnoreCase));
            using var reader = new FaceFileReader(file);
            var stitcher = new Stitcher(LetterTrial.Cotton, HeightMm);
            var drawn = Letters.Select(l => l.ToString()).Concat(joins).Where(reader.Has)
                .Select(l => (l, LetterTrial.Of(stitcher, reader.Piece(l), HeightMm))).Where(l => l.Item2 is not null)
                    .Select(l => (l.l, l.Item2!)).ToList();
            string sheet = Path.Combine(folder, $"letters-{face}-{ending}.png");
            ThreadPicture.Save(sheet, drawn, Columns, pixelsPerMm, ThreadMm, false);
            InFewColours(sheet);
            Console.WriteLine($"{sheet}: {drawn.Count} letters");
        }

        return 0;
    }

    /// <summary>The sheets are kept beside the docs, so they are to be small.</summary>
    private static void InFewColours(string file)
    {
        using var bitmap = SKBitmap.Decode(file);
        bitmap.Pixels = [.. bitmap.Pixels.Select(p => new SKColor(Level(p.Red), Level(p.Green), Level(p.Blue)))];
        using var data = bitmap.Encode(SKEncodedImageFormat.Png, 100);
        using var stream = File.Create(file);
        data.SaveTo(stream);
    }

    private static byte Level(byte value) => (byte)(Math.Round(value / 51.0) * 51);
}
