using System.Collections.Immutable;
using NameBand.Lettering;

namespace NameBand.Layout.Resuming;

/// <summary>Sets all unsewn names out again, in the order of the list, in the room between the sewn ones.</summary>
internal sealed class Setting(Sizing sizing, double heightMm, double[] hemsMm, bool spread, SettledBaseline baseline)
{
    private readonly double _leastGap = sizing.GapMm(heightMm);

    /// <param name="names">All names, sewn ones too: those are passed over.</param>
    public ImmutableArray<KeptBlock> Place(ImmutableArray<KeptBlock> sewn, IReadOnlyList<LetteredName> names)
    {
        var lying = sewn.SelectMany(b => b.Names).Select(n => n.Lettered).ToHashSet();
        var rest = names.Where(n => !lying.Contains(n)).ToList();
        var (stretches, counts) = Divide(sewn, rest);

        var blocks = sewn.ToList();
        var used = sewn.SelectMany(b => new[] { b.Segment, b.Hooping }).ToHashSet();
        int order = sewn.SelectMany(b => b.Names).Select(n => n.Order).DefaultIfEmpty(0).Max();
        int number = 0;
        int next = 0;
        for (int i = 0; i < stretches.Count; i++)
        {
            var row = rest.GetRange(next, counts[i]);
            next += counts[i];
            foreach (var group in Groups(Spread(row, stretches[i], ref order)))
            {
                while (!used.Add(++number))
                {
                }

                double round = Math.Max(hemsMm[stretches[i].Round - 1], group[^1].EndMm);
                var (start, length) = SegmentCutter.Extent(group[0], group[^1], 0, round, sizing);
                blocks.Add(new KeptBlock(stretches[i].Round, number, number, start, length, IsSewn: false, group));
            }
        }

        return [.. blocks];
    }

    /// <summary>With the room that is kept free left blank, if they fit so; else they may have that too.</summary>
    private (List<FreeStretch> Stretches, int[] Counts) Divide(ImmutableArray<KeptBlock> sewn, List<LetteredName> rest)
    {
        double[] needs = [.. rest.Select(n => sizing.WidthMm(n, heightMm) + _leastGap)];
        var frugal = Kept.Stretches(sewn, hemsMm, sizing.Hem).ToList();
        if (frugal.Count > 0 && RoundDivider.Fits(needs, [.. frugal.Select(s => s.OfferMm(_leastGap, sizing.Hem.Closed))]))
        {
            return (frugal, Counts(needs, frugal));
        }

        var all = Kept.Stretches(sewn, hemsMm, sizing.Hem with { KeepFreeMm = 0 }).ToList();
        if (all.Count == 0)
        {
            all.Add(new FreeStretch(hemsMm.Length, hemsMm[^1], hemsMm[^1], true, false));
        }

        return (all, Counts(needs, all));
    }

    /// <summary>How many names each stretch takes: as evenly full as can be where all fit, else each full and the rest on the last.</summary>
    private int[] Counts(double[] needs, List<FreeStretch> stretches)
    {
        double[] offers = [.. stretches.Select(s => s.OfferMm(_leastGap, sizing.Hem.Closed))];
        if (RoundDivider.Fits(needs, offers))
        {
            return [.. RoundDivider.Divide(needs, offers)];
        }

        int[] counts = new int[stretches.Count];
        int next = 0;
        for (int i = 0; i < counts.Length; i++)
        {
            double room = offers[i];
            while (next < needs.Length && (i == counts.Length - 1 || needs[next] <= room))
            {
                room -= needs[next++];
                counts[i]++;
            }
        }

        return counts;
    }

    private ImmutableArray<PlacedName> Spread(List<LetteredName> row, FreeStretch stretch, ref int order)
    {
        if (row.Count == 0)
        {
            return [];
        }

        double[] widths = [.. row.Select(n => sizing.WidthMm(n, heightMm))];
        double slack = stretch.EndMm - stretch.StartMm - widths.Sum();
        var (leftParts, rightParts) = stretch.Ends(1, sizing.Hem.Closed);
        double parts = row.Count - 1 + leftParts + rightParts;
        double gap = spread && parts > 0 ? Math.Max(_leastGap, Math.Min(slack / parts, sizing.MostGapMm ?? double.MaxValue)) : _leastGap;
        double at = stretch.StartMm + (leftParts * gap);
        var placed = ImmutableArray.CreateBuilder<PlacedName>(row.Count);
        for (int i = 0; i < row.Count; i++)
        {
            placed.Add(new PlacedName(row[i], at, widths[i], baseline.For(row[i]), ++order));
            at += widths[i] + gap;
        }

        return placed.ToImmutable();
    }

    /// <summary>The fewest runs that the field can hold, each as long as it goes.</summary>
    private IEnumerable<ImmutableArray<PlacedName>> Groups(ImmutableArray<PlacedName> names)
    {
        int first = 0;
        for (int i = 1; i <= names.Length; i++)
        {
            if (i == names.Length || !SegmentCutter.FitsField(names[first], names[i], sizing))
            {
                yield return names[first..i];
                first = i;
            }
        }
    }
}
