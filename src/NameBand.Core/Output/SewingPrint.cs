namespace NameBand.Output;

/// <summary>The short fingerprint of a needle path that the sewing log keeps; begins with a letter so that a spreadsheet leaves it alone.</summary>
public static class SewingPrint
{
    public static string Of(ReadOnlySpan<byte> path) => "p" + MadeFrom.Fingerprint(path)[..16];
}
