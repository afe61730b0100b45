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
    private readonly SortedDictionary<int, double> _lines = [];

    public Baselines(IReadOnlyList<LetteredName> names, double heightMm, Sizing sizing)
    {
        _heightMm = heightMm;
        _sizing = sizing;
        foreach (var line in names.GroupBy(n => n.Standing.OwnRounds))
        {
            _lines[line.Key] = Common([.. line]);
        }

        CommonMm = _lines.Count > 0 ? _lines.First().Value : Common([]);
    }

    /// <summary>The base line of names on common rounds, above the strip's centre line (usually below it: negative).</summary>
    public double CommonMm { get; }

    public double Of(LetteredName name)
    {
        double line = _lines.GetValueOrDefault(name.Standing.OwnRounds, CommonMm);
        return _sizing.SharesBaseline(name) ? line : Within(line, name.Ink.BottomMm, name.Ink.TopMm);
    }

    /// <summary>Large and small names that share rounds stand on one line; the largest capitals are in the middle.</summary>
    private double Common(IReadOnlyList<LetteredName> names)
    {
        var common = names.Where(_sizing.SharesBaseline).ToList();
        return Within(
            -_heightMm * ((common.Count > 0 ? common : names).Select(n => n.Standing.HeightFactor).DefaultIfEmpty(1)
            .Max() + _sizing.LineStep) / 2,
            common.Select(n => n.Ink.BottomMm).DefaultIfEmpty(0).Min(),
            common.Select(n => n.Ink.TopMm).DefaultIfEmpty(1 + _sizing.LineStep).Max());
    }

    /// <summary>The line nearest to the wished one at which ink of that depth and height lies in the zone, or in its middle.</summary>
    private double Within(double wishedMm, double inkBottom, double inkTop)
    {
        double half = (_sizing.Hem.Strip.SewingZoneMm - _sizing.OffArcMm(_heightMm)) / 2;
        double highest = half - (inkTop * _heightMm) - _sizing.ReachMm(_heightMm);
        double lowest = -half - (inkBottom * _heightMm) + _sizing.ReachMm(_heightMm);
        return highest < lowest ? (highest + lowest) / 2 : Math.Clamp(wishedMm, lowest, highest);
    }
}
