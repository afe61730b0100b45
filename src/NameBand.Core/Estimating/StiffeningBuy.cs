using NameBand.Common;
using NameBand.Job;
using NameBand.Layout;

namespace NameBand.Estimating;

/// <summary>What to buy so that strips without a hoop are firm enough.</summary>
internal static class StiffeningBuy
{
    /// <summary>None where the cloth is left as it is.</summary>
    public static IEnumerable<BuyLine> Of(BandJob job, StripPlan plan)
    {
        double stripM = plan.Cloths.SelectMany(c => c.Pieces)
            .Sum(p => p.StartAllowanceMm + plan.OnClothMm(p.LengthMm) + p.EndAllowanceMm) / 1000;
        switch (job.Stiffening)
        {
            case Stiffening.Starch when stripM > 0:
                double cans = Math.Ceiling((stripM / StiffeningValues.StarchedMPerCan) - Tolerance.Rounding);
                yield return new BuyLine(
                    "spray starch", $"two coats on {stripM:0.0} m of strip", cans, Said.Plural((long)cans, "can", "cans"), null)
                {
                    InShop = Said.Plural((long)cans, $"{cans:0} can of 400 ml", $"{cans:0} cans of 400 ml"),
                };
                break;
            case Stiffening.Interfacing when stripM > 0:
                double widthMm = plan.Hem.Strip.CutWidthMm;
                double beside = Math.Max(1, Math.Floor((job.Shop.BackingWidthMm / widthMm) + Tolerance.Rounding));
                yield return Shopping.Measured(
                    "interfacing",
                    $"light, to iron on: strips {widthMm:0} mm wide, {stripM:0.0} m in all from a roll {job.Shop.BackingWidthMm / 1000:0.##} m wide",
                    stripM * 1000 / beside, job.Shop.Metric, null);
                break;
        }
    }
}
