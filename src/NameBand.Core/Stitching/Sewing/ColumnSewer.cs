using NameBand.Stitching.Columns;
using NameBand.Stitching.Geometry;
using NameBand.Stitching.Strokes;

namespace NameBand.Stitching.Sewing;

/// <summary>
/// Sews the columns of one connected piece in one run: the underlay goes out along a column, what branches off is
/// sewn on the way, and the satin comes back over it. All travel lies under later satin.
/// </summary>
internal sealed class ColumnSewer
{
    private const double UnderlayStitchMm = 1.8;
    private const double RunningStitchMm = 1.5;
    private const double ShortestRunMm = 0.4;
    private const double RunningOffMm = 0.04;
    private const double UnderlayOffPart = 0.15;
    private const double EndInsetMm = 0.12;
    private const double DotInsetPart = 0.04;
    private const double LongEnoughToPush = 3.5;
    private const double EndStandOffMm = 0.45;
    private const double OverlapMm = 0.1;
    private const double LongestShortcutMm = 2.5;

    /// <summary>Edge underlay lies this part of the way from the centre line to the edge.</summary>
    private const double EdgeSide = 0.55;
    private const double LeastWidePart = 0.75;

    /// <summary>How far a column that butts reaches under the other one.</summary>
    public const double TuckMm = 0.2;

    private readonly IReadOnlyList<Column> _columns;
    private readonly ColumnTree _tree;
    private readonly SatinLayer? _satin;
    private readonly SatinSettings _settings;
    private readonly bool[] _done;
    private readonly SewnRun _run = new();

    private ColumnSewer(IReadOnlyList<Column> columns, ColumnTree tree, SatinSettings? satin)
    {
        _columns = columns;
        _tree = tree;
        _done = new bool[columns.Count];
        _settings = satin ?? default;
        _satin = satin is { } settings ? new SatinLayer(settings) : null;
    }

    /// <summary>
    /// Satin with its underlay, or a running stitch out and back along the centre lines when no satin is wanted. The
    /// sewing ends where the way out says. It starts there too, unless a way in is given: then travel along the centre
    /// lines, all under later satin, leads from the one to the other.
    /// </summary>
    public static SewnRun Sew(IReadOnlyList<Column> columns, WayOut wayOut, Door? wayIn, SatinSettings? satin)
    {
        var sewer = new ColumnSewer(columns, wayOut.Tree, satin);
        if (wayIn is { } door)
        {
            sewer.LeadIn(door, wayOut);
        }

        sewer.SewColumn(wayOut.Tree.Root, wayOut.At, wayOut.LeaveFor);
        return sewer._run;
    }

    private void LeadIn(Door door, WayOut wayOut)
    {
        _run.GoTo(_columns[door.Column].MiddleAt(door.At), StitchKind.Travel);
        foreach (var (column, from, to) in Legs(_columns, door, wayOut))
        {
            _run.GoTo(_columns[column].MiddleAt(from), StitchKind.Travel);
            RunAlong(_columns[column], from, to, StitchKind.Travel);
        }
    }

    /// <summary>How far the travel from a way in to a way out is.</summary>
    public static double LeadInMm(IReadOnlyList<Column> columns, Door door, WayOut wayOut) =>
        Legs(columns, door, wayOut).Sum(l => Math.Abs(l.To - l.From));

    /// <summary>The stretches of centre line from a way in to where the root column is started.</summary>
    private static IEnumerable<(int Column, double From, double To)> Legs(IReadOnlyList<Column> columns, Door door, WayOut wayOut)
    {
        int column = door.Column;
        double at = door.At;
        while (wayOut.Tree.StepTo(column) is var (parent, step))
        {
            yield return Leg(columns, column, at, step.EnterAt);
            column = parent;
            at = step.LeaveAt;
        }

        yield return Leg(columns, column, at, wayOut.At);
    }

    /// <summary>A closed column is followed the shorter way round; the ends of an open one stay free for its satin.</summary>
    private static (int Column, double From, double To) Leg(IReadOnlyList<Column> columns, int index, double from, double to)
    {
        var column = columns[index];
        if (column.Closed)
        {
            double turn = to - from;
            return (index, from, from + turn - (Math.Round(turn / column.Length) * column.Length));
        }

        double inset = Math.Min(EndStandOffMm, 0.25 * column.Length);
        return (index, Math.Clamp(from, inset, column.Length - inset), Math.Clamp(to, inset, column.Length - inset));
    }

