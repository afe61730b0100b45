using System.Runtime.InteropServices;
using NameBand.Cloth;
using NameBand.Stitching.Columns;
using NameBand.Stitching.Geometry;

namespace NameBand.Stitching.Sewing;

/// <summary>What the satin is sewn with.</summary>
/// <param name="Fabric">Spacing, underlay, and how far crossings go past the outline and ends are drawn back.</param>
internal readonly record struct SatinSettings(Fabric Fabric)
{
    /// <summary>Between crossings on the same side.</summary>
    public double SpacingMm => Fabric.SpacingMm;

    /// <summary>Columns at least this wide have underlay along both edges.</summary>
    public double EdgeUnderlayFromMm => Fabric.EdgeUnderlayFromMm;

    /// <summary>Pull compensation at a crossing.</summary>
    public double ReachMm(double widthMm, Vec across) =>
        Math.Max(Fabric.ReachMm(widthMm, across.X, across.Y), (LeastWidthMm - widthMm) / 2);

    /// <summary>Push compensation at a column's end, by its last crossing.</summary>
    public double PushMm(Vec across) => Fabric.PushCompensationMm * Fabric.Pull.PushFactor(across.X, across.Y);

    /// <summary>Narrower crossings are widened to this; 0: none is.</summary>
    public double LeastWidthMm { get; init; }
}

/// <summary>A stretch of a column to be laid with satin.</summary>
/// <param name="LeaveFor">The last hole is on the side of the column nearer to this; null when either will do.</param>
internal readonly record struct SatinSpan(Column Column, int Index, double From, double To, Vec? LeaveFor)
{
    public bool SquareStart { get; init; }

    public bool SquareEnd { get; init; }

    /// <summary>The satin begins on a line where columns meet.</summary>
    public bool StartsAtMeeting { get; init; }

    /// <summary>The edge of the last hole, where it is settled: 0 for the left one.</summary>
    public int? EndSide { get; init; }

    /// <summary>The first hole is on the other edge than the last one.</summary>
    public bool EndsAcross { get; init; }

    /// <summary>Of the two stretches that meet at a seam, the one that is sewn last.</summary>
    public bool IsEndOfSeam { get; init; }

    /// <summary>The part's last stretch, that a join may leave from.</summary>
    public bool IsLast { get; init; }
}

/// <summary>Lays zigzag satin along a column, with short crossings where holes would crowd.</summary>
internal sealed class SatinLayer(SatinSettings settings)
{
    /// <summary>
    /// Holes within 0.25 mm of one another count as too near (docs/stitching.md, tried out on the faces of fonts-open): a little more, so
    /// that they are still apart when the needle file has rounded them to thousandths.
    /// </summary>
    public const double LeastHoleGapMm = 0.252;

    /// <summary>Long crossings have room to keep their holes farther apart where they turn about a corner.</summary>
    private const double LongGapMm = 0.295;
    public const double LongMm = 5; // Stitches over it are taken for long: they have room, and rules of their own. Our assumption.
    private const double MostLongInsetMm = 3.5; // Half of the longest stitch: deeper than its middle no hole of a crossing is moved in.
    // A stitch that lies back along the last one within it is the satin's first, and not travel. Our assumption.
    private const double GoesOnRad = 30 * Math.PI / 180;
    private const double TurnWindowMm = 0.2; // Half a thread before a crossing and behind it: how far it turns is read there.
    // A hole is moved in to the middle of its crossing at farthest, less a little that keeps the two apart, and never by more than three
    // threads. Our assumption.
    public const double MostInsetPart = 0.42;
    public const double MostInsetMm = 1.2;
    // Of the width: a crossing that would cross another may end past the middle, for two that cross show more.
    private const double MostToUncross = 0.75;
    private const double ClearMm = 0.01; // So far before the last stitch it is set: what a file rounds does not bring it back.
    private const double HairMm = 0.03; // Behind the last stitch by less is rounding of the outline, and not a column that turns back.
    private const int Window = 10; // Stitches back: those farther off are five spacings away and cannot be crossed.
    // Holes of another column count as so much farther off, and may come as much nearer: they share no edge. Our assumption.
    private const double OtherColumnFactor = 1.07;
    // The longest stitch of satin, 7 to 12 mm by common practice (from memory, no source): the shorter does not snag.
    private const double LongestMm = 7;
    private const double BrickMm = 4; // Well under the longest stitch, so that bricks lie flat: our assumption.
    // A hair under the least stitch of 1 mm (Printwear, 12/2016): nearer to an edge no hole is made between.
    private const double LeastBrickMm = 0.9;
    private static readonly int[] BrickOrder = [0, 2, 1, 3];
    private const double SampleMm = 0.05; // An eighth of a thread's width, along the centre line.

