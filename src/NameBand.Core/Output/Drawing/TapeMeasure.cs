using System.Globalization;

namespace NameBand.Output.Drawing;

/// <summary>A tape measure laid along an edge; its marks point down to the cloth, its numbers are centimetres.</summary>
internal static class TapeMeasure
{
    public const double WidthMm = 8; // Room for its numbers and its longest marks, and no wider, for it lies over the table.

    /// <param name="on">The canvas; x of the plane is what the tape is laid along.</param>
    /// <param name="bottomYMm">The tape's lower edge.</param>
    /// <param name="zeroAtMm">Where on the plane the tape’s zero lies.</param>
    /// <param name="fromMm">First place the tape covers, in mm of the tape.</param>
    /// <param name="toMm">Last place the tape covers.</param>
    public static void Draw(ProofCanvas on, double bottomYMm, double zeroAtMm, double fromMm, double toMm)
    {
        var (picture, page, face) = on;
        double bottom = page.Y(bottomYMm);
        double top = page.Y(bottomYMm + WidthMm);
        if (top > picture.Bottom || bottom < picture.Top)
        {
            return;
        }

        double left = page.X(zeroAtMm + fromMm);
        double right = page.X(zeroAtMm + toMm);
        picture.Fill(left, top, right, bottom, Palette.TapeAt);
        picture.Level(left, right, top + 0.5, 1, new Ink(Palette.Weld, 0.7));
        picture.Level(left, right, bottom - 0.5, 1, new Ink(Palette.Ink, 0.55));

        double hair = Math.Max(1, page.Px(0.13));
        bool eachMm = page.PixelsPerMm >= 4;
        int cap = page.CapPx(2.0);
        int numbersEveryCm = face.Measure("8888", cap) < page.Px(9) ? 1 : 5;
        int first = (int)Math.Ceiling(fromMm);
        int last = (int)Math.Floor(toMm);
        for (int mm = first; mm <= last; mm++)
        {
            bool cm = mm % 10 == 0;
            bool half = mm % 5 == 0;
            if (!half && !eachMm)
            {
                continue;
            }

            double x = page.X(zeroAtMm + mm);
            double tall = page.Px(cm ? 3.4 : half ? 2.3 : 1.3);
            picture.Upright(x, bottom - tall, bottom, hair, new Ink(Palette.Ink, cm ? 1 : half ? 0.85 : 0.6));
            if (cm && mm / 10 % numbersEveryCm == 0 && mm >= 0)
            {
                string number = (mm / 10).ToString(CultureInfo.InvariantCulture);
                double wide = face.Measure(number, cap);
                if (x - (wide / 2) > left + 1 && x + (wide / 2) < right - 1)
                {
                    face.Set(picture, number, (x, bottom - page.Px(4.3)), cap, Palette.Ink, 0.5);
                }
            }
        }
    }
}
