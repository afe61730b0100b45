using System.Runtime.InteropServices;
using NameBand.Stitching.Geometry;

namespace NameBand.Stitching.Sewing;

/// <summary>
/// The last step of a piece's satin. While it is laid the later one of two holes that would lie too near each other is moved in, which
/// bares the edge in narrow crotches. Here all holes about such a place are moved together: each along its edge, or in by no
/// more than it reaches past the outline, until all are far enough apart or no move makes it better. What is not better in the end is left
/// as it was.
/// </summary>
internal static class HoleSettling
{
    /// <summary>A hole drawn in by so much more than it reaches past the outline bares the edge.</summary>
    private const double BaresMm = 0.04;

    private const double AboutMm = 0.65; // Holes about one that was moved in take part: two and a half times the least gap.
    private const double TogetherMm = 1; // Places within a disc's width of one another are one crotch and are settled as one.
    private const double NearMm = 0.75; // The disc's radius, and as far again as a hole may be moved: one farther off costs nothing.
    private const double OpenMm = 0.5; // Between holes of one edge: farther apart, threads of 0.40 mm leave cloth bare.
    private const int Sweeps = 8; // A count: a cluster that has not come to rest by then is judged as it lies. Our choice.

    /// <summary>No disc of 1 mm comes to hold more holes than that, or than it held; one more may lie off the lattice.</summary>
    private const int MostInDisc = 10;
    private const int DenseFrom = 8; // Holes in a disc: a plain stroke has five by its satin alone, so from here on many meet.
    private const int FanHoles = 10; // Holes of one edge within a millimetre: as many as a disc may hold (docs/stitching.md).

    // What a place costs: another hole too near, counted and by how much; drawn in as far as the outline and beyond it; slid along the
    // edge; the thread beside it farther off than it covers; many holes about it, first little, then more. Tried out on the faces of
    // fonts-open. A hole that costs less than the one is left where it is, and a cluster that wins less than the other as it was laid.
    private const double NearCost = 0.6;
    private const double NearerCost = 15;
    private const double InCost = 0.3;
    private const double BareCost = 8;
    private const double SlideCost = 120;
    private const double OpenCost = 60;
    private const double LeastToMoveCost = 0.05;
    private const double LeastGainCost = 0.1;
    private const double HairCost = 1e-6; // What rounding leaves in a cost: two places within it are alike, and the first one stays.
    private const double InStepMm = 0.08; // A third of the least gap, as a hole is moved in while satin is laid.
    private const double LatticeMm = 0.2; // Of discs about a hole: finer than the 0.25 mm between two holes.
    private const double AroundMm = 0.6; // As far as that lattice goes aside: 0.57 mm to its corners.
    private const double ShortestMm = SewnRun.ShortestMm + 0.001; // A hair more, so that it holds when a file has rounded it.
    private const double LongestMm = 6.99; // Under the 7 mm of the longest stitch by the same rounding.
    private const int Window = 8; // Stitches before and behind that a moved one is held against: those farther off lie apart.
    private static readonly double[] DenseCosts = [0.4, 2];
    private static readonly double[] FanCosts = [2];
    private static readonly double[] Slides = [0, 0.05, -0.05, 0.1, -0.1, 0.15, -0.15];
    private static readonly double[] Insets = [0, 0.25, 0.5, 0.75, 1];

    public static void Settle(SewnRun run, List<EdgeHole> holes)
    {
        var needles = CollectionsMarshal.AsSpan(run.Needles);
        List<int>? drawnIn = null;
        for (int h = 0; h < holes.Count; h++)
        {
            if (holes[h].WidthMm < SatinLayer.LongMm
                && (InsetOf(holes[h], needles) > holes[h].ReachMm + BaresMm || IsInFan(h, CollectionsMarshal.AsSpan(holes), needles)))
            {
                (drawnIn ??= []).Add(h);
            }
        }

        while (drawnIn is { Count: > 0 })
        {
            new Cluster(needles, CollectionsMarshal.AsSpan(holes), TakeTogether(drawnIn, holes)).Settle();
        }
    }

    /// <summary>Whether so many holes of one edge lie in a disc that crossings must turn about a corner there.</summary>
    private static bool IsInFan(int hole, ReadOnlySpan<EdgeHole> holes, ReadOnlySpan<Needle> needles)
    {
        int last = hole;
        for (int i = 1; i < FanHoles; i++)
        {
            last = holes[last].After;
            if (last < 0)
            {
                return false;
            }
        }

        return (needles[holes[last].Needle].At - needles[holes[hole].Needle].At).Length < 2 * LockedRun.DiscRadiusMm;
    }

    private static double InsetOf(EdgeHole hole, ReadOnlySpan<Needle> needles) =>
        Vec.Dot(needles[hole.Needle].At - hole.Wanted, hole.Inward);

