using NameBand.Cloth;
using NameBand.Estimating;
using NameBand.Job;
using Xunit;

namespace NameBand.Tests.Sources;

/// <summary>Thread against published numbering and consumption examples.</summary>
public class ThreadSourcesTests
{
    /// <summary>tex = denier / 9 (ISO 1144). Source of the example: Coats Bulletin 05, Thread Numbering: 120/2 denier = 240
    /// denier = 26.67 tex.</summary>
    [Fact]
    public void Forty_weight_is_two_plies_of_120_denier() => Assert.Equal(26.67, FabricTable.FortyWeight.Tex, 2);

    /// <summary>ISO 1144, source of the example: Coats Bulletin 05: Nm 40 is 25 tex is 225 denier. Ticket = 3000 / tex, source:
    /// apparel-merchandising.com, 2014-06: 25 tex is ticket 120.</summary>
    [Theory]
    [InlineData("Nm 40")]
    [InlineData("25 tex")]
    [InlineData("225 den")]
    [InlineData("ticket 120")]
    public void The_published_example_of_one_thread_in_four_numberings_is_one_thread(string text) =>
        Assert.Equal(25, ThreadSize.Parse(text)!.Tex, 9);

    /// <summary>Lockstitch 301: C = 2 + 2·T·S. Source: textilecalculation.blogspot.com, 2015-06: T 0.01 in, S 10 to the inch, C
    /// 2.2.</summary>
    [Theory]
    [InlineData(0.01, 10, 2.2)]
    [InlineData(0.02, 12, 2.48)]
    public void A_straight_seam_takes_two_plus_two_t_s(double thickness, int stitchesPerUnit, double perUnit)
    {
        double total = 0;
        for (int i = 0; i < stitchesPerUnit; i++)
        {
            var (needle, bobbin) = ThreadGeometry.Stitch(1.0 / stitchesPerUnit, thickness, ThreadGeometry.BalancedNeedlePart);
            Assert.Equal(needle, bobbin, 12);
            total += needle + bobbin;
        }

        Assert.Equal(perUnit, total, 9);
    }

    /// <summary>Handbook ratio for 301 of 2.5, half needle and half bobbin. Source: Coats consumption guide: 220 cm of seam, 550
    /// = 275 + 275.</summary>
    [Fact]
    public void A_balanced_seam_at_the_handbooks_ratio_halves_as_the_handbook_says()
    {
        const double StitchMm = 2.5;
        double thickness = StitchMm * 0.25;
        int stitches = (int)(2200 / StitchMm);
        var (needle, bobbin) = ThreadGeometry.Stitch(StitchMm, thickness, ThreadGeometry.BalancedNeedlePart);
        Assert.Equal(2750, stitches * needle, 6);
        Assert.Equal(2750, stitches * bobbin, 6);
    }

    /// <summary>
    /// Decorative stitching takes about 5 m of needle and 3 m of bobbin thread for 1000 stitches. Common practice,
    /// no source: only the split between the two threads is taken from it.
    /// </summary>
    [Fact]
    public void The_split_of_embroidery_is_the_published_average()
    {
        var (needle, bobbin) = ThreadGeometry.Stitch(2.2, 0.45, ThreadGeometry.EmbroideryNeedlePart);
        Assert.Equal(5.0 / 3, needle / bobbin, 9);
    }
}
