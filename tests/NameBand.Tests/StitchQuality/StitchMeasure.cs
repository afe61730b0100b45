using NameBand.Cloth;
using NameBand.Common;
using NameBand.Stitching;
using NameBand.Stitching.Columns;

namespace NameBand.Tests.StitchQuality;

/// <summary>The measures of one letter or name. Angles in degrees, lengths in mm, parts from 0 to 1.</summary>
internal sealed record StitchMeasure(
    string Letter, double Coverage, double ThinCoverage, double Spill, double HoleMm, double Crowded, double ShortestMm,
    double LongestMm, double Load, int Layers, double AngleMedian, double Angle95, double SquareMedian, double Square95, int Crossings,
    int CrossedOver, int Jumps, int ExtraJumps,
    double TravelInSight, double OverSatin, double RunDeviationMm, int Stitches, bool IsRun)
{
    private const double CellMm = 0.05;

    public static StitchMeasure Of(
        string letter, Outline outline, NeedlePath path, Fabric fabric, bool isRun, IReadOnlyList<Column> columns, Point origin)
    {
        var grid = new ThreadGrid(outline, path, fabric.Thread.DiameterMm, CellMm);
        var thin = new ThreadGrid(outline, path, 0.28, CellMm);
        int area = grid.Inside.Count(i => i);
        int covered = 0;
        int thinCovered = 0;
        for (int i = 0; i < grid.Inside.Length; i++)
        {
            covered += grid.Inside[i] && grid.Layers[i] > 0 ? 1 : 0;
            thinCovered += thin.Inside[i] && thin.Layers[i] > 0 ? 1 : 0;
        }

        var fromInside = new DistanceMap(grid.Width, grid.Height, i => grid.Inside[i]);
        double reach = (fabric.PullCompensationMm + 0.2) / CellMm;
        int spilt = 0;
        var withoutJoins = new ThreadGrid(outline, WithoutJoins(path, grid), fabric.Thread.DiameterMm, CellMm);
        bool IsBare(int i) => grid.Inside[i] && grid.Layers[i] == 0;
        var fromThread = new DistanceMap(grid.Width, grid.Height, i => !IsBare(i));
        int furthest = 0;
        for (int i = 0; i < grid.Inside.Length; i++)
        {
            spilt += withoutJoins.Layers[i] > 0 && !grid.Inside[i] && fromInside.Squared(i) > reach * reach ? 1 : 0;
            furthest = IsBare(i) ? Math.Max(furthest, fromThread.Squared(i)) : furthest;
        }

        double hole = Math.Max(0, (2 * Math.Sqrt(furthest) - 1) * CellMm);
        var crossings = CrossingMeasure.Of(path);
        var square = SquarenessMeasure.Of(path, columns, origin);
        var (crowded, load) = HoleMeasure.Of(path);
        var (shortest, longest) = Lengths(path);
        int parts = outline.Rings.Count(r => r.SignedAreaMm2() > 0.02);
        return new StitchMeasure(
            letter, (double)covered / Math.Max(1, area), (double)thinCovered / Math.Max(1, area), (double)spilt / Math.Max(1, area), hole,
            crowded, shortest, longest, load, grid.Layers.Max(), crossings.Median, crossings.Worst95, square.Median, square.Worst95,
            crossings.Count, crossings.Crossed, path.Jumps,
            Math.Max(0, path.Jumps + 1 - parts), TravelMeasure.InSight(path, grid), TravelMeasure.OverSatin(path, grid).All,
            isRun ? RunMeasure.Deviation(path, outline) : 0,
            path.Stitches, isRun);
    }

    /// <summary>Joins to dots and accents lie on bare cloth: they are no spill.</summary>
    private static NeedlePath WithoutJoins(NeedlePath path, ThreadGrid grid) =>
        new([.. path.Steps.Select((s, i) =>
            i > 0 && TravelMeasure.IsJoin(path.Steps[i - 1], s, grid) ? new NeedleStep(NeedleAction.Jump, StitchKind.None, s.At) : s)]);

    private static (double Shortest, double Longest) Lengths(NeedlePath path)
    {
        double shortest = double.PositiveInfinity;
        double longest = 0;
        for (int i = 1; i < path.Steps.Length; i++)
        {
            var (a, b) = (path.Steps[i - 1], path.Steps[i]);
            if (a.Action != NeedleAction.Stitch || b.Action != NeedleAction.Stitch || b.Kind is StitchKind.Lock or StitchKind.Mark
                || a.Kind == StitchKind.Lock)
            {
                continue;
            }

            double length = a.At.DistanceTo(b.At);
            shortest = Math.Min(shortest, length);
            longest = Math.Max(longest, length);
        }

        return (shortest, longest);
    }
}
