using System.Collections.Immutable;
using NameBand.Common;

namespace NameBand.Lettering.Measuring;

/// <summary>Rings at a letter height of 1 mm as pixels, true where the pixel's middle lies inside by the even-odd rule.</summary>
internal sealed record InkRaster(bool[] Inside, int Width, int Height)
{
    /// <summary>A stroke of a tenth of the height is 20 pixels wide and known to a fortieth, as half a pixel is lost.</summary>
    public const int PixelsPerLetterHeight = 200;

    private const int MarginPx = 3; // Pixels about the ink, so that what looks at a pixel's neighbours never leaves the raster.

    public static InkRaster Of(ImmutableArray<Ring> rings)
    {
        var ink = new Outline(rings).Bounds();
        int width = (int)(ink.WidthMm * PixelsPerLetterHeight) + (2 * MarginPx) + 1;
        int height = (int)(ink.HeightMm * PixelsPerLetterHeight) + (2 * MarginPx) + 1;
        var inside = new bool[width * height];
        var crossings = new List<double>();
        for (int row = 0; row < height; row++)
        {
            double y = ink.TopMm - ((row + 0.5 - MarginPx) / PixelsPerLetterHeight);
            crossings.Clear();
            foreach (var ring in rings)
            {
                AddCrossings(ring.Points, y, crossings);
            }

            crossings.Sort();
            for (int k = 0; k + 1 < crossings.Count; k += 2)
            {
                int from = Column(ink, crossings[k]), to = Column(ink, crossings[k + 1]);
                inside.AsSpan((row * width) + from, Math.Max(0, to - from)).Fill(true);
            }
        }

        return new InkRaster(inside, width, height);
    }

    private static void AddCrossings(ImmutableArray<Point> points, double y, List<double> crossings)
    {
        for (int i = 0, j = points.Length - 1; i < points.Length; j = i++)
        {
            if (points[i].YMm > y != points[j].YMm > y)
            {
                crossings.Add(points[j].XMm + ((points[i].XMm - points[j].XMm) * (y - points[j].YMm) / (points[i].YMm - points[j].YMm)));
            }
        }
    }

    /// <summary>The first column whose middle lies right of a place.</summary>
    private static int Column(Box ink, double x) =>
        (int)Math.Ceiling(((x - ink.LeftMm) * PixelsPerLetterHeight) + MarginPx - 0.5);
}
