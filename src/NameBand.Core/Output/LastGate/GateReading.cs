using System.Collections.Immutable;
using NameBand.Common;
using NameBand.Stitching;

namespace NameBand.Output.LastGate;

/// <summary>A run of thread along one strip of a cloth with no bare cloth in it.</summary>
internal sealed record GateRun(int Hooping, int Cloth, int Lane, double FromMm, double ToMm);

/// <summary>What the needle does in one hooping, on its piece of flat cloth.</summary>
/// <param name="Fault">What must not be so in a hooping that is to be sewn; null where all is well.</param>
internal sealed record GateReading(int Hooping, ImmutableArray<GateRun> Runs, GateFault? Fault)
{
    /// <summary>A machine's own play: less is nobody's fault.</summary>
    public const double PlayMm = 0.05;

    public static GateReading Of(GatePlan plan, GateHooping hooping, GateRules rules, byte[]? csv)
    {
        if (csv is null || NeedlePathReading.Read(csv) is not { } path)
        {
            return new GateReading(hooping.Number, [], GateFault.NotWhole(hooping.Number));
        }

        if (hooping.Lanes.IsEmpty)
        {
            return new GateReading(hooping.Number, [], GateFault.NoPlace(hooping.Number));
        }

        rules = hooping.Field is { } own ? rules with { AlongMm = own.AlongMm, AcrossMm = own.AcrossMm } : rules;
        var extent = new Extent();
        double past = 0;
        bool isMarkInside = false;
        var runs = hooping.Lanes.Select(_ => new List<(double From, double To)>()).ToArray();
        var before = (Lane: -1, AlongMm: 0.0);
        foreach (var step in path.Steps)
        {
            if (step.Action != NeedleAction.Stitch)
            {
                before = (-1, 0);
                continue;
            }

            extent = extent.With(step.At);
            var (lane, along, across) = Nearest(plan, hooping, rules, step.At);
            if (step.Kind == StitchKind.Mark)
            {
                isMarkInside |= IsInside(plan, hooping.Lanes[lane], across) || IsInsideNested(plan, hooping, rules, step.At);
                before = (-1, 0);
                continue;
            }

            past = Math.Max(past, Math.Abs(across) - (rules.ZoneMm / 2));
            if (before.Lane == lane)
            {
                runs[lane].Add((Math.Min(before.AlongMm, along), Math.Max(before.AlongMm, along)));
            }

            before = (lane, along);
        }

        var fault = hooping.Lanes.Any(l => Math.Abs(l.OnClothMm - l.LiesMm) > PlayMm) ? GateFault.NoPlace(hooping.Number)
            : extent.AlongMm > rules.AlongMm - (2 * rules.SpareMm) + PlayMm || extent.AcrossMm > rules.AcrossMm + PlayMm
                ? GateFault.PastField(hooping.Number, extent.AlongMm, extent.AcrossMm, rules)
            : past > PlayMm ? GateFault.PastZone(hooping.Number, past)
            : isMarkInside ? GateFault.MarkInside(hooping.Number)
            : null;
        return new GateReading(hooping.Number, [.. runs.SelectMany((r, i) => Merged(r, hooping.Number, hooping.Lanes[i]))], fault);
    }

    /// <summary>The strip whose centre line a needle point is nearest to.</summary>
    private static (int Lane, double AlongMm, double AcrossMm) Nearest(GatePlan plan, GateHooping hooping, GateRules rules, Point at)
    {
        var (nearest, lies) = (0, rules.OnStrip(plan, hooping.Lanes[0], at));
        for (int i = 1; i < hooping.Lanes.Length; i++)
        {
            var other = rules.OnStrip(plan, hooping.Lanes[i], at);
            (nearest, lies) = Math.Abs(other.AcrossMm) < Math.Abs(lies.AcrossMm) ? (i, other) : (nearest, lies);
        }

        return (nearest, lies.AlongMm, lies.AcrossMm);
    }

    /// <summary>Curved strips lie apart by arcs of their own, and not by as much everywhere.</summary>
    private static bool IsInsideNested(GatePlan plan, GateHooping hooping, GateRules rules, Point at) => hooping.Lanes.Length > 1
        && hooping.Lanes
            .Any(l => l.Segment.RadiusMm is not null
                && Math.Abs(rules.OnStrip(plan, l, at).AcrossMm) < (plan.FinishedWidthMm / 2) - PlayMm);

    /// <summary>Whether a place lies within the finished width of its strip or of one beside it on the same cloth.</summary>
    private static bool IsInside(GatePlan plan, GateLane lane, double acrossMm)
    {
        foreach (var piece in plan.Pieces.Where(p => lane.Segment.RadiusMm is null || p == lane.Piece))
        {
            double fromMiddle = Math.Abs(acrossMm + lane.Piece.LaneYMm - piece.LaneYMm);
            if (piece.Cloth == lane.Piece.Cloth && fromMiddle < (plan.FinishedWidthMm / 2) - PlayMm)
            {
                return true;
            }
        }

        return false;
    }

    private static IEnumerable<GateRun> Merged(List<(double From, double To)> stitches, int hooping, GateLane lane)
    {
        stitches.Sort();
        int next = 0;
        while (next < stitches.Count)
        {
            var (from, to) = stitches[next++];
            while (next < stitches.Count && stitches[next].From <= to)
            {
                to = Math.Max(to, stitches[next++].To);
            }

            yield return new GateRun(hooping, lane.Piece.Cloth, lane.Piece.Lane, lane.LiesMm + from, lane.LiesMm + to);
        }
    }

    /// <summary>The box about all needle points.</summary>
    private readonly record struct Extent()
    {
        private double Left { get; init; } = double.PositiveInfinity;

        private double Right { get; init; } = double.NegativeInfinity;

        private double Bottom { get; init; } = double.PositiveInfinity;

        private double Top { get; init; } = double.NegativeInfinity;

        public double AlongMm => Math.Max(0, Right - Left);

        public double AcrossMm => Math.Max(0, Top - Bottom);

        public Extent With(Point at) => new()
        {
            Left = Math.Min(Left, at.XMm),
            Right = Math.Max(Right, at.XMm),
            Bottom = Math.Min(Bottom, at.YMm),
            Top = Math.Max(Top, at.YMm),
        };
    }
}
