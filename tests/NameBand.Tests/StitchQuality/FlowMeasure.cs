using NameBand.Common;
using NameBand.Stitching;

namespace NameBand.Tests.StitchQuality;

/// <summary>How the satin of a letter flows where its strokes meet, read from the thread that lies on top.</summary>
/// <param name="UnlikePart">Ink whose thread lies over 20° from that of its mirror image, left for right, as a part of the ink.</param>
/// <param name="SeamMm">Length along which threads meet at 35° to 75°: at more one stroke ends squarely on another, which is no
/// fault.</param>
/// <param name="Nicks">Bare patches of at least 0.02 mm² on an edge that is straight or gently curved within 0.4 mm.</param>
/// <param name="Lapping">Satin stitches that lie across one of another column, over 20° aslant, and reach half a millimetre past
/// it at both ends: more than a column that butts is led under its host.</param>
/// <param name="Stitches">All satin stitches.</param>
internal sealed record FlowMeasure(double UnlikePart, double SeamMm, int Nicks, int Lapping, int Stitches)
{
    private const double CellMm = 0.05;
    private const double SeamFrom = 35;
    private const double SeamTo = 75;
    private const double UnlikeFrom = 20;
    private const double NickMm2 = 0.02;
    private const double CornerWindowMm = 0.4;
    private const double CornerDegrees = 10;
    private const double PastMm = 0.5;

    /// <summary>A slanted line on a grid is longer, over all directions, by this.</summary>
    private const double StaircasePart = Math.PI / 4;

    public static FlowMeasure Of(Outline outline, NeedlePath path, double threadMm)
    {
        var grid = new ThreadGrid(outline, path, threadMm, CellMm);
        double?[] directions =
            [.. Enumerable.Range(0, grid.Inside.Length).Select(i => grid.Inside[i] ? Direction(path, grid.LastSatin[i]) : null)];
        var (lapping, stitches) = Laps(path);
        return new FlowMeasure(Unlike(grid, directions, outline), Seams(grid, directions), NicksOf(grid, outline), lapping, stitches);
    }

    private static double? Direction(NeedlePath path, int step)
    {
        if (step == 0)
        {
            return null;
        }

        var along = path.Steps[step].At - path.Steps[step - 1].At;
        return Math.Atan2(along.YMm, along.XMm) * 180 / Math.PI;
    }

    /// <summary>Angle between two threads, 0° to 90°.</summary>
    private static double Between(double a, double b)
    {
        double turn = Math.Abs(a - b) % 180;
        return Math.Min(turn, 180 - turn);
    }

    private static double Unlike(ThreadGrid grid, double?[] directions, Outline outline)
    {
        var box = outline.Bounds();
        int ink = 0;
        int unlike = 0;
        for (int i = 0; i < directions.Length; i++)
        {
            double x = grid.Left + (((i % grid.Width) + 0.5) * grid.CellMm);
            double y = grid.Bottom + (((i / grid.Width) + 0.5) * grid.CellMm);
            ink += grid.Inside[i] ? 1 : 0;
            int other = grid.CellOf(new Point(box.LeftMm + box.RightMm - x, y));
            unlike += directions[i] is { } one && directions[other] is { } mirrored && Between(one, 180 - mirrored) > UnlikeFrom ? 1 : 0;
        }

        return (double)unlike / Math.Max(1, ink);
    }

    private static double Seams(ThreadGrid grid, double?[] directions)
    {
        int sides = 0;
        for (int i = 0; i + grid.Width < directions.Length; i++)
        {
            foreach (int other in new[] { i + 1, i + grid.Width })
            {
                sides += directions[i] is { } a && directions[other] is { } b && Between(a, b) is > SeamFrom and <= SeamTo ? 1 : 0;
            }
        }

        return sides * grid.CellMm * StaircasePart;
    }

