using NameBand.Common;
using NameBand.Stitching;

namespace NameBand.Tests.StitchQuality;

internal static class TravelMeasure
{
    /// <summary>Length of travel and underlay that no later satin covers, as a part of all thread.</summary>
    public static double InSight(NeedlePath path, ThreadGrid grid)
    {
        double thread = 0;
        double seen = 0;
        for (int i = 1; i < path.Steps.Length; i++)
        {
            var (a, b) = (path.Steps[i - 1], path.Steps[i]);
            if (a.Action != NeedleAction.Stitch || b.Action != NeedleAction.Stitch)
            {
                continue;
            }

            double length = a.At.DistanceTo(b.At);
            thread += length;
            if (b.Kind is not (StitchKind.Travel or StitchKind.Underlay))
            {
                continue;
            }

            int parts = Math.Max(1, (int)(length / 0.05));
            for (int k = 0; k < parts; k++)
            {
                var p = a.At + ((b.At - a.At) * ((k + 0.5) / parts));
                seen += grid.LastSatin[grid.CellOf(p)] > i ? 0 : length / parts;
            }
        }

        return thread < 1e-9 ? 0 : seen / thread;
    }
}
