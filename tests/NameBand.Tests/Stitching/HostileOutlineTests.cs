using System.Collections.Immutable;
using CsCheck;
using NameBand.Cloth;
using NameBand.Common;
using NameBand.Lettering;
using NameBand.Stitching;
using NameBand.Stitching.Sewing;
using NameBand.Tests.StitchQuality;
using Xunit;

namespace NameBand.Tests.StitchingRoom;

/// <summary>Any outline gives a path, or a problem that names face and letter; never an exception, never a hang.</summary>
public class HostileOutlineTests
{
    private static readonly Fabric Cotton = FabricTable.Find("quilting cotton")!;

    private static (NeedlePath Path, ImmutableArray<Problem> Problems) Sew(double height, params Point[][] rings)
    {
        var outline = new Outline([.. rings.Select(r => new Ring([.. r]))]);
        var piece = new LetterPiece("hostile", "Test Face", "q", outline, outline.Bounds());
        var stitcher = new Stitcher(Cotton, height);
        var name = LetterTrial.NameOf("q", [new PlacedPiece(piece, new Point(0, 0))], piece.Ink);
        var path = stitcher.SewName(name);
        Assert.Equal(stitcher.Problems.IsEmpty, stitcher.IsRead(name));
        Assert.All(path.Steps, s => Assert.True(double.IsFinite(s.At.XMm) && double.IsFinite(s.At.YMm)));
        return (path, stitcher.Problems);
    }

    private static Point[] Ring(params double[] xy) =>
        [.. Enumerable.Range(0, xy.Length / 2).Select(i => new Point(xy[2 * i], xy[(2 * i) + 1]))];

    private static Point[] Circle(double x, double y, double radius, int points, bool clockwise = false) =>
        [.. Enumerable.Range(0, points).Select(i => 2 * Math.PI * (clockwise ? -i : i) / points)
            .Select(a => new Point(x + (radius * Math.Cos(a)), y + (radius * Math.Sin(a))))];

    [Fact]
    public void A_figure_of_eight_is_run_along_its_edge_or_read()
    {
        var (path, problems) = Sew(10, Ring(0, 0, 1, 1, 1, 0, 0, 1));
        Assert.True(path.Stitches > 0 || problems.Length > 0);
    }

    [Fact]
    public void A_ring_that_crosses_itself_is_reported_with_face_and_letter()
    {
        var (path, problems) = Sew(10, Ring(0, 0, 1, 0, 0.2, 0.9, 0.5, -0.4, 0.9, 0.9));
        Assert.True(path.Stitches > 0);
        var problem = Assert.Single(problems);
        Assert.Contains("q", problem.Found.English, StringComparison.Ordinal);
        Assert.Contains("Test Face", problem.Found.English, StringComparison.Ordinal);
    }

    [Fact]
    public void A_hairline_is_run()
    {
        var (path, _) = Sew(10, Ring(0, 0, 1, 0, 1, 0.01, 0, 0.01));
        Assert.True(path.Stitches >= 4);
        Assert.DoesNotContain(path.Steps, s => s.Kind == StitchKind.Satin);
    }

    [Fact]
    public void Nothing_to_sew_gives_an_empty_path_and_a_note()
    {
        var (path, problems) = Sew(10, Ring(0, 0, 0.001, 0, 0, 0.001));
        Assert.Equal(0, path.Stitches);
        Assert.Single(problems);
    }

    [Fact]
    public void A_dot_is_satin()
    {
        var (path, problems) = Sew(10, Circle(0.1, 0.1, 0.1, 64));
        Assert.Empty(problems);
        Assert.Contains(path.Steps, s => s.Kind == StitchKind.Satin);
    }

    [Fact]
    public void A_hundred_thousand_points_are_no_more_work_than_their_length()
    {
        var (path, problems) = Sew(10, Circle(0.5, 0.5, 0.5, 100_000), Circle(0.5, 0.5, 0.3, 50_000, clockwise: true));
        Assert.Empty(problems);
        Assert.InRange(path.Stitches, 100, 1000);
    }

    [Fact]
    public void A_saw_of_forty_thousand_teeth_ends()
    {
        var teeth = Enumerable.Range(0, 40_000).Select(i => new Point(i / 4000.0, 1 + (i % 2 * 0.2)));
        var (path, problems) = Sew(10, [new Point(0, 0), new Point(10, 0), .. teeth.Reverse()]);
        Assert.True(path.Stitches > 0 || problems.Length > 0);
    }

    [Fact]
    public void Far_away_coordinates_are_sewn_all_the_same()
    {
        const double Far = 20_000;
        var (path, _) = Sew(10, Ring(Far, Far, Far + 0.2, Far, Far + 0.2, Far + 1, Far, Far + 1));
        Assert.True(path.Stitches > 20);
    }

    [Fact]
    public void A_hole_that_touches_the_edge_is_sewn_or_reported()
    {
        var (path, problems) = Sew(10, Ring(0, 0, 1, 0, 1, 1, 0, 1), Ring(0, 0.5, 0.5, 0.8, 0.5, 0.2));
        Assert.True(path.Stitches > 0 || problems.Length > 0);
    }

    [Fact]
    public void Points_twice_and_turned_back_do_no_harm()
    {
        var (path, _) = Sew(10, Ring(0, 0, 0, 0, 0.2, 0, 0.4, 0, 0.2, 0, 0.2, 1, 0.2, 1, 0, 1, 0, 0.5, 0, 0.7, 0, 0.3));
        Assert.True(path.Stitches > 0);
    }

    [Fact]
    public void A_wide_block_is_split_satin()
    {
        var (path, problems) = Sew(20, Ring(0, 0, 0.6, 0, 0.6, 2, 0, 2));
        Assert.Empty(problems);
        PathRules.Hold(new NeedlePath([.. path.Steps, new NeedleStep(NeedleAction.End, StitchKind.None, path.Steps[^1].At)]));
    }

    [Fact]
    public void Random_rings_never_throw() =>
        Gen.Double[0, 1].Array[6, 40].Sample(
            xy =>
            {
                Sew(9, Ring(xy[..(xy.Length / 2 * 2)]));
                return true;
            },
            seed: "0000Stitches", iter: 300, threads: 1);
}
