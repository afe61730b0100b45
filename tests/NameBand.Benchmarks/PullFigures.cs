using System.Globalization;
using NameBand.Tests.StitchQuality;

namespace NameBand.Benchmarks;

/// <summary>
/// What the sheet of cloth foretells of satin columns: how much narrower and longer they come out, by their width and the angle from stitch
/// to warp. Stiffnesses and the thread's tension are from memory; the tension is set so that 2 mm along the weft of a cotton come
/// to 0.20 mm on each side.
/// </summary>
internal static class PullFigures
{
    private const double ThreadStiffness = 3;
    private const double UsualWidthMm = 2;
    private const double UsualSideMm = 0.20;

    private static readonly (string Name, MembraneCloth Cloth)[] Cloths =
    [
        ("firm woven (cotton, twill)", new MembraneCloth(20, 12, 1.5, 0.15)),
        ("loose woven (linen)", new MembraneCloth(14, 8, 0.8, 0.15)),
        ("felt", new MembraneCloth(8, 8, 8 / 2.6, 0.3)),
        ("jersey on cut-away", new MembraneCloth(6, 3.5, 1.2, 0.35)),
    ];

    public static int Run()
    {
        double unit = Narrower(Cloths[0].Cloth, 90, UsualWidthMm, 1);
        double newton = 2 * UsualSideMm / unit;
        Console.WriteLine(
            FormattableString.Invariant($"tension of a stitch {newton:0.00} N; narrower on each side / longer at each end, mm"));
        foreach (var (name, cloth) in Cloths)
        {
            foreach (double degrees in new[] { 0.0, 45, 90 })
            {
                var row = new[] { 1.0, 1.5, 2, 3, 4, 5.5, 7 }
                    .Select(w => new Membrane(cloth, degrees * Math.PI / 180, w, newton, ThreadStiffness).Solved());
                Console.WriteLine($"{name,-28} {degrees.ToString("0", CultureInfo.InvariantCulture),3}°  " + string.Join(
                    "  ", row.Select(r => FormattableString.Invariant($"{r.NarrowerMm / 2:0.000} / {r.LongerMm / 2:0.000}"))));
            }
        }

        return 0;
    }

    private static double Narrower(MembraneCloth cloth, double degrees, double widthMm, double newton) =>
        new Membrane(cloth, degrees * Math.PI / 180, widthMm, newton, ThreadStiffness).Solved().NarrowerMm;
}
