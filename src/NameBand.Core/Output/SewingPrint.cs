namespace NameBand.Output;

/// <summary>The short fingerprint of a needle path that the sewing log keeps; begins with a letter so that a spreadsheet leaves
/// it alone.</summary>
internal static class SewingPrint
{
    public static string Of(ReadOnlySpan<byte> path) => OfFingerprint(InputFingerprint.Fingerprint(path));

    /// <summary>The same where the path's fingerprint is known; empty for none.</summary>
    public static string OfFingerprint(string fingerprint) => fingerprint.Length < 16 ? "" : "p" + fingerprint[..16];
}
