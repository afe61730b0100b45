using NameBand.Lettering;
using NameBand.Lettering.Smallness;
using Xunit;

namespace NameBand.Tests.Lettering;

/// <summary>
/// Strokes against a measurement made apart from this program, on a raster of 500 pixels. The two choose their
/// pixels differently; 0.013 of the letter height is the tolerance, at 8 mm letters a tenth of a millimetre.
/// </summary>
public class StrokeWidthTests
{
    private const double Tolerance = 0.013;

    [Theory]
    [InlineData("Nunito Bold", 0.174, 0.133)]
    [InlineData("Lato Bold", 0.170, 0.130)]
    [InlineData("Noto Sans Bold", 0.206, 0.164)]
    [InlineData("Roboto Slab Bold", 0.198, 0.138)]
    [InlineData("Vollkorn Bold", 0.210, 0.086)]
    [InlineData("Pacifico", 0.134, 0.091)]
    [InlineData("Grand Hotel", 0.102, 0.084)]
    [InlineData("Bebas Neue Bold", 0.154, 0.134)]
    [InlineData("Routed Gothic", 0.130, 0.128)]
    public void Strokes_are_as_wide_as_measured_elsewhere(string face, double stem, double thinnest)
    {
        var report = LetteringRig.Reports.Single(r => r.Name == face);
        Assert.InRange(report.MainStemPart, stem - Tolerance, stem + Tolerance);
        Assert.InRange(report.ThinnestStrokePart, thinnest - Tolerance, thinnest + Tolerance);
        Assert.Equal(0.8, (report.SatinFromMm * report.ThinnestStrokePart) + (2 * FaceReport.Cloth.PullCompensationMm), 1e-12);
    }

    [Fact]
    public void A_face_of_one_stroke_width_has_one()
    {
        // Routed Gothic is drawn with one pen, so that its I is as wide as every stroke.
        var report = LetteringRig.Reports.Single(r => r.Name == "Routed Gothic");
        Assert.Equal(report.MainStemPart, report.ThinnestStrokePart, 0.004);
        Assert.Equal(LetteringRig.LetterOne("I", "Routed Gothic").Ink.WidthMm, report.MainStemPart, 0.004);
    }

    [Fact]
    public void Every_face_is_reported_with_its_scripts()
    {
        Assert.Equal(LetteringRig.Shelf.Cards.Select(c => c.Name), LetteringRig.Reports.Select(r => r.Name));
        Assert.All(LetteringRig.Reports, r => Assert.NotEmpty(r.Scripts));
        Assert.Equal(
            ["Latin", "Latin of Central Europe", "Vietnamese", "Greek", "Cyrillic", "Ukrainian and Serbian"], Scripts("Noto Sans Bold"));
        Assert.Equal(["Japanese kana", "Korean", "Chinese and Japanese characters"], Scripts("Droid Sans Fallback"));
    }

    private static IEnumerable<string> Scripts(string face) =>
        LetteringRig.Reports.Single(r => r.Name == face).Scripts.Select(s => s.English);
}
