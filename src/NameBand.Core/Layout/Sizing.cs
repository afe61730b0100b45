using NameBand.Garment;
using NameBand.Lettering;

namespace NameBand.Layout;

/// <summary>What bounds the letters: the strip, the sewing field, the cloth's pull and the wished gap.</summary>
/// <param name="ChosenFace">Name of the face the job asked for; names wholly in another face have a base line of their own.</param>
/// <param name="FixedGapMm">Null: <see cref="GapFactor"/> letter heights.</param>
internal sealed record Sizing(
    string ChosenFace, HemPlan Hem, double FieldAlongMm, double FieldAcrossMm, double SpareMm, double PullCompensationMm, double Shortening, double? FixedGapMm)
{
    public const double GapFactor = 1.5;

    /// <summary>How far rounding in the last place may carry a sum over a bound.</summary>
    public const double SlightMm = 1e-6;

    /// <summary>Longest segment that can be sewn in one hooping, as it will measure once sewn.</summary>
    public double LongestSegmentMm => FieldAlongMm - (2 * SpareMm);

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

    /// <summary>What the names of one round need in mm, gaps included.</summary>
    public double NeedMm(double widthsMm, int names, double gapMm) =>
        names == 0 ? 0 : widthsMm + (GapCount(names) * gapMm);

    /// <summary>On a closed edge every name has a gap, half on each side; on an open edge gaps lie between names only.</summary>
    public int GapCount(int names) => Hem.Closed ? names : names - 1;

    /// <summary>
    /// Room the rounds offer when every name brings one gap along: an open edge needs one gap less than names,
    /// which is the same as being one gap longer.
    /// </summary>
    public double OfferMm(int round, double gapMm) => Hem.RoundMm(round) + (Hem.Closed ? 0 : gapMm);
}
