using NameBand.Layout;
using NameBand.Stitching;
using SixLabors.ImageSharp;
using SixLabors.ImageSharp.Metadata;
using SixLabors.ImageSharp.PixelFormats;
using Xunit;
using Point = NameBand.Common.Point;

namespace NameBand.Tests.OutputRoom;

public sealed class HoopingProofTests
{
    private const double Scale = 8;

    private static readonly StripPlan Plan = OutSample.Plan();

    [Fact]
    public void ThePictureIsAsLargeAsTheFieldAndSaysItsScale()
    {
        using var image = ProofPicture.Read(ProofPicture.Hooping(Plan, 1));
        Assert.Equal(PixelResolutionUnit.PixelsPerMeter, image.Metadata.ResolutionUnits);
        Assert.Equal(8000, image.Metadata.HorizontalResolution);
        Assert.Equal(8000, image.Metadata.VerticalResolution);
        Assert.Equal((160 + 10) * Scale, image.Width);
        Assert.InRange(image.Height / Scale, 100 + 8 + 8, 100 + 8 + 8 + 16);
    }

    [Fact]
    public void ThreadLiesWhereTheNeedleGoesAndNowhereElse()
    {
        foreach (var hooping in Plan.Hoopings)
        {
            using var image = ProofPicture.Read(ProofPicture.Hooping(Plan, hooping.Number));
            var origin = Origin(hooping);
            var steps = OutSample.Path(Plan, hooping).Steps;
            int sewn = 0;
            var near = new HashSet<(int, int)>();
            for (int i = 1; i < steps.Length; i++)
            {
                if (steps[i].Kind != StitchKind.Satin || steps[i - 1].Action == NeedleAction.Trim)
                {
                    continue;
                }

                var middle = (steps[i].At + steps[i - 1].At) * 0.5;
                Assert.True(ProofPicture.IsIndigo(At(image, origin, middle)), $"No thread at {middle}.");
                sewn++;
                for (double t = 0; t <= 1; t += 0.1)
                {
                    var at = steps[i - 1].At + ((steps[i].At - steps[i - 1].At) * t);
                    near.Add(((int)Math.Floor(at.XMm), (int)Math.Floor(at.YMm)));
                }
            }

            Assert.True(sewn > 300);
            int bare = 0;
            double reach = Plan.Hem.Strip.SewingZoneMm / 2;
            var segment = hooping.Segments[0].Segment;
            for (double x = -4.25; x < segment.LengthMm + 4; x += 0.5)
            {
                for (double y = 0.5 - reach; y < reach; y += 0.5)
                {
                    var cell = ((int)Math.Floor(x), (int)Math.Floor(y));
                    bool clear = Enumerable.Range(-1, 3)
                        .All(dx => Enumerable.Range(-1, 3).All(dy => !near.Contains((cell.Item1 + dx, cell.Item2 + dy))));
                    if (clear)
                    {
                        Assert.False(ProofPicture.IsIndigo(At(image, origin, new Point(x, y))), $"Thread at {x}, {y}.");
                        bare++;
                    }
                }
            }

            Assert.True(bare > 1000);
        }
    }

    [Fact]
    public void TheTapeReadsThePlaceOnTheFlatCloth()
    {
        var hooping = Plan.Hoopings[1];
        using var image = ProofPicture.Read(ProofPicture.Hooping(Plan, 2));
        var origin = Origin(hooping);
        double clothStart = hooping.OnClothMm;
        int marks = 0;
        for (int cm = (int)Math.Ceiling(clothStart / 10); cm < (clothStart + hooping.Segments[0].Segment.LengthMm) / 10; cm++)
        {
            // A centimetre's mark is the only one so tall; beside it the tape is bare.
            double x = origin.XMm + (((cm * 10) - clothStart) * Scale);
            int y = (int)((8 - 3.0) * Scale);
            int darkest = Enumerable.Range((int)Math.Floor(x) - 1, 3).Min(column => Light(image[column, y]));
            Assert.InRange(darkest, 0, 140);
            Assert.InRange(Light(image[(int)(x + (2.5 * Scale)), y]), 180, 255);
            marks++;
        }

        Assert.True(marks > 8);
    }

    [Fact]
    public void AlignmentMarksAreInTheColourOfTheClothAndCastAShadow()
    {
        var hooping = Plan.Hoopings[0];
        using var image = ProofPicture.Read(ProofPicture.Hooping(Plan, 1));
        var origin = Origin(hooping);
        var mark = new Point(2, Plan.MarkYMm);
        Assert.False(ProofPicture.IsIndigo(At(image, origin, mark)));
        int[] around = [.. Enumerable.Range(-6, 13).Select(dy => Light(At(image, origin, mark + new Point(0, dy / Scale))))];
        Assert.True(around.Max() - around.Min() > 40, string.Join(' ', around));
    }

    [Fact]
    public void TheFieldsCornersStandAtItsCorners()
    {
        var hooping = Plan.Hoopings[0];
        using var image = ProofPicture.Read(ProofPicture.Hooping(Plan, 1));
        var origin = Origin(hooping);
        var field = NameBand.Output.HoopField.Of(Plan, hooping);
        Assert.Equal(160, field.WidthMm);
        Assert.Equal(100, field.HeightMm);
        Assert.Equal(Plan.OnClothMm(hooping.Segments[0].Segment.LengthMm), field.LeftMm + field.RightMm, 9);
        foreach (double x in new[] { field.LeftMm, field.RightMm })
        {
            foreach (double y in new[] { field.BottomMm, field.TopMm })
            {
                double inward = x < field.RightMm ? 3 : -3;
                var pixel = At(image, origin, new Point(x + inward, y));
                Assert.True(pixel.R - pixel.B > 60, $"No madder at {x}, {y}: {pixel}.");
            }
        }
    }

    /// <summary>Where the needle path's origin lies on the picture, in pixels: known from the layout of the page.</summary>
    private static Point Origin(Hooping hooping)
    {
        var field = NameBand.Output.HoopField.Of(Plan, hooping);
        return new Point((5 - field.LeftMm) * Scale, (field.TopMm + 4 + 8) * Scale);
    }

    private static Rgb24 At(Image<Rgb24> image, Point origin, Point mm) =>
        image[(int)Math.Floor(origin.XMm + (mm.XMm * Scale)), (int)Math.Floor(origin.YMm - (mm.YMm * Scale))];

    private static int Light(Rgb24 pixel) => (pixel.R + pixel.G + pixel.B) / 3;
}
