using System.Collections.Concurrent;
using SkiaSharp;

namespace NameBand.Output.Drawing;

/// <summary>
/// A face for the few words and numbers on proofs. Letters are drawn once for each size and then stamped; only our own
/// words are set with it, so it need not shape.
/// </summary>
internal sealed class CaptionFace : IDisposable
{
    private readonly SKTypeface _face;
    private readonly double _capOfEm;
    private readonly Lock _drawing = new();
    private readonly ConcurrentDictionary<(char Letter, int CapPx), Glyph> _glyphs = new();

    private CaptionFace(SKTypeface face)
    {
        _face = face;
        using var font = new SKFont(face, 1000);
        double cap = font.Metrics.CapHeight / 1000;
        _capOfEm = cap is > 0.3 and < 1.2 ? cap : 0.7;
    }

    private sealed record Glyph(byte[] Mask, int Width, int Left, int Top, double Advance);

    /// <summary>Opens a TTF or OTF.</summary>
    /// <exception cref="IOException">The file is not there or is no face; proofs use a face that comes with the program.</exception>
    public static CaptionFace FromFile(string path) =>
        new(SKTypeface.FromFile(path) ?? throw new IOException($"The face for the captions cannot be read: {Path.GetFileName(path)}"));

    public void Dispose() => _face.Dispose();

    /// <summary>Width in pixels of a text whose capitals are so many pixels high.</summary>
    internal double Measure(string text, int capPx) => text.Sum(c => Of(c, capPx).Advance);

    /// <summary>Sets a text.</summary>
    /// <param name="align">0 where <paramref name="at"/> is its left edge, 0.5 its middle, 1 its right edge.</param>
    internal void Set(IndexedBitmap picture, string text, (double X, double Baseline) at, int capPx, int colour, double align = 0)
    {
        var (x, baseline) = at;
        if (baseline + capPx < picture.Top || baseline - (2 * capPx) > picture.Bottom)
        {
            return;
        }

        double pen = x - (align * Measure(text, capPx));
        foreach (char c in text)
        {
            var glyph = Of(c, capPx);
            if (glyph.Width > 0)
            {
                picture.Stamp(
                    glyph.Mask, glyph.Width, (int)Math.Round(pen) + glyph.Left, (int)Math.Round(baseline) + glyph.Top, colour);
            }

            pen += glyph.Advance;
        }
    }

    private Glyph Of(char letter, int capPx) =>
        _glyphs.TryGetValue((letter, capPx), out var glyph) ? glyph : Draw(letter, capPx);

    private Glyph Draw(char letter, int capPx)
    {
        lock (_drawing)
        {
            using var font = new SKFont(_face, (float)(capPx / _capOfEm))
            {
                Edging = SKFontEdging.Antialias,
                Hinting = SKFontHinting.None,
                Subpixel = true,
            };
            string text = letter.ToString();
            float advance = font.MeasureText(text, out var box);
            int left = (int)Math.Floor(box.Left) - 1;
            int top = (int)Math.Floor(box.Top) - 1;
            int width = (int)Math.Ceiling(box.Right) + 1 - left;
            int height = (int)Math.Ceiling(box.Bottom) + 1 - top;
            byte[] mask = [];
            if (box.Width <= 0 || box.Height <= 0)
            {
                width = 0;
            }
            else
            {
                using var bitmap = new SKBitmap(new SKImageInfo(width, height, SKColorType.Alpha8, SKAlphaType.Premul));
                bitmap.Erase(SKColors.Transparent);
                using var canvas = new SKCanvas(bitmap);
                using var paint = new SKPaint { Color = SKColors.Black, IsAntialias = true };
                canvas.DrawText(text, -left, -top, SKTextAlign.Left, font, paint);
                mask = new byte[width * height];
                for (int y = 0; y < height; y++)
                {
                    bitmap.GetPixelSpan().Slice(y * bitmap.RowBytes, width).CopyTo(mask.AsSpan(y * width));
                }
            }

            return _glyphs[(letter, capPx)] = new Glyph(mask, width, left, top, advance);
        }
    }
}
