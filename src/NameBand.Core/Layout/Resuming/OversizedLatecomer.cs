using NameBand.Common;
using NameBand.Job;
using NameBand.Layout.Planning;
using NameBand.Lettering;

namespace NameBand.Layout.Resuming;

/// <summary>Names that come when the height is settled and are too wide or too tall at it: why, and how they would fit.</summary>
/// <param name="fitsAcross">Whether a name's ink lies within the strip on the settled base line.</param>
/// <param name="isHeightFree">What is not sewn may have another height than what is.</param>
internal sealed class OversizedLatecomer(
    BandJob job, Sizing sizing, double heightMm, Func<LetteredName, bool> fitsAcross, bool isHeightFree)
{
    /// <summary>Heights are offered in twentieths of the others', as groups are.</summary>
    private const int Steps = 20;
    private const double LeastFactor = 0.3; // As small as a wish for one name may make its letters (docs/job-file.md).

    /// <summary>Null where it fits.</summary>
    public Said? Reason(LetteredName name)
    {
        if (Fits(name))
        {
            return null;
        }

        Said why = sizing.FitsField(name, heightMm) ? "too tall for the strip" : "too wide for one hooping";
        Said settled = isHeightFree ? "" : (Said)", which the sewn names have settled";
        return SmallerFactor(name) is { } factor
            ? (Said)$"{why} at letters {heightMm:0.0} mm high{settled}. With \"heightFactor\": {factor:0.##} for it, in the list “names” of job.json, it fits; or agree a shorter form with its owner"
            : $"{why} at letters {heightMm:0.0} mm high{settled}. Agree a shorter form with its owner";
    }

    private bool Fits(LetteredName name) => sizing.FitsField(name, heightMm) && fitsAcross(name);

    /// <summary>The largest factor, for a wish about this name alone, at which it fits and can be sewn; null: there is none.</summary>
    private double? SmallerFactor(LetteredName name)
    {
        // A machine's own letters have the sizes that they have, and a heading stands in a group's.
        if (job.Traits.HasLettersOfItsOwn || name.Name.Row.List == JobReader.FileName)
        {
            return null;
        }

        double now = name.Name.Wish?.HeightFactor ?? 1;
        double leastMm = LayoutAdvice.IsSewnWith40Weight(job) ? LayoutAdvice.LeastFor40WeightMm : JobKeys.Height.LowMm;
        for (int step = (int)Math.Ceiling((now * Steps) - Tolerance.Rounding) - 1; step >= LeastFactor * Steps; step--)
        {
            double by = step / (now * Steps);
            if (heightMm * name.Standing.HeightFactor * by < leastMm)
            {
                return null;
            }

            if (Fits(new ScaledName(by).Of(name)))
            {
                return (double)step / Steps;
            }
        }

        return null;
    }
}
