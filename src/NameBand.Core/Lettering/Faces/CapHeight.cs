using NameBand.Common;
using NameBand.Lettering.Fonts;

namespace NameBand.Lettering.Faces;

/// <summary>
/// What a letter height is measured by: OS/2 sCapHeight; without one, the ink height of H; without H, 0.714 of the
/// em. A face without H that helps out beside another goes by its em whatever it states: faces of scripts without
/// capitals state a cap height at will, but are drawn to stand beside capitals of about that part of the em (the
/// Noto Sans faces and Droid Sans Fallback are), so that letters of all scripts look of a size.
/// </summary>
internal sealed record CapHeight(double Units, Said Rule)
{
    private const double PartOfEm = 0.714; // As the Latin capitals of the Noto Sans faces (docs/lettering.md).

    /// <param name="stated">OS/2 sCapHeight, or 0.</param>
    public static CapHeight Of(Face face, int stated, bool helpsOut)
    {
        bool hasCapital = face.Has('H');
        if (stated > 0 && (hasCapital || !helpsOut))
        {
            return new CapHeight(stated, "as the face states it");
        }

        return hasCapital && InkHeight(face, 'H') is { } height
            ? new CapHeight(height, "the ink height of its H")
            : new CapHeight(PartOfEm * face.UnitsPerEm, "0.714 of its em, as it has no capitals");
    }

    private static double? InkHeight(Face face, int codePoint)
    {
        try
        {
            using var path = face.RawPath((int)face.GlyphOf(codePoint));
            double height = path?.TightBounds.Height ?? 0;
            return height > 0.05 * face.UnitsPerEm ? height : null;
        }
        catch (FontFault)
        {
            return null;
        }
    }
}
