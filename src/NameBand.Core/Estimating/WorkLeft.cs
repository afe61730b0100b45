namespace NameBand.Estimating;

/// <summary>What is still to sew: hooping and other hand work come on top.</summary>
/// <param name="Hoopings">Hoopings that are not sewn, or are to be sewn again.</param>
/// <param name="MachineMinutes">What they take at the machine.</param>
public sealed record WorkLeft(int Hoopings, Figure MachineMinutes);
