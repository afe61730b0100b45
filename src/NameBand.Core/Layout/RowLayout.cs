using System.Collections.Immutable;
using NameBand.Lettering;

namespace NameBand.Layout;

/// <summary>Places the names of one round along it.</summary>
internal static class RowLayout
{
    /// <summary>The gap, and the length the round takes when its names are placed at that gap.</summary>
    /// <param name="LeadMm">Blank before the first name.</param>
    public readonly record struct Gaps(double GapMm, double LeadMm, double LengthMm);

    /// <summary>
    /// Gaps for names of <paramref name="widthsMm"/> in all. Where they fit, slack goes between them (or stays at the
    /// end); where they do not, the round is as long as the names need at the least gap.
    /// </summary>
    /// <param name="keptGapMm">A gap to keep instead of spreading the slack, or null.</param>
    public static Gaps Space(double widthsMm, int names, double roundMm, double leastGapMm, bool spread, double? keptGapMm, Sizing sizing)
    {
        int gaps = names == 0 ? 0 : sizing.GapCount(names);
        double need = sizing.NeedMm(widthsMm, names, leastGapMm);
        bool fits = need <= roundMm + Sizing.SlightMm;
        double gap = leastGapMm;
        if (fits && gaps > 0)
        {
            double widest = (roundMm - widthsMm) / gaps;
            gap = keptGapMm is { } kept ? Math.Min(kept, widest) : spread ? widest : leastGapMm;
        }

        double lead = sizing.Hem.Closed && names > 0 ? gap / 2 : 0;
        if (!sizing.Hem.Closed && names == 1 && spread && fits)
        {
            lead = (roundMm - widthsMm) / 2;
        }

        return new Gaps(gap, lead, fits ? roundMm : need);
    }

    public static ImmutableArray<PlacedName> Place(
        IEnumerable<LetteredName> names, Gaps gaps, double heightMm, Sizing sizing, Baselines baselines, ref int order)
    {
        var placed = ImmutableArray.CreateBuilder<PlacedName>();
        double at = gaps.LeadMm;
        foreach (var name in names)
        {
            double width = sizing.WidthMm(name, heightMm);
            placed.Add(new PlacedName(name, at, width, baselines.Of(name), order++));
            at += width + gaps.GapMm;
        }

        return placed.ToImmutable();
    }
}
