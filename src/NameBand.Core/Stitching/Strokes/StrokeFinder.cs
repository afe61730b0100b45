using NameBand.Stitching.Geometry;
using NameBand.Stitching.Shapes;

namespace NameBand.Stitching.Strokes;

/// <summary>Joins the arms of a skeleton into strokes: at each junction the arms that go on straightest become one.</summary>
internal sealed class StrokeFinder
{
    // Widths: a shorter arm between two junctions is the thickness of a stroke, and they are one. Our assumption.
    private const double NearJunctionsPart = 0.6;
    private const double EndPart = 0.75; // Of the width: so near its end the middle line runs into a corner.
    // An outline that turns less past a junction is one straight piece. Our assumption.
    private const double StraightRad = 15 * Math.PI / 180;
    // So much straighter do arms count that share a straight piece of outline (docs/stitching.md). Our assumption.
    private const double StraightWorthRad = 22 * Math.PI / 180;
    // For a width e times as large: a thick arm goes on in a thick one. Our assumption.
    private const double WidthWeightRad = 12 * Math.PI / 180;

    private readonly Region _region;
    private readonly Skeleton _skeleton;
    private readonly List<ArmEnd> _ends = [];
    private readonly Dictionary<int, List<ArmEnd>> _atJunction = [];

    private StrokeFinder(Region region, Skeleton skeleton)
    {
        _region = region;
        _skeleton = skeleton;
    }

    public static List<Stroke> Find(Region region, Skeleton skeleton)
    {
        var finder = new StrokeFinder(region, skeleton);
        finder.GatherEnds();
        finder.PairArms();
        var strokes = finder.BuildStrokes();
        foreach (var loop in skeleton.Loops)
        {
            strokes.Add(finder.Build([(loop, false)], true, EndKind.Free, EndKind.Free, false));
        }

        return strokes;
    }

    private Vec At(int point) => _region.Points[point];

    private Vec Middle(Chord c) => Vec.Mix(At(c.Left), At(c.Right), 0.5);

    private double Width(Chord c) => (At(c.Left) - At(c.Right)).Length;

    private void GatherEnds()
    {
        foreach (var arm in _skeleton.Arms)
        {
            var start = new ArmEnd(arm, true);
            var end = new ArmEnd(arm, false);
            start.Other = end;
            end.Other = start;
            foreach (var side in new[] { start, end })
            {
                _ends.Add(side);
                Measure(side);
                if (_skeleton.IsJunction(side.Triangle))
                {
                    if (!_atJunction.TryGetValue(side.Triangle, out var list))
                    {
                        _atJunction[side.Triangle] = list = [];
                    }

                    list.Add(side);
                }
            }
        }
    }

    /// <summary>Width and direction away from the junction, taken past the chords that fan round the mouth.</summary>
    private void Measure(ArmEnd end)
    {
        int n = end.Count;
        var widths = new List<double>();
        for (int i = 0; i < n; i++)
        {
            widths.Add(Width(end.ChordAt(i)));
        }

        widths.Sort();
        end.WidthMm = widths[widths.Count / 2];
        end.LengthMm = 0;
        for (int i = 1; i < n; i++)
        {
            end.LengthMm += (Middle(end.ChordAt(i)) - Middle(end.ChordAt(i - 1))).Length;
        }

        int near = IndexAtReach(end, 0.25 * end.WidthMm);
        double reach = 1.3 * end.WidthMm;
        if (!_skeleton.IsJunction(end.Other.Triangle))
        {
            // The last chords of a free end run into one of its corners.
            reach = Math.Min(reach, end.LengthMm - (EndPart * end.WidthMm));
        }

        int far = IndexAtReach(end, reach);
        var a = Middle(end.ChordAt(near));
        var b = Middle(end.ChordAt(far));
        if (far == near)
        {
            a = Vec.Mix(Middle(end.ChordAt(0)), a, 0.0);
        }

        var junction = end.Triangle;
        var (x, y, z) = _skeleton.CornersOf(junction);
        var centre = (At(x) + At(y) + At(z)) * (1.0 / 3);
        end.Direction = (b - a).Length > 0.2 * end.WidthMm ? (b - a).Unit() : (b - centre).Unit();
    }

    private int IndexAtReach(ArmEnd end, double reach)
    {
        double gone = 0;
        for (int i = 1; i < end.Count; i++)
        {
            gone += (Middle(end.ChordAt(i)) - Middle(end.ChordAt(i - 1))).Length;
            if (gone >= reach)
            {
                return i;
            }
        }

        return end.Count - 1;
    }

