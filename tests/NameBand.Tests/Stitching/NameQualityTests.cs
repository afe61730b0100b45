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
            Assert.True(
                100 * measure.OverSatinPart <= mostOverPercent,
                $"{name.Name.Text}: {100 * measure.OverSatinPart:0.00} % of the thread is travel over satin");
            Assert.True(
                100 * measure.OverSatinSeenPart <= mostSeenPercent,
                $"{name.Name.Text}: {100 * measure.OverSatinSeenPart:0.00} % of the thread is travel in sight over satin");
        }
    }
}
