using NameBand.Common;
using NameBand.Job;
using NameBand.Lettering;

namespace NameBand.Layout.Planning;

/// <summary>How much smaller the letters of one name must be, and no other's, for it to fit.</summary>
/// <param name="heightMm">Of the letters of all.</param>
/// <param name="fits">Whether a name as wide and high as that has room at that height.</param>
internal sealed class SmallerAlone(BandJob job, double heightMm, Func<LetteredName, bool> fits)
{
    /// <summary>Heights of names and of groups are offered in twentieths of the others'.</summary>
    private const int Steps = 20;
    private const double LeastFactor = 0.3; // As small as a wish or a group may make letters (docs/job-file.md).

    /// <summary>Smaller letters cannot be sewn: of finer thread, and by hand, they can, as small as job.json allows.</summary>
    public static double LeastMm(BandJob job) =>
        LayoutAdvice.IsSewnWith40Weight(job) ? LayoutAdvice.LeastFor40WeightMm : JobKeys.Height.LowMm;

    /// <summary>The largest factor, for a wish about this name, at which it fits and can be sewn; null: there is none.</summary>
    public double? FactorFor(LetteredName name)
    {
        // A machine's own letters have the sizes that they have, and a heading stands in a group's.
        if (job.Traits.HasLettersOfItsOwn || name.Name.Row.List == JobReader.FileName)
        {
            return null;
        }

        double now = name.Name.Wish?.HeightFactor ?? 1;
        double leastMm = LeastMm(job);
        return Largest(now, f => heightMm * name.Standing.HeightFactor * f / now >= leastMm && fits(name.Measuring(f / now)));
    }

    /// <summary>The largest twentieth under a factor that will do; null: none will.</summary>
    public static double? Largest(double under, Func<double, bool> willDo)
    {
        for (int step = (int)Math.Ceiling((under * Steps) - Tolerance.Rounding) - 1; step >= LeastFactor * Steps; step--)
        {
            double factor = (double)step / Steps;
            if (willDo(factor))
            {
                return factor;
            }
        }

        return null;
    }
}
