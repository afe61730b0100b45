using NameBand.Common;

namespace NameBand.Layout.Pieces;

/// <summary>
/// How strips that lie side by side are best shifted against each other along the cloth, so that their hoopings cost least.
/// </summary>
/// <remarks>
/// For shifts that are given, taking at the leftmost name all that the field holds needs the fewest hoopings, and is counted
/// quickly. Two strips are tried at every second millimetre. Of more, one after the other is moved to where the count falls, or its last
/// hooping holds less, until none can be; from several starts, always the same. The shifts with the fewest hoopings are then cut
/// in earnest, and those with the least work are moved once more for the sake of segments.
/// </remarks>
internal sealed class LaneShifts(IReadOnlyList<HoopingLane> lanes, double fieldMm)
{
    // As docs/layout.md says: gaps are several millimetres wide, so that a finer step finds no other hoopings. Our choice.
    private const double FineStepMm = 2;

    /// <summary>For more than two strips, which take longer to try.</summary>
    private const double CoarseStepMm = 4;

    // Sixteen starts spread over the field: 5000 draws at random found no shifts a hundredth better (docs/layout.md).
    private const int MostStarts = 16;

    /// <summary>So many shifts of more than two strips are cut in earnest.</summary>
    private const int MostCut = 12;

    /// <summary>Names looked at in all counts together, so that long lists do not take long.</summary>
    private const int MostLooked = 1_000_000;

    private readonly double _bound = LaneCover.Bound(lanes);
    private readonly int[] _next = new int[lanes.Count];
    private int _looked;

    /// <summary>The shift of each strip, the least of them zero. Of equally good ones those that take the shortest cloth.</summary>
    public double[] Best()
    {
        if (lanes.Count < 2 || lanes.All(l => l.Count == 0))
        {
            return new double[lanes.Count];
        }

        var (shifts, work) = Cut(lanes.Count == 2 ? OfTwo() : [.. OfMany().Take(MostCut)]);
        return lanes.Count == 2 ? shifts : ForSegments(shifts, work);
    }

    /// <summary>Hoopings needed, the last one counted only as far as it is filled.</summary>
    internal double Count(double[] shifts)
    {
        Array.Clear(_next);
        int count = 0;
        double filled = 0;
        while (Leftmost(shifts) is var left && left < double.PositiveInfinity)
        {
            count++;
            filled = 0;
            for (int l = 0; l < _next.Length; l++)
            {
                int first = _next[l];
                if (first == lanes[l].Count)
                {
                    continue;
                }

                // A name that alone is as long as the field is sewn all the same.
                bool isFirst = lanes[l].LeftMm(first) + shifts[l] <= left;
                int to = isFirst ? lanes[l].Reach(first) : lanes[l].Within(first, left - shifts[l], fieldMm);
                if (to > first)
                {
                    _next[l] = to;
                    _looked += to - first;
                    filled = Math.Max(filled, lanes[l].RightMm(to - 1) + shifts[l] - left);
                }
            }
        }

        return Math.Max(0, count - 1) + Math.Min(1, filled / fieldMm);
    }

    private double Leftmost(double[] shifts)
    {
        double left = double.PositiveInfinity;
        for (int l = 0; l < _next.Length; l++)
        {
            left = _next[l] < lanes[l].Count ? Math.Min(left, lanes[l].LeftMm(_next[l]) + shifts[l]) : left;
        }

        return left;
    }

    private static double Hoopings(double count) => Math.Ceiling(count - Tolerance.Rounding);

    /// <summary>Every shift of two strips either way, the smallest first, of those with the fewest hoopings.</summary>
    private List<double[]> OfTwo()
    {
        var all = new List<(double[] Shifts, double Hoopings)>();
        for (double by = 0; by < fieldMm; by += FineStepMm)
        {
            foreach (double[] shifts in by == 0 ? [[0, 0]] : new double[][] { [0, by], [by, 0] })
            {
                all.Add((shifts, Hoopings(Count(shifts))));
            }
        }

        double fewest = all.Min(s => s.Hoopings);
        return [.. all.Where(s => s.Hoopings == fewest).Select(s => s.Shifts)];
    }

    /// <summary>Where strips come to lie that are moved one by one, of those with the fewest hoopings; the shortest cloths first.</summary>
    private IEnumerable<double[]> OfMany()
    {
        var all = new List<(double[] Shifts, double Hoopings)>();
        for (int start = 0; start < MostStarts && (start == 0 || _looked < MostLooked); start++)
        {
            double[] shifts = [.. lanes.Select((_, l) => fieldMm * Spread(start, l))];
            double count = Count(shifts);
            for (int l = lanes.Count - 1, still = 0; still < lanes.Count; l = (l + 1) % lanes.Count)
            {
                double before = count;
                double at = shifts[l];
                for (double by = 0; by < fieldMm; by += CoarseStepMm)
                {
                    shifts[l] = by;
                    double found = Count(shifts);
                    (count, at) = found < count - Tolerance.Rounding ? (found, by) : (count, at);
                }

                shifts[l] = at;
                still = count < before - Tolerance.Rounding ? 0 : still + 1;
            }

            all.Add((FromZero(shifts), Hoopings(count)));
        }

        double fewest = all.Min(s => s.Hoopings);
        return all.Where(s => s.Hoopings == fewest).Select(s => s.Shifts).OrderBy(s => s.Max());
    }

    /// <summary>Starts spread evenly over all shifts, the first in line: the multiples of powers of an irrational number.</summary>
    private static double Spread(int start, int lane) => start * Math.Pow(1.1673039782614187, -lane - 1) % 1;

    /// <summary>The first of those with the least work.</summary>
    private (double[] Shifts, double Work) Cut(IReadOnlyList<double[]> tried)
    {
        double[] best = tried[0];
        double least = double.PositiveInfinity;
        for (int i = 0; i < tried.Count && least > _bound + Tolerance.Rounding; i++)
        {
            double work = Work(tried[i], least);
            (best, least) = work < least - Tolerance.Rounding ? (tried[i], work) : (best, least);
        }

        return (best, least);
    }

    private double Work(double[] shifts, double below) =>
        new LaneCover([.. lanes.Select((l, i) => l.MovedTo(shifts[i]))], fieldMm, isScouting: true).LeastWork(below);

    /// <summary>Each strip moved where equally many hoopings hold fewer segments.</summary>
    private double[] ForSegments(double[] shifts, double work)
    {
        double most = Hoopings(Count(shifts));
        for (int l = 0; l < lanes.Count; l++)
        {
            double at = shifts[l];
            double[] moved = [.. shifts];
            for (double by = 0; by < fieldMm && work > _bound + Tolerance.Rounding && _looked < 2 * MostLooked; by += CoarseStepMm)
            {
                moved[l] = by;
                if (Count(moved) <= most && Work(moved, work) is var found && found < work - Tolerance.Rounding)
                {
                    (work, at) = (found, by);
                }
            }

            shifts = [.. shifts];
            shifts[l] = at;
        }

        return FromZero(shifts);
    }

    private static double[] FromZero(double[] shifts) => [.. shifts.Select(s => s - shifts.Min())];
}
