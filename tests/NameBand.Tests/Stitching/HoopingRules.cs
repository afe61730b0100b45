using NameBand.Common;
using NameBand.Layout;
using NameBand.Stitching;
using Xunit;

namespace NameBand.Tests.StitchingRoom;

/// <summary>What holds for the path of a hooping against its plan.</summary>
internal static class HoopingRules
{
    public static void Hold(NeedlePath path, StripPlan plan, Hooping hooping)
    {
        var stop = path.Steps.Select((s, i) => (s, i)).Single(p => p.s.Action == NeedleAction.Stop).i;
        Assert.Equal(NeedleAction.Trim, path.Steps[stop - 1].Action);
        Assert.All(path.Steps.Take(stop).Where(s => s.Action == NeedleAction.Stitch), s => Assert.Equal(StitchKind.Mark, s.Kind));
        Assert.All(path.Steps.Skip(stop).Where(s => s.Action == NeedleAction.Stitch), s => Assert.NotEqual(StitchKind.Mark, s.Kind));
        var marks = path.Steps.Where(s => s.Kind == StitchKind.Mark).Select(s => s.At).ToList();
        foreach (var placed in hooping.Segments)
        {
            MarksHold(marks, placed, plan);
        }

        foreach (var step in path.Steps.Skip(stop + 1).Where(s => s.Action == NeedleAction.Stitch))
        {
            Assert.True(hooping.Segments.Any(s => IsInAName(step.At, s, plan)), $"a needle point at {step.At} lies in no name");
        }

        foreach (var placed in hooping.Segments)
        {
            double last = double.NegativeInfinity;
            foreach (var name in placed.Segment.Names)
            {
                var own = path.Steps.Select((s, i) => (s, i))
                    .Where(p => p.i > stop && p.s.Action == NeedleAction.Stitch && IsIn(p.s.At, placed, name, plan)).Select(p => p.i)
                        .ToList();
                Assert.NotEmpty(own);
                Assert.True(own[0] > last, "names are sewn from left to right, one after the other");
                last = own[^1];
                Assert.Equal(NeedleAction.Trim, path.Steps[own[^1] + 1].Action);
            }
        }
    }

    private static void MarksHold(List<Point> marks, HoopedSegment placed, StripPlan plan)
    {
        double length = placed.Segment.LengthMm;
        var own = marks.Where(p => Math.Abs(p.YMm - placed.YMm - plan.MarkYMm) <= 3.001).ToList();
        Assert.NotEmpty(own);
        Assert.All(own, p => Assert.InRange(p.XMm, placed.XMm - 1e-9, placed.XMm + length + 1e-9));
        var onLine = own.Where(p => Math.Abs(p.YMm - placed.YMm - plan.MarkYMm) < 1e-9).ToList();
        double apart = onLine.Max(p => p.XMm) - onLine.Min(p => p.XMm);
        Assert.True(length < 106 || apart >= 100, $"marks only {apart} mm apart in a segment of {length} mm");
    }

    private static bool IsInAName(Point p, HoopedSegment placed, StripPlan plan) =>
        placed.Segment.Names.Any(n => IsIn(p, placed, n, plan));

    private static bool IsIn(Point p, HoopedSegment placed, PlacedName name, StripPlan plan)
    {
        double left = placed.XMm + ((name.StartMm - placed.Segment.StartMm) / (1 - plan.Shortening));
        var ink = name.Lettered.Ink.Scaled(plan.LetterHeightMm);
        double c = plan.PullCompensationMm;
        double line = placed.YMm + name.BaselineYMm;
        return p.XMm >= left - 1e-6 && p.XMm <= left + name.WidthMm + 1e-6
            && p.YMm >= line + ink.BottomMm - c - 1e-6 && p.YMm <= line + ink.TopMm + c + 1e-6;
    }
}
