using HarfBuzzSharp;
using NameBand.Lettering.Faces;
using NameBand.Tests.Lettering;
using SkiaSharp;
using Xunit;

namespace NameBand.Tests.Sources;

/// <summary>
/// Ink boxes of glyphs against FreeType, which reads the font files by code of its own and reaches us by way of
/// Skia, while our outlines come from HarfBuzz and our own flattening; cap heights against HarfBuzz's reader of OS/2.
/// </summary>
public class GlyphBoxesAgainstFreeTypeTests
{
    private const int MostGlyphs = 500;

    public static TheoryData<string> Faces() => new(LetteringRig.Shelf.Cards.Select(c => c.Name));

    [Theory]
    [MemberData(nameof(Faces))]
    public void Ink_boxes_agree(string faceName)
    {
        var face = LetteringRig.Face(faceName);
        using var typeface = SKTypeface.FromFile(LetteringRig.PathOf(faceName));
        using var font = new SKFont(typeface, face.UnitsPerEm) { Hinting = SKFontHinting.None, Subpixel = true };

        // Skia hands out paths in steps of 1/4096 em; our flattening may cut a summit by 0.0004 of the cap height.
        double most = (face.UnitsPerEm / 4096.0) + (0.0005 * face.CapHeightUnits);
        int compared = 0;
        for (int glyph = 0; glyph < face.GlyphCount; glyph += Math.Max(1, face.GlyphCount / MostGlyphs))
        {
            var ours = face.Shape(glyph).Ink.Scaled(face.CapHeightUnits);
            using var path = font.GetGlyphPath((ushort)glyph);
            var theirs = path.TightBounds;
            if (ours.IsEmpty)
            {
                Assert.True(theirs.Width * theirs.Height == 0, $"{faceName}, glyph {glyph} is blank in ours and {theirs} in FreeType's");
                continue;
            }

            double worst =
                new[] { ours.LeftMm - theirs.Left, ours.RightMm - theirs.Right, ours.TopMm + theirs.Top, ours.BottomMm + theirs.Bottom }
                .Max(Math.Abs);
            Assert.True(worst <= most, $"{faceName}, glyph {glyph}: {worst} units apart, {most} allowed; ours {ours}, FreeType's {theirs}");
            compared++;
        }

        Assert.True(compared > 80, $"only {compared} glyphs were compared");
    }

    [Theory]
    [MemberData(nameof(Faces))]
    public void Cap_height_is_that_of_the_OS2_table_as_HarfBuzz_reads_it(string faceName)
    {
        var face = LetteringRig.Face(faceName);
        Assert.True(face.Font.OpenTypeMetrics.TryGetPosition(OpenTypeMetricsTag.CapHeight, out int height));
        Assert.Equal(height, face.CapHeightUnits);
        Assert.Equal("as the face states it", face.CapHeightRule);
    }
}
