using System.Buffers;
using System.Runtime.CompilerServices;

namespace NameBand.Output.Drawing;

/// <summary>
/// A band of rows of a picture, one byte a pixel (see <see cref="Palette"/>), so that a picture many metres wide is drawn
/// piece by piece. It begins with whatever was in its memory: all of it must be painted. All coordinates are those of the whole
/// picture in pixels, y down; what lies outside the band is
/// left out.
/// </summary>
internal sealed class IndexedBitmap : IDisposable
{
    private readonly byte[] _bytes;

    public IndexedBitmap(int width, int top, int rows, double pixelsPerMm)
    {
        Width = width;
        Top = top;
        Rows = rows;
        PixelsPerMm = pixelsPerMm;
        _bytes = ArrayPool<byte>.Shared.Rent((width + 1) * rows);
        for (int row = 0; row < rows; row++)
        {
            _bytes[row * (width + 1)] = 0;
        }
    }

    public int Width { get; }

    public int Top { get; }

    public int Rows { get; }

    public int Bottom => Top + Rows;

    public double PixelsPerMm { get; }

    /// <summary>The colours that its bytes stand for.</summary>
    public DyePalette Palette { get; init; } = DyePalette.Usual;

    /// <summary>All rows, each with PNG's filter byte (0) before it.</summary>
    public ReadOnlySpan<byte> Bytes => _bytes.AsSpan(0, (Width + 1) * Rows);

    public void Dispose() => ArrayPool<byte>.Shared.Return(_bytes);

    /// <summary>The pixels of a row of the band.</summary>
    public Span<byte> Row(int y) => _bytes.AsSpan(((y - Top) * (Width + 1)) + 1, Width);

    public void Fill(double left, double top, double right, double bottom, byte colourAt)
    {
        var (x0, x1) = Clip(left, right, 0, Width);
        var (y0, y1) = Clip(top, bottom, Top, Bottom);
        for (int y = y0; y < y1; y++)
        {
            Row(y)[x0..Math.Max(x0, x1)].Fill(colourAt);
        }
    }

    /// <summary>Lays a see-through colour over a box whose sides may lie between pixels.</summary>
    /// <param name="strength">0–1.</param>
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    public void Box(double left, double top, double right, double bottom, int colour, double strength = 1)
    {
        var dyes = Palette;
        int own = dyes.Own(colour);
        int x0 = Math.Max(0, (int)Math.Floor(left));
        int x1 = Math.Min(Width, (int)Math.Ceiling(right));
        int y0 = Math.Max(Top, (int)Math.Floor(top));
        int y1 = Math.Min(Bottom, (int)Math.Ceiling(bottom));
        for (int y = y0; y < y1; y++)
        {
            double tall = (Math.Min(bottom, y + 1) - Math.Max(top, y)) * strength * 256;
            var row = Row(y);
            for (int x = x0; x < x1; x++)
            {
                double wide = Math.Min(right, x + 1) - Math.Max(left, x);
                row[x] = dyes.Blend(dyes.ColourOf(row[x]), own, (int)(tall * wide));
            }
        }
    }

    /// <summary>A level line.</summary>
    public void Level(double left, double right, double y, double thickness, Ink ink)
    {
        var (colour, strength, dash) = ink;
        if (dash <= 0)
        {
            Box(left, y - (thickness / 2), right, y + (thickness / 2), colour, strength);
            return;
        }

        for (double x = left; x < right; x += 2 * dash)
        {
            Box(x, y - (thickness / 2), Math.Min(right, x + dash), y + (thickness / 2), colour, strength);
        }
    }

    /// <summary>An upright line.</summary>
    public void Upright(double x, double top, double bottom, double thickness, Ink ink)
    {
        var (colour, strength, dash) = ink;
        if (dash <= 0)
        {
            Box(x - (thickness / 2), top, x + (thickness / 2), bottom, colour, strength);
            return;
        }

        for (double y = top; y < bottom; y += 2 * dash)
        {
            Box(x - (thickness / 2), y, x + (thickness / 2), Math.Min(bottom, y + dash), colour, strength);
        }
    }

    /// <summary>Stamps a mask of 0–255 with its upper left corner at a pixel.</summary>
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    public void Stamp(ReadOnlySpan<byte> mask, int maskWidth, int left, int top, int colour)
    {
        var dyes = Palette;
        int own = dyes.Own(colour);
        for (int line = 0; line * maskWidth < mask.Length; line++)
        {
            int y = top + line;
            if (y < Top || y >= Bottom)
            {
                continue;
            }

            var row = Row(y);
            for (int column = 0; column < maskWidth; column++)
            {
                int part = mask[(line * maskWidth) + column];
                int x = left + column;
                if (part > 0 && x >= 0 && x < Width)
                {
                    row[x] = dyes.Blend(dyes.ColourOf(row[x]), own, part + (part >> 7));
                }
            }
        }
    }

    private static (int From, int To) Clip(double from, double to, int least, int most) =>
        (Math.Clamp((int)Math.Round(from), least, most), Math.Clamp((int)Math.Round(to), least, most));
}
