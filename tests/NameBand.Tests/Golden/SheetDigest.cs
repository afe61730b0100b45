using System.Globalization;
using System.Text;
using NameBand.Tests.WholeLine;
using SixLabors.ImageSharp;
using SixLabors.ImageSharp.PixelFormats;
using UglyToad.PdfPig;
using UglyToad.PdfPig.Content;

namespace NameBand.Tests.Golden;

/// <summary>
/// Every file of a folder on a line of its own: of a picture how light each part of it is, of a PDF what stands and is drawn on it and
/// where, of all else a fingerprint.
/// </summary>
internal static class SheetDigest
{
    /// <summary>Parts of a picture along its longer and its shorter side.</summary>
    private const int PartsAlong = 16, PartsAcross = 8;

    /// <summary>Of 255 to a digit's worth: letters of captions have other shades on another processor, which is less; a line of a tenth
    /// of a part is more.</summary>
    private const double ShadePerStep = 0.25;

    /// <summary>They hold fingerprints of other files, or the time of day.</summary>
    private static readonly string[] LeftOut = [".made-by-nameband.json", "sewing-log.csv"];

    /// <summary>Pictures of a kind that are looked at: they are drawn by the same code.</summary>
    private const int MostOfAKind = 2;

    public static IEnumerable<string> Of(string folder, Func<string, bool> isMade) =>
        MadeFolder.Bytes(folder).Where(f => isMade(f.Key) && !LeftOut.Contains(Path.GetFileName(f.Key)))
            .GroupBy(f => f.Key.EndsWith(".png", StringComparison.Ordinal) ? f.Key.TrimEnd([.. "0123456789.png"]) : f.Key)
            .SelectMany(g => g.Take(MostOfAKind)).Select(f => $"{f.Key}: {Of(f.Key, f.Value)}");

    /// <summary>Whether two lines say the same; pictures may be off by one step of light in each part.</summary>
    public static bool AreAlike(string one, string other)
    {
        if (one == other)
        {
            return true;
        }

        string[] a = one.Split(' '), b = other.Split(' ');
        return a.Length == b.Length && a[0].EndsWith(".png:", StringComparison.Ordinal) && a[..2].SequenceEqual(b[..2])
            && a[2..].Zip(b[2..]).All(p => Math.Abs(Step(p.First) - Step(p.Second)) <= 1);
    }

    private static int Step(string digits) => int.Parse(digits, NumberStyles.HexNumber, CultureInfo.InvariantCulture);

    private static string Of(string file, byte[] bytes) => Path.GetExtension(file) switch
    {
        ".png" => Shades(bytes),
        ".pdf" => Sheets(bytes),
        ".json" => PlanDigest.Print([Encoding.UTF8.GetBytes(PlanDigest.Steady(bytes))]),
        _ => PlanDigest.Print([bytes]),
    };

    private static string Shades(byte[] png)
    {
        using var picture = Image.Load<Rgb24>(png);
        int columns = picture.Width >= picture.Height ? PartsAlong : PartsAcross, rows = PartsAlong + PartsAcross - columns;
        var sums = new long[rows, columns];
        var counts = new long[rows, columns];
        for (int y = 0; y < picture.Height; y++)
        {
            int row = y * rows / picture.Height;
            for (int x = 0; x < picture.Width; x++)
            {
                int column = (int)((long)x * columns / picture.Width);
                var pixel = picture[x, y];
                sums[row, column] += pixel.R + pixel.G + pixel.B;
                counts[row, column]++;
            }
        }

        var steps = Enumerable.Range(0, rows * columns).Select(i => (i / columns, i % columns))
            .Select(p => (Sum: sums[p.Item1, p.Item2], Count: counts[p.Item1, p.Item2])).Where(p => p.Count > 0)
            .Select(p => (int)Math.Round(p.Sum / (3.0 * ShadePerStep * p.Count)));
        string shades = string.Join(' ', steps.Select(s => s.ToString("x", CultureInfo.InvariantCulture)));
        return string.Create(CultureInfo.InvariantCulture, $"{picture.Width}x{picture.Height} {shades}");
    }

    private static string Sheets(byte[] pdf)
    {
        using var document = PdfDocument.Open(pdf);
        return string.Join(' ', document.GetPages().Select(Sheet));
    }

    private static string Sheet(Page page)
    {
        var drawn = new StringBuilder();
        drawn.Append(CultureInfo.InvariantCulture, $"{page.Width:0} x {page.Height:0}\n");
        foreach (var letter in page.Letters)
        {
            var at = letter.StartBaseLine;
            drawn.Append(CultureInfo.InvariantCulture, $"{letter.Value} {letter.PointSize:0} {at.X:0} {at.Y:0}\n");
        }

        foreach (var path in page.Paths)
        {
            drawn.Append(CultureInfo.InvariantCulture, $"{path.IsStroked} {path.IsFilled}");
            if (path.GetBoundingRectangle() is { } box)
            {
                drawn.Append(CultureInfo.InvariantCulture, $" {box.Left:0} {box.Bottom:0} {box.Right:0} {box.Top:0}");
            }

            drawn.Append('\n');
        }

        drawn.Append(page.NumberOfImages);
        return PlanDigest.Print([Encoding.UTF8.GetBytes(drawn.ToString())]);
    }
}
