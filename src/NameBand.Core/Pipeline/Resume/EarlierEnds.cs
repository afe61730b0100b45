using System.Text.Json;
using NameBand.Common;
using NameBand.Garment;
using NameBand.Job;
using NameBand.Layout.Drift;

namespace NameBand.Pipeline.Resume;

/// <summary>
/// How near the ends of an edge with two ends a strip that is begun has its names. Plans of version 0.1 set them at the
/// very ends; what is sewn so is finished so, at the letter height that it was begun with.
/// </summary>
internal static class EarlierEnds
{
    public static HemPlan Keep(HemPlan hem, EarlierPlan sewn) => hem.EndMarginMm <= 0 ? hem : Keep(
        hem, sewn.Rounds.Select(r => (r.LengthMm, r.Segments.SelectMany(s => s.Names).Select(n => (n.StartMm, n.StartMm + n.WidthMm)))));

    /// <summary>For names that are keyed in: what is measured of them says that they are begun, the plan in the out folder how.</summary>
    public static HemPlan KeepMade(HemPlan hem, string jobFolder)
    {
        if (hem.EndMarginMm <= 0 || DriftFile.Read(jobFolder).Value is not { All.IsEmpty: false })
        {
            return hem;
        }

        try
        {
            using var plan = JsonDocument.Parse(InnerFile.Bytes(jobFolder, "out/plan.json"));
            return Keep(hem, [.. plan.RootElement.GetProperty("rounds").EnumerateArray().Select(r => (
                Number(r, "lengthMm"),
                (IEnumerable<(double, double)>)[.. r.GetProperty("segments").EnumerateArray().SelectMany(s => s.GetProperty("names").EnumerateArray())
                    .Select(n => (Number(n, "startMm"), Number(n, "startMm") + Number(n, "widthMm")))]))]);
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException or JsonException or KeyNotFoundException or InvalidOperationException or FormatException)
        {
            // There is no whole plan to go on from.
            return hem;
        }
    }

    private static HemPlan Keep(HemPlan hem, IEnumerable<(double LengthMm, IEnumerable<(double StartMm, double EndMm)> Names)> rounds)
    {
        double nearest = rounds.SelectMany(r => r.Names.Select(n => Math.Min(n.StartMm, r.LengthMm - n.EndMm))).DefaultIfEmpty(hem.EndMarginMm).Min();
        return nearest < hem.EndMarginMm / 2 ? hem with { EndMarginMm = 0 } : hem;
    }

    private static double Number(JsonElement of, string key) => of.GetProperty(key).GetDouble();
}
