using System.Buffers;
using System.Numerics;
using NameBand.Stitching.Geometry;
using NameBand.Stitching.Shapes;

namespace NameBand.Stitching.Columns;

/// <summary>
/// The band of a grid of places in which the cheapest pairing of two edges is sought: dynamic time warping in a band about the
/// diagonal (H. Sakoe and S. Chiba, Dynamic Programming Algorithm Optimization for Spoken Word Recognition, IEEE Transactions on
/// Acoustics, Speech, and Signal Processing 26(1), 43–49, 1978; seen cited, not read).
/// </summary>
/// <param name="reach">How many places of the second edge the band reaches to both sides of the diagonal.</param>
internal sealed class PairBand(Places a, Places b, int reach, double widthMm, InsideMap inside)
{
    // What a pair costs beside its lean, which is 1 where it lies along the stroke: a little for its length, so that of two square ones
    // the shorter is taken; as much as lying along for one that leaves the outline; and some for a place that is paired twice. Our
    // assumption.
    private const double LengthWeight = 0.012;
    private const double OutsideCost = 1;
    private const double UnevenWeight = 0.04;
    // Widths squared: a pair shorter than one and a half widths is not looked at for leaving the outline.
    private const double SurelyInsideWidths2 = 2.2;

    private readonly double _square = 1 / (widthMm * widthMm);

    /// <summary>From the first pair to the last; null when the way comes to the edge of the band.</summary>
    public List<(int I, int J)>? Cheapest()
    {
        int wide = (2 * reach) + 1;
        byte[] steps = ArrayPool<byte>.Shared.Rent(a.Count * wide);
        double[] rows = ArrayPool<double>.Shared.Rent(3 * b.Count);
        try
        {
            Fill(steps, wide, rows.AsSpan(0, b.Count), rows.AsSpan(b.Count, b.Count), rows.AsSpan(2 * b.Count, b.Count));
            return Way(steps, wide);
        }
        finally
        {
            ArrayPool<byte>.Shared.Return(steps);
            ArrayPool<double>.Shared.Return(rows);
        }
    }

    private int First(int i) => Math.Max(0, (int)((long)i * (b.Count - 1) / (a.Count - 1)) - reach);

    private int Last(int i) => Math.Min(b.Count - 1, (int)((long)i * (b.Count - 1) / (a.Count - 1)) + reach);

    /// <summary>For each pair of the band how the cheapest way to it comes there: 0 along both edges, 1 along the first, 2 along
    /// the second.</summary>
    private void Fill(byte[] steps, int wide, Span<double> before, Span<double> cost, Span<double> here)
    {
        before.Fill(double.PositiveInfinity);
        for (int i = 0; i < a.Count; i++)
        {
            int first = First(i);
            int last = Last(i);
            CostsOfPairs(i, first, last, here);
            var row = steps.AsSpan(i * wide, wide);
            double diagonal = i > 0 && first > First(i - 1) ? before[first - 1] : double.PositiveInfinity;
            double beside = double.PositiveInfinity;
            for (int j = first; j <= last; j++)
            {
                double pair = here[j];
                double best = diagonal + (2 * pair);
                byte from = 0;
                double uneven = before[j] + pair + UnevenWeight;
                if (uneven < best)
                {
                    (best, from) = (uneven, 1);
                }

                uneven = beside + pair + UnevenWeight;
                if (uneven < best)
                {
                    (best, from) = (uneven, 2);
                }

                if (i == 0 && j == 0)
                {
                    best = pair;
                }

                diagonal = before[j];
                beside = best;
                cost[j] = best;
                row[j - first] = from;
            }

            // What the next row may ask for and this one did not reach.
            int next = i + 1 < a.Count ? Last(i + 1) : last;
            cost[(last + 1)..(next + 1)].Fill(double.PositiveInfinity);
            var turned = before;
            before = cost;
            cost = turned;
        }
    }

    /// <summary>What each pair of a row costs: the lean of its crossing against both edges, its length, and ground that it
    /// crosses outside.</summary>
    private void CostsOfPairs(int i, int first, int last, Span<double> here)
    {
        double x = a.X[i];
        double y = a.Y[i];
        double alongX = a.AlongX[i];
        double alongY = a.AlongY[i];
        int j = first;
        double longest = 0;
        var longestOf = Vector<double>.Zero;
        for (int lanes = Vector<double>.Count; j + lanes <= last + 1; j += lanes)
        {
            var dx = new Vector<double>(b.X, j) - new Vector<double>(x);
            var dy = new Vector<double>(b.Y, j) - new Vector<double>(y);
            var length2 = (dx * dx) + (dy * dy);
            longestOf = Vector.Max(longestOf, length2);
            var lean = (dx * (new Vector<double>(alongX) + new Vector<double>(b.AlongX, j)))
                + (dy * (new Vector<double>(alongY) + new Vector<double>(b.AlongY, j)));
            var slant = Vector.ConditionalSelect(
                Vector.GreaterThan(length2, new Vector<double>(1e-12)), lean * lean / (length2 * 4), Vector<double>.Zero);
            (slant + (length2 * LengthWeight * _square)).CopyTo(here[j..]);
        }

        for (; j <= last; j++)
        {
            double dx = b.X[j] - x;
            double dy = b.Y[j] - y;
            double length2 = (dx * dx) + (dy * dy);
            longest = Math.Max(longest, length2);
            double lean = (dx * (alongX + b.AlongX[j])) + (dy * (alongY + b.AlongY[j]));
            here[j] = (length2 > 1e-12 ? lean * lean / (length2 * 4) : 0) + (length2 * LengthWeight * _square);
        }

        for (int lane = 0; lane < Vector<double>.Count; lane++)
        {
            longest = Math.Max(longest, longestOf[lane]);
        }

        for (j = longest * _square > SurelyInsideWidths2 ? first : last + 1; j <= last; j++)
        {
            double dx = b.X[j] - x;
            double dy = b.Y[j] - y;
            if (((dx * dx) + (dy * dy)) * _square > SurelyInsideWidths2 && !inside.Has(new Vec(x + (dx * 0.5), y + (dy * 0.5))))
            {
                here[j] += OutsideCost;
            }
        }
    }

    private List<(int I, int J)>? Way(byte[] steps, int wide)
    {
        var path = new List<(int, int)>(a.Count + b.Count);
        int x = a.Count - 1;
        int y = b.Count - 1;
        path.Add((x, y));
        while (x > 0 || y > 0)
        {
            int first = First(x);
            if ((y == first && y > 0) || (y == Last(x) && y < b.Count - 1))
            {
                return null;
            }

            byte from = steps[(x * wide) + y - first];
            x -= from != 2 ? 1 : 0;
            y -= from != 1 ? 1 : 0;
            path.Add((x, y));
        }

        path.Reverse();
        return path;
    }
}
