using NameBand.Garment;
using NameBand.Job;
using NameBand.Layout.Drift;
using NameBand.PlanFile;

namespace NameBand.Pipeline.Resume;

/// <summary>
/// How near the ends of an edge with two ends a strip that is begun has its names. Plans of version 0.1 set them at the
/// very ends; what is sewn so is finished so, at the letter height that it was begun with.
/// </summary>
internal static class EarlierEnds
{
    public static HemPlan Keep(HemPlan hem, EarlierPlan sewn) => Keep(hem, sewn.Rounds);

    /// <summary>For names that are keyed in: what is measured of them says that they are begun, the plan in the out folder how.</summary>
    public static HemPlan KeepMade(HemPlan hem, string jobFolder)
    {
        if (hem.EndMarginMm <= 0 || DriftFile.Read(jobFolder).Value is not { All.IsEmpty: false })
        {
            return hem;
        }

        return EarlierPlanFile.Read(jobFolder, "out/plan.json", EarlierPlanFile.Rounds).Value is { } rounds ? Keep(hem, rounds) : hem;
    }

    private static HemPlan Keep(HemPlan hem, IEnumerable<EarlierRound> rounds)
    {
        double nearest = rounds
            .SelectMany(r => r.Segments.SelectMany(s => s.Names).Select(n => Math.Min(n.StartMm, r.LengthMm - n.StartMm - n.WidthMm)))
            .DefaultIfEmpty(hem.EndMarginMm).Min();
        return nearest < hem.EndMarginMm / 2 ? hem with { EndMarginMm = 0 } : hem;
    }
}
