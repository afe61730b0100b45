using NameBand.Lettering.Outlines;

namespace NameBand.Lettering.Faces;

/// <summary>The letters by which a face is measured: A–Z and a–z, or those of the first script it covers.</summary>
internal static class MeasuredLetters
{
    /// <summary>How many glyphs are measured of a face whose script is not known here.</summary>
    private const int GlyphsOfUnknownScript = 60;

    // At a letter height of 1 mm: what is larger is an ornament, and would take the raster's time. Our assumption.
    private const double MostMm = 4;

    public static IEnumerable<GlyphShape> Of(Face face) =>
        Glyphs(face).Select(face.Shape)
            .Where(shape => !shape.Ink.IsEmpty && shape.Ink.WidthMm < MostMm && shape.Ink.HeightMm < MostMm);

    private static IEnumerable<int> Glyphs(Face face) =>
        ScriptSample.All.FirstOrDefault(s => s.IsCoveredBy(face)) is { } sample
            ? sample.Letters.Select(c => (int)face.GlyphOf(c)).Distinct()
            : Enumerable.Range(1, Math.Min(GlyphsOfUnknownScript, face.GlyphCount - 1));
}
