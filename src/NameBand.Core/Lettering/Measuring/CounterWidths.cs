using NameBand.Common;

namespace NameBand.Lettering.Measuring;

/// <summary>How wide the closed counters of letters are: the largest disc that each holds, as a part of the letter height.</summary>
internal static class CounterWidths
{
    /// <summary>Narrower ones are taken for slits where strokes meet, which are meant to close.</summary>
    private const double LeastPart = 0.04;

    /// <returns>The smallest; null where no letter has a counter.</returns>
    /// <param name="outlines">Of letters, at a letter height of 1 mm.</param>
    public static double? Smallest(IEnumerable<Outline> outlines)
    {
        double least = outlines.SelectMany(o => o.Rings).Where(r => r.SignedAreaMm2() < 0)
            .Select(DiscPart).Where(part => part >= LeastPart)
            .DefaultIfEmpty(double.PositiveInfinity).Min();
        return double.IsFinite(least) ? least : null;
    }

    private static double DiscPart(Ring counter)
    {
        var raster = InkRaster.Of([counter]);
        double pixels = DistanceMap.Of(raster.Inside, raster.Width, raster.Height).Max();
        // As for strokes: twice the distance is half a pixel too much on average.
        return Math.Max(0, (2 * pixels) - 0.5) / InkRaster.PixelsPerLetterHeight;
    }
}
