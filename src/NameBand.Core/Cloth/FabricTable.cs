using System.Collections.Immutable;
using NameBand.Common;
using NameBand.Job;

namespace NameBand.Cloth;

/// <summary>The cloths known by name. Sources of the numbers: docs/cloths.md.</summary>
public static class FabricTable
{
    /// <summary>
    /// 40-weight embroidery thread: two plies of 120 denier make 240 denier or 26.7 tex. Drawn 0.40 mm wide, as it
    /// lies flattened on the cloth (common practice, no source).
    /// </summary>
    public static SewingThread FortyWeight { get; } = SewingThread.Of(ThreadSize.FortyWeight);

    public static ImmutableArray<Fabric> All { get; } =
    [
        Cloth("quilting cotton", ("tear-away, one layer", "75/11 sharp"), 0.40, 0.20, 0.45, 12),
        Cloth("cotton twill", ("tear-away, one layer", "80/12 sharp"), 0.40, 0.20, 0.60, 13),
        Cloth("linen", ("tear-away, one firm layer", "75/11 sharp"), 0.42, 0.25, 0.55, 10.5) with
        {
            Pull = Pull.LooseWoven, PushCompensationMm = 0.08, EdgeUnderlayFromMm = 2.2,
        },
        Cloth("cotton lawn", ("tear-away, two light layers", "70/10 sharp"), 0.42, 0.20, 0.35, 8.5),
        Cloth("felt", ("tear-away, one layer", "80/12 sharp"), 0.40, 0.20, 1.20, 13) with
        {
            Pull = Pull.Felted, PushCompensationMm = 0.08, EdgeUnderlayFromMm = 2.2,
        },
        Cloth("jersey", ("cut-away, one layer", "75/11 ball point"), 0.42, 0.35, 0.70, 8) with
        {
            Pull = Pull.Knitted, PushCompensationMm = 0.12, EdgeUnderlayFromMm = 2.2,
        },
        Cloth("satin ribbon", ("tear-away, one layer", "70/10 sharp"), 0.42, 0.20, 0.30, 4),
        Cloth("grosgrain ribbon", ("tear-away, one layer", "75/11 sharp"), 0.42, 0.20, 0.50, 4.5),
        Cloth("organza", ("wash-away", "65/9 sharp"), 0.45, 0.20, 0.20, 3) with { Pull = Pull.LooseWoven, EdgeUnderlayFromMm = 3.5 },
        Cloth("tulle", ("wash-away", "65/9 ball point"), 0.45, 0.25, 0.20, 2.5) with
        {
            Pull = Pull.Felted, PushCompensationMm = 0.08, EdgeUnderlayFromMm = 2.2,
        },
    ];

    public static Fabric? Find(string name) =>
        All.FirstOrDefault(f => string.Equals(f.Name.English, name.Trim(), StringComparison.OrdinalIgnoreCase));

    private static Fabric Cloth(
        Said name, (Said Backing, Said Needle) sewn, double spacingMm, double pullMm, double thicknessMm, double mostPerMm2) =>
        new(name, sewn.Backing, sewn.Needle, spacingMm, pullMm, thicknessMm, mostPerMm2, FortyWeight);
}
