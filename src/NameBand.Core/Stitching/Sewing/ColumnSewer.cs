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
    private const double UnderlayStitchMm = 1.8; // As docs/cloths.md says: common practice, no source.
    private const double RunningStitchMm = 1.5; // Short enough that a curve of letters looks round: common practice, no source.
    private const double ShortestRunMm = 0.4; // As long as a lock: a shorter way is one stitch with what comes next.
    // A tenth of a thread's width, so far may a stitch's middle lie off the line that is to be seen.
    private const double RunningOffMm = 0.04;
    // Of the column's width: underlay is covered, and need only stay well inside. Our assumption.
    private const double UnderlayOffPart = 0.15;
    private const double EndStandOffMm = 0.45; // A thread's width and a hair: so that underlay does not show past the last crossing.
    private const double LongestShortcutMm = 2.5; // As long as travel's stitches are at most: one stitch from column to column.

    /// <summary>The last hole of a column is on the side where the needle goes on to: so it leaves away from the satin.</summary>
    private const double OnwardMm = 1;

    /// <summary>So much of the pull compensation hides travel safely: some holes at an edge are moved in.</summary>
    private const double PastEdgePart = 0.8;

    /// <summary>Wider columns have zigzag underlay in their middle: common practice, no source.</summary>
    private const double ZigzagFromMm = 5;
    private const double LongestAcrossMm = 4; // In a wider column it turns by way of the middle: no stitch of underlay is longer.
    // Of the width from which edge underlay is laid: a place that is narrower by more has no room for two lines.
    private const double LeastWidePart = 0.75;

    /// <summary>How far a column that butts reaches under the other one.</summary>
    public const double TuckMm = 0.2;

    private readonly IReadOnlyList<Column> _columns;
    private readonly IReadOnlyList<Guest> _guests;
    private readonly ColumnTree _tree;
    private readonly WayOut _wayOut;
    private readonly SatinLayer? _satin;
    private readonly SatinSettings _settings;
    private readonly bool[] _done;
    private readonly SewnRun _run = new();

    /// <param name="satin">Running stitch out and back along the centre lines when no satin is wanted.</param>
    public ColumnSewer(IReadOnlyList<Column> columns, WayOut wayOut, SatinSettings? satin, IReadOnlyList<Guest>? guests = null)
    {
        _columns = columns;
        _guests = guests ?? [];
        _tree = wayOut.Tree;
        _wayOut = wayOut;
        _done = new bool[columns.Count];
        _settings = satin ?? default;
        _satin = satin is { } settings ? new SatinLayer(settings) : null;
    }

    /// <summary>Sews all columns. The sewing ends where the way out says; it starts there too, unless travel led there.</summary>
    public SewnRun Sew()
    {
        SewColumn(_tree.Root, _wayOut.At, null, isLast: true);
        _satin?.Settle(_run);
        return _run;
    }

    /// <summary>Travel along the centre lines, all under later satin, from where the needle comes in to where the sewing starts.</summary>
    public void LeadIn(WayIn door, IReadOnlyList<Leg> legs)
    {
        _run.Add(Vec.From(door.Hole), StitchKind.Travel);
        var before = _columns[door.Place.Column];
        foreach (var leg in legs)
        {
            var column = _columns[leg.Column];
            var (from, to) = Stretch(column, leg);
            if (Math.Abs(to - from) >= ShortestRunMm)
            {
                RunAlong(column, Advance(column, from, to, before), to, StitchKind.Travel);
                before = column;
            }
        }
    }

    /// <summary>A closed column is followed the shorter way round; the ends of an open one stay free for its satin.</summary>
    private static (double From, double To) Stretch(Column column, Leg leg)
    {
        if (column.Closed)
        {
            double turn = leg.To - leg.From;
            return (leg.From, leg.From + turn - (Math.Round(turn / column.Length) * column.Length));
        }

        double inset = Math.Min(EndStandOffMm, 0.25 * column.Length);
        return (Math.Clamp(leg.From, inset, column.Length - inset), Math.Clamp(leg.To, inset, column.Length - inset));
    }

    /// <param name="isLast">The root, whose last hole is where the way out says.</param>
    private void SewColumn(int index, double enter, Vec? leaveFor, bool isLast = false)
    {
        var column = _columns[index];
        List<Branch> branches = [.. _tree.Branches[index], .. GuestsOf(index)];
        double near = NearEndMm(column);
        int? side = isLast ? _wayOut.Side : null;
        var ending = new SatinSpan(column, index, 0, 0, leaveFor) { EndSide = side, IsLast = isLast && side is not null };
        if (column.Closed)
        {
            SewSpan(
                ending with { From = enter, To = enter + column.Length, EndsAcross = true },
                branches.Select(b => b with { LeaveAt = b.LeaveAt < enter ? b.LeaveAt + column.Length : b.LeaveAt }));
        }
        else if (enter <= near)
        {
            SewSpan(ending with { To = column.Length }, branches);
        }
        else if (enter >= column.Length - near)
        {
            SewSpan(ending with { From = column.Length }, branches);
        }
        else
        {
            // At the seam the two stretches share no hole: the first one ends half a pace short, on the other edge.
            int last = side ?? (leaveFor is { } next && _satin is not null ? _satin.NearerSide(column, enter, next) : 0);
            var first = new SatinSpan(column, index, enter, 0, null) { EndSide = 1 - last };
            SewSpan(first, branches.Where(b => b.LeaveAt <= enter));
            SewSpan(
                ending with { From = enter, To = column.Length, EndSide = last, IsEndOfSeam = true },
                branches.Where(b => b.LeaveAt > enter));
        }

        _done[index] = true;
    }

    private IEnumerable<Branch> GuestsOf(int index)
    {
        for (int i = 0; i < _guests.Count; i++)
        {
            if (_guests[i].HostColumn == index)
            {
                yield return new Branch(-1 - i, _guests[i].HostAt, 0);
            }
        }
    }

    /// <summary>A dot or an accent, sewn from here and back.</summary>
    private void SewGuest(Guest guest, Vec back)
    {
        foreach (var needle in guest.Run)
        {
            _run.Add(needle.At, needle.Kind, SewnRun.ShortestMm);
        }

        _run.Add(back, StitchKind.Travel, SewnRun.ShortestMm);
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
        return ColumnEnd.Is(column, from) ? from + (Math.Sign(to - from) * inset) : from;
    }

    /// <summary>A column entered nearer to its end than this is sewn from the end.</summary>
    public static double NearEndMm(Column column) => Math.Max(0.6, 0.4 * column.WidthMm);

    /// <summary>Out along the centre line, branches on the way, and back with satin.</summary>
    /// <param name="span">From where the underlay starts and the satin ends, to the far end.</param>
    private void SewSpan(SatinSpan span, IEnumerable<Branch> branches)
    {
        var (column, index, from, to) = (span.Column, span.Index, span.From, span.To);
        var ordered = branches.OrderBy(b => Math.Sign(to - from) * b.LeaveAt).ThenBy(b => b.Child).ToList();
        double start = StandOff(column, from, to);
        double end = StandOff(column, to, from);
        var kind = _satin is null ? StitchKind.Running : StitchKind.Underlay;
        double LeaveFor(int branch) =>
            branch == ordered.Count ? end : Math.Clamp(ordered[branch].LeaveAt, Math.Min(start, end), Math.Max(start, end));
        if (_satin is not null && IsWide(column, start, end))
        {
            SewEdges(column, start, end, kind);
        }

        double at = Advance(column, start, LeaveFor(0), column);
        for (int i = 0; i < ordered.Count; i++)
        {
            var branch = ordered[i];
            double leave = LeaveFor(i);
            if (branch.Child < 0)
            {
                RunAlong(column, at, leave, kind);
                SewGuest(_guests[-1 - branch.Child], column.MiddleAt(leave));
                at = leave;
                continue;
            }

            var child = _columns[branch.Child];
            var goal = child.MiddleAt(StartOf(branch.Child, branch.EnterAt));
            RunAlong(column, at, leave, kind, until: () => _satin is not null && IsHidden(goal, column, child));
            double next = LeaveFor(i + 1);
            SewColumn(branch.Child, branch.EnterAt, column.MiddleAt(leave + Math.Clamp(next - leave, -OnwardMm, OnwardMm)));

            // Where nothing is left to be run, the next hole is that of what comes next, not one on the centre line first.
            at = _satin is not null && Math.Abs(next - leave) < ShortestRunMm ? leave : Advance(column, leave, next, column);
        }

        RunAlong(column, at, end, kind);
        if (_satin is null)
        {
            RunAlong(column, end, start, kind);
            return;
        }

        // Half a pace before a seam, so that no hole is shared.
        double halfPace = Math.Sign(to - from) * _settings.SpacingMm / 2;
        bool endsAtSeam = !ColumnEnd.Is(column, from) && !column.Closed && !span.IsEndOfSeam;
        _satin.Lay(
            span with
            {
                From = column.Closed ? to - halfPace : Inset(index, to, Math.Sign(from - to)),
                To = endsAtSeam ? from + halfPace : Inset(index, from, Math.Sign(to - from)),
                SquareStart = ColumnEnd.IsFree(column, to),
                SquareEnd = ColumnEnd.IsFree(column, from),
                StartsAtMeeting = ColumnEnd.Is(column, to) && ColumnEnd.KindAt(column, to) == EndKind.Meet,
            },
            _run);
    }

    /// <summary>Underlay out along one edge and back along the other, the nearer one first.</summary>
    private void SewEdges(Column column, double start, double end, StitchKind kind)
    {
        double side = 1;
        double ahead = start + (Math.Sign(end - start) * Math.Min(UnderlayStitchMm, Math.Abs(end - start)));
        if (_run.Needles.Count > 0)
        {
            side = (UnderlayLine.Beside(column, start, side) - _run.Last).Length < (UnderlayLine.Beside(column, start, -side)
                - _run.Last).Length ? side : -side;
        }

        if (_run.Needles.Count == 0 || !IsHidden(UnderlayLine.Beside(column, ahead, side), column, column))
        {
            _run.GoTo(column.MiddleAt(start), _run.Needles.Count == 0 ? kind : StitchKind.Travel);
        }

        RunAlong(column, start, end, kind, side);
        if (column.WidthAt(end) > LongestAcrossMm)
        {
            _run.Add(column.MiddleAt(end), kind, ShortestRunMm);
        }

        RunAlong(column, end, start, kind, -side);
    }

    /// <summary>
    /// On to a column at a place of its centre line: as far ahead of it as one stitch under the satin to come can reach,
    /// because holes where strokes meet are the ones that are too many.
    /// </summary>
    private double Advance(Column column, double left, double end, Column before)
    {
        if (_satin is not null && _run.Needles.Count > 0)
        {
            int sign = end > left ? 1 : -1;
            for (double ahead = Math.Min(UnderlayStitchMm, Math.Abs(end - left)); ahead > ShortestRunMm / 2; ahead -= 0.2)
            {
                double to = left + (sign * ahead);
                if (IsHidden(column.MiddleAt(to), column, before))
                {
                    _run.GoTo(column.MiddleAt(to), StitchKind.Travel);
                    return to;
                }
            }
        }

        _run.GoTo(
            column.MiddleAt(left), _run.Needles.Count > 0 ? StitchKind.Travel : _satin is null ? StitchKind.Running : StitchKind.Underlay);
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

        const int Samples = 6; // A count: six on a stitch of 2.5 mm look at every thread's width.
        for (int i = 1; i < Samples; i++)
        {
            // The last hole lies outside the outline, and so will those of the satin that is to come over the stitch.
            bool isOutside = i <= Samples / 2;
            var p = Vec.Mix(from, to, (double)i / Samples);
            if (!one.Covers(p, isOutside ? PastEdge(one) : 0) && !other.Covers(p, isOutside ? PastEdge(other) : 0))
            {
                return false;
            }
        }

        return true;
    }

    private double PastEdge(Column column) => PastEdgePart * _settings.ReachMm(column.WidthMm, column.MiddleCrossing);

    private double Inset(int index, double at, int sign)
    {
        var column = _columns[index];
        if (!ColumnEnd.Is(column, at))
        {
            return at;
        }

        bool isStart = at <= 1e-9;
        double inset = ColumnEnd.FreeInsetMm(column, at, _settings);
        if (ColumnEnd.KindAt(column, at) == EndKind.Meet)
        {
            // The crossings of both sides stand half a pace apart, as those of one column do.
            inset = _settings.SpacingMm / 4;
        }
        else if (!ColumnEnd.IsFree(column, at))
        {
            // On top of a column that is already there it laps no more than both reach past their outlines.
            bool onTop = _tree.Contacts.Any(c => c.Butting == index && c.ButtAt <= 1e-9 == isStart && _done[c.Host]);
            inset = onTop ? TuckMm : 0;
        }

        return ColumnEnd.Inside(column, at, inset, sign);
    }

    /// <summary>Wide enough, all along, for underlay that runs beside the centre line's without crowding it.</summary>
    private bool IsWide(Column column, double from, double to)
    {
        const int Samples = 8; // A count: columns change slowly, and a short narrow place among them does no harm.
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

    /// <summary>Follows the centre line, or a line beside it, in stitches as long as the bend of the line allows.</summary>
    private void RunAlong(Column column, double from, double to, StitchKind kind, double side = 0, Func<bool>? until = null)
    {
        if (Math.Abs(to - from) < ShortestRunMm)
        {
            return;
        }

        double longest =
            kind switch { StitchKind.Running => RunningStitchMm, StitchKind.Travel => LongestShortcutMm, _ => UnderlayStitchMm };
        double allowed = kind == StitchKind.Running ? RunningOffMm : UnderlayOffPart * column.WidthMm;
        int sign = to > from ? 1 : -1;
        double at = from;
        bool isZigzag = kind == StitchKind.Underlay && side == 0 && column.WidthMm >= ZigzagFromMm;
        int turn = 1;
        while (Math.Abs(to - at) > 1e-6 && until?.Invoke() != true)
        {
            double left = Math.Abs(to - at);
            double step = Math.Min(longest, left);
            while (step > ShortestRunMm && UnderlayLine.Off(column, at, at + (sign * step), side) > allowed)
            {
                step *= 0.8;
            }

            step = left - step < ShortestRunMm ? left : step;
            at += sign * step;
            turn = -turn;
            bool isLast = Math.Abs(to - at) <= 1e-6;
            _run.Add(isZigzag && !isLast ? UnderlayLine.Zigzag(column, at, turn) : UnderlayLine.Beside(column, at, side), kind, 0.3);
        }
    }
}
