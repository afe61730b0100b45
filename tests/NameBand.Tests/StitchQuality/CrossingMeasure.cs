using NameBand.Common;
using NameBand.Stitching;

namespace NameBand.Tests.StitchQuality;

/// <summary>
/// How square the crossings lie, read from the needle path alone: a crossing goes from a needle point to the middle of its
/// two neighbours on the other side; the centre line joins the middles of the stitches.
/// </summary>
internal readonly record struct CrossingMeasure(double Median, double Worst95, int Count, int Crossed)
{
    public static CrossingMeasure Of(NeedlePath path)
    {
        var (crossings, crossed) = Read(path);
        var angles = crossings.Select(r => r.Degrees).Order().ToList();
        return angles.Count == 0
            ? default
            : new CrossingMeasure(angles[angles.Count / 2], angles[(int)(0.95 * (angles.Count - 1))], angles.Count, crossed);
    }

    /// <summary>Every crossing with its angle to the normal, and how many cross.</summary>
    public static (List<(Point From, Point To, double Degrees)> Crossings, int Crossed) Read(NeedlePath path)
    {
        var angles = new List<(Point, Point, double)>();
        int crossed = 0;
        int start = 0;
        for (int i = 0; i <= path.Steps.Length; i++)
        {
            if (i < path.Steps.Length && path.Steps[i] is { Action: NeedleAction.Stitch, Kind: StitchKind.Satin })
            {
                continue;
            }

            if (i - start >= 7)
            {
                var column = new List<Point>();
                for (int k = start; k < i; k++)
                {
                    column.Add(path.Steps[k].At);
                }

                Add(column, angles);
                crossed += CountCrossed(column);
            }

            start = i + 1;
        }

        return (angles, crossed);
    }

    private static void Add(List<Point> p, List<(Point From, Point To, double Degrees)> angles)
    {
        var centre = CentreLine(p);
        for (int i = 1; i + 1 < p.Count; i++)
        {
            var crossing = p[i] - ((p[i - 1] + p[i + 1]) * 0.5);
            var along = centre[Math.Min(p.Count - 1, i + 2)] - centre[Math.Max(0, i - 2)];
            double lr = Length(crossing);
            double la = Length(along);
            if (lr > 0.2 && la > 0.1)
            {
                double sine = Math.Abs((crossing.XMm * along.XMm) + (crossing.YMm * along.YMm)) / (lr * la);
                angles.Add((p[i], (p[i - 1] + p[i + 1]) * 0.5, Math.Asin(Math.Min(1, sine)) * 180 / Math.PI));
            }
        }
    }

    /// <summary>Middles of the stitches, meaned over their neighbours so that a short crossing does not bend the line.</summary>
    private static List<Point> CentreLine(List<Point> p)
    {
        var line = p;
        for (int round = 0; round < 2; round++)
        {
            var from = line;
            int last = from.Count - 1;
            line = [.. from.Select((at, i) => i == 0 ? (at + from[1]) * 0.5
                : i == last ? (at + from[last - 1]) * 0.5
                : (from[i - 1] + (at * 2) + from[i + 1]) * 0.25)];
        }

        return line;
    }

    private static double Length(Point p) => p.DistanceTo(new Point(0, 0));

    private static int CountCrossed(List<Point> p)
    {
        int count = 0;
        for (int i = 0; i + 1 < p.Count; i++)
        {
            for (int j = i + 2; j + 1 < p.Count && j < i + 8; j++)
            {
                count += Cross(p[i], p[i + 1], p[j], p[j + 1]) ? 1 : 0;
            }
        }

        return count;
    }

    private static bool Cross(Point a, Point b, Point c, Point d) =>
        Side(a, b, c) * Side(a, b, d) < -1e-12 && Side(c, d, a) * Side(c, d, b) < -1e-12;

    private static double Side(Point a, Point b, Point p) =>
        ((b.XMm - a.XMm) * (p.YMm - a.YMm)) - ((b.YMm - a.YMm) * (p.XMm - a.XMm));
}
