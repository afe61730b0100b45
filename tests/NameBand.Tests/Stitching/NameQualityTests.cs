using NameBand.Stitching;
using NameBand.Stitching.Sewing;
using NameBand.Tests.StitchQuality;
using Xunit;

namespace NameBand.Tests.StitchingRoom;

/// <summary>
/// Whole names as they are gone through: nothing hangs loose, joins are short, hardly any travel lies over finished satin.
/// All twenty names where NAMEBAND_EVERY_LETTER is set, otherwise a part of them.
/// </summary>
public class NameQualityTests
{
    /// <summary>Eleven holes in a disc of 1 mm: 14.006 per mm².</summary>
    private const double MostPerMm2 = 14.01;

    [Theory]
    [InlineData("nunito-bold", 8, 0.65, 0.3)]
    [InlineData("nunito-bold", 10, 0.5, 0.2)]
    [InlineData("nunito-bold", 12, 0.3, 0.2)]
    [InlineData("vollkorn-bold", 8, 1.0, 0.4)]
    [InlineData("vollkorn-bold", 12, 0.75, 0.3)]
    [InlineData("roboto-slab-bold", 8, 0.9, 0.3)]
    [InlineData("pacifico", 10, 0.75, 0.3)]
    public void Nothing_hangs_loose_and_little_lies_over_satin(string face, double height, double mostOverPercent, double mostSeenPercent)
    {
        bool all = Environment.GetEnvironmentVariable("NAMEBAND_EVERY_LETTER") is not null;
        var stitcher = new Stitcher(LetterTrial.Cotton, height);
        foreach (var name in Shelf.Names(face, TrialNames.All.Where((_, i) => all || i % 5 == (int)height % 5)))
        {
            var measure = NameMeasure.Of(stitcher, name, height);
            Assert.Equal(0, measure.LooseThreads);
            Assert.InRange(measure.LongestJoinMm, 0, 2.2);
            Assert.InRange(measure.ShortestLockMm, 0.4 - 1e-9, 3);
            Assert.InRange(measure.Load, 0, MostPerMm2);
            Assert.True(
                100 * measure.OverSatinPart <= mostOverPercent,
                $"{name.Name.Text}: {100 * measure.OverSatinPart:0.00} % of the thread is travel over satin");
            Assert.True(
                100 * measure.OverSatinSeenPart <= mostSeenPercent,
                $"{name.Name.Text}: {100 * measure.OverSatinSeenPart:0.00} % of the thread is travel in sight over satin");
        }
    }

    /// <summary>The bar of an e butts against its own bowl: the needle does not go over to the next letter for it.</summary>
    [Theory]
    [InlineData("pacifico", "edgwicke")]
    [InlineData("grand-hotel", "Penhalow")]
    public void No_thread_crosses_an_open_bowl(string face, string text)
    {
        var measure = NameMeasure.Of(new Stitcher(LetterTrial.Cotton, 12), Shelf.Names(face, [text])[0], 12);
        Assert.Equal(0, measure.LooseThreads);
        Assert.InRange(measure.LongestJoinMm, 0, 2.2);
        Assert.InRange(measure.Load, 0, MostPerMm2);
    }

    /// <summary>The corner of a slab serif's N, where the crossings of both strokes once turned about one point.</summary>
    [Fact]
    public void A_corner_brings_no_more_holes_together_than_elsewhere()
    {
        var name = Shelf.Names("roboto-slab-bold", ["Njord Illingborg"])[0];
        Assert.InRange(NameMeasure.Of(new Stitcher(LetterTrial.Cotton, 12), name, 12).Load, 0, MostPerMm2);
    }
}
