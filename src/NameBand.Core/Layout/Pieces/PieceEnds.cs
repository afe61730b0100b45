using System.Collections.Immutable;
using NameBand.Garment;
using NameBand.Job;

namespace NameBand.Layout.Pieces;

/// <summary>What a piece of strip needs of the cloth beyond its finished ends, and the cloth that holds it.</summary>
internal static class PieceEnds
{
    /// <summary>An end cut at 45° reaches half the strip's width further, and its allowance lies across the seam.</summary>
    public static double JoinMm(BandJob job) => job.Layout.IsJoinedDiagonally
        ? (job.Strip.CutWidth.Mm / 2) + (job.Layout.JoinAllowance.Mm * Math.Sqrt(2))
        : job.Layout.JoinAllowance.Mm;

    /// <summary>Cloth before a piece that does, or does not, begin its round.</summary>
    public static double BeforeMm(BandJob job, HemPlan hem, bool isFirst) =>
        !isFirst ? JoinMm(job) : hem.Closed ? 0 : job.Strip.TurnIn.Mm;

    public static (double BeforeMm, double AfterMm) AllowancesMm(BandJob job, HemPlan hem, bool isFirst, bool isLast) =>
        (BeforeMm(job, hem, isFirst), !isLast ? JoinMm(job) : hem.Closed ? hem.OverlapMm : job.Strip.TurnIn.Mm);

    /// <summary>The cloth of curved pieces; null for straight ones.</summary>
    public static ClothBand? Band(BandJob job, Sizing sizing, ImmutableArray<StripPiece> pieces) =>
        StripCurve.Of(sizing.Hem, pieces[0].Round) is not { } curve ? null
        : pieces.Length > 1 ? Nest(sizing, pieces).Band(job.Layout.EndCloth.Mm, sizing.FieldAcrossMm)
        : ClothBand.Of(curve, pieces[0], sizing.Flat, sizing.FieldAcrossMm, job.Strip.CutWidth.Mm, !job.Strip.SewnBeforeCutting);

    /// <summary>Curved pieces as they lie on one cloth.</summary>
    public static NestedArcs Nest(Sizing sizing, IEnumerable<StripPiece> pieces) => new(
        [
            .. pieces.OrderBy(p => p.Lane).Select(p => new ArcPiece(
                StripCurve.Of(sizing.Hem, p.Round)!, sizing.Flat.OnClothMm(p.LengthMm), Math.Max(p.StartAllowanceMm, p.EndAllowanceMm))),
        ],
        sizing);

    /// <summary>Curved pieces with their places on the cloth that they are nested on; one alone keeps its own.</summary>
    public static ImmutableArray<StripPiece> Nested(BandJob job, Sizing sizing, ImmutableArray<StripPiece> pieces)
    {
        var nest = Nest(sizing, pieces);
        var band = Band(job, sizing, pieces)!;
        return pieces.Length == 1 ? pieces : [.. pieces.Select((p, l) => p with { OnClothMm = nest.OnClothMm(l, band) })];
    }

    /// <summary>The cloth for pieces that lie side by side on it, with room for the hoop all round.</summary>
    public static StripCloth Cloth(BandJob job, Sizing sizing, ImmutableArray<StripPiece> pieces, ImmutableArray<int> hoopings)
    {
        var band = Band(job, sizing, pieces);
        double pitch = pieces.Length > 1 && band is not null ? Nest(sizing, pieces).PitchMm : job.Strip.CutWidth.Mm;
        double length = pieces.Max(p => p.OnClothMm + sizing.Flat.OnClothMm(p.LengthMm) + p.EndAllowanceMm) + job.Layout.EndCloth.Mm;
        double width = job.Strip.SewnBeforeCutting
            ? Math.Max(sizing.FieldAcrossMm + (2 * ClothLayoutMeasures.BesideFieldMm), pieces.Max(p => p.Lane) * pitch)
            : pitch;
        return new StripCloth(pieces[0].Cloth, band?.LengthMm ?? length, band?.HeightMm ?? width, pitch, pieces, hoopings) { Band = band };
    }
}
