namespace NameBand.Layout;

/// <summary>How few hoopings the best-fit order needs, and how few any order must need.</summary>
/// <param name="Hoopings">Hoopings of the order found.</param>
/// <param name="Bound">No order with gaps of at least <paramref name="GapMm"/> needs fewer.</param>
/// <param name="PatternHoopings">
/// The pattern linear program's value for strips sewn one by one; <see cref="Bound"/> is this number rounded up, shared
/// among the strips that lie side by side.
/// </param>
public sealed record BestFitProof(int Hoopings, int Bound, double PatternHoopings, double GapMm)
{
    public bool IsProven => Hoopings <= Bound;
}
