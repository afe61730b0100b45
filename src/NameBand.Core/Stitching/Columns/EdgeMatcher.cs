using NameBand.Stitching.Geometry;
using NameBand.Stitching.Shapes;

namespace NameBand.Stitching.Columns;

/// <summary>
/// Pairs the places of two edges so that the crossings between them are as square to the stroke as the order along
/// both edges allows. The pairing is the cheapest way through a grid of places, so crossings can never change order.
/// </summary>
internal static class EdgeMatcher
{
    // A count: edges of 630 places each; longer ones are read more coarsely, so that time and memory stay bounded.
    private const int MostCells = 400_000;
    // Of the width, along the centre line: tried out on the faces of fonts-open (docs/stitching.md).
    private const double SmoothingPart = 0.35;
    // Places to both sides of the diagonal, beside a seventh of the edge: where edges are short that is nearly the whole grid. Our choice.
    private const int LeastReachPlaces = 16;

    /// <summary>Arcs on the left and right edge, both rising.</summary>
    public static (
        double Left, double Right)[] Match(
            ArcLengthPolyline left, ArcLengthPolyline right, double widthMm, double stepMm, bool closed, InsideMap inside)
    {
        int n = Math.Max(2, (int)Math.Ceiling(left.Length / stepMm)) + 1;
        int m = Math.Max(2, (int)Math.Ceiling(right.Length / stepMm)) + 1;
        while ((long)n * m > MostCells)
        {
            n = (n / 2) + 1;
            m = (m / 2) + 1;
        }

        var path = Cheapest(Places.Along(left, n, stepMm), Places.Along(right, m, stepMm), widthMm, inside);
        double la = left.Length / (n - 1);
        double lb = right.Length / (m - 1);
        var pairs = new (double Left, double Right)[path.Count];
        for (int i = 0; i < pairs.Length; i++)
        {
            pairs[i] = (path[i].I * la, path[i].J * lb);
        }

        return Smoothed(pairs, left.Length, right.Length, SmoothingPart * widthMm, closed);
    }

    /// <summary>
    /// The cheapest way through the grid, sought in a band about the diagonal. A way that comes to the edge of the band
    /// might do better outside, so it is sought again in one twice as wide.
    /// </summary>
    private static List<(int I, int J)> Cheapest(Places a, Places b, double width, InsideMap inside)
    {
        int most = Math.Max(a.Count, b.Count);
        for (int reach = Math.Max(LeastReachPlaces + (most / 7), b.Count / (a.Count - 1)); ; reach *= 2)
        {
            var band = new PairBand(a, b, Math.Min(reach, most), width, inside);
            if (band.Cheapest() is { } path)
            {
                return path;
            }
        }
    }

    /// <summary>
    /// Smooths the difference of the two arcs along their mean. A mean of neighbours changes no faster than what it
    /// was made of, so both arcs still rise.
    /// </summary>
    private static (double Left, double Right)[] Smoothed(
        (double Left, double Right)[] pairs, double leftLength, double rightLength, double window, bool closed)
    {
        double total = (leftLength + rightLength) / 2;
        int count = Math.Max(8, (int)Math.Ceiling(total / Math.Max(0.04, window / 8))) + 1;
        double step = total / (count - 1);
        var lag = new double[count];
        int k = 0;
        for (int i = 0; i < count; i++)
        {
            double s = i * step;
            while (k + 2 < pairs.Length && (pairs[k + 1].Left + pairs[k + 1].Right) / 2 < s)
            {
                k++;
            }

            var (p, q) = (pairs[k], pairs[Math.Min(k + 1, pairs.Length - 1)]);
            double ps = (p.Left + p.Right) / 2;
            double qs = (q.Left + q.Right) / 2;
            double t = qs - ps < 1e-12 ? 0 : Math.Clamp((s - ps) / (qs - ps), 0, 1);
            lag[i] = (p.Left - p.Right) + ((q.Left - q.Right - p.Left + p.Right) * t);
        }

        double end = leftLength - rightLength;
        int half = Math.Max(1, (int)Math.Round(window / 2 / step));
        for (int round = 0; round < 3; round++)
        {
            lag = Averaged(lag, half, end, closed);
        }

        var smooth = new (double, double)[count];
        for (int i = 0; i < count; i++)
        {
            double s = i * step;
            smooth[i] = (Math.Clamp(s + (lag[i] / 2), 0, leftLength), Math.Clamp(s - (lag[i] / 2), 0, rightLength));
        }

        return smooth;
    }

    /// <summary>A running mean; beyond an open end the difference is mirrored through its end value, which stays fixed.</summary>
    private static double[] Averaged(double[] lag, int half, double end, bool closed)
    {
        int n = lag.Length;
        var mean = new double[n];
        for (int i = 0; i < n; i++)
        {
            double sum = 0;
            for (int d = -half; d <= half; d++)
            {
                int j = i + d;
                if ((uint)j < (uint)lag.Length)
                {
                    sum += lag[j];
                }
                else if (j < 0)
                {
                    sum += closed ? lag[Math.Max(0, n - 1 + j)] - end : -lag[Math.Min(n - 1, -j)];
                }
                else
                {
                    sum += closed ? lag[Math.Min(n - 1, j - n + 1)] + end : (2 * end) - lag[Math.Max(0, (2 * (n - 1)) - j)];
                }
            }

            mean[i] = sum / ((2 * half) + 1);
        }

        return mean;
    }
}
