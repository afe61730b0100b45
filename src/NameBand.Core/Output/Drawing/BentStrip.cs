using NameBand.Garment;
using NameBand.Layout;

namespace NameBand.Output.Drawing;

/// <summary>A curved strip in its hooping: its cloth between two arcs, and the arcs along which it is cut and folded.</summary>
internal sealed class BentStrip(IndexedBitmap picture, ProofPage page, StripWidths strip, BentFrame frame)
{
    /// <summary>Lays the strip's cloth, a column of pixels at a time.</summary>
    public void Cloth()
    {
        var weave = ClothWeave.At(page.PixelsPerMm);
        double cut = strip.CutWidthMm / 2;
        double finished = strip.FinishedWidthMm / 2;
        for (int px = 0; px < picture.Width; px++)
        {
            double x = XMm(px);
            Lay(px, x, cut, finished, Palette.TurnInAt);
            Lay(px, x, finished, -finished, Palette.CottonAt);
            Lay(px, x, -finished, -cut, Palette.TurnInAt);
        }

        void Lay(int px, double x, double upper, double lower, byte dye) =>
            weave.Lay(picture, px, page.Y(frame.YAtMm(upper, x)), px + 1, page.Y(frame.YAtMm(lower, x)), dye);
    }

    /// <summary>Draws the cut edges (dashed), the folds and the edges of the sewing zone (dotted).</summary>
    public void Lines(bool isCutHere)
    {
        double hair = Math.Max(1, page.Px(0.18));
        foreach (int side in new[] { 1, -1 })
        {
            Arc(side * strip.CutWidthMm / 2, hair, Palette.Ink, isCutHere ? 0.75 : 0.45, isCutHere ? page.Px(1.6) : 0);
            Arc(side * strip.FinishedWidthMm / 2, hair, Palette.Weld, 0.9, 0);
            if (strip.MarginMm > 0.5)
            {
                Arc(side * strip.SewingZoneMm / 2, Math.Max(1, page.Px(0.10)), Palette.Weld, 0.45, page.Px(0.5));
            }
        }
    }

    /// <summary>A tape along the lower finished edge: centimetres on the flat cloth, counted from its cut left end.</summary>
    public void Tape(CaptionFace face, double onClothMm)
    {
        double edge = frame.Curve.CentreIsAbove ? -strip.FinishedWidthMm / 2 : strip.FinishedWidthMm / 2;
        double outwards = Math.Sign(edge);
        int cap = page.CapPx(1.5);
        for (int cm = (int)Math.Ceiling((onClothMm - 4) / 10); cm * 10 <= onClothMm + frame.LengthMm + 4; cm++)
        {
            var at = frame.At((cm * 10) - onClothMm, edge);
            double x = page.X(at.XMm);
            double from = page.Y(at.YMm);
            double to = page.Y(at.YMm + (outwards * 1.6));
            picture.Upright(x, Math.Min(from, to), Math.Max(from, to), Math.Max(1, page.Px(0.15)), new Ink(Palette.Madder, 0.9));
            double text = page.Y(at.YMm + (outwards * 4.6)) + (outwards > 0 ? cap : 0);
            face.Set(picture, cm.ToString(System.Globalization.CultureInfo.InvariantCulture), (x, text), cap, Palette.Madder, 0.5);
        }
    }

    /// <summary>The straight line to rule on the cloth, through both alignment marks.</summary>
    public void RuledLine(double yMm) =>
        picture.Level(
            page.X(-4), page.X(frame.ChordMm + 4), page.Y(yMm), Math.Max(1, page.Px(0.12)), new Ink(Palette.Madder, 0.6, page.Px(2.4)));

    private void Arc(double yMm, double thick, int colour, double strength, double dash)
    {
        for (int px = 0; px < picture.Width; px++)
        {
            if (dash <= 0 || (int)(px / dash) % 2 == 0)
            {
                double y = page.Y(frame.YAtMm(yMm, XMm(px)));
                picture.Box(px, y - (thick / 2), px + 1, y + (thick / 2), colour, strength);
            }
        }
    }

    private double XMm(int px) => page.LeftMm + ((px + 0.5) / page.PixelsPerMm);
}
