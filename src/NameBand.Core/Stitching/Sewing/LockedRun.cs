using NameBand.Common;

namespace NameBand.Stitching.Sewing;

/// <summary>
/// Stitches without a jump, with the lock stitches that hold their thread at both ends when it is cut there. Each lock is
/// two small stitches, in holes of their own where there is room, where the run itself has the fewest holes.
/// </summary>
internal sealed class LockedRun(NeedleStep[] steps)
{
    private readonly Lazy<(int After, NeedleStep[] Start, NeedleStep[] End)> _locks = new(() => LocksOf(steps));

    public NeedleStep[] Steps => steps;

    /// <summary>The first lock is sewn after this step, on the way to the next one.</summary>
    public int StartAfter => _locks.Value.After;

    public NeedleStep[] StartLock => _locks.Value.Start;

    public NeedleStep[] EndLock => _locks.Value.End;

    /// <summary>Shorter ones hold nothing: common practice, no source.</summary>
    public const double ShortestLockMm = 0.4;

    // A lock's stitch is a hair longer than the 0.4 mm that it must have; beside it stays the least stitch, and its place is sought in
    // steps of a third of a thread. Our assumption.
    private const double LockMm = 0.42;
    private const double ShortestMm = 0.3;
    private const double SlideMm = 0.15;

    /// <summary>Holes are counted in discs of 1 mm (docs/cloths.md), a little wider than the hole of a 75/11 needle, 0.75 mm.</summary>
    public const double DiscRadiusMm = 0.5;

    /// <summary>The thread is held at latest when it has run so far. Our assumption: satin lies over all of it.</summary>
    private const double LatestStartMm = 6;

    /// <summary>So many of the nearest holes of the run are looked at for a lock where no single stitch has room for one.</summary>
    private const int MostLookedAt = 14;

    /// <summary>Sought when they are wanted: most runs are only compared with others, or joined.</summary>
    private static (int After, NeedleStep[] Start, NeedleStep[] End) LocksOf(NeedleStep[] steps)
    {
        if (steps.Length < 2)
        {
            return (0, [], []);
        }

        var holes = steps.Select(s => s.At).ToList();
        var (after, start) = Start(steps, holes);
        holes.AddRange(start);
        return (after, [.. start.Select(Lock)], [.. End(steps, holes).Select(Lock)]);
    }

    private static NeedleStep Lock(Point at) => new(NeedleAction.Stitch, StitchKind.Lock, at);

    /// <summary>Forward on one of the first stitches and a little back, before satin covers them.</summary>
    private static (int After, Point[] Lock) Start(NeedleStep[] steps, List<Point> holes)
    {
        (int After, Point[] Lock)? best = null;
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

        return best ?? (0, InOldHoles(steps[0].At, steps[1].At, steps.Take(MostLookedAt).Select(s => s.At)));
    }

    /// <summary>Back along the last stitch, and a little forward again or on to the stitch before it, so that it lies among its
    /// like.</summary>
    private static Point[] End(NeedleStep[] steps, List<Point> holes)
    {
        var (last, before) = (steps[^1].At, steps[^2].At);
        Point[]? best = null;
        int fewest = int.MaxValue;
        double length = last.DistanceTo(before);
        for (double first = LockMm; first + ShortestMm <= length; first += SlideMm)
        {
            var middle = On(last, before, first);
            var towards = steps.Length > 2 && steps[^2].Kind == StitchKind.Satin ? steps[^3].At : last;
            foreach (var second in new[] { On(last, before, first - LockMm), On(last, before, first + LockMm),
                On(before, towards, length - first) })
            {
                Point[] tried = [middle, second];
                int most = MostNear(holes, tried);
                if (most < fewest && middle.DistanceTo(second) >= ShortestLockMm
                    && second.DistanceTo(last) >= ShortestMm && second.DistanceTo(before) >= ShortestMm)
                {
                    fewest = most;
                    best = tried;
                }
            }
        }

        return best ?? InOldHoles(last, last, steps.TakeLast(MostLookedAt).Select(s => s.At));
    }

    /// <summary>
    /// Two stitches in holes that are there already: of a mark so small that it has no room for more. Of the holes far enough
    /// away the nearest one, and from there the one that is then nearest to where the needle goes on.
    /// </summary>
    private static Point[] InOldHoles(Point from, Point to, IEnumerable<Point> holes)
    {
        var all = holes.Append(from).ToList();
        var far = all.Where(h => h.DistanceTo(from) >= ShortestLockMm).ToList();
        if (far.Count == 0)
        {
            // No two holes are that far apart: the run is shorter than a lock stitch. It is stretched by a hair.
            var away = all.MaxBy(h => h.DistanceTo(from));
            var along = away.DistanceTo(from) < 1e-6 ? new Point(1, 0) : (away - from) * (1 / away.DistanceTo(from));
            far = [from + (along * LockMm)];
            all.AddRange(far);
        }

        var first = far.MinBy(h => h.DistanceTo(from));
        var second = all.Where(h => h.DistanceTo(first) >= ShortestLockMm)
            .MinBy(h => h.DistanceTo(to) < 1e-9 ? 0 : Math.Max(h.DistanceTo(to), ShortestMm));
        return [first, second];
    }

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
