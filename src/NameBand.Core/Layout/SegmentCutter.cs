using System.Collections.Immutable;

namespace NameBand.Layout;

/// <summary>Cuts a round's row of names into the fewest segments that the sewing field can hold, none through a name.</summary>
internal static class SegmentCutter
{
    /// <summary>Least distance between two alignment marks; closer ones do not show a slant (1° climbs 1.7 mm over it).</summary>
    public const double LeastMarkDistanceMm = 100;

    /// <summary>Half the length of the cross that each mark is sewn as.</summary>
    public const double MarkArmMm = 3;

    /// <summary>Number of names in each segment. Taking as many as fit, from the left, is the fewest for a fixed row.</summary>
    public static ImmutableArray<int> Cut(IReadOnlyList<PlacedName> names, Sizing sizing)
    {
        var counts = ImmutableArray.CreateBuilder<int>();
        int first = 0;
        for (int i = 1; i <= names.Count; i++)
        {
            if (i == names.Count || !FitsField(names[first], names[i], sizing))
            {
                counts.Add(i - first);
                first = i;
            }
        }

        return counts.ToImmutable();
    }

    /// <summary>
    /// Left end and length of the segment for a run of names: from the first name to the last, and on both sides as
    /// far as two marks need, within the round and the field.
    /// </summary>
    public static (double StartMm, double LengthMm) Extent(
        PlacedName first, PlacedName last, double roundMm, Sizing sizing)
    {
        double names = last.EndMm - first.StartMm;
        double wished = Math.Min(LeastMarkDistanceMm + (2 * MarkArmMm), sizing.LongestSegmentMm);
        double length = Math.Max(names, Math.Min(wished, roundMm));
        double start = first.StartMm - ((length - names) / 2);
        start = Math.Min(Math.Max(start, 0), Math.Max(roundMm - length, 0));
        return (Math.Min(start, first.StartMm), length);
    }

    private static bool FitsField(PlacedName first, PlacedName last, Sizing sizing)
    {
        double onCloth = ((last.StartMm - first.StartMm) / (1 - sizing.Shortening)) + last.WidthMm;
        return last.EndMm - first.StartMm <= sizing.LongestSegmentMm + Sizing.SlightMm
            && onCloth <= sizing.FieldAlongMm + Sizing.SlightMm;
    }
}
