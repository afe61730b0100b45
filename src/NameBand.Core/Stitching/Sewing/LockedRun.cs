using NameBand.Common;

namespace NameBand.Stitching.Sewing;

/// <summary>
/// Stitches without a jump, with the lock stitches that hold their thread at both ends when it needs them. Each lock is
/// two small stitches in holes of their own, where the run itself has the fewest holes.
/// </summary>
/// <param name="StartAfter">The first lock is sewn after this step, on the way to the next one.</param>
internal sealed record LockedRun(NeedleStep[] Steps, int StartAfter, NeedleStep[] StartLock, NeedleStep[] EndLock)
{
    private const double LockMm = 0.4;
    private const double ShortestMm = 0.3;
    private const double SlideMm = 0.15;
    private const double DiscRadiusMm = 0.5;

    /// <summary>The thread is held at latest when it has run so far. Our assumption: satin lies over all of it.</summary>
    private const double LatestStartMm = 6;

    public static LockedRun Of(NeedleStep[] steps)
    {
        if (steps.Length < 2)
        {
            return new LockedRun(steps, 0, [], []);
        }

        var holes = steps.Select(s => s.At).ToList();
        var (after, start) = Start(steps, holes);
        holes.AddRange(start);
        return new LockedRun(steps, after, [.. start.Select(Lock)], [.. End(steps, holes).Select(Lock)]);
    }

    private static NeedleStep Lock(Point at) => new(NeedleAction.Stitch, StitchKind.Lock, at);

    /// <summary>Forward on one of the first stitches and a little back, before satin covers them.</summary>
    private static (int After, Point[] Lock) Start(NeedleStep[] steps, List<Point> holes)
    {
        var best = (After: 0, Lock: Fallback(steps[0].At, steps[1].At));
        int fewest = int.MaxValue;
        double gone = 0;
        for (int i = 0; i + 1 < steps.Length && gone < LatestStartMm && steps[i + 1].Kind != StitchKind.Satin; i++)
        {
            var (from, to) = (steps[i].At, steps[i + 1].At);
            double length = from.DistanceTo(to);
            for (double back = ShortestMm; back + LockMm + ShortestMm <= length; back += SlideMm)
            {
                Point[] tried = [On(from, to, back + LockMm), On(from, to, back)];
                int most = MostNear(holes, tried);
                if (most < fewest)
                {
                    fewest = most;
                    best = (i, tried);
                }
            }

            gone += length;
        }

        return best;
    }

    /// <summary>Back along the last stitch, and a little forward again or on to the stitch before it, so that it lies among its like.</summary>
    private static Point[] End(NeedleStep[] steps, List<Point> holes)
    {
        var (last, before) = (steps[^1].At, steps[^2].At);
        var best = Fallback(last, before);
        int fewest = int.MaxValue;
        double length = last.DistanceTo(before);
        for (double first = ShortestMm; first + ShortestMm <= length; first += SlideMm)
        {
            var middle = On(last, before, first);
            var towards = steps.Length > 2 && steps[^2].Kind == StitchKind.Satin ? steps[^3].At : last;
            foreach (var second in new[] { On(last, before, first - LockMm), On(last, before, first + LockMm), On(before, towards, length - first) })
            {
                Point[] tried = [middle, second];
                int most = MostNear(holes, tried);
                if (most < fewest && middle.DistanceTo(second) >= ShortestMm && second.DistanceTo(last) >= ShortestMm && second.DistanceTo(before) >= ShortestMm)
                {
                    fewest = most;
                    best = tried;
                }
            }
        }

        return best;
    }

    private static Point[] Fallback(Point from, Point to) => [On(from, to, 2 * LockMm), On(from, to, LockMm)];

    private static Point On(Point from, Point to, double by)
    {
        double length = from.DistanceTo(to);
        return length < 1e-6 ? from : from + ((to - from) * (Math.Clamp(by, 0, length) / length));
    }

    /// <summary>Most holes about one of the new ones.</summary>
    private static int MostNear(List<Point> holes, Point[] added)
    {
        int most = 0;
        foreach (var p in added)
        {
            int count = 0;
            foreach (var hole in holes)
            {
                count += hole.DistanceTo(p) <= DiscRadiusMm ? 1 : 0;
            }

            most = Math.Max(most, count);
        }

        return most;
    }
}
