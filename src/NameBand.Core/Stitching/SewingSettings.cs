namespace NameBand.Stitching;

/// <summary>What holds for the sewing whatever the cloth.</summary>
/// <param name="LongestJoinMm">
/// A gap to the next part of the same name is joined by one short stitch that stays, where no more than so many mm of it are
/// in sight outside satin, as it is sewn. All others are locked at both ends and cut. 0 cuts them all.
/// </param>
/// <param name="CutWorthMm">What a cut costs, as if so many mm of thread lay in sight.</param>
internal sealed record SewingSettings(
    double LongestJoinMm = SewingSettings.UsualLongestJoinMm, double CutWorthMm = SewingSettings.UsualCutWorthMm)
{
    /// <summary>A hair under 2.2 mm, for what kinds of machine calculate differently. Common practice, no source: longer threads
    /// catch, and show.</summary>
    public const double UsualLongestJoinMm = 2.15;

    /// <summary>A trim takes a domestic machine some seconds: as long as far more than this of stitches. Common practice, no
    /// source.</summary>
    public const double UsualCutWorthMm = 20;

    /// <summary>For a machine that does not cut: every cut is a stop, and two ends by hand. Our assumption.</summary>
    public const double CutByHandWorthMm = 60;
}
