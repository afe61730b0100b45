namespace NameBand.Layout;

/// <summary>
/// What a machine types stands on a straight base line. On a strip that is cut to the curve it leaves the arc by its middle: a
/// short word by
/// less than the eye sees.
/// </summary>
internal static class StraightOnArc
{
    /// <summary>So far may a base line leave the arc that it stands on: our assumption.</summary>
    public const double MostOffMm = 0.5;

    public static double OffMm(double lengthMm, StripCurve curve, double baselineYMm) =>
        StripCurve.BowMm(lengthMm, curve.RadiusAtMm(baselineYMm));

    public static bool MayStand(double lengthMm, StripCurve curve, double baselineYMm) => OffMm(lengthMm, curve, baselineYMm) <= MostOffMm;
}