    /// <summary>
    /// Junctions a short arm apart are one: pairs are sought among all arms that leave the cluster, the path between
    /// the two running through the short arms.
    /// </summary>
    private void PairArms()
    {
        var short_ = new HashSet<Arm>();
        foreach (var arm in _skeleton.Arms)
        {
            if (arm.From != arm.To && _skeleton.IsJunction(arm.From) && _skeleton.IsJunction(arm.To))
            {
                var end = _ends.First(e => e.Arm == arm);
                double width = arm.Chords.Min(Width);
                if (end.LengthMm < NearJunctionsPart * width)
                {
                    short_.Add(arm);
                }
            }
        }

        var taken = new HashSet<ArmEnd>();
        var candidates = new List<(double Cost, List<ArmEnd> Path)>();
        foreach (var start in _ends)
        {
            if (_atJunction.ContainsKey(start.Triangle) && !short_.Contains(start.Arm))
            {
                Explore(start, start, [start], short_, candidates, 0);
            }
        }

        foreach (var (_, path) in candidates.OrderBy(c => c.Cost))
        {
            if (!path.Any(taken.Contains) && !JunctionUsed(path, taken))
            {
                Take(path, taken);
            }
        }

        // What is left over: a short arm goes with the arm that runs on from it, so that it is not sewn alone.
        foreach (int junction in _atJunction.Keys.Order())
        {
            var free = _atJunction[junction].Where(e => !taken.Contains(e)).ToList();
            if (free.Count >= 2 && free.Any(e => short_.Contains(e.Arm)))
            {
                var pair = (from a in free
                            from b in free
                            where _ends.IndexOf(a) < _ends.IndexOf(b)
                    && a.Arm != b.Arm
                            orderby Cost(a, b)
                            select (a, b)).FirstOrDefault();
                if (pair.a is not null)
                {
                    Take([pair.a, pair.b], taken);
                }
            }
        }
    }

    private void Explore(
        ArmEnd start, ArmEnd at, List<ArmEnd> path, HashSet<Arm> short_, List<(double Cost, List<ArmEnd> Path)> found, int depth)
    {
        foreach (var next in _atJunction[at.Triangle])
        {
            if (path.Contains(next))
            {
                continue;
            }

            if (short_.Contains(next.Arm))
            {
                if (depth < 4 && !path.Contains(next.Other))
                {
                    Explore(start, next.Other, [.. path, next, next.Other], short_, found, depth + 1);
                }
            }
            else if (_ends.IndexOf(start) < _ends.IndexOf(next))
            {
                double cost = Cost(start, next) - (depth == 0 && RunsStraightPast(start, next) ? StraightWorthRad : 0);
                if (cost < (depth == 0 ? 75 : 62) * Math.PI / 180)
                {
                    found.Add((cost, [.. path, next]));
                }
            }
        }
    }

    /// <summary>The outline that two arms of a junction share goes on straight from the one to the other.</summary>
    private bool RunsStraightPast(ArmEnd a, ArmEnd b)
    {
        var (p, q) = (a.ChordAt(0), b.ChordAt(0));
        int shared = p.Left == q.Right ? p.Left : p.Right == q.Left ? p.Right : -1;
        if (shared < 0)
        {
            return false;
        }

        double reach = 0.5 * Math.Min(a.WidthMm, b.WidthMm);
        return Math.Abs(Vec.Angle(At(shared) - AlongRing(shared, -reach), AlongRing(shared, reach) - At(shared))) < StraightRad;
    }

    /// <summary>The first ring point at least so far from another one, forwards or, where negative, backwards.</summary>
    private Vec AlongRing(int from, double reach)
    {
        var step = reach > 0 ? _region.Next : _region.Previous;
        int at = step[from];
        while (at != from && (At(at) - At(from)).Length < Math.Abs(reach))
        {
            at = step[at];
        }

        return At(at);
    }

    private static bool JunctionUsed(List<ArmEnd> path, HashSet<ArmEnd> taken)
    {
        foreach (var end in path)
        {
            if (taken.Any(t => t.Triangle == end.Triangle))
            {
                return true;
            }
        }

        return false;
    }

    private static void Take(List<ArmEnd> path, HashSet<ArmEnd> taken)
    {
        for (int i = 0; i + 1 < path.Count; i += 2)
        {
            path[i].Partner = path[i + 1];
            path[i + 1].Partner = path[i];
            taken.Add(path[i]);
            taken.Add(path[i + 1]);
        }
    }

