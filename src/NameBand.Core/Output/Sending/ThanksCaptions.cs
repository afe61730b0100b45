using System.Buffers;
using NameBand.Common;
using NameBand.Output.Drawing;
using NameBand.Output.Packet;
using NameBand.Output.Sheets;
using SkiaSharp;

namespace NameBand.Output.Sending;

/// <summary>
/// The words under thank-you pictures, in any script. Shaping faces are for one thread, so a few are kept and lent out.
/// </summary>
internal sealed class ThanksCaptions(string title, int widthPx) : IDisposable
{
    private readonly System.Collections.Concurrent.ConcurrentBag<SheetFace> _idle = [];

    public string Title { get; } = PaperTitle.Short(title);

    /// <summary>Width of the pictures that they stand on.</summary>
    public int WidthPx => widthPx;

    /// <summary>Writes a line.</summary>
    /// <param name="align">0 where <paramref name="at"/> is its left edge, 0.5 its middle, 1 its right edge.</param>
    /// <param name="size">Height of the type in pixels; smaller where the line would be wider than <paramref name="room"/>.</param>
    public void Set(IndexedBitmap picture, Said said, (double X, double Baseline) at, double size, double room, double align)
    {
        if (!_idle.TryTake(out var face))
        {
            face = SheetFace.Open();
        }

        try
        {
            string text = said.ToString();
            double width = face.WidthMm(text, size);
            if (width > room)
            {
                size *= room / width;
                width = room;
            }

            Stamp(picture, face, text, (at.X - (align * width), at.Baseline), size, width);
        }
        finally
        {
            _idle.Add(face);
        }
    }

    public void Dispose()
    {
        foreach (var face in _idle)
        {
            face.Dispose();
        }
    }

    private static void Stamp(
        IndexedBitmap picture, SheetFace face, string text, (double Left, double Baseline) at, double size, double width)
    {
        var (left, baseline) = at;
        int around = (int)Math.Ceiling(size);
        int x0 = (int)Math.Floor(left) - around;
        int y0 = (int)Math.Floor(baseline) - (2 * around);
        int wide = (int)Math.Ceiling(width) + (2 * around) + 1;
        int high = 4 * around;
        using var bitmap = new SKBitmap(new SKImageInfo(wide, high, SKColorType.Alpha8, SKAlphaType.Premul));
        bitmap.Erase(SKColors.Transparent);
        using (var canvas = new SKCanvas(bitmap))
        using (var paint = new SKPaint { Color = SKColors.Black, IsAntialias = true })
        {
            face.Draw(canvas, text, left - x0, baseline - y0, size, paint);
        }

        byte[] mask = ArrayPool<byte>.Shared.Rent(wide * high);
        for (int y = 0; y < high; y++)
        {
            bitmap.GetPixelSpan().Slice(y * bitmap.RowBytes, wide).CopyTo(mask.AsSpan(y * wide));
        }

        picture.Stamp(mask.AsSpan(0, wide * high), wide, x0, y0, Palette.Ink);
        ArrayPool<byte>.Shared.Return(mask);
    }
}
