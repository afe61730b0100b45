using System.Collections.Immutable;
using NameBand.Cloth;
using NameBand.Common;
using NameBand.Lettering;
using NameBand.Stitching;
using NameBand.Stitching.Sewing;

namespace NameBand.Load.Swatches;

/// <summary>Sews a swatch: crosses first, a stop to change the thread, then each sample with its label in running stitch.</summary>
public static class SwatchSewer
{
    /// <summary>One stroke width everywhere: labels are run on the middle of their strokes.</summary>
    public const string LabelFace = "Routed Gothic";

    private const double MarkArmMm = 3;
    private const double LabelStitchMm = 1.4;

    /// <param name="labelFace">A face of one stroke width.</param>
    public static NeedlePath Sew(SwatchPlan plan, SwatchHooping hooping, Fabric fabric, Face face, Face labelFace, FaceShelf shelf)
    {
        var writer = new PathWriter();
        AlignmentMarks.Cross(new Point(hooping.LeftMarkMm, hooping.MarkYMm), MarkArmMm, writer);
        AlignmentMarks.Cross(new Point(hooping.LeftMarkMm + plan.MarksApartMm, hooping.MarkYMm), MarkArmMm, writer);
        writer.Trim(withLock: false);
        writer.Stop();
        var steps = ImmutableArray.CreateBuilder<NeedleStep>();
        steps.AddRange(writer.ToPath().Steps);
        var word = SwatchWord.Lettered([plan.Word], face, shelf)[0];
        foreach (var placed in hooping.Samples)
        {
            steps.AddRange(Label(placed, labelFace, shelf));
            var sample = placed.Sample;
            var cloth = fabric with { SpacingMm = sample.SpacingMm, PullCompensationMm = sample.PullCompensationMm };
            foreach (var step in new Stitcher(cloth, sample.LetterHeightMm).SewName(word).Steps)
            {
                steps.Add(step with { At = step.At + placed.At });
            }
        }

        steps.Add(new NeedleStep(NeedleAction.End, StitchKind.None, steps[^1].At));
        return new NeedlePath(steps.ToImmutable());
    }

    private static ImmutableArray<NeedleStep> Label(PlacedSample placed, Face face, FaceShelf shelf)
    {
        var lettered = SwatchWord.Lettered([placed.Sample.Label], face, shelf);
        var writer = new PathWriter();
        Point? last = null;
        foreach (var piece in lettered.SelectMany(l => l.Pieces))
        {
            var origin = placed.LabelAt + (piece.At * SwatchPlanner.LabelHeightMm);
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
