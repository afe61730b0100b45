using NameBand.Common;
using NameBand.Garment;
using Xunit;

namespace NameBand.Tests.Sources;

/// <summary>Part-circle skirts against published tables.</summary>
public class SkirtSourcesTests
{
    /// <summary>Waist of 26 in. Source: prettyquirkypants.com, 2014-03-07, which prints 4.13, 8.2 and 16.56 in (rounded); three
    /// quarters computed.</summary>
    [Theory]
    [InlineData(1.0, 4.13, 0.02)]
    [InlineData(0.75, 5.517, 0.001)]
    [InlineData(0.5, 8.2, 0.08)]
    [InlineData(0.25, 16.56, 0.02)]
    public void Waist_radius(double turn, double printedInches, double within)
    {
        var circle = PartCircle.FromWaist(turn, 26 * Length.MmPerInch);
        Assert.InRange(circle.WaistRadiusMm / Length.MmPerInch, printedInches - within, printedInches + within);
    }

    /// <summary>Waist 70 cm, length 60 cm: W + θL. Computed; calculatorlib.com prints 470.32 for three quarters, which is a wrong
    /// value.</summary>
    [Theory]
    [InlineData(1.0, 446.99)]
    [InlineData(0.75, 352.74)]
    [InlineData(0.5, 258.50)]
    [InlineData(0.25, 164.25)]
    public void Hem_of_a_part_circle(double turn, double hemCm) =>
        Assert.Equal(hemCm, PartCircle.FromWaist(turn, 700).ArcMm(600) / 10, 2);

    /// <summary>
    /// Seam allowances. Source: smartpatternmaking.com, circle-skirt-formula, which prints 18.15 and 35.67 with π taken as
    /// 3.14 (18.144 and 35.651 exactly, before the waist allowance of 1 cm is taken off).
    /// </summary>
    [Theory]
    [InlineData(1.0, 110, 4, 18.15, 0.01)]
    [InlineData(0.5, 110, 2, 35.67, 0.03)]
    public void Radius_to_cut_with_seam_allowances(double turn, double waistCm, double seamsCm, double printedCm, double within)
    {
        double cut = PartCircle.FromWaist(turn, waistCm * 10).CutRadiusMm(seamsCm * 10, 10) / 10;
        Assert.InRange(cut, printedCm - 1 - within, printedCm - 1 + within);
    }

    /// <summary>A strip of width w lying flat at the hem has an upper edge shorter by θ·w, whatever the radius. Computed.</summary>
    [Theory]
    [InlineData(1.0, 30, 188.50)]
    [InlineData(1.0, 25.4, 159.59)]
    public void Upper_edge_of_a_strip(double turn, double widthMm, double shorterMm)
    {
        foreach (double waist in new[] { 500.0, 900.0 })
        {
            var circle = PartCircle.FromWaist(turn, waist);
            Assert.Equal(shorterMm, circle.ArcMm(600) - circle.ArcMm(600 - widthMm), 2);
        }
    }

    /// <summary>
    /// Two side seams with an allowance of three quarters of an inch on each piece take three inches out of the round.
    /// The allowance is common practice, no source; the rest is computed.
    /// </summary>
    [Fact]
    public void A_skirt_cut_larger_by_its_seams_ends_with_the_hem_of_its_waist()
    {
        var circle = PartCircle.FromWaist(0.75, 700);
        double seams = 2 * 2 * 0.75 * Length.MmPerInch;
        double cutRadius = circle.CutRadiusMm(seams, 0);
        Assert.Equal(700 + seams, cutRadius * circle.TurnRad, 6);
        Assert.Equal(circle.ArcMm(600), ((cutRadius + 600) * circle.TurnRad) - seams, 6);
    }
}
