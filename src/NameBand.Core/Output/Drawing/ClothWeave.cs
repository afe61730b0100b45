using System.Collections.Concurrent;
using System.Runtime.CompilerServices;

namespace NameBand.Output.Drawing;

/// <summary>
/// A plain weave of cotton to lay under everything, faint enough not to be read as stitches: warp and weft change places,
/// threads differ a little in weight, and a dark fleck is left here and there as in undyed cloth.
/// </summary>
internal sealed class ClothWeave
{
    // The tile's width and height are long enough not to be seen repeating, short enough to compress.
    private const int TileWidth = 384;
    private const int TileHeight = 192;

    private readonly byte[] _levels;

    // The tile in a cloth's colours, by the first of them: a bent strip is laid one column of pixels at a time.
    private readonly ConcurrentDictionary<byte, byte[]> _dyed = new();

    private ClothWeave(double pixelsPerMm) => _levels = Make(pixelsPerMm);

    private static readonly Lazy<ClothWeave>[] Kept =
        [.. Enumerable.Range(0, 9).Select(scale => new Lazy<ClothWeave>(() => new ClothWeave(Math.Max(1, scale))))];

    /// <summary>The weave at a scale of 1–8 whole pixels a millimetre.</summary>
    public static ClothWeave At(double pixelsPerMm) => Kept[Math.Clamp((int)Math.Round(pixelsPerMm), 1, 8)].Value;

    /// <summary>Fills rows of a picture with cloth of one colour.</summary>
    /// <param name="clothAt">First of the cloth's colours among <see cref="Palette"/>.</param>
    public void Lay(IndexedBitmap picture, double left, double top, double right, double bottom, byte clothAt)
    {
        int x0 = Math.Clamp((int)Math.Round(left), 0, picture.Width);
        int x1 = Math.Clamp((int)Math.Round(right), x0, picture.Width);
        int y0 = Math.Max(picture.Top, (int)Math.Round(top));
        int y1 = Math.Min(picture.Bottom, (int)Math.Round(bottom));
        byte[] dyed = _dyed.GetOrAdd(clothAt, Dyed);
        for (int y = y0; y < y1; y++)
        {
            var tile = dyed.AsSpan(y % TileHeight * TileWidth, TileWidth);
            var row = picture.Row(y);
            for (int x = x0; x < x1;)
            {
                int part = Math.Min(TileWidth - (x % TileWidth), x1 - x);
                tile.Slice(x % TileWidth, part).CopyTo(row[x..]);
                x += part;
            }
        }
    }

    private byte[] Dyed(byte clothAt) => Array.ConvertAll(_levels, level => (byte)(level + clothAt));

    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    private static byte[] Make(double pixelsPerMm)
    {
        // About 2.7 threads a millimetre, as in 68 × 68 cotton, in whole pixels so that the tile closes.
        int thread = pixelsPerMm >= 6 ? 3 : pixelsPerMm >= 4 ? 2 : 1;
        double depth = pixelsPerMm >= 6 ? 1.0 : 0.55;
        var levels = new byte[TileWidth * TileHeight];
        for (int y = 0; y < TileHeight; y++)
        {
            for (int x = 0; x < TileWidth; x++)
            {
                int warp = x / thread;
                int weft = y / thread;
                bool warpOnTop = ((warp + weft) & 1) == 0;
                double across = thread == 1 ? 0 : warpOnTop ? Bulge(x % thread, thread) : Bulge(y % thread, thread);
                double weight = warpOnTop ? Noise(warp, 1) : Noise(weft, 2);
                double level = 7.3
                    + (depth * ((1.7 * across) + (1.5 * weight) + (warpOnTop ? 0.5 : -0.5) + (0.8 * Noise((warp * 977) + weft, 3))));
                levels[(y * TileWidth) + x] = (byte)Math.Clamp(Math.Round(level), 2, Palette.WeaveLevels - 1);
            }
        }

        for (int n = 0; n < 7; n++)
        {
            int x = (int)((Noise(n, 11) + 1) * 0.499 * (TileWidth - 6));
            int y = (int)((Noise(n, 12) + 1) * 0.499 * (TileHeight - 2));
            for (int i = 0; i < thread + (n % 3); i++)
            {
                levels[(y * TileWidth) + x + i] = (byte)(n % 2);
            }
        }

        return levels;
    }

    private static double Bulge(int pixel, int thread) => thread == 2 ? (pixel == 0 ? 0.5 : -0.5) : pixel == 1 ? 0.7 : -0.5;

    /// <summary>A number in −1…1 that is always the same for the same arguments.</summary>
    private static double Noise(int n, uint kind)
    {
        uint h = ((uint)n * 0x9E3779B1u) ^ (kind * 0x85EBCA77u);
        h = (h ^ (h >> 15)) * 0x2C1B3C6Du;
        h = (h ^ (h >> 12)) * 0x297A2D39u;
        h ^= h >> 15;
        return (h / (double)uint.MaxValue * 2) - 1;
    }
}
