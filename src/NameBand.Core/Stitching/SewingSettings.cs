namespace NameBand.Stitching;

/// <summary>What holds for the sewing whatever the cloth.</summary>
/// <param name="LongestUntrimmedMm">
/// A hop to the next part of the same name up to this length, in mm, is not trimmed: the thread lies on the cloth, or
/// sinks between two letters, and is clipped by hand. Locked at both ends all the same. 0 trims every hop.
/// </param>
public sealed record SewingSettings(double LongestUntrimmedMm = SewingSettings.UsualLongestUntrimmedMm)
{
    /// <summary>Common practice, no source: longer threads catch and are not covered by anything.</summary>
    public const double UsualLongestUntrimmedMm = 4;
}
