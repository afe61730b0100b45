namespace NameBand.Layout;

/// <summary>How few segments the best-fit order needs, and how few any order must need.</summary>
/// <param name="Segments">Segments of the order found.</param>
/// <param name="Bound">No order with gaps of at least <paramref name="GapMm"/> needs fewer.</param>
/// <param name="PatternHoopings">The pattern linear program's value before it is rounded up to <paramref name="Bound"/>.</param>
public sealed record BestFitProof(int Segments, int Bound, double PatternHoopings, double GapMm)
{
    public bool IsProven => Segments <= Bound;
}
