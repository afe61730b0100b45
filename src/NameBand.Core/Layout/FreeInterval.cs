using System.Collections.Immutable;
using NameBand.Common;
using NameBand.Garment;

namespace NameBand.Layout;

/// <summary>A part of a round on which names stand in a row, clear of seams and of what is kept free.</summary>
/// <param name="HasOpenEnds">Names may touch both its ends (those of an open edge, less the margin); else half a gap stays free
/// at each.</param>
internal sealed record FreeInterval(int Round, double StartMm, double LengthMm, bool HasOpenEnds)
{
    public double EndMm => StartMm + LengthMm;

    /// <summary>Room offered when every name brings one gap along: where ends are open, there is one gap less than names.</summary>
    public double OfferMm(double gapMm) => LengthMm + (HasOpenEnds ? gapMm : 0);

    public int GapCount(int names) => HasOpenEnds ? names - 1 : names;

    /// <summary>
    /// The stretches of a round in the order in which the list fills them. Places on the hem edge move with the
    /// garment's seams: on a shorter round they lie at the same part of its length. Their widths do not shrink.
    /// </summary>
    public static ImmutableArray<FreeInterval> Of(HemPlan hem, int round)
    {
        double length = hem.RoundMm(round);
        var whole = new FreeInterval(round, hem.EndMarginMm, Math.Max(0, length - (2 * hem.EndMarginMm)), !hem.Closed);
        double kept = hem.KeptFreeMm(round);
        if (hem.KeepClear.IsEmpty && hem.StartMm <= 0 && kept <= 0 && hem.JoinBlankMm <= 0)
        {
            return [whole];
        }

        double scale = length / hem.EdgeLengthMm;
        double start = hem.StartMm * scale;
        var blocked = new List<(double From, double To)>();
        foreach (var zone in hem.KeepClear)
        {
            Block(blocked, (zone.AtMm * scale) - (zone.WidthMm / 2), zone.WidthMm, length, hem.Closed);
        }

        var joins = JoinPlaces.Of(hem, round).ToList();
        if (joins.Count == 0 && hem.KeepClear.IsEmpty && start <= 0 && kept <= 0)
        {
            return [whole];
        }

        if (!hem.Closed)
        {
            blocked.Add((0, hem.EndMarginMm));
            blocked.Add((length - hem.EndMarginMm, length));
        }

        foreach (double join in joins)
        {
            Block(blocked, join - (hem.JoinBlankMm / 2), hem.JoinBlankMm, length, hem.Closed);
        }

        Block(blocked, start > 0 ? start - kept : length - kept, kept, length, hem.Closed);
        var free = Free(blocked, start, length)
            .OrderBy(f => f.From < start - Tolerance.Rounding)
            .ThenBy(f => f.From)
            .Select(f => new FreeInterval(round, f.From, f.To - f.From, HasOpenEnds: false))
            .ToImmutableArray();
        return free.IsEmpty ? [new FreeInterval(round, start, 0, HasOpenEnds: false)] : free;
    }

    private static void Block(List<(double From, double To)> blocked, double from, double width, double length, bool closed)
    {
        double to = Math.Min(from + width, from + length);
        blocked.Add((Math.Max(from, 0), Math.Min(to, length)));
        if (closed && from < 0)
        {
            blocked.Add((from + length, length));
        }

        if (closed && to > length)
        {
            blocked.Add((0, to - length));
        }
    }

    private static IEnumerable<(double From, double To)> Free(List<(double From, double To)> blocked, double start, double length)
    {
        double at = 0;
        foreach (var (from, to) in blocked.Append((start, start)).Append((length, length)).Order())
        {
            if (from - at > 0.5)
            {
                yield return (at, from);
            }

            at = Math.Max(at, to);
        }
    }
}
