using NameBand.Common;

namespace NameBand.Lettering.Measuring;

/// <summary>
/// How wide a face's strokes are, as parts of the letter height: measured along the middle of the strokes of its
/// letters (A–Z and a–z, or the letters of the first script it covers) on a raster.
/// </summary>
/// <param name="Thinnest">Width below which seven hundredths of the strokes' length lie.</param>
/// <param name="MainStem">The middle one of all widths.</param>
internal sealed record StrokeWidths(double Thinnest, double MainStem)
{
    // Of the strokes' length: tips and joins are thinner than any stroke, and fill less than that. Our assumption.
    private const double ThinPart = 0.07;

    /// <summary>Strokes thinner than this are specks of the raster.</summary>
    private const double LeastPixels = 2;

    /// <param name="outlines">Of letters, at a letter height of 1 mm.</param>
    public static StrokeWidths Of(IEnumerable<Outline> outlines)
    {
        var widths = new List<double>();
        foreach (var outline in outlines)
        {
            Measure(InkRaster.Of(outline.Rings), widths);
        }

        widths.Sort();
        return widths.Count == 0
            ? new StrokeWidths(0, 0)
            : new StrokeWidths(widths[(int)(ThinPart * widths.Count)], widths[widths.Count / 2]);
    }

    private static void Measure(InkRaster raster, List<double> widths)
    {
        var (width, height) = (raster.Width, raster.Height);
        double[] map = DistanceMap.Of(raster.Inside, width, height);
        for (int y = 1; y < height - 1; y++)
        {
            for (int x = 1; x < width - 1; x++)
            {
                int at = (y * width) + x;
                if (map[at] >= LeastPixels && IsMiddleOfStroke(map, at, width))
                {
                    // Twice the distance is half a pixel too much on average, as the middle falls on or between pixels.
                    widths.Add(((2 * map[at]) - 0.5) / InkRaster.PixelsPerLetterHeight);
                }
            }
        }
    }

    /// <summary>
    /// Whether the distance falls off to both sides in some direction, while no neighbour is much higher: that leaves
    /// out the lines that run from the middle of a stroke into its corners.
    /// </summary>
    private static bool IsMiddleOfStroke(double[] map, int at, int width)
    {
        // How the middle of a stroke is told from its slopes: the distances beside it fall by most of a step, both sides taken together,
        // and none about it is a third of a pixel higher. Our assumption.
        const double Fall = 0.85, MostSlope = 0.3;
        double here = map[at], highest = 0;
        bool ridge = false;
        for (int direction = 0; direction < 4; direction++)
        {
            int step = direction switch { 0 => 1, 1 => width, 2 => width + 1, _ => width - 1 };
            double length = direction < 2 ? 1 : Math.Sqrt(2);
            double before = map[at - step], after = map[at + step];
            highest = Math.Max(highest, Math.Max(before, after));
            ridge |= before <= here && after <= here && (2 * here) - before - after > Fall * length;
        }

        return ridge && highest < here + MostSlope;
    }
}
