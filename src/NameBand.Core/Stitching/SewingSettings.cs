namespace NameBand.Stitching;

/// <summary>What holds for the sewing whatever the cloth.</summary>
/// <param name="LongestJoinMm">
/// A gap to the next part of the same name up to this length, in mm from satin to satin, is joined by one short stitch that
/// stays. All others are locked at both ends and cut. 0 cuts them all.
/// </param>
/// <param name="CutWorthMm">What a cut costs, as if so many mm of thread lay in sight.</param>
public sealed record SewingSettings(
    double LongestJoinMm = SewingSettings.UsualLongestJoinMm, double CutWorthMm = SewingSettings.UsualCutWorthMm)
{
    /// <summary>
    /// Common practice, no source: longer threads catch, and show. Counted between the outermost holes; up to 0.3 mm more may
    /// be in sight where the satin's own stitches lie aslant or are moved in.
    /// </summary>
    public const double UsualLongestJoinMm = 2.1;

    /// <summary>A trim takes a domestic machine some seconds: as long as far more than this of stitches. Common practice, no source.</summary>
    public const double UsualCutWorthMm = 20;

    /// <summary>For a machine that does not cut: every cut is a stop, and two ends by hand. Our assumption.</summary>
    public const double CutByHandWorthMm = 60;
}
