using NameBand.Common;
using NameBand.Stitching;
using NameBand.Stitching.Sewing;
using NameBand.Tests.StitchQuality;
using Xunit;

namespace NameBand.Tests.StitchingRoom;

/// <summary>The measure sees what it is there to see.</summary>
public class SquarenessMeasureTests
{
    /// <summary>A plain upright stem, its path leaned over: every crossing is as far from square as the path was leaned.</summary>
    [Theory]
    [InlineData(0)]
    [InlineData(10)]
    [InlineData(25)]
    public void Crossings_that_are_leaned_over_are_measured_as_leaning(double degrees)
    {
        var piece = Assert.Single(Shelf.Names("bebas-neue-bold", ["I"])[0].Pieces).Piece;
        var trial = LetterTrial.Of(new Stitcher(LetterTrial.Cotton, 12), piece, 12)!;
        double middle = trial.Outline.Bounds().LeftMm + (trial.Outline.Bounds().WidthMm / 2);
        double rise = Math.Tan(degrees * Math.PI / 180);
        var leaned = trial.Path with
        {
            Steps =
            [.. trial.Path.Steps.Select(s => s with { At = new Point(s.At.XMm, s.At.YMm + ((s.At.XMm - middle) * rise)) })]
        };

        var found = SquarenessMeasure.Of(leaned, trial.Columns, trial.Origin);

        Assert.InRange(found.Median, degrees - 1, degrees + 1);
    }
}
