using System.Collections.Immutable;
using NameBand.Cloth;
using NameBand.Common;

namespace NameBand.Load;

/// <param name="HolesPerMm2">Needle holes in each mm² of its fullest letter; 0 where there are none.</param>
internal readonly record struct HoopingLoad(int Hooping, double HolesPerMm2, WorstSpot Spot = default);

/// <summary>Says once for a whole job what its stitches do to the cloth, with the mends in order of least harm.</summary>
internal static class LoadAdvice
{
    private static readonly Said Mends =
        "In order of least harm: another cloth or a firmer backing, larger letters, wider spacing (stitches.spacing), a lighter face, running stitch. Sew a swatch before the real cloth.";

    public static IEnumerable<Problem> For(Fabric fabric, IReadOnlyCollection<HoopingLoad> loads)
    {
        if (Judge(fabric, loads) is { Kind: not VerdictKind.Good } judged)
        {
            yield return judged.Told(
                Where.Of(null, $"hooping {loads.MaxBy(l => l.HolesPerMm2).Hooping}"), Mends);
        }

        if (JudgeSpot(fabric, loads) is { Kind: not VerdictKind.Good } spot)
        {
            yield return spot.Told(
                Where.Of(null, $"hooping {loads.MaxBy(l => l.Spot.HolesPerMm2).Hooping}"),
                "Look at that place on the swatch, from behind too: where the cloth is cut there, sew larger letters, or on firmer backing.");
        }
    }

    /// <summary>Both verdicts on the load: of the fullest letter, and of the worst spot; none where nothing is sewn.</summary>
    public static ImmutableArray<Verdict> All(Fabric fabric, IReadOnlyCollection<HoopingLoad> loads) =>
        [.. new[] { Judge(fabric, loads), JudgeSpot(fabric, loads) }.OfType<Verdict>()];

    /// <summary>
    /// The densest disc of 1 mm beside what the cloth is taken to bear in a whole letter. A spot may be worse than its letter,
    /// and nobody has measured by how much: it is a note and stops nothing.
    /// </summary>
    public static Verdict? JudgeSpot(Fabric fabric, IReadOnlyCollection<HoopingLoad> loads)
    {
        double worst = loads.Select(l => l.Spot.HolesPerMm2).DefaultIfEmpty(0).Max();
        if (worst <= 0)
        {
            return null;
        }

        Said figures = $"{worst:0.0} needle holes in a square millimetre, in a disc 1 mm wide, and {loads.Max(l => l.Spot.Layers)} layers of thread where most lie over one another";
        return worst > fabric.MostPenetrationsPerMm2
            ? Of(VerdictKind.Note, $"At its worst spot the cloth gets {figures}; {fabric.Name} is taken to bear {fabric.MostPenetrationsPerMm2:0.0} in a whole letter.")
            : Of(VerdictKind.Good, $"At its worst spot the cloth gets {figures}.");
    }

    /// <summary>Null where nothing is sewn that could be judged.</summary>
    public static Verdict? Judge(Fabric fabric, IReadOnlyCollection<HoopingLoad> loads)
    {
        double worst = loads.Select(l => l.HolesPerMm2).DefaultIfEmpty(0).Max();
        if (worst <= 0)
        {
            return null;
        }

        Said figures = $"{worst:0.0} needle holes in a square millimetre of its fullest letter, and {fabric.Name} is taken to bear {fabric.MostPenetrationsPerMm2:0.0}";
        return LoadMeter.VerdictOf(worst, fabric) switch
        {
            LoadVerdict.Overworked => Of(VerdictKind.NeedsAPerson, $"The cloth will be overworked: {figures}."),
            LoadVerdict.SewSwatch => Of(VerdictKind.Note, $"The cloth is worked hard: {figures}."),
            _ => Of(VerdictKind.Good, $"The cloth bears the stitches: {figures}."),
        };
    }

    private static Verdict Of(VerdictKind kind, Said text) => new(Fact.Load, null, kind, text);
}
