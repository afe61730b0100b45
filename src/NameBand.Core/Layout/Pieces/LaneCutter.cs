using System.Collections.Immutable;

namespace NameBand.Layout.Pieces;

/// <summary>
/// Cuts strips that lie side by side on one cloth into hoopings. A hooping begins at the leftmost name not yet sewn
/// and takes in every lane what fits: for lanes that lie fast beside each other no division has fewer.
/// </summary>
internal static class LaneCutter
{
    private const double OffsetStepMm = 10;

    /// <summary>The names of one lane in one hooping: the first and how many.</summary>
    public readonly record struct Share(int Lane, int First, int Count);

    /// <summary>Hoopings from left to right, each with the share of every lane that has names in it.</summary>
    public static ImmutableArray<ImmutableArray<Share>> Cut(IReadOnlyList<RoundPart> lanes, IReadOnlyList<double> offsetsMm, Sizing sizing)
    {
        var next = new int[lanes.Count];
        var hoopings = ImmutableArray.CreateBuilder<ImmutableArray<Share>>();
        while (Enumerable.Range(0, lanes.Count).Any(l => next[l] < lanes[l].Names.Length))
        {
            double left = Enumerable.Range(0, lanes.Count)
                .Where(l => next[l] < lanes[l].Names.Length)
                .Min(l => OnCloth(lanes[l], offsetsMm[l], next[l], sizing));
            var shares = ImmutableArray.CreateBuilder<Share>();
            for (int l = 0; l < lanes.Count; l++)
            {
                int first = next[l];
                while (next[l] < lanes[l].Names.Length && Fits(lanes[l], offsetsMm[l], first, next[l], left, sizing))
                {
                    next[l]++;
                }

                if (next[l] > first)
                {
                    shares.Add(new Share(l, first, next[l] - first));
                }
            }

            hoopings.Add(shares.ToImmutable());
        }

        return hoopings.ToImmutable();
    }

    /// <summary>How far each lane is best moved along the cloth against the first, so that the hoopings are few.</summary>
    public static double[] Offsets(IReadOnlyList<RoundPart> lanes, Sizing sizing)
    {
        var offsets = new double[lanes.Count];
        for (int l = 1; l < lanes.Count; l++)
        {
            int fewest = int.MaxValue;
            double best = 0;
            for (double offset = 0; offset < sizing.LongestSegmentMm; offset += OffsetStepMm)
            {
                offsets[l] = offset;
                int hoopings = Cut([.. lanes.Take(l + 1)], offsets, sizing).Length;
                if (hoopings < fewest)
                {
                    (fewest, best) = (hoopings, offset);
                }
            }

            offsets[l] = best;
        }

        return offsets;
    }

    /// <summary>Where a name lies on the cloth, from the first lane's start.</summary>
    public static double OnCloth(RoundPart lane, double offsetMm, int name, Sizing sizing) =>
        offsetMm + ((lane.Names[name].StartMm - lane.StartMm) / (1 - sizing.Shortening));

    private static bool Fits(RoundPart lane, double offsetMm, int first, int name, double leftMm, Sizing sizing)
    {
        double right = OnCloth(lane, offsetMm, name, sizing) + lane.Names[name].WidthMm;
        return SegmentCutter.FitsField(lane.Names[first], lane.Names[name], sizing)
            && right - leftMm <= sizing.HoopingOnClothMm + Sizing.SlightMm;
    }
}
