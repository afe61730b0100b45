using System.Globalization;
using NameBand.Cloth;
using NameBand.Lettering.Faces;
using NameBand.MachineLetters.Alphabets;
using NameBand.Output;
using NameBand.Stitching;
using NameBand.Stitching.Sewing;
using NameBand.Tests.House;
using NameBand.Tests.Outside;
using NameBand.Tests.StitchingRoom;
using NameBand.Tests.StitchQuality;
using SkiaSharp;
using Xunit;
using Xunit.Abstractions;

namespace NameBand.Tests.Sources;

/// <summary>
/// Can a stranger read what is sewn? Names of an open data set (@faker-js/faker 10.6.0, MIT; see Data) are drawn from their
/// needle files as thread 0.40 mm wide and read by tesseract 5 with its English model (Debian tesseract-ocr, Apache-2.0).
/// The same names printed plainly, by the same reader at the same size, are the control.
/// </summary>
public sealed class LegibilityByTesseractTests(ITestOutputHelper output)
{
    private const string Face = "nunito-bold";
    private const float PixelsPerMm = 4;
    private const int Count = 30;

    /// <summary>
    /// The rule: names of plain English letters and spaces only (the English model knows no others), every seventh of them,
    /// the first thirty.
    /// </summary>
    private static List<string> Names() =>
        [.. File.ReadLines(Path.Combine(Repository.Root, "tests", "NameBand.Tests", "Sources", "Data", "names-of-many-locales.csv"))
            .Skip(1).Select(l => l[(l.IndexOf(',') + 1)..].Trim('"')).Where(n => n.All(c => char.IsAsciiLetter(c) || c == ' '))
            .Where((_, i) => i % 7 == 0).Take(Count)];

    /// <summary>At 6 mm thread is to be read no worse than print.</summary>
    [SkippableTheory]
    [InlineData(6, 0)]
    [InlineData(8, 0.01)]
    [InlineData(10, 0.01)]
    public void Thread_is_read_as_the_name(double heightMm, double allowedPart)
    {
        OutsideTool.Require("tesseract", "tesseract-ocr");
        var names = Names();
        Assert.Equal(Count, names.Count);
        var lettered = Shelf.Names(Face, names);
        Assert.Equal(Count, lettered.Count);
        var stitcher = new Stitcher(FabricTable.Find("quilting cotton")!, heightMm);
        using var folder = new TemporaryFolder();
        for (int i = 0; i < Count; i++)
        {
            using (var file = File.Create(folder[$"{i}.csv"]))
            {
                NeedlePathCsv.Write(file, stitcher.SewName(lettered[i]));
            }

            DrawThread(folder[$"{i}.csv"], folder[$"sewn-{i}.png"]);
            DrawPrint(lettered[i], heightMm, folder[$"print-{i}.png"]);
        }

        int printed = Wrong(names, folder, "print");
        int letters = names.Sum(n => n.Length);
        int wrong = Wrong(names, folder, "sewn");
        Assert.True(printed <= 0.01 * letters, $"{printed} of {letters} printed characters were misread");
        Assert.True(
            wrong <= printed + (allowedPart * letters),
            $"{wrong} of {letters} characters were misread at {heightMm} mm, {printed} in print");
    }

    private int Wrong(List<string> names, TemporaryFolder folder, string kind)
    {
        File.WriteAllLines(folder[kind + ".txt"], names.Select((_, i) => folder[$"{kind}-{i}.png"]));
        string[] read = OutsideTool.Run("tesseract", [folder[kind + ".txt"], "-", "--psm", "7", "-l", "eng", "--dpi", "254"]).Split('\f');
        int wrong = 0;
        for (int i = 0; i < names.Count; i++)
        {
            string found = read[i].Trim();
            int distance = EditDistance(names[i], found);
            wrong += distance;
            if (distance > 0)
            {
                output.WriteLine($"{kind}: “{names[i]}” was read as “{found}”");
            }
        }

        output.WriteLine($"{kind}: {wrong} wrong");
        return wrong;
    }

    /// <summary>Every stitch of the file as a straight thread; nothing where the needle jumps.</summary>
    private static void DrawThread(string csv, string png)
    {
        var rows = File.ReadLines(csv).Skip(1).Select(l => l.Split(','))
            .Select(f => (X: float.Parse(f[1], CultureInfo.InvariantCulture), Y: float.Parse(f[2], CultureInfo.InvariantCulture),
                IsStitch: f[3] == "stitch")).ToList();
        Draw(rows.Min(r => r.X), rows.Max(r => r.X), rows.Min(r => r.Y), rows.Max(r => r.Y), png, canvas =>
        {
            using var thread = new SKPaint { Color = SKColors.Black, StrokeWidth = 0.4f, IsAntialias = true };
            for (int i = 1; i < rows.Count; i++)
            {
                if (rows[i].IsStitch && rows[i - 1].IsStitch)
                {
                    canvas.DrawLine(rows[i - 1].X, rows[i - 1].Y, rows[i].X, rows[i].Y, thread);
                }
            }
        });
    }

    private static void DrawPrint(NameBand.Lettering.LetteredName name, double heightMm, string png)
    {
        float mm = (float)heightMm;
        Draw((float)name.Ink.LeftMm * mm, (float)name.Ink.RightMm * mm, (float)name.Ink.BottomMm * mm, (float)name.Ink.TopMm * mm, png,
            canvas =>
        {
            using var ink = new SKPaint { Color = SKColors.Black, IsAntialias = true };
            foreach (var placed in name.Pieces)
            {
                using var gathered = new SKPathBuilder { FillType = SKPathFillType.EvenOdd };
                foreach (var ring in placed.Piece.Outline.Rings)
                {
                    gathered.AddPoly([.. ring.Points.Select(p =>
                        new SKPoint((float)(p.XMm + placed.At.XMm) * mm, (float)(p.YMm + placed.At.YMm) * mm))], true);
                }

                using var shape = gathered.Detach();
                canvas.DrawPath(shape, ink);
            }
        });
    }

    private static void Draw(float left, float right, float bottom, float top, string png, Action<SKCanvas> draw)
    {
        const float Margin = 4;
        using var bitmap =
            new SKBitmap((int)((right - left + (2 * Margin)) * PixelsPerMm), (int)((top - bottom + (2 * Margin)) * PixelsPerMm));
        using var canvas = new SKCanvas(bitmap);
        canvas.Clear(SKColors.White);
        canvas.Scale(PixelsPerMm, -PixelsPerMm);
        canvas.Translate(Margin - left, -(top + Margin));
        draw(canvas);
        using var data = bitmap.Encode(SKEncodedImageFormat.Png, 90);
        using var stream = File.Create(png);
        data.SaveTo(stream);
    }

    /// <summary>Letters to change, add or take away (Levenshtein).</summary>
    private static int EditDistance(string a, string b)
    {
        int[] row = [.. Enumerable.Range(0, b.Length + 1)];
        for (int i = 1; i <= a.Length; i++)
        {
            int corner = row[0];
            row[0] = i;
            for (int j = 1; j <= b.Length; j++)
            {
                int above = row[j];
                row[j] = Math.Min(Math.Min(row[j], row[j - 1]) + 1, corner + (a[i - 1] == b[j - 1] ? 0 : 1));
                corner = above;
            }
        }

        return row[^1];
    }
}
