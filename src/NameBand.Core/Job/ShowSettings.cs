namespace NameBand.Job;

/// <summary>Measures of the pictures that are sent out and shown.</summary>
/// <param name="ThanksWidthPixels">Width of a thank-you picture.</param>
/// <param name="PlaybackWidthPixels">Width of a playback.</param>
/// <param name="PlaybackSeconds">How long the sewing of a hooping takes in its playback.</param>
public sealed record ShowSettings(int ThanksWidthPixels, int PlaybackWidthPixels, double PlaybackSeconds)
{
    /// <summary>An address of hers that stands as a code on cards of thanks; null for none.</summary>
    public string? ThanksAddress { get; init; }

    public static ShowSettings Usual { get; } = new(1200, 720, 12);
}
