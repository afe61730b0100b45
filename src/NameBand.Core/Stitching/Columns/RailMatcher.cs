using NameBand.Stitching.Geometry;
using NameBand.Stitching.Shapes;

namespace NameBand.Stitching.Columns;

/// <summary>
/// Pairs the places of two rails so that the rungs between them are as square to the stroke as the order along
/// both rails allows. The pairing is the cheapest way through a grid of places, so rungs can never change order.
/// </summary>
internal static class RailMatcher
{
    private const int MostCells = 400_000;
    private const double LengthWeight = 0.012;
    private const double SmoothingPart = 0.5;
    private const double OutsideCost = 1;
    private const double UnevenWeight = 0.04;

    /// <summary>Arcs on the left and right rail, both rising.</summary>
    public static List<(double Left, double Right)> Match(Trace left, Trace right, double widthMm, double stepMm, bool closed, InsideMap inside)
    {
        int n = Math.Max(2, (int)Math.Ceiling(left.Length / stepMm)) + 1;
        int m = Math.Max(2, (int)Math.Ceiling(right.Length / stepMm)) + 1;
        while ((long)n * m > MostCells)
        {
            n = (n / 2) + 1;
            m = (m / 2) + 1;
        }

        var a = Places(left, n, stepMm);
        var b = Places(right, m, stepMm);
        var path = Cheapest(a, b, widthMm, inside);
        double la = left.Length / (n - 1);
        double lb = right.Length / (m - 1);
        var pairs = path.Select(p => (p.I * la, p.J * lb)).ToList();
        return Smoothed(pairs, left.Length, right.Length, SmoothingPart * widthMm, closed);
    }

    private static (Vec At, Vec Direction)[] Places(Trace rail, int count, double step)
    {
        var places = new (Vec, Vec)[count];
        for (int i = 0; i < count; i++)
        {
            double s = rail.Length * i / (count - 1);
            places[i] = (rail.At(s), rail.Direction(s, 1.2 * step));
        }

        return places;
    }

    private static List<(int I, int J)> Cheapest((Vec At, Vec Direction)[] a, (Vec At, Vec Direction)[] b, double width, InsideMap inside)
    {
        int n = a.Length;
        int m = b.Length;
        var cost = new double[n * m];
        var step = new byte[n * m];
        double square = 1 / (width * width);
        for (int i = 0; i < n; i++)
        {
            for (int j = 0; j < m; j++)
            {
                var across = b[j].At - a[i].At;
                double length2 = (across.X * across.X) + (across.Y * across.Y);
                double slant = 0;
                if (length2 > 1e-12)
                {
                    double lean = Vec.Dot(across, a[i].Direction + b[j].Direction);
                    slant = lean * lean / (4 * length2);
                }

                double here = slant + (LengthWeight * length2 * square);
                if (length2 * square > 2.2 && !inside.Has(Vec.Mix(a[i].At, b[j].At, 0.5)))
                {
                    here += OutsideCost;
                }

                int at = (i * m) + j;
                if (i == 0 && j == 0)
                {
                    cost[at] = here;
                    continue;
                }

                double best = double.PositiveInfinity;
                byte from = 0;
                if (i > 0 && j > 0)
                {
                    best = cost[at - m - 1] + (2 * here);
                }

                if (i > 0 && cost[at - m] + here + UnevenWeight < best)
                {
                    best = cost[at - m] + here + UnevenWeight;
                    from = 1;
                }

                if (j > 0 && cost[at - 1] + here + UnevenWeight < best)
                {
                    best = cost[at - 1] + here + UnevenWeight;
                    from = 2;
                }

                cost[at] = best;
                step[at] = from;
            }
        }

        var path = new List<(int, int)>();
        int x = n - 1;
        int y = m - 1;
        path.Add((x, y));
        while (x > 0 || y > 0)
        {
            byte from = step[(x * m) + y];
            x -= from != 2 ? 1 : 0;
            y -= from != 1 ? 1 : 0;
            path.Add((x, y));
        }

        path.Reverse();
        return path;
    }

    /// <summary>
    /// Smooths the difference of the two arcs along their mean. A mean of neighbours changes no faster than what it
    /// was made of, so both arcs still rise.
    /// </summary>
    private static List<(double Left, double Right)> Smoothed(
        List<(double Left, double Right)> pairs, double leftLength, double rightLength, double window, bool closed)
    {
        double total = (leftLength + rightLength) / 2;
        int count = Math.Max(8, (int)Math.Ceiling(total / Math.Max(0.04, window / 8))) + 1;
        double step = total / (count - 1);
        var lag = new double[count];
        int k = 0;
        for (int i = 0; i < count; i++)
        {
            double s = i * step;
            while (k + 2 < pairs.Count && (pairs[k + 1].Left + pairs[k + 1].Right) / 2 < s)
            {
                k++;
            }

            var (p, q) = (pairs[k], pairs[Math.Min(k + 1, pairs.Count - 1)]);
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

        var smooth = new List<(double, double)>(count);
        for (int i = 0; i < count; i++)
        {
            double s = i * step;
            smooth.Add((Math.Clamp(s + (lag[i] / 2), 0, leftLength), Math.Clamp(s - (lag[i] / 2), 0, rightLength)));
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
                if (j < 0)
                {
                    sum += closed ? lag[Math.Max(0, n - 1 + j)] - end : -lag[Math.Min(n - 1, -j)];
                }
                else if (j >= n)
                {
                    sum += closed ? lag[Math.Min(n - 1, j - n + 1)] + end : (2 * end) - lag[Math.Max(0, (2 * (n - 1)) - j)];
                }
                else
                {
                    sum += lag[j];
                }
            }

            mean[i] = sum / ((2 * half) + 1);
        }

        return mean;
    }
}
