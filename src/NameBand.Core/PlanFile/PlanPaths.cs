using System.Globalization;

namespace NameBand.PlanFile;

/// <summary>Names of the files that plan.json speaks of, as they lie beside it.</summary>
internal static class PlanPaths
{
    public static string NeedlePath(int hooping) =>
        string.Create(CultureInfo.InvariantCulture, $"needle-paths/hooping-{hooping:D3}.csv");

    public static string HoopingProof(int hooping) =>
        string.Create(CultureInfo.InvariantCulture, $"proofs/hooping-{hooping:D3}.png");
}
