using NameBand.Common;
using NameBand.Lettering;

namespace NameBand.Layout.Resuming;

/// <summary>The base line that sewn names have settled; a name of another script may still move off it as far as it must.</summary>
internal sealed class SettledBaseline(double commonMm, double heightMm, Sizing sizing)
{
    private readonly double _half = Math.Min(sizing.Hem.Strip.SewingZoneMm - sizing.OffArcMm(heightMm), sizing.FieldAcrossMm) / 2;

    public double For(LetteredName name)
    {
        var (lowest, highest) = Range(name);
        return sizing.SharesBaseline(name) || lowest > highest ? commonMm : Math.Clamp(commonMm, lowest, highest);
    }

    public bool Fits(LetteredName name)
    {
        var (lowest, highest) = Range(name);
        double at = For(name);
        return at >= lowest - Tolerance.KeptMm && at <= highest + Tolerance.KeptMm;
    }

    private (double Lowest, double Highest) Range(LetteredName name) => (
        -_half - (name.Ink.BottomMm * heightMm) + sizing.ReachMm(heightMm),
        _half - (name.Ink.TopMm * heightMm) - sizing.ReachMm(heightMm));
}
