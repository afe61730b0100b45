namespace NameBand.Garment;

/// <summary>
/// The cloth as it lies under the needle, flat: sewing and pressing make a strip shorter, so whatever is stated along the
/// finished strip is longer here. The sewing field, its spare, rulers and cuts are all judged on this cloth.
/// </summary>
/// <param name="Shortening">Part of its length that the cloth loses.</param>
public readonly record struct FlatCloth(double Shortening)
{
    /// <summary>The length that becomes <paramref name="finishedMm"/> once sewn and pressed.</summary>
    public double OnClothMm(double finishedMm) => finishedMm / (1 - Shortening);

    /// <summary>What a length on the flat cloth comes to once sewn and pressed.</summary>
    public double FinishedMm(double onClothMm) => onClothMm * (1 - Shortening);

    /// <summary>What a field holds with its spare left free at both ends.</summary>
    public static double FieldMm(double alongMm, double spareMm) => alongMm - (2 * spareMm);
}
