namespace NameBand.Layout;

/// <summary>What a hoop needs of the cloth.</summary>
internal static class ClothLayoutMeasures
{
    /// <summary>Cloth beside the field on each side that a hoop has to hold: common practice, no source.</summary>
    public const double BesideFieldMm = 40;
}
