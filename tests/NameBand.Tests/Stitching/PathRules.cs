using NameBand.Stitching;
using Xunit;

namespace NameBand.Tests.StitchingRoom;

/// <summary>What holds for every needle path that ends.</summary>
internal static class PathRules
{
    private const double ShortestMm = 0.3;
    private const double LongestMm = 7;

    public static void Hold(NeedlePath path)
    {
        var steps = path.Steps;
        Assert.Equal(NeedleAction.Jump, steps[0].Action);
        Assert.Equal(NeedleAction.End, steps[^1].Action);
        Assert.Single(steps, s => s.Action == NeedleAction.End);
        for (int i = 0; i < steps.Length; i++)
        {
            var step = steps[i];
            Assert.True(double.IsFinite(step.At.XMm) && double.IsFinite(step.At.YMm));
            Assert.Equal(step.Action == NeedleAction.Stitch, step.Kind != StitchKind.None);
            switch (step.Action)
            {
                case NeedleAction.Jump when steps[i + 1].Action != NeedleAction.Jump:
                    Assert.Equal(NeedleAction.Stitch, steps[i + 1].Action);
                    Assert.Equal(step.At, steps[i + 1].At);
                    break;
                case NeedleAction.Trim or NeedleAction.Stop or NeedleAction.End:
                    Assert.Equal(steps[i - 1].At, step.At);
                    break;
            }

            if (i > 0 && step.Action == NeedleAction.Stitch)
            {
                Assert.True(
                    steps[i - 1].Action is NeedleAction.Stitch or NeedleAction.Jump,
                    $"step {i + 1}: a stitch follows {steps[i - 1].Action}");
            }

            if (step.Action == NeedleAction.Trim)
            {
                var next = steps.Skip(i + 1).First(s => s.Action is not NeedleAction.Stop);
                Assert.True(next.Action is NeedleAction.Jump or NeedleAction.End);
            }

            if (i > 0 && IsPlainStitch(steps[i - 1]) && IsPlainStitch(step))
            {
                double length = steps[i - 1].At.DistanceTo(step.At);
                Assert.True(length is >= ShortestMm - 1e-6 and <= LongestMm + 1e-6, $"step {i + 1}: {length} mm, {steps[i - 1]} to {step}");
            }
        }
    }

    private static bool IsPlainStitch(NeedleStep step) =>
        step.Action == NeedleAction.Stitch && step.Kind is not (StitchKind.Lock or StitchKind.Mark);
}