    private static double Cost(ArmEnd a, ArmEnd b)
    {
        double turn = Math.PI - Math.Abs(Vec.Angle(a.Direction, b.Direction));
        return turn + (WidthWeightRad * Math.Abs(Math.Log(a.WidthMm / b.WidthMm)));
    }

    private List<Stroke> BuildStrokes()
    {
        var strokes = new List<Stroke>();
        var used = new HashSet<Arm>();
        foreach (var end in _ends)
        {
            if (end.Partner is null && !used.Contains(end.Arm))
            {
                strokes.Add(Chain(end, used, false));
            }
        }

        foreach (var end in _ends)
        {
            if (!used.Contains(end.Arm))
            {
                strokes.Add(Chain(end, used, true));
            }
        }

        return strokes;
    }

    private Stroke Chain(ArmEnd start, HashSet<Arm> used, bool closed)
    {
        var parts = new List<(List<Chord> Chords, bool Reversed)>();
        var at = start;
        while (used.Add(at.Arm))
        {
            parts.Add((at.Arm.Chords, !at.IsStart));
            var far = at.Other;
            if (far.Partner is null)
            {
                return Build(parts, false, KindOf(start), KindOf(far));
            }

            at = far.Partner;
        }

        return Build(parts, closed, EndKind.Free, EndKind.Free);
    }

    private EndKind KindOf(ArmEnd end) => _skeleton.IsJunction(end.Triangle) ? EndKind.Butt : EndKind.Free;

    /// <param name="throughJunction">The closed stroke passes a junction where it runs back into itself.</param>
    private Stroke Build(
        List<(List<Chord> Chords, bool Reversed)> parts, bool closed, EndKind start, EndKind end, bool throughJunction = true)
    {
        var left = new List<Vec>();
        var right = new List<Vec>();
        var last = default(Chord);
        var first = default(Chord);
        bool begun = false;
        foreach (var (chords, reversed) in parts)
        {
            for (int i = 0; i < chords.Count; i++)
            {
                var chord = reversed ? chords[chords.Count - 1 - i].Reversed : chords[i];
                if (!begun)
                {
                    first = chord;
                    left.Add(At(chord.Left));
                    right.Add(At(chord.Right));
                    begun = true;
                }
                else
                {
                    Advance(left, _region.Walk(chord.Left, last.Left), true, chord.Left, i == 0);
                    Advance(right, _region.Walk(last.Right, chord.Right), false, chord.Right, i == 0);
                }

                last = chord;
            }
        }

        if (closed)
        {
            Advance(left, _region.Walk(first.Left, last.Left), true, first.Left, throughJunction);
            Advance(right, _region.Walk(last.Right, first.Right), false, first.Right, throughJunction);
            return new Stroke(left, right, EndKind.Free, EndKind.Free, [], [], true);
        }

        var startCap = start == EndKind.Free ? Cap(first.Left, first.Right) : [];
        var endCap = end == EndKind.Free ? Cap(last.Right, last.Left) : [];
        return new Stroke(left, right, start, end, startCap, endCap, false);
    }

    /// <summary>Follows the outline to the next chord's point, or bridges straight to it past an arm that butts here.</summary>
    private void Advance(List<Vec> edge, List<int>? walk, bool backwards, int to, bool atJunction)
    {
        if (walk is null || walk.Count < 2 || (atJunction && walk.Count > 2))
        {
            if ((edge[^1] - At(to)).Length > 1e-9)
            {
                edge.Add(At(to));
            }

            return;
        }

        for (int i = 1; i < walk.Count; i++)
        {
            edge.Add(At(backwards ? walk[walk.Count - 1 - i] : walk[i]));
        }
    }

    private List<Vec> Cap(int from, int to) => _region.Walk(from, to) is { } walk ? [.. walk.Select(At)] : [At(from), At(to)];

    private sealed class ArmEnd(Arm arm, bool isStart)
    {
        public Arm Arm { get; } = arm;

        public bool IsStart { get; } = isStart;

        public ArmEnd Other { get; set; } = null!;

        public ArmEnd? Partner { get; set; }

        public Vec Direction { get; set; }

        public double WidthMm { get; set; }

        public double LengthMm { get; set; }

        public int Triangle => IsStart ? Arm.From : Arm.To;

        public int Count => Arm.Chords.Count;

        /// <summary>Chords counted away from this end, left and right as seen walking away from it.</summary>
        public Chord ChordAt(int i) => IsStart ? Arm.Chords[i] : Arm.Chords[Arm.Chords.Count - 1 - i].Reversed;
    }
}
