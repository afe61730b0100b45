using NameBand.Common;
using SkiaSharp;

namespace NameBand.Lettering.Outlines;

/// <summary>One glyph of one face with its overlaps resolved.</summary>
/// <param name="Path">In font units, y down; kept for uniting it with its neighbours.</param>
/// <param name="Raw">The contours as the font has them, flattened, at a letter height of 1 mm, y up.</param>
/// <param name="Outline">At a letter height of 1 mm, y up.</param>
/// <param name="Fault">Why it cannot be used, as the end of a sentence; null for a sound glyph.</param>
internal sealed record GlyphShape(SKPath? Path, List<Point[]> Raw, Outline Outline, Box Ink, Said? Fault = null)
{
    public static GlyphShape Blank { get; } = new(null, [], Outline.Empty, Box.Empty);

    public static GlyphShape Unusable(Said fault) => new(null, [], Outline.Empty, Box.Empty, fault);
}
