namespace NameBand.Output.Drawing;

/// <summary>A thin bracket from one place to another, with a word or number in the middle below it.</summary>
internal static class NameBracket
{
    /// <param name="yMm">Height of the bracket's upper ends.</param>
    public static void Draw(ProofCanvas on, double fromMm, double toMm, double yMm, string text, int capPx)
    {
        var (picture, page, face) = on;
        double hair = Math.Max(1, page.Px(0.14));
        double left = page.X(fromMm);
        double right = page.X(toMm);
        double top = page.Y(yMm);
        double bottom = top + page.Px(1.1);
        picture.Upright(left + (hair / 2), top, bottom, hair, new Ink(Palette.Ink, 0.8));
        picture.Upright(right - (hair / 2), top, bottom, hair, new Ink(Palette.Ink, 0.8));
        picture.Level(left, right, bottom, hair, new Ink(Palette.Ink, 0.8));
        face.Set(picture, text, ((left + right) / 2, bottom + page.Px(0.9) + capPx), capPx, Palette.Ink, 0.5);
    }
}
