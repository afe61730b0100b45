using NameBand.Common;
using NameBand.Lettering;
using NameBand.Stitching;
using NameBand.Stitching.Sewing;

namespace NameBand.Tests.StitchQuality;

/// <summary>How a whole name is gone through: cuts, loose threads, and what lies where no satin hides it. Lengths in mm.</summary>
/// <param name="Trims">The last one included.</param>
/// <param name="LooseThreads">Jumps that are not cut, the first one aside: it only brings the needle there.</param>
/// <param name="OverSatinPart">Travel and underlay laid over finished satin, as a part of all thread.</param>
/// <param name="OverSatinSeenPart">The part of it that no later satin covers.</param>
/// <param name="JoinsMm">Travel in sight outside all satin.</param>
/// <param name="LongestJoinMm">The longest stretch of it in one piece.</param>
/// <param name="ShortestLockMm">The shortest lock stitch.</param>
internal sealed record NameMeasure(
    int Trims, int LooseThreads, double LooseMm, double OverSatinPart, double OverSatinSeenPart, double JoinsMm, double LongestJoinMm,
    double ShortestLockMm, int Stitches, double Crowded, double Load)
{
    private const double StepMm = 0.05;

    public static NameMeasure Of(Stitcher stitcher, LetteredName name, double height) =>
        Of(stitcher.SewName(name), OutlineOf(name, height), LetterTrial.Cotton.Thread.DiameterMm);

    /// <summary>Where <see cref="Stitcher.SewName(LetteredName)"/> sews it on the trial's cotton.</summary>
    public static Outline OutlineOf(LetteredName name, double height)
    {
        double x = LetterTrial.Cotton.LettersReachMm(height) - (name.Ink.LeftMm * height);
        return new Outline(
            [.. name.Pieces.SelectMany(p => p.Piece.Outline.Scaled(height).Moved(new Point(x, 0) + (p.At * height)).Rings)]);
    }

    public static NameMeasure Of(NeedlePath path, Outline outline, double threadMm)
    {
        var grid = new ThreadGrid(outline, path, threadMm, 0.05);
        var steps = path.Steps;
        var (loose, looseMm, joins, longest, piece) = (0, 0.0, 0.0, 0.0, 0.0);
        double shortestLock = double.PositiveInfinity;
        for (int i = 1; i < steps.Length; i++)
        {
            var (a, b) = (steps[i - 1], steps[i]);
            double length = a.At.DistanceTo(b.At);
            if (b.Action == NeedleAction.Jump && a.Action == NeedleAction.Stitch)
            {
                loose++;
                looseMm += length;
            }

            if (a.Action != NeedleAction.Stitch || b.Action != NeedleAction.Stitch)
            {
                piece = 0;
                continue;
            }

            shortestLock = b.Kind == StitchKind.Lock ? Math.Min(shortestLock, length) : shortestLock;
            if (b.Kind is not (StitchKind.Travel or StitchKind.Underlay))
            {
                piece = 0;
                continue;
            }

            int parts = Math.Max(1, (int)(length / StepMm));
            for (int k = 0; k < parts; k++)
            {
                int cell = grid.CellOf(a.At + ((b.At - a.At) * ((k + 0.5) / parts)));
                bool isOver = grid.FirstSatin[cell] > 0 && grid.FirstSatin[cell] < i;
                bool isCovered = grid.LastSatin[cell] > i;
                piece = isOver || isCovered ? 0 : piece + (length / parts);
                joins += isOver || isCovered ? 0 : length / parts;
                longest = Math.Max(longest, piece);
            }
        }

        var (crowded, load) = HoleMeasure.Of(path);
        var over = TravelMeasure.OverSatin(path, grid);
        return new NameMeasure(
            path.Trims, loose, looseMm, over.All, over.Seen, joins, longest, shortestLock, path.Stitches, crowded, load);
    }
}
