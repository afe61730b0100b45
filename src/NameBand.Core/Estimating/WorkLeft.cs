namespace NameBand.Estimating;

/// <summary>What is still to do.</summary>
/// <param name="Hoopings">Hoopings that are not sewn, or are to be sewn again, of those that are logged as such.</param>
/// <param name="MachineMinutes">What is left at the machine.</param>
/// <param name="HandsOnMinutes">All hand work that is ahead, up to the last stitch at the hem.</param>
/// <param name="FinishingMinutes">The part of it that comes when all names are sewn, from pressing to sewing down.</param>
public sealed record WorkLeft(int Hoopings, Figure MachineMinutes, Figure HandsOnMinutes, double FinishingMinutes)
{
    public required int HoopingsInAll { get; init; }

    /// <summary>Names that are not sewn, of those that are keyed in or traced and so logged one by one.</summary>
    public required int Names { get; init; }

    public required int NamesInAll { get; init; }

    /// <summary>Whether anything is sewn or done at all.</summary>
    public required bool IsBegun { get; init; }

    public bool IsAllSewn => Hoopings == 0 && Names == 0;
}
