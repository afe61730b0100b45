using NameBand.Lettering;

namespace NameBand.Layout;

/// <summary>
/// Where names stand across the strip. Capitals stand in the middle of it, unless a deep tail or a high accent of any
/// name would then leave the sewing zone; names wholly in another face may stand apart from the common line.
/// </summary>
internal sealed class Baselines
{
    private readonly double _heightMm;
    private readonly Sizing _sizing;

    public Baselines(IReadOnlyList<LetteredName> names, double heightMm, Sizing sizing)
    {
        _heightMm = heightMm;
        _sizing = sizing;
        var common = names.Where(sizing.SharesBaseline).ToList();
        CommonMm = Within(
            -heightMm / 2,
            common.Select(n => n.Ink.BottomMm).DefaultIfEmpty(0).Min(),
            common.Select(n => n.Ink.TopMm).DefaultIfEmpty(1).Max());
    }

    /// <summary>The common base line, above the strip's centre line (usually below it: negative).</summary>
    public double CommonMm { get; }

    public double Of(LetteredName name) =>
        _sizing.SharesBaseline(name) ? CommonMm : Within(CommonMm, name.Ink.BottomMm, name.Ink.TopMm);

    /// <summary>The line nearest to the wished one at which ink of that depth and height lies in the zone, or in its middle.</summary>
    private double Within(double wishedMm, double inkBottom, double inkTop)
    {
        double half = (_sizing.Hem.Strip.SewingZoneMm - _sizing.OffArcMm(_heightMm)) / 2;
        double highest = half - (inkTop * _heightMm) - _sizing.PullCompensationMm;
        double lowest = -half - (inkBottom * _heightMm) + _sizing.PullCompensationMm;
        return highest < lowest ? (highest + lowest) / 2 : Math.Clamp(wishedMm, lowest, highest);
    }
}
