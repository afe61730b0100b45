namespace NameBand.Layout;

/// <summary>The two edges of a curved piece as it is cut, turn-ins and seam allowances included, on the flat cloth.</summary>
/// <param name="GrainRad">Angle between the strip and the grain at the piece's ends, where it runs along it at the middle.</param>
internal sealed record CurvedEdges(double LowerMm, double LowerRadiusMm, double UpperMm, double UpperRadiusMm, double GrainRad)
{
    public static CurvedEdges Of(StripPlan plan, StripPiece piece, StripCurve curve)
    {
        double angle = (plan.OnClothMm(piece.LengthMm) + piece.StartAllowanceMm + piece.EndAllowanceMm) / curve.RadiusMm;
        double lower = curve.CentreRadiusMm + (plan.Hem.Strip.CutWidthMm / 2);
        double upper = curve.CentreRadiusMm - (plan.Hem.Strip.CutWidthMm / 2);
        return new CurvedEdges(angle * lower, lower, angle * upper, upper, angle / 2);
    }
}
