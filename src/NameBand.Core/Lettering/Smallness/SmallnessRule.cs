using NameBand.Cloth;
using NameBand.Lettering.Faces;

namespace NameBand.Lettering.Smallness;

/// <summary>
/// How small strokes and counters may be sewn in satin with the thread and needle of a cloth. Our assumption, argued in
/// docs/lettering.md.
/// </summary>
internal sealed class SmallnessRule(Fabric fabric)
{
    private const double TenthsPerMm = 10; // In a millimetre: heights are offered in tenths, as people measure them.
    private const int MostTenths = 10_000; // A letter a metre high: there everything can be sewn that ever can.

    /// <summary>Least width of a sewn stroke: two threads side by side, and the needle's own width between its edges.</summary>
    public double LeastStrokeMm { get; } =
        Math.Max(Fabric.NarrowestSatinMm, Math.Max(2 * fabric.Thread.DiameterMm, JobCloth.HoleMm(fabric.Needle)));

    /// <summary>Least bare cloth across a sewn counter: as wide as the needle and as the thread.</summary>
    public double LeastBareMm { get; } = Math.Max(fabric.Thread.DiameterMm, JobCloth.HoleMm(fabric.Needle));

    /// <summary>Width of the thinnest strokes as sewn.</summary>
    public double StrokeMm(LetterFigures letters, double heightMm) =>
        (letters.ThinnestStrokePart * heightMm) + (2 * fabric.PullCompensationMm);

    /// <summary>Letter height from which the thinnest strokes are wide enough, as sewn, for satin; 0 where no stroke could be
    /// measured.</summary>
    public double SatinFromMm(LetterFigures letters) => letters.ThinnestStrokePart <= 0
        ? 0 : (Fabric.NarrowestSatinMm - (2 * fabric.PullCompensationMm)) / letters.ThinnestStrokePart;

    /// <summary>Bare cloth left in the smallest counter; 0 where its sides meet, null where no letter has one.</summary>
    public double? BareMm(LetterFigures letters, double heightMm) =>
        letters.SmallestCounterPart is { } part ? Math.Max(0, (part * heightMm) - (2 * fabric.PullCompensationMm)) : null;

    public bool BearsStrokes(LetterFigures letters, double heightMm) =>
        letters.ThinnestStrokePart <= 0 || StrokeMm(letters, heightMm) >= LeastStrokeMm;

    public bool BearsCounters(LetterFigures letters, double heightMm) =>
        BareMm(letters, heightMm) is not { } bare || bare >= LeastBareMm;

    public bool Bears(LetterFigures letters, double heightMm) => BearsStrokes(letters, heightMm) && BearsCounters(letters, heightMm);

    /// <summary>The least letter height, in whole tenths of a millimetre, at which these letters can be sewn as they are drawn.</summary>
    public double LeastHeightMm(LetterFigures letters)
    {
        // The letters only grow with the height, so what is borne at one height is borne at every larger one.
        int under = 0, enough = MostTenths;
        while (enough - under > 1)
        {
            int middle = (under + enough) / 2;
            (under, enough) = Bears(letters, middle / TenthsPerMm) ? (under, middle) : (middle, enough);
        }

        return enough / TenthsPerMm;
    }
}
