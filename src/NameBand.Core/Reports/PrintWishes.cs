namespace NameBand.Reports;

/// <summary>What is made with the sheets to print, where it is asked for.</summary>
/// <param name="Thanks">A picture to send for every name.</param>
/// <param name="Playback">A moving picture for every needle path.</param>
public sealed record PrintWishes(bool Thanks = false, bool Playback = false);
