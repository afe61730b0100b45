using NameBand.Common;
using NameBand.Garment;
using NameBand.Job;

namespace NameBand.Layout;

/// <summary>
/// A strip cut as a piece of a ring, so that it lies flat on a round hem. Lengths along it are counted on its lower
/// finished edge, the long one; every other line across it is an arc about the same centre. Plane geometry.
/// </summary>
/// <param name="RadiusMm">Radius of the lower finished edge (the one nearest the hem).</param>
/// <param name="CentreRadiusMm">Radius of the strip's centre line.</param>
/// <param name="CentreIsAbove">The centre of the arcs lies above the letters as they are read; else below them.</param>
public sealed record StripCurve(double RadiusMm, double CentreRadiusMm, bool CentreIsAbove)
{
    /// <summary>The curve of a round; null where strips are straight.</summary>
    public static StripCurve? Of(HemPlan hem, int round) => hem.IsCurved
        ? new StripCurve(hem.RadiusMm(round), hem.RadiusMm(round) - (hem.Strip.FinishedWidthMm / 2), hem.ReadBy == Reader.Viewer)
        : null;

    /// <summary>Length along the strip for one on the base line of letters: over 1 where it is curved, as on the round that
    /// curves most.</summary>
    public static double WidestFactor(HemPlan hem, double heightMm) => Of(hem, hem.FixedRounds ?? 1)?.AlongFactor(-heightMm / 2) ?? 1;

    /// <summary>How far an arc of a length rises over the chord between its ends.</summary>
    public static double BowMm(double arcMm, double radiusMm) => radiusMm * (1 - Math.Cos(arcMm / (2 * radiusMm)));

    /// <summary>Radius of the line that lies <paramref name="yMm"/> above the centre line as the names are read.</summary>
    public double RadiusAtMm(double yMm) => CentreRadiusMm - (CentreIsAbove ? yMm : -yMm);

    /// <summary>Length along the lower finished edge for one along the line <paramref name="yMm"/> above the centre line: over 1.</summary>
    public double AlongFactor(double yMm) => RadiusMm / RadiusAtMm(yMm);

    /// <summary>The piece of ring that a segment lies on, in the coordinates of its hooping.</summary>
    /// <param name="lengthMm">Length of the segment.</param>
    public BentFrame Frame(double lengthMm) => new(this, lengthMm);
}

/// <summary>
/// Where places of a curved segment lie in its hooping. The origin is the left end of the segment on the strip's centre
/// line; x runs along the chord of that line, which is the direction of the strip at the segment's middle, y up.
/// </summary>
/// <param name="LengthMm">Of the segment, along the lower finished edge.</param>
public readonly record struct BentFrame(StripCurve Curve, double LengthMm)
{
    private double HalfRad => LengthMm / 2 / Curve.RadiusMm;

    private double Sign => Curve.CentreIsAbove ? 1 : -1;

    /// <summary>From the left end of the centre line to its right end.</summary>
    public double ChordMm => 2 * Curve.CentreRadiusMm * Math.Sin(HalfRad);

    /// <summary>Height of the centre line's arc over its chord.</summary>
    public double BowMm => Curve.CentreRadiusMm * (1 - Math.Cos(HalfRad));

    /// <summary>The middle of the segment between its chord and its arc: negative where the arc hangs below the chord.</summary>
    public double MiddleYMm => -Sign * BowMm / 2;

    /// <summary>The point <paramref name="alongMm"/> from the segment's left end on the lower edge and <paramref name="yMm"/>
    /// above the centre line.</summary>
    public Point At(double alongMm, double yMm)
    {
        double angle = (alongMm - (LengthMm / 2)) / Curve.RadiusMm;
        double radius = Curve.RadiusAtMm(yMm);
        return new Point(
            (radius * Math.Sin(angle)) + (ChordMm / 2),
            Sign * ((Curve.CentreRadiusMm * Math.Cos(HalfRad)) - (radius * Math.Cos(angle))));
    }

    /// <summary>The angle, counter-clockwise, by which a letter there is turned so that it stands on the arc.</summary>
    public double TurnRad(double alongMm) => Sign * (alongMm - (LengthMm / 2)) / Curve.RadiusMm;

    /// <summary>The reverse of <see cref="At"/>.</summary>
    public (double AlongMm, double YMm) Unbent(Point at)
    {
        double x = at.XMm - (ChordMm / 2);
        double down = (Curve.CentreRadiusMm * Math.Cos(HalfRad)) - (Sign * at.YMm);
        double radius = Math.Sqrt((x * x) + (down * down));
        return ((LengthMm / 2) + (Math.Atan2(x, down) * Curve.RadiusMm), Sign * (Curve.CentreRadiusMm - radius));
    }

    /// <summary>Height at <paramref name="xMm"/> of the arc that lies <paramref name="yMm"/> above the centre line.</summary>
    public double YAtMm(double yMm, double xMm)
    {
        double radius = Curve.RadiusAtMm(yMm);
        double x = xMm - (ChordMm / 2);
        return Sign * ((Curve.CentreRadiusMm * Math.Cos(HalfRad)) - Math.Sqrt(Math.Max(0, (radius * radius) - (x * x))));
    }

    /// <summary>
    /// Height of the ruled line through the two alignment marks: the chord between two places of the marks' line, each
    /// <paramref name="inMm"/> from an end of the centre line's chord.
    /// </summary>
    public double MarkChordYMm(double markYMm, double inMm) => YAtMm(markYMm, inMm);

    /// <summary>The box about all that lies between two heights above the centre line, from the segment's left end on.</summary>
    /// <param name="flatMm">Length of flat cloth along the lower finished edge.</param>
    public Box Reach(double flatMm, double topMm, double bottomMm)
    {
        // An arc lies highest or lowest at the middle, where it runs along x, and else at its ends.
        var box = Box.Empty;
        foreach (double along in (ReadOnlySpan<double>)[0, LengthMm / 2, flatMm])
        {
            box = box.Include(At(along, topMm)).Include(At(along, bottomMm));
        }

        return box;
    }

    /// <summary>How far the arc of the marks' line is from the ruled line between the two marks at its middle.</summary>
    public double MarkBowMm(double markYMm, double inMm) => Math.Abs(YAtMm(markYMm, ChordMm / 2) - YAtMm(markYMm, inMm));
}
