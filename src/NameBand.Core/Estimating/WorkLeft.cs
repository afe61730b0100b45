namespace NameBand.Estimating;

/// <summary>What is still to do.</summary>
/// <param name="Hoopings">Hoopings that are not sewn, or are to be sewn again.</param>
/// <param name="MachineMinutes">What they take at the machine.</param>
/// <param name="HandsOnMinutes">All hand work that is ahead, up to the last stitch at the hem.</param>
/// <param name="FinishingMinutes">The part of it that comes when all names are sewn, from pressing to sewing down.</param>
public sealed record WorkLeft(int Hoopings, Figure MachineMinutes, Figure HandsOnMinutes, double FinishingMinutes);
