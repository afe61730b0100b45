using NameBand.Lettering.Outlines;

namespace NameBand.Lettering.Measuring;

/// <summary>
/// How wide a face's strokes are, as parts of the letter height: measured along the middle of the strokes of its
/// letters (A–Z and a–z, or the letters of the first script it covers) on a raster.
/// </summary>
/// <param name="Thinnest">Width below which seven hundredths of the strokes' length lie.</param>
/// <param name="MainStem">The middle one of all widths.</param>
internal sealed record StrokeWidths(double Thinnest, double MainStem)
{
    private const int PixelsPerLetterHeight = 200;
    private const int Margin = 3;
    private const double ThinPart = 0.07;

    /// <summary>Strokes thinner than this are specks of the raster.</summary>
    private const double LeastPixels = 2;

    /// <summary>How many glyphs are measured of a face whose script is not known here.</summary>
    private const int GlyphsOfUnknownScript = 60;

    public static StrokeWidths Of(Face face)
    {
        var widths = new List<double>();
        foreach (int glyph in GlyphsToMeasure(face))
        {
            var shape = face.Shape(glyph);
            if (!shape.Ink.IsEmpty && shape.Ink.WidthMm < 4 && shape.Ink.HeightMm < 4)
            {
                Measure(shape, widths);
            }
        }

        widths.Sort();
        return widths.Count == 0
            ? new StrokeWidths(0, 0)
            : new StrokeWidths(widths[(int)(ThinPart * widths.Count)], widths[widths.Count / 2]);
    }

    private static IEnumerable<int> GlyphsToMeasure(Face face) =>
        ScriptSample.All.FirstOrDefault(s => s.IsCoveredBy(face)) is { } sample
            ? sample.Letters.Select(c => (int)face.GlyphOf(c)).Distinct()
            : Enumerable.Range(1, Math.Min(GlyphsOfUnknownScript, face.GlyphCount - 1));

    private static void Measure(GlyphShape shape, List<double> widths)
    {
        int width = (int)(shape.Ink.WidthMm * PixelsPerLetterHeight) + (2 * Margin) + 1;
        int height = (int)(shape.Ink.HeightMm * PixelsPerLetterHeight) + (2 * Margin) + 1;
        double[] map = DistanceMap.Of(Fill(shape, width, height), width, height);
        for (int y = 1; y < height - 1; y++)
        {
            for (int x = 1; x < width - 1; x++)
            {
                int at = (y * width) + x;
                if (map[at] >= LeastPixels && IsMiddleOfStroke(map, at, width))
                {
                    // Twice the distance is half a pixel too much on average, as the middle falls on or between pixels.
                    widths.Add(((2 * map[at]) - 0.5) / PixelsPerLetterHeight);
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

    /// <summary>Pixels whose middle lies inside, by the even-odd rule along each row.</summary>
    private static bool[] Fill(GlyphShape shape, int width, int height)
    {
        var inside = new bool[width * height];
        var crossings = new List<double>();
        for (int row = 0; row < height; row++)
        {
            double y = shape.Ink.TopMm - ((row + 0.5 - Margin) / PixelsPerLetterHeight);
            crossings.Clear();
            foreach (var ring in shape.Outline.Rings)
            {
                var points = ring.Points;
                for (int i = 0, j = points.Length - 1; i < points.Length; j = i++)
                {
                    if (points[i].YMm > y != points[j].YMm > y)
                    {
                        crossings.Add(points[j].XMm + ((points[i].XMm - points[j].XMm) * (y - points[j].YMm) / (points[i].YMm - points[j].YMm)));
                    }
                }
            }

            crossings.Sort();
            for (int k = 0; k + 1 < crossings.Count; k += 2)
            {
                int from = Column(shape, crossings[k]), to = Column(shape, crossings[k + 1]);
                inside.AsSpan((row * width) + from, Math.Max(0, to - from)).Fill(true);
            }
        }

        return inside;
    }

    /// <summary>The first column whose middle lies right of a place.</summary>
    private static int Column(GlyphShape shape, double x) =>
        (int)Math.Ceiling(((x - shape.Ink.LeftMm) * PixelsPerLetterHeight) + Margin - 0.5);
}
