using NameBand.Common;
using NameBand.Job;

namespace NameBand.Layout.Pieces;

/// <summary>Says so where a curved piece is too long to be cut, and which length would do.</summary>
internal static class CurvedPieces
{
    private const double StepMm = 10; // Lengths of pieces are proposed in whole centimetres, as one measures them off.
    private const double LeastMm = 200; // Shorter pieces hold a name or two: our assumption.

    public static IEnumerable<Problem> Check(BandJob job, StripPlan plan)
    {
        double width = job.Shop.ClothWidthMm * (1 - job.Shop.ClothShrinkagePart);
        var worst = plan.Cloths.Where(c => c.Band is { } b && !Fits(b, width)).MaxBy(c => c.Band!.ArcMm);
        if (worst?.Band is not { } band)
        {
            yield break;
        }

        var longest = worst.Pieces.MaxBy(p => p.LengthMm)!;
        double around = band.ArcMm - plan.OnClothMm(longest.LengthMm);
        double mended = Math.Floor(longest.LengthMm / StepMm) * StepMm;
        while (mended >= LeastMm && !Fits(band with { ArcMm = plan.OnClothMm(mended) + around }, width))
        {
            mended -= StepMm;
        }

        yield return Problem.NeedsPerson(
            new Where("job.json", Key: "strip.piece"),
            $"A curved piece {longest.LengthMm:0} mm long bends so far that its cloth would be {band.HeightMm:0} mm high, and the cloth is {width:0} mm wide.",
            mended >= LeastMm
                ? (Said)$"Sew in shorter pieces: \"piece\": \"{mended:0} mm\" in the group “strip”, or use wider cloth."
                : "Use wider cloth, or straight strips (\"shape\": \"straight\").");
    }

    private static bool Fits(ClothBand band, double widthMm) => band.AngleRad <= ClothBand.MostRad && band.HeightMm <= widthMm;
}
