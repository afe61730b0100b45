namespace NameBand.Job;

/// <summary>How a shop sells things.</summary>
/// <param name="Metric">Cloth by the metre (to the tenth), or by the yard (to the eighth).</param>
/// <param name="ThreadWastePart">Thread lost in threading, breaks and tries: 10 to 20 % is common practice, no source.</param>
/// <param name="HoursPerNeedle">Common practice is a new needle every six to eight hours, no source.</param>
public sealed record ShopSettings(
    bool Metric = true, double SpoolM = 500, double BobbinSpoolM = 1000, double ClothWidthMm = 1100, double BackingWidthMm = 500,
    double ThreadWastePart = 0.15, double ClothWastePart = 0.05, double HoursPerNeedle = 8)
{
    /// <summary>Part by which cloth gets shorter and narrower in the wash, where it is washed before it is cut.</summary>
    public double ClothShrinkagePart { get; init; }
}

/// <summary>What things cost, in <paramref name="Currency"/>; null where no price was given.</summary>
/// <param name="ClothPerUnit">Per metre or yard, as the shop sells.</param>
/// <param name="BackingPerUnit">Per metre or yard, as the shop sells.</param>
/// <param name="Hour">What an hour of the maker's own hands is worth.</param>
public sealed record PriceSettings(
    string Currency = "", double? Spool = null, double? BobbinSpool = null, double? ClothPerUnit = null,
    double? BackingPerUnit = null, double? Needle = null, double? Hour = null)
{
    public bool Any =>
        Spool is not null || BobbinSpool is not null || ClothPerUnit is not null || BackingPerUnit is not null || Needle is not null
        || Hour is not null;
}
