using System.Collections.Immutable;

namespace NameBand.Layout.Pieces;

/// <summary>Cuts strips that lie side by side on one cloth into the hoopings that cost least work.</summary>
internal static class LaneCutter
{
    /// <summary>The names of one lane in one hooping: the first and how many.</summary>
    public readonly record struct Share(int Lane, int First, int Count);

    /// <summary>Hoopings from left to right, each with its field and the share of every lane that has names in it.</summary>
    /// <param name="smaller">Fields beside that of the sizing: their numbers are counted from 1.</param>
    public static ImmutableArray<(int Field, ImmutableArray<Share> Shares)> Cut(
        IReadOnlyList<RoundPart> lanes, IReadOnlyList<double> offsetsMm, Sizing sizing, IEnumerable<CoverField> smaller) =>
        new LaneCover(
            [.. lanes.Select((l, i) => LaneOf(l, sizing).MovedTo(offsetsMm[i]))],
            [new CoverField(sizing.HoopingOnClothMm, lanes.Count, 1), .. smaller]).CutInFields();

    /// <summary>How far each lane is best moved along the cloth, so that the hoopings cost least.</summary>
    public static double[] Offsets(IReadOnlyList<RoundPart> parts, Sizing sizing) =>
        new LaneShifts([.. parts.Select(p => LaneOf(p, sizing))], sizing.HoopingOnClothMm).Best();

    private static HoopingLane LaneOf(RoundPart part, Sizing sizing)
    {
        double[] left = [.. part.Names.Select(n => sizing.Flat.OnClothMm(n.StartMm - part.StartMm))];
        return new HoopingLane(
            left, [.. part.Names.Select(n => sizing.Flat.OnClothMm(n.EndMm - part.StartMm))], sizing.HoopingOnClothMm,
            (first, last) => part.Runs[first] == part.Runs[last] && SegmentCutter.FitsField(part.Names[first], part.Names[last], sizing));
    }
}
