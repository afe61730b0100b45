namespace NameBand.Estimating;

/// <summary>
/// Thread that one lockstitch takes. Needle and bobbin thread together lie twice along the stitch and twice through
/// the cloth: 2·(length + thickness), which over a unit of seam with S stitches is the published 2 + 2·T·S.
/// </summary>
internal static class ThreadGeometry
{
    /// <summary>
    /// Part of that thread that comes from the needle. A plain seam is balanced; for embroidery the needle thread is
    /// drawn to the underside, and published averages (5 m of needle to 3 m of bobbin thread in 1000 stitches) give 5/8.
    /// </summary>
    public const double EmbroideryNeedlePart = 5.0 / 8;

    /// <summary>Half and half: the handbook's 301 lockstitch, 550 cm = 275 + 275 (Coats consumption guide).</summary>
    public const double BalancedNeedlePart = 0.5;

    /// <summary>Both threads of one stitch, in mm.</summary>
    public static (double NeedleMm, double BobbinMm) Stitch(double lengthMm, double thicknessMm, double needlePart)
    {
        double both = 2 * (lengthMm + thicknessMm);
        return (both * needlePart, both * (1 - needlePart));
    }
}
