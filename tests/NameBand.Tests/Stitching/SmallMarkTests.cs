using NameBand.Common;
using NameBand.Stitching;
using NameBand.Stitching.Sewing;
using NameBand.Tests.StitchQuality;
using Xunit;

namespace NameBand.Tests.StitchingRoom;

/// <summary>Dots and commas are one column from end to end: columns that meet in them would bring their holes together.</summary>
public class SmallMarkTests
{
    public static TheoryData<string, double> Cases
    {
        get
        {
            var data = new TheoryData<string, double>();
            foreach (string face in new[] { "nunito-bold", "lato-bold", "noto-sans-bold", "roboto-slab-bold", "vollkorn-bold", "pacifico",
                "bebas-neue-bold", "grand-hotel" })
            {
                foreach (double height in new[] { 8.0, 12, 20 })
                {
                    data.Add(face, height);
                }
            }

            return data;
        }
    }

    [Theory]
    [MemberData(nameof(Cases))]
    public void A_full_stop_is_one_column_with_square_crossings_that_covers_it(string face, double height)
    {
        var stop = Trial(face, ".", height);
        Assert.Single(stop.Columns);
        Assert.True(stop.Measure.Coverage >= 0.985, $"covered to {stop.Measure.Coverage}");
        Assert.True(stop.Measure.Square95 <= 8, $"{stop.Measure.Square95}° from square");
        Assert.True(stop.Measure.Load <= 14.01, $"{stop.Measure.Load} holes per mm²");
    }

    /// <summary>An I with serifs is as broad for its height as a comma.</summary>
    [Theory]
    [InlineData("vollkorn-bold")]
    [InlineData("roboto-slab-bold")]
    [InlineData("noto-sans-bold")]
    public void A_letter_as_stout_as_a_mark_is_read_by_its_strokes(string face)
    {
        double longest = Trial(face, "І", 8).Measure.LongestMm;
        Assert.True(longest < 3, $"crossings of {longest} mm run from serif to serif");
    }

    /// <summary>However small the letters are, no dot of one is lost: where its stroke is shorter than a stitch it is two
    /// stitches over its middle.</summary>
    [Theory]
    [InlineData("nunito-bold")]
    [InlineData("routed-gothic")]
    [InlineData("vollkorn-bold")]
    [InlineData("pacifico")]
    [InlineData("grand-hotel")]
    [InlineData("lato-bold")]
    public void Every_dot_of_a_letter_is_sewn_at_the_least_heights(string face)
    {
        foreach (string letter in new[] { "i", "j", "Ä", "ü", "ġ", "ž", "!", ":" })
        {
            var piece = Shelf.Names(face, [letter])[0].Pieces[0].Piece;
            foreach (double height in new[] { 3.0, 4, 5 })
            {
                var holes = new Stitcher(LetterTrial.Cotton, height).Sewn(piece).Parts.SelectMany(p => p.Alone).Select(s => s.At).ToList();
                foreach (var ring in piece.Outline.Scaled(height).Rings.Where(r => r.SignedAreaMm2() > 0))
                {
                    var box = new Outline([ring]).Bounds();
                    Assert.True(
                        holes.Count(h =>
                            h.XMm > box.LeftMm - 0.25 && h.XMm < box.RightMm + 0.25 && h.YMm > box.BottomMm - 0.25 && h.YMm < box.TopMm
                            + 0.25) >= 2,
                        $"“{letter}” {height} mm high has no stitches at {box}");
                }
            }
        }
    }

    private static LetterTrial Trial(string face, string letter, double height)
    {
        var stitcher = new Stitcher(LetterTrial.Cotton, height);
        return LetterTrial.Of(stitcher, Shelf.Names(face, [letter])[0].Pieces[0].Piece, height)!;
    }
}
