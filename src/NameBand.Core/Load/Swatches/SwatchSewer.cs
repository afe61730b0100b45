using System.Collections.Immutable;
using NameBand.Cloth;
using NameBand.Common;
using NameBand.Lettering;
using NameBand.Lettering.Faces;
using NameBand.Names;
using NameBand.Stitching;
using NameBand.Stitching.Sewing;

namespace NameBand.Load.Swatches;

/// <summary>Sews a swatch: crosses first, a stop to change the thread, then each sample with its label in running stitch.</summary>
internal static class SwatchSewer
{
    /// <summary>One stroke width everywhere: labels are run on the middle of their strokes.</summary>
    public const string LabelFace = "routed-gothic";

    private const double LabelStitchMm = 1.4; // Short enough for the bends of figures 4 mm high: our assumption.

    /// <param name="labelFace">A face of one stroke width.</param>
    public static NeedlePath Sew(SwatchPlan plan, SwatchHooping hooping, Fabric fabric, Face face, Face labelFace, FaceShelf shelf)
    {
        var writer = new PathWriter();
        AlignmentMarks.Cross(new Point(hooping.LeftMarkMm, hooping.MarkYMm), SwatchPlanner.ArmMm, writer);
        AlignmentMarks.Cross(new Point(hooping.LeftMarkMm + plan.MarksApartMm, hooping.MarkYMm), SwatchPlanner.ArmMm, writer);
        writer.Trim(withLock: false);
        writer.Stop();
        var steps = ImmutableArray.CreateBuilder<NeedleStep>();
        steps.AddRange(writer.ToPath().Steps);
        var word = SwatchWord.Lettered([plan.Word], face, shelf)[0];
        foreach (var placed in hooping.Samples)
        {
            steps.AddRange(Label(placed.Sample.Label, placed.LabelAt, labelFace, shelf));
            var sample = placed.Sample;
            var cloth = fabric with { SpacingMm = sample.SpacingMm, PullCompensationMm = sample.PullCompensationMm };
            foreach (var step in new Stitcher(cloth, sample.LetterHeightMm).SewName(word).Steps)
            {
                steps.Add(step with { At = step.At + placed.At });
            }
        }

        foreach (var placed in hooping.Columns)
        {
            steps.AddRange(Label(placed.Column.Label, placed.LabelAt, labelFace, shelf));
            steps.AddRange(Steps(placed.Column, fabric).Select(s => s with { At = s.At + placed.At }));
        }

        steps.Add(new NeedleStep(NeedleAction.End, StitchKind.None, steps[^1].At));
        return new NeedlePath(steps.ToImmutable());
    }

    /// <summary>From the outermost threads of a column to those across from them.</summary>
    public static SewnColumn AsSewn(SwatchColumn column, Fabric fabric)
    {
        Point[] satin = [.. Steps(column, fabric).Where(s => s.Kind == StitchKind.Satin).Select(s => s.At)];
        double along = satin.Max(p => p.XMm) - satin.Min(p => p.XMm);
        double up = satin.Max(p => p.YMm) - satin.Min(p => p.YMm);
        var (width, length) = column.IsLevel ? (up, along) : (along, up);
        return new SewnColumn(column.Label, column.IsLevel, width, length + fabric.Thread.DiameterMm);
    }

    /// <summary>What draws the cloth in is to be seen, so nothing is added for it.</summary>
    private static ImmutableArray<NeedleStep> Steps(SwatchColumn column, Fabric fabric)
    {
        var (x, y) = (column.AlongMm / column.LengthMm, column.UpMm / column.LengthMm);
        var outline = new Outline([new Ring([new Point(0, 0), new Point(x, 0), new Point(x, y), new Point(0, y)])]);
        var piece = new LetterPiece($"swatch: {column.Label}", "", column.Label, outline, outline.Bounds());
        var name = new LetteredName(new Name(column.Label, new RowRef("swatch", 1)), [new PlacedPiece(piece, new Point(0, 0))], piece.Ink);
        return new Stitcher(fabric with { PullCompensationMm = 0, PushCompensationMm = 0 }, column.LengthMm).SewName(name).Steps;
    }

    private static ImmutableArray<NeedleStep> Label(string label, Point at, Face face, FaceShelf shelf)
    {
        var lettered = SwatchWord.Lettered([label], face, shelf);
        var writer = new PathWriter();
        Point? last = null;
        foreach (var piece in lettered.SelectMany(l => l.Pieces))
        {
            var origin = at + (piece.At * SwatchPlanner.LabelHeightMm);
            foreach (var line in Centrelines.Of(piece.Piece, SwatchPlanner.LabelHeightMm))
            {
                var run = Run(line);
                if (run.Length > 1)
                {
                    bool isNear = last is { } from && from.DistanceTo(origin + run[0].At) <= SewingSettings.UsualLongestJoinMm;
                    writer.Run(new LockedRun(run), new Placing(origin, 0), isNear);
                    last = origin + run[^1].At;
                }
            }
        }

        writer.Trim();
        return writer.ToPath().Steps;
    }

    /// <summary>Stitches of even length along a line, its ends kept.</summary>
    private static NeedleStep[] Run(ImmutableArray<Point> line)
    {
        double length = 0;
        for (int i = 1; i < line.Length; i++)
        {
            length += line[i].DistanceTo(line[i - 1]);
        }

        int count = Math.Max(1, (int)Math.Ceiling(length / LabelStitchMm));
        var run = new List<NeedleStep> { new(NeedleAction.Stitch, StitchKind.Running, line[0]) };
        double gone = 0;
        for (int i = 1; i < line.Length; i++)
        {
            double step = line[i].DistanceTo(line[i - 1]);
            while (step > 1e-9 && run.Count <= count && gone + step >= (length * run.Count / count) - 1e-9)
            {
                double part = Math.Clamp(((length * run.Count / count) - gone) / step, 0, 1);
                run.Add(new NeedleStep(NeedleAction.Stitch, StitchKind.Running, line[i - 1] + ((line[i] - line[i - 1]) * part)));
            }

            gone += step;
        }

        return [.. run];
    }
}