    private void SewColumn(int index, double enter, Vec? leaveFor)
    {
        var column = _columns[index];
        var branches = _tree.Branches[index].ToList();
        double near = NearEndMm(column);
        if (column.Closed)
        {
            SewSpan(index, enter, enter + column.Length, branches.Select(b => b with { LeaveAt = b.LeaveAt < enter ? b.LeaveAt + column.Length : b.LeaveAt }), leaveFor);
        }
        else if (enter <= near)
        {
            SewSpan(index, 0, column.Length, branches, leaveFor);
        }
        else if (enter >= column.Length - near)
        {
            SewSpan(index, column.Length, 0, branches, leaveFor);
        }
        else
        {
            SewSpan(index, enter, 0, branches.Where(b => b.LeaveAt <= enter), null);
            SewSpan(index, enter, column.Length, branches.Where(b => b.LeaveAt > enter), leaveFor);
        }

        _done[index] = true;
    }

    /// <summary>Where on the centre line the sewing of a column starts that is entered at a place.</summary>
    private double StartOf(int index, double enter)
    {
        var column = _columns[index];
        double near = NearEndMm(column);
        return column.Closed ? enter
            : enter <= near ? StandOff(column, 0, column.Length)
            : enter >= column.Length - near ? StandOff(column, column.Length, 0)
            : enter;
    }

    /// <summary>The underlay stands off an end of the column.</summary>
    private double StandOff(Column column, double from, double to)
    {
        double inset = Math.Min(_satin is null ? column.WidthMm / 2 : EndStandOffMm, 0.25 * Math.Abs(to - from));
        return IsEnd(column, from) ? from + (Math.Sign(to - from) * inset) : from;
    }

    /// <summary>A column entered nearer to its end than this is sewn from the end.</summary>
    public static double NearEndMm(Column column) => Math.Max(0.6, 0.6 * column.WidthMm);

    /// <summary>Out along the centre line, branches on the way, and back with satin.</summary>
    private void SewSpan(int index, double from, double to, IEnumerable<Branch> branches, Vec? leaveFor)
    {
        var column = _columns[index];
        var ordered = branches.OrderBy(b => Math.Sign(to - from) * b.LeaveAt).ThenBy(b => b.Child).ToList();
        double start = StandOff(column, from, to);
        double end = StandOff(column, to, from);
        var kind = _satin is null ? StitchKind.Running : StitchKind.Underlay;
        double LeaveFor(int branch) =>
            branch == ordered.Count ? end : Math.Clamp(ordered[branch].LeaveAt, Math.Min(start, end), Math.Max(start, end));
        if (_satin is not null && IsWide(column, start, end))
        {
            _run.GoTo(column.MiddleAt(start), _run.Needles.Count == 0 ? kind : StitchKind.Travel);
            RunAlong(column, start, end, kind, EdgeSide);
            RunAlong(column, end, start, kind, -EdgeSide);
        }

        double at = Advance(column, start, LeaveFor(0));
        for (int i = 0; i < ordered.Count; i++)
        {
            var branch = ordered[i];
            double leave = LeaveFor(i);
            var child = _columns[branch.Child];
            var goal = child.MiddleAt(StartOf(branch.Child, branch.EnterAt));
            RunAlong(column, at, leave, kind, until: () => _satin is not null && IsHidden(goal, column, child));
            SewColumn(branch.Child, branch.EnterAt, column.MiddleAt(leave));
            at = Advance(column, leave, LeaveFor(i + 1));
        }

        RunAlong(column, at, end, kind);
        if (_satin is null)
        {
            RunAlong(column, end, start, kind);
            return;
        }

        _satin.Lay(column, index, Inset(index, to, Math.Sign(from - to)), Inset(index, from, Math.Sign(to - from)), _run, leaveFor, IsFree(column, to), IsFree(column, from));
    }

    /// <summary>
    /// On to a column at a place of its centre line: as far ahead of it as one stitch under the satin to come can reach,
    /// because holes where strokes meet are the ones that are too many.
    /// </summary>
    private double Advance(Column column, double left, double end)
    {
        if (_satin is not null && _run.Needles.Count > 0)
        {
            int sign = end > left ? 1 : -1;
            for (double ahead = Math.Min(UnderlayStitchMm, Math.Abs(end - left)); ahead > ShortestRunMm / 2; ahead -= 0.2)
            {
                double to = left + (sign * ahead);
                if (IsHidden(column.MiddleAt(to), column, column))
                {
                    _run.GoTo(column.MiddleAt(to), StitchKind.Travel);
                    return to;
                }
            }
        }

        _run.GoTo(column.MiddleAt(left), _run.Needles.Count > 0 ? StitchKind.Travel : _satin is null ? StitchKind.Running : StitchKind.Underlay);
        return left;
    }

