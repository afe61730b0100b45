using NameBand.Cloth;
using NameBand.Common;
using NameBand.Garment;
using NameBand.Job;
using NameBand.Lettering;

namespace NameBand.Layout;

/// <summary>What bounds the letters: the strip, the sewing field, the cloth's pull and the wished gap.</summary>
/// <param name="ChosenFace">Name of the face the job asked for; names wholly in another face have a base line of their own.</param>
/// <param name="FixedGapMm">Null: <see cref="GapFactor"/> letter heights.</param>
internal sealed record Sizing(
    string ChosenFace, HemPlan Hem, double FieldAlongMm, double FieldAcrossMm, double SpareMm, double PullCompensationMm, double Shortening,
    double? FixedGapMm)
{
    /// <summary>How the cloth's pull goes with the size of the letters.</summary>
    public Pull Pull { get; init; } = Pull.FirmWoven;

    /// <summary>How far letters of a height are sewn past their outlines.</summary>
    public double ReachMm(double heightMm) => PullCompensationMm * Pull.LettersFactor(heightMm);

    /// <summary>Widest gap allowed, or null.</summary>
    public double? MostGapMm { get; init; }

    /// <summary>Strips that may share a hooping where names are cut into hoopings once more.</summary>
    public int LanesBeside { get; init; } = 1;

    /// <summary>Sewn in gaps that have room; the gap of 1.5 letter heights is widened for it, a gap that the job names is not.</summary>
    public LetteredName? Motif { get; init; }

    /// <summary>Motifs are put between the names once those stand: <see cref="RunMotifs"/>.</summary>
    public bool AreMotifsLater { get; init; }

    /// <summary>From the lower base line up to the upper one in letter heights, where names stand in two lines; else 0.</summary>
    public double LineStep { get; init; }

    public const double GapFactor = JobDefaults.GapFactor; // Letter heights; where job.json says none.

    /// <summary>The cloth that the field, the spare and every hooping are judged on.</summary>
    public FlatCloth Flat => new(Shortening);

    /// <summary>Longest stretch of flat cloth that one hooping can take, strips side by side included.</summary>
    public double HoopingOnClothMm => Math.Min(FlatCloth.FieldMm(FieldAlongMm, SpareMm), LongestArcMm);

    /// <summary>Longest segment that can be sewn in one hooping, as it will measure once sewn.</summary>
    public double LongestSegmentMm => Flat.FinishedMm(HoopingOnClothMm);

    /// <summary>How far the alignment marks reach from the strip's centre line.</summary>
    public double MarkReachMm { get; init; }

    /// <summary>Width, at a letter height of 1 mm, of the widest piece that is turned as a whole to stand on an arc.</summary>
    public double WidestPiece { get; init; }

    /// <summary>Of the rounds to be laid, the one that curves most; null for straight strips.</summary>
    private StripCurve? Tightest => StripCurve.Of(Hem, Hem.FixedRounds ?? 1);

    /// <summary>Longest arc whose bow leaves the strip, and its marks where there is room for them, inside the field's width.</summary>
    private double LongestArcMm
    {
        get
        {
            if (Tightest is not { } curve)
            {
                return double.PositiveInfinity;
            }

            double room = FieldAcrossMm - (2 * MarkReachMm);
            double bow = room >= 1 ? room : Math.Max(FieldAcrossMm - Hem.Strip.SewingZoneMm, 0.1);
            return 2 * curve.RadiusMm * Math.Acos(Math.Max(1 - (bow / curve.RadiusMm), 0));
        }
    }

    /// <summary>Least length of a segment whose two marks stand far enough apart.</summary>
    public double MarkedSegmentMm
    {
        get
        {
            double chord = SegmentCutter.LeastMarkDistanceMm + (2 * SegmentCutter.MarkArmMm);
            return Tightest is { } curve ? 2 * curve.RadiusMm * Math.Asin(Math.Min(1, chord / 2 / curve.CentreRadiusMm)) : chord;
        }
    }

    /// <summary>Length along the strip for one on the base line: over 1 on a curved strip, whose lower edge is longer.</summary>
    public double AlongFactor(double heightMm) => Hem.IsCurved ? Tightest!.AlongFactor(-heightMm / 2) : 1;

    /// <summary>How far a piece turned as a whole leaves the arc at its ends.</summary>
    public double OffArcMm(double heightMm) => Tightest is { } curve
        ? StripCurve.BowMm(WidestPiece * heightMm, curve.RadiusAtMm(0))
        : 0;

    public double GapMm(double heightMm) => (FixedGapMm ?? UsualGapMm(heightMm)) * AlongFactor(heightMm);

    private double UsualGapMm(double heightMm) => Math.Max(
        GapFactor * heightMm, Motif is { } motif ? MotifGaps.NarrowestMm(motif, heightMm, ReachMm(heightMm)) : 0);

    public double WidthMm(LetteredName name, double heightMm) => name.WidthMm(heightMm, ReachMm(heightMm)) * AlongFactor(heightMm);

    public bool FitsField(LetteredName name, double heightMm) =>
        name.IsInOneRun || WidthMm(name, heightMm) <= LongestSegmentMm + Tolerance.RoundingMm;

    /// <summary>Whether ink from <paramref name="bottom"/> to <paramref name="top"/> (at a letter height of 1 mm) fits the sewing
    /// zone.</summary>
    public bool FitsZone(double bottom, double top, double heightMm) =>
        ((top - bottom) * heightMm) + (2 * ReachMm(heightMm)) + OffArcMm(heightMm)
            <= Math.Min(Hem.Strip.SewingZoneMm, FieldAcrossMm) + Tolerance.RoundingMm;

    /// <summary>
    /// Whether a name stands on the common base line. A name wholly in another face is of another script, with other
    /// depths: it may move up or down as far as it must, rather than make everyone's letters smaller.
    /// </summary>
    public bool SharesBaseline(LetteredName name) =>
        name.Pieces.IsEmpty || name.Pieces.Any(p => p.Piece.Face == (name.Standing.Face ?? ChosenFace));
}