    /// <summary>With fewer places one more or less would show.</summary>
    private const int LeastToTurn = 9;

    // Narrow columns are sewn a little more openly, because the holes of both their edges share the same cloth: common
    // practice, no source. Sewn widths between which the spacing goes from wider to as stated.
    private const double WiderPart = 0.13;
    private const double NarrowMm = 1;
    private const double WideEnoughMm = 1.8;

    // So far past its column's mouth a hole may lie, under the column that it butts on: in narrow ones farther, for they have
    // few crossings there. Thread that lies across both would be a bump.
    private const double LeastPastMouthMm = 0.3;
    private const double MostPastMouthMm = 0.4;
    private const double PastMouthMm = 0.6;
    private const double PastMouthPart = 0.2;

    // How much the middle of a bend has to say in its pace beside the outer edge, and so much less where the bend is gentle:
    // bare slivers show between threads that stand apart at the outer edge. Where crossings turn about a point there is no
    // room for more holes. Tried out on the faces of fonts-open.
    private const double MiddleShare = 0.5;
    private const double BendShare = 0.2;
    private const double GentlePart = 0.3;

    private readonly HoleGrid _holes = new(0.3);
    private readonly List<EdgeHole> _edges = [];
    private int _known;

    /// <summary>Sews a stretch of a column, in either direction.</summary>
    public void Lay(SatinSpan span, SewnRun run)
    {
        var (column, index) = (span.Column, span.Index);
        KeepClearOfUnderlay(index, run);
        var places = Spread(span);
        int last = span.EndSide ?? (span.LeaveFor is { } next ? NearerSide(column, places[^1], next) : -1);
        if (last >= 0 && !span.EndsAcross && places.Count >= LeastToTurn && run.Needles.Count > 0
            && StartsFar(column, places[0], last ^ ((places.Count - 1) & 1), run.Last))
        {
            places = Spread(span, turned: true);
        }

        int side = last >= 0 ? last ^ ((places.Count - 1) & 1) : run.Needles.Count > 0 ? NearerSide(column, places[0], run.Last) : 0;
        int begun = run.Needles.Count;
        int firstEdge = _edges.Count;
        for (int i = 0; i < places.Count; i++)
        {
            var (near, far) = Ends(column, places[i], settings);
            if (side == 1)
            {
                (near, far) = (far, near);
            }

            if (span.IsLast && i == places.Count - 1 && (near - run.Last).Length is >= 0.3 and <= LongestMm)
            {
                // A join leaves from here, so the hole is where it was allowed for.
                run.Add(near, StitchKind.Satin);
            }
            else
            {
                // Where columns meet the needle may stand in the first hole already: what follows is satin.
                int count = run.Needles.Count - begun;
                bool goesOn = count == 0 && i > 0 && span.StartsAtMeeting && GoesOn(run, near);
                if (Place((near, far, side, i), goesOn ? 1 : count, index, run))
                {
                    Remember((near, far, side), firstEdge, run);
                }
            }

            side = 1 - side;
        }
    }

    /// <summary>When all is laid: holes that had to be moved in are spread together with those about them.</summary>
    public void Settle(SewnRun run) => HoleSettling.Settle(run, _edges);

    /// <summary>Whether a stitch to a hole lies along the last one, back.</summary>
    private static bool GoesOn(SewnRun run, Vec to) =>
        run.Needles.Count > 1 && run.Needles[^1].Kind == StitchKind.Satin
            && Math.Abs(Vec.Angle(run.Needles[^2].At - run.Last, to - run.Last)) < GoesOnRad;

    /// <summary>The holes of underlay and travel sewn since the last column are there too.</summary>
    private void KeepClearOfUnderlay(int index, SewnRun run)
    {
        for (; _known < run.Needles.Count; _known++)
        {
            if (run.Needles[_known].Kind is StitchKind.Underlay or StitchKind.Travel)
            {
                _holes.Add(run.Needles[_known].At, index);
            }
        }
    }

    public int NearerSide(Column column, double at, Vec p)
    {
        var (left, right) = Ends(column, at, settings);
        return (p - right).Length < (p - left).Length ? 1 : 0;
    }

    /// <summary>Whether the first hole lies a good deal farther from the last one than that on the other edge would.</summary>
    private bool StartsFar(Column column, double at, int side, Vec from)
    {
        var (left, right) = Ends(column, at, settings);
        return (from - (side == 0 ? left : right)).Length - (from - (side == 0 ? right : left)).Length > 0.3;
    }

