namespace NameBand.Lettering.Measuring;

/// <summary>
/// Exact Euclidean distance of each pixel to the nearest one outside, by the lower envelope of parabolas
/// (Felzenszwalb and Huttenlocher, Distance Transforms of Sampled Functions, 2012).
/// </summary>
internal static class DistanceMap
{
    private const double FarPx2 = 1e12; // In pixels squared: beyond any raster's diagonal, and small enough to be added to without loss.

    /// <param name="inside">Row by row, true inside.</param>
    public static double[] Of(ReadOnlySpan<bool> inside, int width, int height)
    {
        var map = new double[width * height];
        for (int i = 0; i < map.Length; i++)
        {
            map[i] = inside[i] ? FarPx2 : 0;
        }

        int longest = Math.Max(width, height);
        var line = new Line(new double[longest], new double[longest], new int[longest], new double[longest + 1]);
        for (int x = 0; x < width; x++)
        {
            Sweep(map, x, width, height, line);
        }

        for (int y = 0; y < height; y++)
        {
            Sweep(map, y * width, 1, width, line);
        }

        for (int i = 0; i < map.Length; i++)
        {
            map[i] = Math.Sqrt(map[i]);
        }

        return map;
    }

    private static void Sweep(double[] map, int start, int step, int count, Line line)
    {
        var (from, to, parabola, bound) = line;
        for (int i = 0; i < count; i++)
        {
            from[i] = map[start + (i * step)];
        }

        int last = 0;
        parabola[0] = 0;
        bound[0] = double.NegativeInfinity;
        bound[1] = double.PositiveInfinity;
        for (int i = 1; i < count; i++)
        {
            double meet = Meet(from, parabola[last], i);
            while (meet <= bound[last])
            {
                last--;
                meet = Meet(from, parabola[last], i);
            }

            last++;
            parabola[last] = i;
            bound[last] = meet;
            bound[last + 1] = double.PositiveInfinity;
        }

        for (int i = 0, at = 0; i < count; i++)
        {
            while (bound[at + 1] < i)
            {
                at++;
            }

            double apart = i - parabola[at];
            to[i] = (apart * apart) + from[parabola[at]];
        }

        for (int i = 0; i < count; i++)
        {
            map[start + (i * step)] = to[i];
        }
    }

    /// <summary>Where the parabolas of two pixels of a line cross.</summary>
    private static double Meet(double[] from, int p, int q) =>
        ((from[q] + ((double)q * q)) - (from[p] + ((double)p * p))) / (2.0 * (q - p));

    private readonly record struct Line(double[] From, double[] To, int[] Parabola, double[] Bound);
}
