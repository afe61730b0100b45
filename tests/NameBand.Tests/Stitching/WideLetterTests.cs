using NameBand.Common;
using NameBand.Lettering;
using NameBand.Load;
using NameBand.MachineLetters.Alphabets;
using NameBand.Stitching;
using NameBand.Stitching.Columns;
using NameBand.Stitching.Geometry;
using NameBand.Stitching.Sewing;
using NameBand.Tests.StitchQuality;
using Xunit;

namespace NameBand.Tests.StitchingRoom;

/// <summary>Letters of 40 mm, whose strokes are wider than one stitch may be long.</summary>
public class WideLetterTests
{
    private const double HeightMm = 40;

    /// <summary>Holes nearer to an edge than this are those of the edge, also where they were moved in.</summary>
    private const double FromEdgeMm = 0.85;
    private const double WideMm = 7.5;

    [Theory]
    [InlineData("nunito-bold")]
    [InlineData("roboto-slab-bold")]
    [InlineData("vollkorn-bold")]
    [InlineData("pacifico")]
    public void Their_worst_spot_is_no_worse_than_that_of_small_letters(string face)
    {
        foreach (var piece in Pieces(face, "AEKMRSgkt8"))
        {
            var spot = LoadMeter.Measure(PathOf(piece), LetterTrial.Cotton).Spot;
            Assert.True(spot.HolesPerMm2 <= 14.01, $"{piece.Text}: {spot.HolesPerMm2:0.0} holes per mm² in the densest disc");
            Assert.True(spot.Layers <= 16, $"{piece.Text}: {spot.Layers} layers of thread");
        }
    }

    /// <summary>
    /// Long crossings are laid like bricks: their inner holes lie all across the column. Holes that all lie in the middle third
    /// press a trough into it.
    /// </summary>
    [Theory]
    [InlineData("nunito-bold", "EHNU")]
    [InlineData("roboto-slab-bold", "EHNU")]
    [InlineData("vollkorn-bold", "DHOU")]
    public void No_trough_runs_down_the_middle_third_of_a_wide_column(string face, string letters)
    {
        var across = Pieces(face, letters).SelectMany(InnerHoles).ToList();
        Assert.True(across.Count > 100, $"only {across.Count} holes inside wide columns");
        double middle = across.Count(a => a is > 1.0 / 3 and < 2.0 / 3) / (double)across.Count;
        Assert.True(middle <= 0.55, $"{100 * middle:0} % of the inner holes lie in the middle third");
    }

    [Fact]
    public void Wide_columns_have_zigzag_underlay_and_lines_half_a_millimetre_inside_their_edges()
    {
        var stem = Pieces("nunito-bold", "l")[0];
        var columns = PieceSewer.Columns(stem, HeightMm).ToList();
        var column = columns.MaxBy(c => c.Length)!;
        var underlay = new Stitcher(LetterTrial.Cotton, HeightMm).Sewn(stem).Parts.SelectMany(p => p.Alone)
            .Where(s => s.Kind == StitchKind.Underlay).Select(s => Across(column, Vec.From(s.At))).OfType<(double Part, double Width)>()
                .ToList();
        double FromEdge((double Part, double Width) a) => Math.Min(a.Part, 1 - a.Part) * a.Width;
        Assert.InRange(underlay.Count(a => Math.Abs(FromEdge(a) - 0.5) < 0.1), 20, 200);
        Assert.InRange(underlay.Count(a => FromEdge(a) > 1 && Math.Abs(a.Part - 0.5) * a.Width > 1), 8, 200);
    }

    private static IEnumerable<double> InnerHoles(LetterPiece piece)
    {
        var columns = PieceSewer.Columns(piece, HeightMm).ToList();
        foreach (var hole in Satin(piece))
        {
            var at = Vec.From(hole);
            var column = columns.MinBy(c => c.Nearest(at).Distance)!;
            if (Across(column, at) is var (part, width) && width > WideMm && Math.Min(part, 1 - part) * width > FromEdgeMm)
            {
                yield return part;
            }
        }
    }

    /// <summary>How far across a column a place lies, from 0 to 1, and how wide the column is there; null beyond its ends.</summary>
    private static (double Part, double Width)? Across(Column column, Vec p)
    {
        var (at, _) = column.Nearest(p);
        if (!column.Closed && (at < 1 || at > column.Length - 1))
        {
            return null;
        }

        var (left, right) = column.CrossingAt(at);
        double width = (right - left).Length;
        return (Vec.Dot(p - left, (right - left).Unit()) / width, width);
    }

    private static IEnumerable<Point> Satin(LetterPiece piece) =>
        new Stitcher(LetterTrial.Cotton, HeightMm).Sewn(piece).Parts.SelectMany(p => p.Alone).Where(s => s.Kind == StitchKind.Satin)
            .Select(s => s.At);

    private static NeedlePath PathOf(LetterPiece piece) =>
        new Stitcher(LetterTrial.Cotton, HeightMm)
            .SewName(LetterTrial.NameOf(piece.Text, [new PlacedPiece(piece, new Point(0, 0))], piece.Ink));

    private static List<LetterPiece> Pieces(string face, string letters) =>
        [.. Shelf.Names(face, letters.Select(c => c.ToString())).SelectMany(n => n.Pieces).Select(p => p.Piece)];
}