    /// <summary>Places of the needle points, half the spacing apart where the outer side sets the pace.</summary>
    /// <param name="turned">A place more or less, so that the first hole comes to lie on the other edge.</param>
    private List<double> Spread(SatinSpan span, bool turned = false)
    {
        var (column, from, to) = (span.Column, span.From, span.To);
        double length = Math.Abs(to - from);
        int samples = Math.Max(4, (int)Math.Ceiling(length / SampleMm));
        var sum = new double[samples + 1];
        var before = column.CrossingAt(from);
        for (int i = 1; i <= samples; i++)
        {
            var crossing = column.CrossingAt(from + ((to - from) * i / samples));
            double left = (crossing.Left - before.Left).Length;
            double right = (crossing.Right - before.Right).Length;
            var across = crossing.Right - crossing.Left;
            double width = across.Length + (2 * settings.ReachMm(across.Length, across));
            double wider = 1 + (WiderPart * Math.Clamp((WideEnoughMm - width) / (WideEnoughMm - NarrowMm), 0, 1));
            double outer = Math.Max(left, right);
            double share = MiddleShare - (BendShare * Math.Min(1, Math.Min(left, right) / Math.Max(1e-12, GentlePart * outer)));
            sum[i] = sum[i - 1] + ((outer - (share * (outer - ((left + right) / 2)))) / wider);
            before = crossing;
        }

        double exact = sum[samples] / (settings.SpacingMm / 2);
        int parts = Math.Max(2, (int)Math.Round(exact));
        parts += (span.EndsAcross && parts % 2 == 0) || (turned && exact >= parts) ? 1 : turned ? -1 : 0;
        var places = new List<double>(parts + 3);
        int k = 0;
        for (int i = 0; i <= parts; i++)
        {
            double wanted = sum[samples] * i / parts;
            while (k + 1 < samples && sum[k + 1] < wanted)
            {
                k++;
            }

            double t = sum[k + 1] - sum[k] < 1e-12 ? 0 : Math.Clamp((wanted - sum[k]) / (sum[k + 1] - sum[k]), 0, 1);
            places.Add(from + ((to - from) * (k + t) / samples));
        }

        // At a free end a stitch lies along the end's own crossing, so that a square end is square; the next hole on the
        // same side moves away from it.
        if (span.SquareStart && places.Count > 4)
        {
            places[1] = (places[1] + places[2]) / 2;
            places.Insert(0, from);
        }

        if (span.SquareEnd && places.Count > 5)
        {
            places[^2] = (places[^2] + places[^3]) / 2;
            places.Add(to);
        }

        return places;
    }

    /// <summary>The holes on both edges at a place.</summary>
    public static (Vec Left, Vec Right) Ends(Column column, double at, SatinSettings settings)
    {
        var (left, right) = column.CrossingAt(at);
        double width = (right - left).Length;
        var across = (right - left).Unit();
        if (width < 0.15)
        {
            var along = column.MiddleAt(at + 0.1) - column.MiddleAt(at - 0.1);
            across = along.Unit().Left * -1;
            var middle = Vec.Mix(left, right, 0.5);
            (left, right) = (middle - (across * (width / 2)), middle + (across * (width / 2)));
        }

        double reachMm = settings.ReachMm(width, across);
        var (before, after) = (column.CrossingAt(at - TurnWindowMm), column.CrossingAt(at + TurnWindowMm));
        double turn = Vec.Angle(before.Right - before.Left, after.Right - after.Left);
        double leftReach = Reach(turn > 0 ? (after.Left - before.Left).Length : double.PositiveInfinity, turn, reachMm);
        double rightReach = Reach(turn < 0 ? (after.Right - before.Right).Length : double.PositiveInfinity, turn, reachMm);
        double past = Math.Clamp(PastMouthMm - (PastMouthPart * column.WidthMm), LeastPastMouthMm, MostPastMouthMm);
        return column.BeforeMouths((left - (across * leftReach), right + (across * rightReach)), at, past);
    }

    /// <summary>On the inside of a turn a crossing ends before the point that its neighbours turn about, or they would cross.</summary>
    private static double Reach(double moved, double turn, double reachMm) =>
        Math.Abs(turn) < 1e-3 ? reachMm : Math.Min(reachMm, 0.7 * moved / Math.Abs(turn));

