using System.Collections.Immutable;

namespace NameBand.Layout.Pieces;

/// <summary>Cuts strips that lie side by side on one cloth into the hoopings that cost least work.</summary>
internal static class LaneCutter
{
    private const double FineStepMm = 2;

    /// <summary>For more than two lanes, which take longer to try.</summary>
    private const double CoarseStepMm = 5;

    /// <summary>The names of one lane in one hooping: the first and how many.</summary>
    public readonly record struct Share(int Lane, int First, int Count);

    /// <summary>Hoopings from left to right, each with the share of every lane that has names in it.</summary>
    public static ImmutableArray<ImmutableArray<Share>> Cut(IReadOnlyList<RoundPart> lanes, IReadOnlyList<double> offsetsMm, Sizing sizing) =>
        new LaneCover([.. lanes.Select((l, i) => LaneOf(l, sizing).MovedTo(offsetsMm[i]))], sizing.HoopingOnClothMm).Cut();

    /// <summary>How far each lane is best moved along the cloth against the first, so that the hoopings cost least.</summary>
    public static double[] Offsets(IReadOnlyList<RoundPart> parts, Sizing sizing)
    {
        var offsets = new double[parts.Count];
        var lanes = parts.Select(p => LaneOf(p, sizing)).ToList();
        double step = parts.Count <= 2 ? FineStepMm : CoarseStepMm;
        for (int l = 1; l < parts.Count; l++)
        {
            double bound = LaneCover.Bound([.. lanes.Take(l + 1)]);
            double least = double.PositiveInfinity;
            for (double offset = 0; offset < sizing.LongestSegmentMm && least > bound + 1e-9; offset += step)
            {
                double work = new LaneCover([.. lanes.Take(l), lanes[l].MovedTo(offset)], sizing.HoopingOnClothMm, isScouting: true).LeastWork(least);
                if (work < least)
                {
                    (least, offsets[l]) = (work, offset);
                }
            }

            lanes[l] = lanes[l].MovedTo(offsets[l]);
        }

        return offsets;
    }

    private static HoopingLane LaneOf(RoundPart part, Sizing sizing)
    {
        double[] left = [.. part.Names.Select(n => sizing.Flat.OnClothMm(n.StartMm - part.StartMm))];
        return new HoopingLane(
            left, [.. part.Names.Select(n => sizing.Flat.OnClothMm(n.EndMm - part.StartMm))], sizing.HoopingOnClothMm,
            (first, last) => part.Runs[first] == part.Runs[last] && SegmentCutter.FitsField(part.Names[first], part.Names[last], sizing));
    }
}
