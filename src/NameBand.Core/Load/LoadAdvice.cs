using NameBand.Cloth;
using NameBand.Common;

namespace NameBand.Load;

/// <param name="HolesPerMm2">Needle holes in each mm² of its fullest letter; 0 where there are none.</param>
public readonly record struct HoopingLoad(int Hooping, double HolesPerMm2);

/// <summary>Says once for a whole job what its stitches do to the cloth, with the mends in order of least harm.</summary>
public static class LoadAdvice
{
    private const string Mends =
        "In order of least harm: another cloth or a firmer backing, larger letters, wider spacing (stitches.spacing), a lighter face, running stitch. Sew a swatch before the real cloth.";

    public static IEnumerable<Problem> For(Fabric fabric, IEnumerable<HoopingLoad> loads)
    {
        var sewn = loads.Where(l => l.HolesPerMm2 > 0).ToList();
        if (sewn.Count == 0)
        {
            yield break;
        }

        var (hooping, worst) = sewn.MaxBy(l => l.HolesPerMm2);
        var where = new Where(Key: FormattableString.Invariant($"hooping {hooping}"));
        string figures = FormattableString.Invariant(
            $"{worst:0.0} needle holes in a square millimetre of its fullest letter, and {fabric.Name} is taken to bear {fabric.MostPenetrationsPerMm2:0.0}");
        var verdict = LoadMeter.VerdictOf(worst, fabric);
        if (verdict == LoadVerdict.Overworked)
        {
            yield return Problem.NeedsPerson(where, $"The cloth will be overworked: {figures}.", Mends);
        }
        else if (verdict == LoadVerdict.SewSwatch)
        {
            yield return Problem.Note(where, $"The cloth is worked hard: {figures}.", Mends);
        }
    }
}