    /// <summary>Whether one stitch from the last hole would lie under the satin of two columns still to be sewn.</summary>
    private bool IsHidden(Vec to, Column one, Column other)
    {
        var from = _run.Last;
        double length = (to - from).Length;
        if (length > LongestShortcutMm)
        {
            return false;
        }

        const int Samples = 6;
        for (int i = 1; i < Samples; i++)
        {
            var p = Vec.Mix(from, to, (double)i / Samples);
            if (!IsUnder(one, p) && !IsUnder(other, p))
            {
                return false;
            }
        }

        return true;
    }

    private static bool IsUnder(Column column, Vec p)
    {
        var (at, distance) = column.Nearest(p);
        return distance <= 0.5 * column.WidthAt(at);
    }

    private static bool IsEnd(Column column, double at) => !column.Closed && (at <= 1e-9 || at >= column.Length - 1e-9);

    private static bool IsFree(Column column, double at) =>
        IsEnd(column, at) && (at <= 1e-9 ? column.Stroke.Start : column.Stroke.End) == EndKind.Free;

    private double Inset(int index, double at, int sign)
    {
        var column = _columns[index];
        if (!IsEnd(column, at))
        {
            return at;
        }

        bool isStart = at <= 1e-9;
        double inset = Math.Min(EndInsetMm, DotInsetPart * column.Length) + (column.Length > LongEnoughToPush * column.WidthMm ? _settings.PushMm : 0);
        if (!IsFree(column, at))
        {
            // On top of a column that is already there it only laps a little.
            bool onTop = _tree.Contacts.Any(c => c.Butting == index && c.ButtAt <= 1e-9 == isStart && _done[c.Host]);
            inset = onTop ? TuckMm - OverlapMm : 0;
        }

        return at + (sign * Math.Min(inset, 0.2 * column.Length));
    }

    /// <summary>Wide enough, all along, for underlay that runs beside the centre line's without crowding it.</summary>
    private bool IsWide(Column column, double from, double to)
    {
        const int Samples = 8;
        double wanted = _settings.EdgeUnderlayFromMm;
        if (column.WidthMm < wanted || Math.Abs(to - from) < 1.2 * wanted)
        {
            return false;
        }

        for (int i = 0; i <= Samples; i++)
        {
            double width = column.WidthAt(from + ((to - from) * i / Samples));
            if (width < LeastWidePart * wanted)
            {
                return false;
            }
        }

        return true;
    }

    /// <summary>On the centre line, or so many parts of the way from it to the edge.</summary>
    private static Vec Beside(Column column, double at, double side)
    {
        var (left, right) = column.RungAt(at);
        return Vec.Mix(left, right, 0.5 + (side / 2));
    }

    /// <summary>Follows the centre line, or a line beside it, in stitches as long as the bend of the line allows.</summary>
    private void RunAlong(Column column, double from, double to, StitchKind kind, double side = 0, Func<bool>? until = null)
    {
        if (Math.Abs(to - from) < ShortestRunMm)
        {
            return;
        }

        double longest = kind == StitchKind.Running ? RunningStitchMm : UnderlayStitchMm;
        double allowed = kind == StitchKind.Running ? RunningOffMm : UnderlayOffPart * column.WidthMm;
        int sign = to > from ? 1 : -1;
        double at = from;
        while (Math.Abs(to - at) > 1e-6 && until?.Invoke() != true)
        {
            double left = Math.Abs(to - at);
            double step = Math.Min(longest, left);
            while (step > ShortestRunMm && OffLine(column, at, at + (sign * step), side) > allowed)
            {
                step *= 0.8;
            }

            step = left - step < ShortestRunMm ? left : step;
            at += sign * step;
            _run.Add(Beside(column, at, side), kind, 0.3);
        }
    }

    /// <summary>How far the line runs beside a stitch that spans it.</summary>
    private static double OffLine(Column column, double from, double to, double side)
    {
        var (a, b) = (Beside(column, from, side), Beside(column, to, side));
        double off = 0;
        for (int i = 1; i < 4; i++)
        {
            off = Math.Max(off, Beside(column, from + ((to - from) * i / 4), side).DistanceToSegment(a, b));
        }

        return off;
    }
}