    private static int NicksOf(ThreadGrid grid, Outline outline)
    {
        var corners = outline.Rings.SelectMany(Corners).ToList();
        var known = new bool[grid.Inside.Length];
        int found = 0;
        for (int i = 0; i < grid.Inside.Length; i++)
        {
            if (known[i] || !IsBare(grid, i))
            {
                continue;
            }

            var patch = Patch(grid, known, i);
            var middle = new Point(
                grid.Left + ((patch.Average(c => c % grid.Width) + 0.5) * grid.CellMm),
                grid.Bottom + ((patch.Average(c => c / grid.Width) + 0.5) * grid.CellMm));
            bool onEdge = patch.Any(c => Beside(grid, c).Any(n => !grid.Inside[n]));
            found += onEdge && patch.Count * grid.CellMm * grid.CellMm >= NickMm2
                && corners.All(c => c.DistanceTo(middle) >= CornerWindowMm) ? 1 : 0;
        }

        return found;
    }

    private static bool IsBare(ThreadGrid grid, int cell) => grid.Inside[cell] && grid.Layers[cell] == 0;

    private static int[] Beside(ThreadGrid grid, int cell) => [cell - 1, cell + 1, cell - grid.Width, cell + grid.Width];

    private static List<int> Patch(ThreadGrid grid, bool[] known, int from)
    {
        List<int> patch = [from];
        known[from] = true;
        for (int k = 0; k < patch.Count; k++)
        {
            foreach (int next in Beside(grid, patch[k]))
            {
                if (!known[next] && IsBare(grid, next))
                {
                    known[next] = true;
                    patch.Add(next);
                }
            }
        }

        return patch;
    }

    /// <summary>Places where the outline turns by more than a gentle curve does, over a window to both sides.</summary>
    private static IEnumerable<Point> Corners(Ring ring)
    {
        var at = ring.Points;
        for (int i = 0; i < at.Length; i++)
        {
            var before = At(at, i, -1);
            var after = At(at, i, 1);
            double into = Math.Atan2(at[i].YMm - before.YMm, at[i].XMm - before.XMm);
            double outOf = Math.Atan2(after.YMm - at[i].YMm, after.XMm - at[i].XMm);
            double turn = Math.Abs(Math.IEEERemainder(outOf - into, 2 * Math.PI)) * 180 / Math.PI;
            if (turn > CornerDegrees)
            {
                yield return at[i];
            }
        }
    }

    /// <summary>The first point of a ring half a window away from one of its points, in one direction.</summary>
    private static Point At(IReadOnlyList<Point> ring, int from, int step)
    {
        for (int i = 1; i < ring.Count; i++)
        {
            var p = ring[(((from + (i * step)) % ring.Count) + ring.Count) % ring.Count];
            if (p.DistanceTo(ring[from]) >= CornerWindowMm / 2)
            {
                return p;
            }
        }

        return ring[from];
    }

    private static (int Lapping, int Stitches) Laps(NeedlePath path)
    {
        var satin = new List<(Point From, Point To, int Column)>();
        int column = 0;
        for (int i = 1; i < path.Steps.Length; i++)
        {
            if (path.Steps[i] is { Action: NeedleAction.Stitch, Kind: StitchKind.Satin })
            {
                satin.Add((path.Steps[i - 1].At, path.Steps[i].At, column));
            }
            else
            {
                column++;
            }
        }

        int lapping = satin.Count(a => satin.Any(b => a.Column != b.Column && LiesAcross(a, b)));
        return (lapping, satin.Count);
    }

    private static bool LiesAcross((Point From, Point To, int Column) a, (Point From, Point To, int Column) b)
    {
        var (u, v) = (a.To - a.From, b.To - b.From);
        double cross = (u.XMm * v.YMm) - (u.YMm * v.XMm);
        double lengths = a.From.DistanceTo(a.To) * b.From.DistanceTo(b.To);
        if (Math.Abs(cross) <= Math.Sin(UnlikeFrom * Math.PI / 180) * lengths)
        {
            return false;
        }

        var gap = b.From - a.From;
        double t = ((gap.XMm * v.YMm) - (gap.YMm * v.XMm)) / cross;
        double s = ((gap.XMm * u.YMm) - (gap.YMm * u.XMm)) / cross;
        return IsWithin(t, a) && IsWithin(s, b);
    }

    private static bool IsWithin(double part, (Point From, Point To, int Column) stitch)
    {
        double length = stitch.From.DistanceTo(stitch.To);
        return part * length > PastMm && (1 - part) * length > PastMm;
    }
}
