using NameBand.Garment;

namespace NameBand.Output.Drawing;

/// <summary>A strip of cloth across its width, with the lines along which it is cut and folded.</summary>
internal static class StripDrawing
{
    /// <summary>Lays the strip's cloth: the face that stays in sight and the edges that are turned under.</summary>
    /// <param name="centreYMm">Height of the strip's centre line on the page.</param>
    public static void Cloth(
        IndexedBitmap picture, ProofPage page, StripWidths strip, double centreYMm, (double LeftMm, double RightMm) along)
    {
        var weave = ClothWeave.At(page.PixelsPerMm);
        double cut = strip.CutWidthMm / 2;
        double finished = strip.FinishedWidthMm / 2;
        double left = page.X(along.LeftMm);
        double right = page.X(along.RightMm);
        weave.Lay(picture, left, page.Y(centreYMm + cut), right, page.Y(centreYMm + finished), Palette.TurnInAt);
        weave.Lay(picture, left, page.Y(centreYMm + finished), right, page.Y(centreYMm - finished), Palette.CottonAt);
        weave.Lay(picture, left, page.Y(centreYMm - finished), right, page.Y(centreYMm - cut), Palette.TurnInAt);
    }

    /// <summary>Draws the cut edge (dashed), the fold that becomes the finished edge, and the edge of the sewing zone (dotted).</summary>
    public static void Lines(
        IndexedBitmap picture, ProofPage page, StripWidths strip, double centreYMm, (double LeftMm, double RightMm) along, bool isCutHere)
    {
        double hair = Math.Max(1, page.Px(0.18));
        double left = page.X(along.LeftMm);
        double right = page.X(along.RightMm);
        foreach (int side in new[] { 1, -1 })
        {
            double cut = page.Y(centreYMm + (side * strip.CutWidthMm / 2));
            double finished = page.Y(centreYMm + (side * strip.FinishedWidthMm / 2));
            double zone = page.Y(centreYMm + (side * strip.SewingZoneMm / 2));
            picture.Level(left, right, cut, hair, new Ink(Palette.Ink, isCutHere ? 0.75 : 0.45, isCutHere ? page.Px(1.6) : 0));
            picture.Level(left, right, finished, hair, new Ink(Palette.Weld, 0.9));

            // The cloth bends away here: a soft shade on the side that is turned under.
            for (int i = 0; i < 3; i++)
            {
                double depth = page.Px(0.28 * (i + 1));
                picture.Box(
                    left, side > 0 ? finished - depth : finished, right, side > 0 ? finished : finished + depth, Palette.Weld, 0.07);
            }

            if (strip.MarginMm > 0.5)
            {
                picture.Level(left, right, zone, Math.Max(1, page.Px(0.10)), new Ink(Palette.Weld, 0.45, page.Px(0.5)));
            }
        }
    }
}
