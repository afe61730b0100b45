namespace NameBand.Garment;

/// <summary>
/// A skirt cut as part of a circle, lying flat: waist and hem are arcs about one centre.
/// Source of the formulas: plane geometry, arc = angle × radius.
/// </summary>
/// <param name="TurnRad">Angle of the cloth at the centre, 2π for a full circle.</param>
/// <param name="WaistRadiusMm">Radius at the finished waist.</param>
public sealed record PartCircle(double TurnRad, double WaistRadiusMm)
{
    public static PartCircle FromWaist(double turnPart, double waistMm)
    {
        double turn = 2 * Math.PI * turnPart;
        return new PartCircle(turn, waistMm / turn);
    }

    /// <summary>Length of the arc that lies <paramref name="belowWaistMm"/> below the waist.</summary>
    public double ArcMm(double belowWaistMm) => TurnRad * (WaistRadiusMm + belowWaistMm);

    /// <summary>
    /// Radius at which to cut the waist when the seams take <paramref name="seamsMm"/> out of the round in all
    /// and <paramref name="waistAllowanceMm"/> is folded away above the finished waist.
    /// </summary>
    public double CutRadiusMm(double seamsMm, double waistAllowanceMm) =>
        WaistRadiusMm + (seamsMm / TurnRad) - waistAllowanceMm;
}