    /// <summary>Those that lie about one place.</summary>
    private static List<int> TakeTogether(List<int> left, List<EdgeHole> holes)
    {
        List<int> together = [left[^1]];
        left.RemoveAt(left.Count - 1);
        for (int k = 0; k < together.Count; k++)
        {
            var at = holes[together[k]].Wanted;
            for (int i = left.Count - 1; i >= 0; i--)
            {
                if ((holes[left[i]].Wanted - at).Length < TogetherMm)
                {
                    together.Add(left[i]);
                    left.RemoveAt(i);
                }
            }
        }

        return together;
    }

    /// <summary>The holes about one place.</summary>
    private readonly ref struct Cluster
    {
        private readonly Span<Needle> _needles;
        private readonly ReadOnlySpan<EdgeHole> _holes;
        private readonly List<int> _drawnIn;
        private readonly bool _isFan;
        private readonly List<int> _active = [];
        private readonly List<int[]> _near = [];
        private readonly List<int[]> _about = [];

        public Cluster(Span<Needle> needles, ReadOnlySpan<EdgeHole> holes, List<int> drawnIn)
        {
            _needles = needles;
            _holes = holes;
            _drawnIn = drawnIn;
            foreach (int h in drawnIn)
            {
                _isFan |= IsInFan(h, holes, needles);
            }

            for (int h = 0; h < holes.Length; h++)
            {
                foreach (int seed in drawnIn)
                {
                    if ((holes[seed].Wanted - holes[h].Wanted).Length < AboutMm && holes[h].WidthMm < SatinLayer.LongMm)
                    {
                        _active.Add(h);
                        break;
                    }
                }
            }

            foreach (int h in _active)
            {
                double within = NearMm + (_isFan ? SatinLayer.MostInsetMm : Math.Max(0, InsetOf(holes[h], needles)));
                List<int> near = [];
                List<int> about = [];
                for (int n = 0; n < needles.Length; n++)
                {
                    double far = (needles[n].At - holes[h].Wanted).Length;
                    if (n != holes[h].Needle && far < within + AroundMm)
                    {
                        about.Add(n);
                        if (far < within)
                        {
                            near.Add(n);
                        }
                    }
                }

                _near.Add([.. near]);
                _about.Add([.. about]);
            }
        }

        public void Settle()
        {
            var before = new Vec[_active.Count];
            for (int k = 0; k < before.Length; k++)
            {
                before[k] = At(k);
            }

            int most = Math.Max(MostInDisc, Densest());
            foreach (double dense in _isFan ? FanCosts : DenseCosts)
            {
                double cost = Sum(dense);
                Spread(before, dense);
                if (Sum(dense) <= cost - LeastGainCost && AllFit(before) && Densest() <= most)
                {
                    return;
                }

                for (int k = 0; k < before.Length; k++)
                {
                    Move(_active[k], before[k]);
                }
            }
        }

        /// <summary>All that were drawn in go back to the edge; then each hole in turn goes where it costs least.</summary>
        private void Spread(Vec[] before, double dense)
        {
            foreach (int h in _drawnIn)
            {
                if (!_isFan)
                {
                    Move(h, _holes[h].Wanted);
                }
            }

            bool isMoved = true;
            for (int sweep = 0; sweep < Sweeps && isMoved; sweep++)
            {
                isMoved = false;
                for (int k = 0; k < before.Length; k++)
                {
                    isMoved |= Better(k, before[k], dense);
                }
            }
        }

        private Vec At(int k) => _needles[_holes[_active[k]].Needle].At;

        private double Sum(double dense)
        {
            double sum = 0;
            for (int k = 0; k < _active.Count; k++)
            {
                sum += Cost(k, At(k), dense);
            }

            return sum;
        }

        private bool AllFit(Vec[] before)
        {
            for (int k = 0; k < before.Length; k++)
            {
                if (At(k) != before[k] && !Fits(_holes[_active[k]].Needle, At(k)))
                {
                    return false;
                }
            }

            return true;
        }

        /// <summary>Most holes in a disc of 1 mm about one of the cluster.</summary>
        private int Densest()
        {
            int most = 0;
            for (int k = 0; k < _active.Count; k++)
            {
                var at = At(k);
                if (InDisc(k, at) < DenseFrom - 1)
                {
                    continue;
                }

                for (int i = -2; i <= 2; i++)
                {
                    for (int j = -2; j <= 2; j++)
                    {
                        most = Math.Max(most, InDisc(k, at + new Vec(LatticeMm * i, LatticeMm * j)));
                    }
                }
            }

            return most;
        }

        /// <summary>The hole itself, where the disc lies about it, is counted too.</summary>
        private int InDisc(int k, Vec centre)
        {
            int count = (At(k) - centre).Length <= LockedRun.DiscRadiusMm ? 1 : 0;
            foreach (int n in _about[k])
            {
                count += (_needles[n].At - centre).Length <= LockedRun.DiscRadiusMm ? 1 : 0;
            }

            return count;
        }

        private void Move(int hole, Vec to)
        {
            int n = _holes[hole].Needle;
            _needles[n] = _needles[n] with { At = to };
        }

        /// <summary>Moves a hole to where it costs least.</summary>
        private bool Better(int k, Vec before, double dense)
        {
            var hole = _holes[_active[k]];
            var now = _needles[hole.Needle].At;
            double least = Cost(k, now, dense);
            if (least < LeastToMoveCost)
            {
                return false;
            }

            var best = now;
            foreach (double slide in Slides)
            {
                var on = Slid(hole, slide);
                if (slide != 0 && on == hole.Wanted)
                {
                    continue;
                }

                foreach (double inset in Insets)
                {
                    Try(on + (hole.Inward * (inset * hole.ReachMm)), (k, dense), ref best, ref least);
                }
            }

            double deep = Vec.Dot(before - hole.Wanted, hole.Inward);
            deep = _isFan ? Math.Max(deep, Math.Min(SatinLayer.MostInsetMm, SatinLayer.MostInsetPart * hole.WidthMm)) : deep;
            for (double inset = hole.ReachMm + InStepMm; inset < deep + BaresMm; inset += InStepMm)
            {
                Try(hole.Wanted + (hole.Inward * inset), (k, dense), ref best, ref least);
            }

            Move(_active[k], best);
            return best != now;
        }

        private void Try(Vec tried, (int K, double Dense) hole, ref Vec best, ref double least)
        {
            double cost = Cost(hole.K, tried, hole.Dense);
            if (cost < least - HairCost && Fits(_holes[_active[hole.K]].Needle, tried))
            {
                (best, least) = (tried, cost);
            }
        }

        private Vec Slid(EdgeHole hole, double slide)
        {
            int next = slide > 0 ? hole.After : hole.Before;
            var along = next < 0 ? default : (_holes[next].Wanted - hole.Wanted).Unit();
            return hole.Wanted + (along * Math.Abs(slide));
        }

        private double Cost(int k, Vec at, double dense)
        {
            var hole = _holes[_active[k]];
            double cost = 0;
            int many = 1 - DenseFrom;
            foreach (int n in _near[k])
            {
                double x = _needles[n].At.X - at.X;
                double y = _needles[n].At.Y - at.Y;
                double square = (x * x) + (y * y);
                many += square <= LockedRun.DiscRadiusMm * LockedRun.DiscRadiusMm ? 1 : 0;
                if (square < SatinLayer.LeastHoleGapMm * SatinLayer.LeastHoleGapMm)
                {
                    double part = 1 - (Math.Sqrt(square) / SatinLayer.LeastHoleGapMm);
                    cost += NearCost + (NearerCost * part * part);
                }
            }

            var off = at - hole.Wanted;
            double inset = Vec.Dot(off, hole.Inward);
            double slid = Vec.Cross(off, hole.Inward);
            double inPart = Math.Clamp(inset / hole.ReachMm, 0, 1);
            cost += many > 0 ? dense * many * many : 0;
            cost += (InCost * inPart * inPart) + (BareCost * Math.Max(0, inset - hole.ReachMm)) + (SlideCost * slid * slid);
            return cost + Open(hole.Before, at) + Open(hole.After, at);
        }

        private double Open(int beside, Vec at)
        {
            if (beside < 0)
            {
                return 0;
            }

            double open = (_needles[_holes[beside].Needle].At - at).Length - OpenMm;
            return open > 0 ? OpenCost * open * open : 0;
        }

        /// <summary>Whether the stitches to a hole and from it have a length that can be sewn and cross no other of their column.</summary>
        private bool Fits(int n, Vec at)
        {
            if (n == 0 || n + 1 >= _needles.Length)
            {
                return false;
            }

            var (from, to) = (_needles[n - 1].At, _needles[n + 1].At);
            if ((at - from).Length is < ShortestMm or > LongestMm || (at - to).Length is < ShortestMm or > LongestMm)
            {
                return false;
            }

            for (int m = n - 1; m > 0 && m > n - Window && _needles[m].Kind == StitchKind.Satin; m--)
            {
                var (a, b) = (_needles[m - 1].At, _needles[m].At);
                if ((m < n - 1 && Cross(a, b, from, at)) || Cross(a, b, at, to))
                {
                    return false;
                }
            }

            for (int m = n + 2; m < _needles.Length && m < n + Window && _needles[m].Kind == StitchKind.Satin; m++)
            {
                var (a, b) = (_needles[m - 1].At, _needles[m].At);
                if (Cross(a, b, from, at) || (m > n + 2 && Cross(a, b, at, to)))
                {
                    return false;
                }
            }

            return true;
        }

        private static bool Cross(Vec a, Vec b, Vec c, Vec d) =>
            Vec.Cross(b - a, c - a) * Vec.Cross(b - a, d - a) < 0 && Vec.Cross(d - c, a - c) * Vec.Cross(d - c, b - c) < 0;
    }
}
