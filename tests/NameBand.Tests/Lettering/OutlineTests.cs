using NameBand.Common;
using NameBand.Lettering.Faces;
using NameBand.Lettering.Outlines;
using SkiaSharp;
using Xunit;

namespace NameBand.Tests.Lettering;

public class OutlineTests
{
    [Fact]
    public void Chords_stay_within_the_promised_distance_of_the_curve()
    {
        // A quarter circle of 1 mm as a cubic (its own error is 0.00027): every chord's middle must lie near the arc.
        const double k = 0.5522847498;
        using var builder = new SKPathBuilder();
        builder.MoveTo(1000, 0);
        builder.CubicTo(1000, (float)(-1000 * k), (float)(1000 * k), -1000, 0, -1000);
        builder.LineTo(0, 0);
        builder.Close();
        using var path = builder.Detach();
        var ring = Assert.Single(PathRings.Flatten(path, 0.001));
        int chords = 0;
        for (int i = 0; ring[i].XMm > 1e-9; i++, chords++)
        {
            double middle = ((ring[i] + ring[i + 1]) * 0.5).DistanceTo(default);
            Assert.InRange(middle, 1 - 0.001, 1 + 0.0004);
        }

        // Chords that leave an arc of 1 mm by 0.001 mm span 2 · acos(1 − 0.001), so a quarter takes 18 of them.
        Assert.InRange(chords, 18, 60);
    }

    [Fact]
    public void Overlapping_contours_become_one_ring()
    {
        using var path = Squares((0, 0, 600, 600), (400, 200, 1000, 500));
        var (_, outline) = OverlapResolver.Resolve(Tangle(path));
        var ring = Assert.Single(outline.Rings);
        Assert.Equal(8, ring.Points.Length);
        Assert.Equal(0.36 + 0.18 - 0.06, outline.AreaMm2(), 1e-9);
    }

    [Fact]
    public void Even_a_small_overlap_is_resolved()
    {
        using var path = Squares((0, 0, 500, 500), (499, 100, 900, 400));
        Assert.Single(OverlapResolver.Resolve(Tangle(path)).Outline.Rings);
    }

    [Fact]
    public void The_guard_notices_a_lost_or_filled_contour()
    {
        using var path = Squares((0, 0, 600, 600), (400, 200, 1000, 500));
        var whole = OverlapResolver.Resolve(Tangle(path)).Outline;
        List<Point[]> raw = PathRings.Flatten(path, 0.001);
        Assert.True(CoverGuard.Agrees([raw], whole));
        Assert.False(CoverGuard.Agrees([raw], RingOrder.Turn([raw[0]])));

        var o = LetteringRig.Face().Shape((int)LetteringRig.Face().GlyphOf('o'));
        Assert.False(CoverGuard.Agrees([o.Raw], new Outline([.. o.Outline.Rings.Take(1)])));
    }

    [Theory]
    [InlineData("Nunito Bold")]
    [InlineData("Roboto Slab Bold")]
    [InlineData("Pacifico")]
    [InlineData("Noto Sans Devanagari Bold")]
    public void The_slow_way_covers_what_the_fast_way_covers(string faceName)
    {
        var face = LetteringRig.Face(faceName);
        for (int glyph = 1; glyph < 200; glyph++)
        {
            var shape = face.Shape(glyph);
            if (shape.Ink.IsEmpty)
            {
                continue;
            }

            var slow = RingOrder.Turn(RobustUnion.Unite([shape.Raw]));
            Assert.True(CoverGuard.Agrees([shape.Raw], slow), $"{faceName}, glyph {glyph}");
            Assert.True(CoverGuard.Agrees([shape.Raw], shape.Outline), $"{faceName}, glyph {glyph}");
            Assert.Equal(shape.Outline.AreaMm2(), slow.AreaMm2(), 0.002);
        }
    }

    [Fact]
    public void Holes_and_islands_are_turned_by_their_depth()
    {
        var outline = RingOrder.Turn([Square(0, 0, 10), Square(1, 1, 8), Square(2, 2, 6)]);
        Assert.Equal([1, -1, 1], outline.Rings.Select(r => Math.Sign(r.SignedAreaMm2())));
    }

    private static Point[] Square(double x, double y, double side) =>
        [new(x, y), new(x, y + side), new(x + side, y + side), new(x + side, y)];

    private static SKPath Squares(params (float Left, float Top, float Right, float Bottom)[] squares)
    {
        using var builder = new SKPathBuilder();
        foreach (var (left, top, right, bottom) in squares)
        {
            builder.AddRect(new SKRect(left, top, right, bottom), SKPathDirection.Clockwise);
        }

        return builder.Detach();
    }

    private static Tangle Tangle(SKPath path) => new([path], [PathRings.Flatten(path, 0.001)], 0.001);
}
