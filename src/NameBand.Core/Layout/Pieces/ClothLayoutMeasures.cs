namespace NameBand.Layout;

/// <summary>What a hoop needs of the cloth.</summary>
internal static class ClothLayoutMeasures
{
    /// <summary>Cloth beside the field on each side that a hoop has to hold: common practice, no source.</summary>
    public const double BesideFieldMm = 40;

    /// <summary>Longest piece of a curved strip where the job names none: a metre, or less on a tight curve.</summary>
    public static double CurvedPieceMm(double radiusMm) => Math.Min(1000, 1.3 * radiusMm);
}