    /// <param name="count">Points of this column so far: what leads to the first one is travel.</param>
    private bool Place((Vec Near, Vec Far, int Side, int Number) hole, int count, int index, SewnRun run)
    {
        var (near, far, side, number) = hole;
        double width = (far - near).Length;
        var (least, most) = width > LongMm ? (LongGapMm, MostLongInsetMm) : (LeastHoleGapMm, MostInsetMm);
        var inward = (far - near).Unit();
        var best = near;
        double gap = _holes.Nearest(near, index, OtherColumnFactor);
        bool crosses = Crosses(run, count, near);
        for (double inset = 0.12; (crosses || gap < least) && inset <= (crosses ? MostToUncross : MostInsetPart) * width
            && inset < most; inset += 0.08)
        {
            var tried = near + (inward * inset);
            double free = _holes.Nearest(tried, index, OtherColumnFactor);
            bool stillCrosses = Crosses(run, count, tried);
            if (stillCrosses == crosses ? free > gap + 0.01 : crosses)
            {
                (best, gap, crosses) = (tried, free, stillCrosses);
            }
        }

        best = BeforeLast(run, count, best, Vec.Mix(near, far, 0.5));
        if (run.Needles.Count > 0 && (best - run.Last).Length < 0.3)
        {
            return false;
        }

        if (run.Needles.Count > 0 && (best - run.Last).Length > LongestMm)
        {
            Split(run.Last, best, (number, side), index, run);
        }

        run.Add(best, count == 0 ? StitchKind.Travel : StitchKind.Satin);
        _holes.Add(best, index);
        return !crosses;
    }

    /// <summary>Keeps a hole for the last step, with those before it on the same edge.</summary>
    private void Remember((Vec Near, Vec Far, int Side) hole, int firstEdge, SewnRun run)
    {
        var across = hole.Far - hole.Near;
        int before = _edges.Count - 1;
        while (before >= firstEdge && _edges[before].Side != hole.Side)
        {
            before--;
        }

        before = before < firstEdge ? -1 : before;
        if (before >= 0)
        {
            _edges[before] = _edges[before] with { After = _edges.Count };
        }

        double width = across.Length;
        double reach = settings.ReachMm(width, across);
        _edges.Add(new EdgeHole(run.Needles.Count - 1, hole.Near, across.Unit(), width, reach, hole.Side, before));
    }

    /// <summary>
    /// Where crossings turn about a point, one that is moved in may come to lie behind the last stitch by a hair, and the next
    /// one would cross that: it is set back before it.
    /// </summary>
    private static Vec BeforeLast(SewnRun run, int count, Vec at, Vec middle)
    {
        if (count < 2)
        {
            return at;
        }

        var from = run.Needles[^2].At;
        var across = (run.Last - from).Unit().Left;
        double wanted = Vec.Dot(middle - from, across);
        double found = Vec.Dot(at - from, across);
        return wanted * found < 0 && Math.Abs(found) < HairMm && Math.Abs(wanted) > HairMm
            ? at + (across * ((Math.Sign(wanted) * ClearMm) - found)) : at;
    }

    /// <summary>Whether the stitch to a point would cross one of the last ones of the same column.</summary>
    private static bool Crosses(SewnRun run, int count, Vec to)
    {
        var needles = CollectionsMarshal.AsSpan(run.Needles);
        int last = needles.Length - 1;
        for (int i = Math.Max(last - Math.Min(count, Window) + 2, 1); i < last; i++)
        {
            var (a, b, from) = (needles[i - 1].At, needles[i].At, needles[last].At);
            if (Vec.Cross(b - a, from - a) * Vec.Cross(b - a, to - a) < 0 && Vec.Cross(to - from, a - from)
                * Vec.Cross(to - from, b - from) < 0)
            {
                return true;
            }
        }

        return false;
    }

    /// <summary>
    /// A long crossing goes down in between, laid like bricks: the holes of four crossings after each other lie a quarter of a stitch
    /// apart, all across the column, so that no line and no trough shows.
    /// </summary>
    private void Split(Vec from, Vec to, (int Number, int Side) place, int index, SewnRun run)
    {
        double length = (to - from).Length;
        double brick = BrickMm * BrickOrder[place.Number % BrickOrder.Length] / BrickOrder.Length;
        var places = new List<double>();
        for (double at = brick; at < length - LeastBrickMm; at += BrickMm)
        {
            if (at >= LeastBrickMm)
            {
                places.Add(at);
            }
        }

        // Bricks are counted from the same edge, whichever way the crossing goes.
        foreach (double at in place.Side == 0 ? places : places.AsEnumerable().Reverse().Select(p => length - p))
        {
            var p = Vec.Mix(from, to, at / length);
            run.Add(p, StitchKind.Satin);
            _holes.Add(p, index);
        }
    }
}
