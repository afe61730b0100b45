namespace NameBand.Lettering;

/// <summary>
/// What a letter height is measured by. OS/2 sCapHeight; without one, the ink height of H; in a face without H,
/// the ink height of a letter its script is known by, times the factor that makes it look of a size with
/// capitals; in a face with none of these, seven tenths of the em.
/// </summary>
internal sealed record CapHeight(double Units, string Rule)
{
    private const double PartOfEm = 0.7;

    /// <summary>
    /// Letters that stand for scripts without capitals, and cap height over their ink height, read off the Noto
    /// Sans faces, which are drawn to be mixed with Latin capitals of 714 units (Han and Hangul: Droid Sans
    /// Fallback).
    /// </summary>
    private static readonly (int CodePoint, double Factor)[] Standing =
    [
        ('Н', 1), ('Η', 1), ('Ա', 1),
    ];

    public static CapHeight Of(Face face, int stated)
    {
        if (stated > 0)
        {
            return new CapHeight(stated, "as the face states it");
        }

        if (InkHeight(face, 'H') is { } capital)
        {
            return new CapHeight(capital, "the ink height of its H");
        }

        foreach (var (codePoint, factor) in Standing)
        {
            if (InkHeight(face, codePoint) is { } height)
            {
                return new CapHeight(height * factor, $"by its letter {char.ConvertFromUtf32(codePoint)}, as it has no H");
            }
        }

        return new CapHeight(PartOfEm * face.UnitsPerEm, "seven tenths of its em, as it has no H");
    }

    private static double? InkHeight(Face face, int codePoint)
    {
        if (face.GlyphOf(codePoint) is var glyph && glyph == 0)
        {
            return null;
        }

        try
        {
            using var path = face.RawPath((int)glyph);
            double height = path?.TightBounds.Height ?? 0;
            return height > 0.05 * face.UnitsPerEm ? height : null;
        }
        catch (Fonts.FontFault)
        {
            return null;
        }
    }
}
