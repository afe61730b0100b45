using NameBand.Common;
using NameBand.Layout;

namespace NameBand.PlanFile;

/// <summary>Puts a cloth and the pieces of strip on it into the records of plan.json.</summary>
internal static class ClothScribe
{
    public static WrittenCloth Of(StripPlan plan, StripCloth cloth) => new()
    {
        Number = cloth.Number,
        LengthMm = Thousandths.Mm(cloth.LengthMm),
        WidthMm = Thousandths.Mm(cloth.WidthMm),
        Pieces = [.. cloth.Pieces.Select(p => Piece(plan, cloth, p))],
    };

    private static WrittenPiece Piece(StripPlan plan, StripCloth cloth, StripPiece piece)
    {
        var edges = StripCurve.Of(plan.Hem, piece.Round) is { } curve ? CurvedEdges.Of(plan, piece, curve) : null;
        return new WrittenPiece
        {
            Number = piece.Number,
            Round = piece.Round,
            StartMm = Thousandths.Mm(piece.StartMm),
            LengthMm = Thousandths.Mm(piece.LengthMm),
            Lane = piece.Lane,
            LaneYMm = Thousandths.Mm(cloth.LaneYMm(piece.Lane)),
            OnClothMm = Thousandths.Mm(piece.OnClothMm),
            StartAllowanceMm = Thousandths.Mm(piece.StartAllowanceMm),
            EndAllowanceMm = Thousandths.Mm(piece.EndAllowanceMm),
            LowerCutEdgeMm = edges is null ? null : Thousandths.Mm(edges.LowerMm),
            LowerCutRadiusMm = edges is null ? null : Thousandths.Mm(edges.LowerRadiusMm),
            UpperCutEdgeMm = edges is null ? null : Thousandths.Mm(edges.UpperMm),
            UpperCutRadiusMm = edges is null ? null : Thousandths.Mm(edges.UpperRadiusMm),
            GrainAtEndsDegrees = edges is null ? null : Thousandths.Tenths(edges.GrainRad * 180 / Math.PI),
        };
    }
}
