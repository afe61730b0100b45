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
            [.. lanes.Select((l, i) => LaneOf(l.Hooped, l.StartMm, sizing).MovedTo(offsetsMm[i]))],
            [new CoverField(sizing.HoopingOnClothMm, lanes.Count, 1), .. smaller]).CutInFields();

    /// <summary>The hoopings of a strip that lies alone.</summary>
    /// <param name="startMm">Where its part of the round begins.</param>
    public static IEnumerable<Share> Alone(IReadOnlyList<HoopedUnit> names, double startMm, Sizing sizing) =>
        new LaneCover([LaneOf(names, startMm, sizing)], sizing.HoopingOnClothMm).Cut().Select(shares => shares[0]);

    /// <summary>How far each lane is best moved along the cloth, so that the hoopings cost least.</summary>
    public static double[] Offsets(IReadOnlyList<RoundPart> parts, Sizing sizing) =>
        new LaneShifts([.. parts.Select(p => LaneOf(p.Hooped, p.StartMm, sizing))], sizing.HoopingOnClothMm).Best();

    private static HoopingLane LaneOf(IReadOnlyList<HoopedUnit> names, double startMm, Sizing sizing)
    {
        double[] left = [.. names.Select(n => sizing.Flat.OnClothMm(n.First.StartMm - startMm))];
        return new HoopingLane(
            left, [.. names.Select(n => sizing.Flat.OnClothMm(n.Last.EndMm - startMm))], sizing.HoopingOnClothMm,
            (first, last) => names[first].Run == names[last].Run && SegmentCutter.FitsField(names[first].First, names[last].Last, sizing),
            [.. names.Select(n => n.Name is not null)]);
    }
}
