using System.Collections.Immutable;
using NameBand.Common;
using NameBand.Lettering;

namespace NameBand.Layout;

/// <summary>Places the names of one stretch along it.</summary>
internal static class RowLayout
{
    /// <summary>The gap, and the length the stretch takes when its names are placed at that gap.</summary>
    /// <param name="LeadMm">Blank before the first name.</param>
    public readonly record struct Gaps(double GapMm, double LeadMm, double LengthMm);

    /// <summary>What is wished of the gaps between names.</summary>
    /// <param name="Spread">Whether slack goes between the names; else it stays at the end.</param>
    /// <param name="KeptMm">A gap to keep instead of spreading the slack, or null.</param>
    /// <param name="MostMm">The widest gap allowed; what is left over then stays blank at the end. Null for any.</param>
    public readonly record struct GapWish(double LeastMm, bool Spread, double? KeptMm, double? MostMm);

    /// <summary>
    /// Gaps for names of <paramref name="widthsMm"/> in all on one stretch. Where they fit, slack goes between them (or stays at the
    /// end); where they do not, the stretch is as long as the names need at the least gap.
    /// </summary>
    public static Gaps Space(double widthsMm, int names, FreeInterval stretch, GapWish wish)
    {
        var (leastGapMm, spread, keptGapMm, mostGapMm) = wish;
        int gaps = names == 0 ? 0 : stretch.GapCount(names);
        double need = names == 0 ? 0 : widthsMm + (gaps * leastGapMm);
        bool fits = need <= stretch.LengthMm + Tolerance.RoundingMm;
        double gap = leastGapMm;
        if (fits && gaps > 0)
        {
            double widest = (stretch.LengthMm - widthsMm) / gaps;
            gap = keptGapMm is { } kept ? Math.Min(kept, widest) : spread ? widest : leastGapMm;
            gap = Math.Max(leastGapMm, Math.Min(gap, mostGapMm ?? gap));
        }

        double lead = !stretch.HasOpenEnds && names > 0 ? gap / 2 : 0;
        if (stretch.HasOpenEnds && names == 1 && spread && fits)
        {
            lead = (stretch.LengthMm - widthsMm) / 2;
        }

        return new Gaps(gap, lead, fits ? stretch.LengthMm : need);
    }

    /// <summary>The same beside pinned names: the gap to them is as wide as the others.</summary>
    public static Gaps Beside(double widthsMm, Row row, GapWish wish)
    {
        var (leastGapMm, spread, keptGapMm, mostGapMm) = wish;
        if (row.Names.Count == 0 || row.Pins == (false, false))
        {
            return Space(widthsMm, row.Names.Count, row.Stretch, wish);
        }

        double end = row.Stretch.HasOpenEnds ? 0 : 0.5;
        double clear = OwnPlaces.ClearMm(row.Stretch, leastGapMm);
        double before = row.Pins.Before ? 1 : end;
        double parts = row.Names.Count - 1 + before + (row.Pins.After ? 1 : end);
        double more = clear * ((row.Pins.Before ? 1 : 0) + (row.Pins.After ? 1 : 0));
        double widest = (row.Stretch.LengthMm + more - widthsMm) / parts;
        bool fits = widest >= leastGapMm - Tolerance.RoundingMm;
        double gap = !fits || !spread ? leastGapMm : Math.Max(
            leastGapMm, Math.Min(Math.Min(widest, keptGapMm ?? widest), mostGapMm ?? widest));
        return new Gaps(
            gap, (before * gap) - (row.Pins.Before ? clear : 0), fits ? row.Stretch.LengthMm : widthsMm + (parts * leastGapMm) - more);
    }

    public static ImmutableArray<PlacedName> Place(
        IEnumerable<LetteredName> names, Gaps gaps, (double FromMm, int Order) first, double heightMm, Sizing sizing, Baselines baselines)
    {
        int order = first.Order;
        var placed = ImmutableArray.CreateBuilder<PlacedName>();
        double at = first.FromMm + gaps.LeadMm;
        foreach (var name in names)
        {
            double width = sizing.WidthMm(name, heightMm);
            placed.Add(new PlacedName(name, at, width, baselines.Of(name), order++));
            at += width + gaps.GapMm;
        }

        return placed.ToImmutable();
    }
}
