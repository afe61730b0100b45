using NameBand.Common;

namespace NameBand.Layout;

/// <summary>What one segment of names may hold and how far it reaches.</summary>
internal static class SegmentCutter
{
    /// <summary>Least distance between two alignment marks; closer ones do not show a slant (1° climbs 1.7 mm over it).</summary>
    public const double LeastMarkDistanceMm = 100;

    /// <summary>Half the length of the cross that each mark is sewn as.</summary>
    public const double MarkArmMm = 3;

    /// <summary>
    /// Left end and length of the segment for a run of names: from the first name to the last, and on both sides as
    /// far as two marks need, between the given ends and within the field. Names that are not hooped have no such marks.
    /// </summary>
    public static (double StartMm, double LengthMm) Extent(
        PlacedName first, PlacedName last, double fromMm, double toMm, Sizing sizing)
    {
        double names = last.EndMm - first.StartMm;
        if (first.Lettered.IsInOneRun)
        {
            return (first.StartMm, names);
        }

        double wished = Math.Min(sizing.MarkedSegmentMm, sizing.LongestSegmentMm);
        double length = Math.Max(names, Math.Min(wished, toMm - fromMm));
        double start = first.StartMm - ((length - names) / 2);
        start = Math.Min(Math.Max(start, fromMm), Math.Max(toMm - length, fromMm));
        return (Math.Min(Math.Max(start, last.EndMm - length), first.StartMm), length);
    }

    /// <summary>Whether a row of names from the first to the last can be sewn in one hooping: the field is judged on the flat
    /// cloth.</summary>
    public static bool FitsField(PlacedName first, PlacedName last, Sizing sizing) => first.Lettered.IsInOneRun
        || sizing.Flat.OnClothMm(last.EndMm - first.StartMm) <= sizing.HoopingOnClothMm + Tolerance.RoundingMm;
}
