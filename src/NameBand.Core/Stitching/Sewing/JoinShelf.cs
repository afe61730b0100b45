using System.Collections.Concurrent;
using NameBand.Common;

namespace NameBand.Stitching.Sewing;

/// <summary>A short stitch from a way out of one part to a way in of the next, with what it costs in mm of thread in sight.</summary>
internal readonly record struct Join(int Exit, int Entry, double Cost);

/// <summary>
/// The joins between two parts that stand beside each other, and how much of each is in sight. Letters come beside each
/// other again and again: what was found is kept. Safe to use from several threads.
/// </summary>
internal sealed class JoinShelf(SewingSettings settings, double letterHeightMm, double threadMm)
{
    /// <summary>A thread over satin that is sewn already is seen more than one on the cloth.</summary>
    private const double OverSatinWorth = 6;

    // For a mm, in mm of thread in sight (docs/stitching.md): our assumption, from looking at names.
    private const double HiddenOverSatinWorth = 2;

    // A thread that leaves a column goes over that column's last stitch: so much is not sought to be avoided, or so
    // much of all thread.
    private const double FreeMm = 0.8;
    private const double FreePart = 0.005;

    /// <summary>Places are told apart no finer: the same two letters come to lie so, a hair apart, in every name.</summary>
    private const double GrainMm = 1e-6;

    private readonly record struct Stand(long X, long Y, bool IsSameLetter);

    private readonly ConcurrentDictionary<(SewnPart From, SewnPart To, Stand Stand), Join[]> _joins = new();
    private readonly ConcurrentDictionary<LockedRun, double> _within = new();
    private readonly ConcurrentDictionary<(LockedRun From, LockedRun To, Stand Stand), double> _seen = new();

    /// <summary>The joins from one part to another, whatever lies between.</summary>
    public Join[] Between(SewnPart from, Placing fromAt, SewnPart to, Placing toAt, bool isSameLetter)
    {
        if (settings.LongestJoinMm <= 0)
        {
            return [];
        }

        var beside = Beside(fromAt, toAt);
        return beside.TurnRad != 0
            ? Find(from, to, beside, isSameLetter)
            : _joins.GetOrAdd((from, to, StandOf(beside, isSameLetter)), k => Find(k.From, k.To, Of(k.Stand), k.Stand.IsSameLetter));
    }

    /// <summary>The longest piece that is in sight of the stitch from one run to the next.</summary>
    public double SeenMm(LockedRun from, Placing fromAt, LockedRun to, Placing toAt)
    {
        var beside = Beside(fromAt, toAt);
        return beside.TurnRad != 0
            ? JoinSight.OfJoin(from.Steps, to.Steps, beside, threadMm)
            : _seen.GetOrAdd((from, to, StandOf(beside, false)), k => JoinSight.OfJoin(k.From.Steps, k.To.Steps, Of(k.Stand), threadMm));
    }

    /// <summary>The longest piece in sight of a run's own travel.</summary>
    public double WithinMm(LockedRun run) => _within.GetOrAdd(run, r => JoinSight.Within(r.Steps, threadMm));

    /// <summary>What it costs, in mm of thread in sight, that travel on the way to a way out lies over satin.</summary>
    public double OverSatin(SewnPart part, int exit)
    {
        if (part.OverSatin(exit) is var known && !double.IsNaN(known))
        {
            return known;
        }

        var (over, seen, all) = JoinSight.OverSatin(part.Run(part.Entries.Length, part.OrderOf(exit)).Steps, threadMm);
        double free = Math.Max(FreeMm, FreePart * all);
        double cost = (HiddenOverSatinWorth * Math.Max(0, over - free)) + (OverSatinWorth * Math.Max(0, seen - free));
        part.SetOverSatin(exit, cost);
        return cost;
    }

    /// <summary>Where the second stands as seen from the first.</summary>
    private static Placing Beside(Placing first, Placing second) => new(first.Back(second.Origin), second.TurnRad - first.TurnRad);

    private static Stand StandOf(Placing at, bool isSameLetter) =>
        new((long)Math.Round(at.Origin.XMm / GrainMm), (long)Math.Round(at.Origin.YMm / GrainMm), isSameLetter);

    private static Placing Of(Stand stand) => new(new Point(stand.X * GrainMm, stand.Y * GrainMm), 0);

    private Join[] Find(SewnPart from, SewnPart to, Placing beside, bool isSameLetter)
    {
        var joins = new List<Join>();
        double longest = settings.LongestJoinMm;
        for (int entry = 0; entry < to.Entries.Length; entry++)
        {
            var own = to.Entries[entry].Edge;
            var edge = beside.Of(own);
            for (int exit = 1; exit < from.Exits.Length; exit++)
            {
                var leaves = from.Exits[exit];
                if (Math.Abs(leaves.XMm - edge.XMm) <= longest && leaves.DistanceTo(edge) is var far && far <= longest)
                {
                    double over = from.Reach is { } reach ? OverSatinWorth * reach.OverMm(leaves, edge) : 0;
                    joins.Add(new Join(exit, entry, far + over + (isSameLetter ? 0 : HeightPrice(own, leaves))));
                }
            }
        }

        return [.. joins];
    }

    /// <summary>A join at the base line reads as nothing, one at the waist between two stems as a crossbar. Our assumption.</summary>
    private double HeightPrice(Point a, Point b)
    {
        double part = (a.YMm + b.YMm) / (2 * letterHeightMm);

        // As many mm more as docs/stitching.md says: at the waist a join reads as a crossbar, at the shoulders less so.
        const double WaistMm = 2.5;
        const double ShoulderMm = 1.2;
        return part <= 0.12 ? 0
            : part < 0.3 ? WaistMm * (part - 0.12) / 0.18
            : part < 0.55 ? WaistMm
            : part < 0.68 ? WaistMm - ((WaistMm - ShoulderMm) * (part - 0.55) / 0.13)
            : ShoulderMm;
    }
}
