using NameBand.Cloth;
using NameBand.Common;

namespace NameBand.Load;

/// <summary>Says once for a whole job what its stitches do to the cloth, with the mends in order of least harm.</summary>
public static class LoadAdvice
{
    private const string Mends =
        "In order of least harm: another cloth or a firmer backing, larger letters, a lighter face. Sew a swatch before the real cloth.";

    /// <param name="loads">Number and load of each hooping.</param>
    public static IEnumerable<Problem> For(Fabric fabric, IEnumerable<(int Hooping, ClothLoad Load)> loads)
    {
        var sewn = loads.Where(l => l.Load.Penetrations > 0).ToList();
        if (sewn.Count == 0)
        {
            yield break;
        }

        var (hooping, worst) = sewn.MaxBy(l => l.Load.WorstLetterPerMm2);
        var where = new Where(Key: FormattableString.Invariant($"hooping {hooping}"));
        string figures = FormattableString.Invariant(
            $"{worst.WorstLetterPerMm2:0.0} needle holes in a square millimetre of its fullest letter, and {fabric.Name} is taken to bear {fabric.MostPenetrationsPerMm2:0.0}");
        if (worst.Verdict == LoadVerdict.Overworked)
        {
            yield return Problem.NeedsPerson(where, $"The cloth will be overworked: {figures}.", Mends);
        }
        else if (worst.Verdict == LoadVerdict.SewSwatch)
        {
            yield return Problem.Note(where, $"The cloth is worked hard: {figures}.", Mends);
        }
    }
}
