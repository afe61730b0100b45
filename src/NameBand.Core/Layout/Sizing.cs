using NameBand.Garment;
using NameBand.Lettering;

namespace NameBand.Layout;

/// <summary>What bounds the letters: the strip, the sewing field, the cloth's pull and the wished gap.</summary>
/// <param name="ChosenFace">Name of the face the job asked for; names wholly in another face have a base line of their own.</param>
/// <param name="FixedGapMm">Null: <see cref="GapFactor"/> letter heights.</param>
internal sealed record Sizing(
    string ChosenFace, HemPlan Hem, double FieldAlongMm, double FieldAcrossMm, double SpareMm, double PullCompensationMm, double Shortening, double? FixedGapMm)
{
    /// <summary>Widest gap allowed, or null.</summary>
    public double? MostGapMm { get; init; }

    public const double GapFactor = 1.5;

    /// <summary>How far rounding in the last place may carry a sum over a bound.</summary>
    public const double SlightMm = 1e-6;

    /// <summary>Longest segment that can be sewn in one hooping, as it will measure once sewn.</summary>
    public double LongestSegmentMm => FieldAlongMm - (2 * SpareMm);

    /// <summary>Longest stretch of flat cloth from the first to the last ink of a hooping, strips side by side included.</summary>
    public double HoopingOnClothMm => Math.Min(LongestSegmentMm / (1 - Shortening), FieldAlongMm);

    public double GapMm(double heightMm) => FixedGapMm ?? (GapFactor * heightMm);

    public double WidthMm(LetteredName name, double heightMm) => name.WidthMm(heightMm, PullCompensationMm);

    public bool FitsField(LetteredName name, double heightMm) =>
        WidthMm(name, heightMm) <= LongestSegmentMm + SlightMm;

    /// <summary>Whether ink from <paramref name="bottom"/> to <paramref name="top"/> (at a letter height of 1 mm) fits the sewing zone.</summary>
    public bool FitsZone(double bottom, double top, double heightMm) =>
        ((top - bottom) * heightMm) + (2 * PullCompensationMm) <= Math.Min(Hem.Strip.SewingZoneMm, FieldAcrossMm) + SlightMm;

    /// <summary>
    /// Whether a name stands on the common base line. A name wholly in another face is of another script, with other
    /// depths: it may move up or down as far as it must, rather than make everyone's letters smaller.
    /// </summary>
    public bool SharesBaseline(LetteredName name) =>
        name.Pieces.IsEmpty || name.Pieces.Any(p => p.Piece.Face == ChosenFace);
}
