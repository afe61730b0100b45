using System.Collections.Immutable;
using NameBand.Common;
using NameBand.Job;
using NameBand.Layout;
using NameBand.MachineLetters;

namespace NameBand.Pipeline.Ways;

/// <summary>Finds the largest of a machine's settings at which names fit.</summary>
internal static class LargestSetting
{
    public sealed record Chosen(SizeStep Step, StripPlan Plan);

    public static Problem NoSuchHeight(double sewnMm) => Problem.CannotUse(
        new Where(JobReader.FileName, Key: "letters.sizes"),
        $"What is sewn has letters {Length.FromMm(sewnMm).InMillimetres()} high, and letters.sizes has no such height.",
        "Add that height to letters.sizes, so that what is keyed in stands as high as what is sewn.");

    /// <summary>The settings of one height.</summary>
    public static ImmutableArray<SizeStep> At(ImmutableArray<SizeStep> steps, double heightMm) =>
        [.. steps.Where(s => Math.Abs(s.HeightMm - heightMm) < Tolerance.HeightMm)];

    /// <param name="steps">All of the machine's settings, largest first.</param>
    /// <param name="layAt">May fail where nothing can be laid out at all.</param>
    public static Result<Chosen> Choose(BandJob job, ImmutableArray<SizeStep> steps, Func<SizeStep, Result<StripPlan>> layAt)
    {
        if (job.Lettering.Height is { } wished)
        {
            steps = At(steps, wished.Mm);
            if (steps.IsEmpty)
            {
                return Result.Fail<Chosen>(Problem.CannotUse(
                    new Where("job.json", Key: "lettering.height"), $"The machine has no letters {wished.InMillimetres()} high.",
                    $"Take one of letters.sizes ({string.Join(", ", job.Letters.Sizes.Select(s => s.InMillimetres()))}), or \"largest\"."));
            }
        }

        // Two lines of the larger letters may be too high for the strip.
        var all = steps.Select(s => (Step: s, Laid: layAt(s))).ToList();
        var tried = all.FindAll(t => t.Laid.Value is not null);
        if (tried.Count == 0)
        {
            return Result.Fail<Chosen>(all[^1].Laid.Problems);
        }

        int fewestHeld = tried.Min(t => t.Laid.Value!.Held.Length);
        int at = tried.FindIndex(t => t.Laid.Value!.MatchesHem && t.Laid.Value.Held.Length == fewestHeld);
        bool fits = at >= 0;
        at = fits ? at : tried.Count - 1;
        var (step, chosen) = tried[at];
        var problems = chosen.Problems.Where(p => p.Where.Key != "lettering").Select(p => Remended(p, job)).ToList();
        if (fits && at > 0)
        {
            var larger = tried[at - 1];
            problems.Add(Problem.Note(new Where(Key: "letters.sizes"), WhyNotLarger(larger.Step, larger.Laid.Value!, fewestHeld)));
        }

        return Result.Of(new Chosen(step, chosen.Value! with { SpacingMm = step.GapMm }), problems);
    }

    /// <summary>A job whose letters are as high as a setting has them.</summary>
    public static BandJob With(this BandJob job, SizeStep step) => job with
    {
        Lettering = job.Lettering with { Height = Length.FromMm(step.HeightMm), Least = Length.FromMm(step.HeightMm) },
    };

    private static Said WhyNotLarger(SizeStep step, StripPlan plan, int fewestHeld)
    {
        Said what = $"Letters {step.HeightMm:0.#} mm high with gaps of {step.GapMm:0.#} mm";
        return plan.Held.Length > fewestHeld
            ? (Said)$"{what} are too tall or too wide for some of the names."
            : $"{what} would need {plan.DifferenceMm:0} mm more strip than there is.";
    }

    /// <summary>What to do about a strip that is too long, in terms of the machine: its sizes are steps.</summary>
    private static Problem Remended(Problem problem, BandJob job) =>
        problem.Where.Key?.StartsWith("round", StringComparison.Ordinal) == true
        ? problem with
        {
            Mend =
            $"This is the smallest setting in letters.sizes{(job.Letters.Spacings.IsEmpty ? (Said)"" : " and letters.spacings")}. Use another round, a narrower lettering.gap, or hold the longest names."
        }
        : problem;
}
