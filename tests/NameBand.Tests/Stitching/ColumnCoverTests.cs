using NameBand.Stitching;
using NameBand.Stitching.Sewing;
using NameBand.Tests.StitchQuality;
using Xunit;

namespace NameBand.Tests.StitchingRoom;

/// <summary>What lies under the satin of a column, at each of its sides alike.</summary>
public sealed class ColumnCoverTests
{
    [Theory]
    [InlineData("-")]
    [InlineData("l")]
    public void A_column_covers_as_far_past_one_edge_as_past_the_other(string letter)
    {
        var piece = Shelf.Names("nunito-bold", [letter])[0].Pieces[0].Piece;
        var column = Assert.Single(LetterTrial.Of(new Stitcher(LetterTrial.Cotton, 12), piece, 12)!.Columns);
        var (left, right) = column.CrossingAt(column.Length / 2);
        foreach (var (edge, outward) in new[] { (left, (left - right).Unit()), (right, (right - left).Unit()) })
        {
            Assert.True(column.Covers(edge - (outward * 0.05), 0.2));
            Assert.True(column.Covers(edge + (outward * 0.15), 0.2));
            Assert.False(column.Covers(edge + (outward * 0.25), 0.2));
            Assert.False(column.Covers(edge + (outward * 0.15)));
        }
    }
}
