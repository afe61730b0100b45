using SixLabors.ImageSharp;
using SixLabors.ImageSharp.PixelFormats;
using Xunit;

namespace NameBand.Tests.OutputRoom;

/// <summary>Whether two pictures show the same: the same letters, figures and stitches in the same places.</summary>
internal static class PictureComparison
{
    private const int TilePx = 32;

    /// <summary>A stitch of 1.8 mm covers some 46 pixels at 8 a millimetre.</summary>
    private const int MostFarInATile = 25;

    public static void AssertSame(string name, byte[] kept, byte[] made)
    {
        using var expected = Image.Load<Rgb24>(kept);
        using var actual = Image.Load<Rgb24>(made);
        Assert.Equal(expected.Size(), actual.Size());
        long off = 0;
        int far = 0;
        var farIn = new Dictionary<(int, int), int>();
        for (int y = 0; y < expected.Height; y++)
        {
            for (int x = 0; x < expected.Width; x++)
            {
                var (a, b) = (expected[x, y], actual[x, y]);
                int difference = Math.Abs(a.R - b.R) + Math.Abs(a.G - b.G) + Math.Abs(a.B - b.B);
                off += difference;
                if (difference > 60)
                {
                    far++;
                    var tile = (x / TilePx, y / TilePx);
                    farIn[tile] = farIn.GetValueOrDefault(tile) + 1;
                }
            }
        }

        // Room for another machine's rounding at the edges of letters, which is little in any one place; a stitch that moves is more.
        double pixels = expected.Width * (double)expected.Height;
        Assert.True(
            off / pixels < 0.4, FormattableString.Invariant($"{name}: the mean difference is {off / pixels:0.000} steps of colour."));
        Assert.True(far / pixels < 0.0008, FormattableString.Invariant($"{name}: {far} pixels are far off."));
        Assert.True(
            farIn.Values.DefaultIfEmpty(0).Max() <= MostFarInATile,
            FormattableString.Invariant($"{name}: {farIn.Values.DefaultIfEmpty(0).Max()} pixels are far off in one square of {TilePx}."));
    }
}
