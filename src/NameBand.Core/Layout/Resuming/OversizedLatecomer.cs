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
    /// <summary>Null where it fits.</summary>
    public HeldRow? Held(LetteredName name)
    {
        if (Fits(name))
        {
            return null;
        }

        Said why = sizing.FitsField(name, heightMm) ? "too tall for the strip" : "too wide for one hooping";
        Said settled = isHeightFree ? "" : (Said)", which the sewn names have settled";
        var factor = new SmallerAlone(job, heightMm, Fits).FactorFor(name);
        Said reason = factor is { } part
            ? (Said)$"{why} at letters {heightMm:0.0} mm high{settled}. With \"heightFactor\": {part:0.##} for it, in the list “names” of job.json, it fits; or agree a shorter form with its owner"
            : $"{why} at letters {heightMm:0.0} mm high{settled}. Agree a shorter form with its owner";
        return new HeldRow(name.Name.Row, reason) { IsForItsSize = true, FitsAtFactor = factor };
    }

    private bool Fits(LetteredName name) => sizing.FitsField(name, heightMm) && fitsAcross(name);
}
