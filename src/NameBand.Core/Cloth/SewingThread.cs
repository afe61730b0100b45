using NameBand.Common;
using NameBand.Job;

namespace NameBand.Cloth;

/// <summary>A sewing thread by its linear density.</summary>
/// <param name="Tex">Grams per kilometre.</param>
/// <param name="DiameterMm">Width at which it is drawn and measured, as it lies flattened on the cloth.</param>
public sealed record SewingThread(string Name, double Tex, double DiameterMm)
{
    /// <summary>How wide 40-weight thread lies: common practice, no source.</summary>
    public const double FortyWeightMm = 0.40;

    /// <summary>
    /// The section of a thread is its tex over the density of its fibre, so threads of one make are as wide as the roots of
    /// their tex: width = 0.40 mm · √(tex / 26.7).
    /// </summary>
    public static SewingThread Of(ThreadSize size) =>
        new(size.Name, size.Tex, FortyWeightMm * Math.Sqrt(size.Tex / ThreadSize.FortyWeight.Tex));

    /// <summary>Such as <c>60 wt (16.7 tex, drawn 0.32 mm wide)</c>.</summary>
    public Said InWords => $"{Name} ({Tex:0.0} tex, drawn {DiameterMm:0.00} mm wide)";
}
