using NameBand.Common;
using NameBand.Stitching;

namespace NameBand.Tests.StitchQuality;

internal static class TravelMeasure
{
    private const double StepMm = 0.05;

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
            if (b.Kind is not (StitchKind.Travel or StitchKind.Underlay) || IsJoin(a, b, grid))
            {
                continue;
            }

            int parts = Math.Max(1, (int)(length / StepMm));
            for (int k = 0; k < parts; k++)
            {
                var p = a.At + ((b.At - a.At) * ((k + 0.5) / parts));
                seen += grid.LastSatin[grid.CellOf(p)] > i ? 0 : length / parts;
            }
        }

        return thread < 1e-9 ? 0 : seen / thread;
    }

    /// <summary>Travel and underlay laid over finished satin, and what of it no later satin covers, as parts of all thread.</summary>
    public static (double All, double Seen) OverSatin(NeedlePath path, ThreadGrid grid)
    {
        var (thread, over, seen) = (0.0, 0.0, 0.0);
        for (int i = 1; i < path.Steps.Length; i++)
        {
            var (a, b) = (path.Steps[i - 1], path.Steps[i]);
            if (a.Action != NeedleAction.Stitch || b.Action != NeedleAction.Stitch)
            {
                continue;
            }

            double length = a.At.DistanceTo(b.At);
            thread += length;
            int parts = b.Kind is StitchKind.Travel or StitchKind.Underlay ? Math.Max(1, (int)(length / StepMm)) : 0;
            for (int k = 0; k < parts; k++)
            {
                int cell = grid.CellOf(a.At + ((b.At - a.At) * ((k + 0.5) / parts)));
                bool isOver = grid.FirstSatin[cell] > 0 && grid.FirstSatin[cell] < i;
                over += isOver ? length / parts : 0;
                seen += isOver && grid.LastSatin[cell] <= i ? length / parts : 0;
            }
        }

        return (over / Math.Max(1e-9, thread), seen / Math.Max(1e-9, thread));
    }

    /// <summary>
    /// A short stitch over bare cloth to a dot or an accent and back: it is meant to lie there. Both its ends are in ink, and
    /// no more than 2.2 mm of it is not.
    /// </summary>
    public static bool IsJoin(NeedleStep from, NeedleStep to, ThreadGrid grid)
    {
        const double LeastMm = 0.4;
        const double MostMm = 2.2 + 0.4;
        if (to.Kind != StitchKind.Travel || from.Action != NeedleAction.Stitch)
        {
            return false;
        }

        const int Parts = 40;
        int bare = 0;
        for (int k = 0; k < Parts; k++)
        {
            bare += grid.Inside[grid.CellOf(from.At + ((to.At - from.At) * ((k + 0.5) / Parts)))] ? 0 : 1;
        }

        double bareMm = from.At.DistanceTo(to.At) * bare / Parts;
        return bareMm is >= LeastMm and <= MostMm;
    }
}
