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
    private const double EndInsetMm = 0.12;

    private readonly IReadOnlyList<Column> _columns;
    private readonly ColumnTree _tree;
    private readonly SatinLayer? _satin;
    private readonly SewnRun _run = new();

    private ColumnSewer(IReadOnlyList<Column> columns, SatinSettings? satin)
    {
        _columns = columns;
        _tree = ColumnTree.Of(columns);
        _satin = satin is { } settings ? new SatinLayer(settings) : null;
    }

    /// <summary>Satin with its underlay, or a running stitch out and back along the centre lines when no satin is wanted.</summary>
    public static SewnRun Sew(IReadOnlyList<Column> columns, SatinSettings? satin)
    {
        var sewer = new ColumnSewer(columns, satin);
        var root = columns[sewer._tree.Root];
        bool fromEnd = StartScore(root.MiddleAt(root.Length)) < StartScore(root.MiddleAt(0));
        sewer.SewColumn(sewer._tree.Root, fromEnd ? root.Length : 0);
        return sewer._run;
    }

    private static double StartScore(Vec p) => p.X + Math.Abs(p.Y);

    private void SewColumn(int index, double enter)
    {
        var column = _columns[index];
        var branches = _tree.Branches[index].ToList();
        if (column.Closed)
        {
            SewSpan(column, enter, enter + column.Length, branches.Select(b => b with { LeaveAt = b.LeaveAt < enter ? b.LeaveAt + column.Length : b.LeaveAt }));
            return;
        }

        double near = Math.Max(0.6, 0.6 * column.WidthMm);
        if (enter <= near)
        {
            SewSpan(column, 0, column.Length, branches);
        }
        else if (enter >= column.Length - near)
        {
            SewSpan(column, column.Length, 0, branches);
        }
        else
        {
            SewSpan(column, enter, 0, branches.Where(b => b.LeaveAt <= enter));
            SewSpan(column, enter, column.Length, branches.Where(b => b.LeaveAt > enter));
        }
    }

    /// <summary>Out along the centre line, branches on the way, and back with satin.</summary>
    private void SewSpan(Column column, double from, double to, IEnumerable<Branch> branches)
    {
        int sign = to >= from ? 1 : -1;
        double inset = Math.Min(0.45, 0.25 * Math.Abs(to - from));
        double start = IsEnd(column, from) ? from + (sign * inset) : from;
        double end = IsEnd(column, to) ? to - (sign * inset) : to;
        var kind = _satin is null ? StitchKind.Running : StitchKind.Underlay;
        double at = start;
        _run.GoTo(column.MiddleAt(at), _run.Needles.Count == 0 ? kind : StitchKind.Travel);
        foreach (var branch in branches.OrderBy(b => sign * b.LeaveAt).ThenBy(b => b.Child))
        {
            double leave = sign > 0 ? Math.Clamp(branch.LeaveAt, start, end) : Math.Clamp(branch.LeaveAt, end, start);
            RunAlong(column, at, leave, kind);
            at = leave;
            SewColumn(branch.Child, branch.EnterAt);
            _run.GoTo(column.MiddleAt(at), StitchKind.Travel);
        }

        RunAlong(column, at, end, kind);
        if (_satin is null)
        {
            RunAlong(column, end, start, kind);
            return;
        }

        _satin.Lay(column, Inset(column, to, -sign), Inset(column, from, sign), _run);
    }

    private static bool IsEnd(Column column, double at) => !column.Closed && (at <= 1e-9 || at >= column.Length - 1e-9);

    private static double Inset(Column column, double at, int sign)
    {
        if (column.Closed || !IsEnd(column, at))
        {
            return at;
        }

        bool isStart = at <= 1e-9;
        bool free = (isStart ? column.Stroke.Start : column.Stroke.End) == EndKind.Free;
        return free ? at + (sign * Math.Min(EndInsetMm, 0.2 * column.Length)) : at;
    }

    private void RunAlong(Column column, double from, double to, StitchKind kind)
    {
        double length = Math.Abs(to - from);
        int parts = Math.Max(1, (int)Math.Ceiling(length / UnderlayStitchMm));
        if (length < 0.3)
        {
            return;
        }

        for (int i = 1; i <= parts; i++)
        {
            _run.Add(column.MiddleAt(from + ((to - from) * i / parts)), kind, 0.3);
        }
    }
}
