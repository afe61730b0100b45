using NameBand.Common;
using NameBand.Layout;
using NameBand.Lettering;

namespace NameBand.Stitching.Sewing;

/// <summary>
/// Stands the letters of a name on the arc of a curved strip: each is turned about the middle of its own ink on the base
/// line, and none is bent. Their distances along the base line stay what they are in a straight row.
/// </summary>
/// <param name="middleMm">Middle of the name, along the lower edge from the segment's left end.</param>
/// <param name="at">Where the segment's left end lies in its hooping.</param>
internal sealed class LetterArc(BentFrame frame, double middleMm, PlacedName name, double heightMm, Point at = default)
{
    public Placing PlacingOf(PlacedPiece placed)
    {
        var ink = placed.Piece.Ink;
        double middle = ink.IsEmpty ? 0 : (ink.LeftMm + ink.RightMm) / 2;
        double fromNameMiddle = (placed.At.XMm + middle - ((name.Lettered.Ink.LeftMm + name.Lettered.Ink.RightMm) / 2)) * heightMm;
        double along = middleMm + (fromNameMiddle * frame.Curve.AlongFactor(name.BaselineYMm));
        var about = new Point(middle * heightMm, -placed.At.YMm * heightMm);
        return Placing.About(about, at + frame.At(along, name.BaselineYMm), frame.TurnRad(along));
    }
}
