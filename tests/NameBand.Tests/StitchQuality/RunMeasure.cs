using NameBand.Common;
using NameBand.Stitching;

namespace NameBand.Tests.StitchQuality;

internal static class RunMeasure
{
    /// <summary>
    /// 95th percentile of how far running stitches lie from the middle of the stroke: half the difference of the
    /// distances to the outline on both sides. Places where the stroke meets another one are left out: there the
    /// line across is more than 1.6 times as long as in the middle of all places.
    /// </summary>
    public static double Deviation(NeedlePath path, Outline outline)
    {
        var across = new List<(double Width, double Off)>();
        for (int i = 1; i < path.Steps.Length; i++)
        {
            var (a, b) = (path.Steps[i - 1], path.Steps[i]);
            double length = a.At.DistanceTo(b.At);
            if (a.Action != NeedleAction.Stitch || b.Action != NeedleAction.Stitch || b.Kind != StitchKind.Running || length < 0.2)
            {
                continue;
            }

            var normal = new Point(-(b.At.YMm - a.At.YMm) / length, (b.At.XMm - a.At.XMm) / length);
            foreach (double t in (ReadOnlySpan<double>)[0.25, 0.5, 0.75])
            {
                var p = a.At + ((b.At - a.At) * t);
                double left = Reach(outline, p, normal);
                double right = Reach(outline, p, normal * -1);
                across.Add((left + right, Math.Abs(left - right) / 2));
            }
        }

        if (across.Count == 0)
        {
            return 0;
        }

        double middle = across.Select(w => w.Width).Order().ElementAt(across.Count / 2);
        var off = across.Where(w => w.Width < 1.6 * middle).Select(w => w.Off).Order().ToList();
        return off[(int)(0.95 * (off.Count - 1))];
    }

    private static double Reach(Outline outline, Point from, Point direction)
    {
        double best = 100;
        foreach (var ring in outline.Rings)
        {
            for (int i = 0, j = ring.Points.Length - 1; i < ring.Points.Length; j = i++)
            {
                var a = ring.Points[j] - from;
                var side = ring.Points[i] - ring.Points[j];
                double det = (direction.XMm * side.YMm) - (direction.YMm * side.XMm);
                if (Math.Abs(det) < 1e-15)
                {
                    continue;
                }

                double distance = ((a.XMm * side.YMm) - (a.YMm * side.XMm)) / det;
                double t = ((a.XMm * direction.YMm) - (a.YMm * direction.XMm)) / det;
                if (t >= 0 && t <= 1 && distance > 0)
                {
                    best = Math.Min(best, distance);
                }
            }
        }

        return best;
    }
}
