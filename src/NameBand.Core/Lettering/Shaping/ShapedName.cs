using NameBand.Common;
using NameBand.Lettering.Faces;

namespace NameBand.Lettering.Shaping;

/// <summary>One glyph at its place in a name.</summary>
/// <param name="Cluster">Index of the first character (UTF-16) it stands for.</param>
/// <param name="Run">Which run it belongs to, from left to right.</param>
/// <param name="XUnits">Place within the run in the face's font units, as is <paramref name="YUnits"/>; glyphs of one run can be
/// compared exactly.</param>
/// <param name="At">Place in the name at a letter height of 1 mm.</param>
internal readonly record struct ShapedGlyph(Face Face, int Glyph, int Cluster, int Run, int XUnits, int YUnits, Point At);

/// <summary>A shaped name, glyphs from left to right; or why it could not be shaped.</summary>
/// <param name="Fault">A whole sentence, or null.</param>
internal sealed record ShapedName(IReadOnlyList<ShapedGlyph> Glyphs, double AdvanceMm, IReadOnlyList<UnshownSign> Unshown, Said? Fault)
{
    public static ShapedName Without(IReadOnlyList<UnshownSign> unshown) => new([], 0, unshown, null);

    public static ShapedName Broken(Said fault) => new([], 0, [], fault);
}
