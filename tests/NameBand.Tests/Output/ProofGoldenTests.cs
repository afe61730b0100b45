using System.Globalization;
using NameBand.Common;
using SixLabors.ImageSharp;
using SixLabors.ImageSharp.PixelFormats;
using Xunit;

namespace NameBand.Tests.OutputRoom;

/// <summary>
/// Proofs against pictures that a person has looked at. To renew them after a wanted change, set
/// NAMEBAND_RENEW_GOLDENS=1, run, look at the pictures and commit them; the run fails so that it is not left on.
/// </summary>
public sealed class ProofGoldenTests
{
    [Fact]
    public void AHoopingLooksAsItDid()
    {
        var plan = OutSample.Plan() with { FieldAcrossMm = 56, FieldAlongMm = 150 };
        Compare("hooping-001.png", ProofPicture.Hooping(plan, 1));
    }

    [Fact]
    public void ARoundLooksAsItDid() => Compare("round-02.png", ProofPicture.Round(OutSample.Plan(), 2));

    [Theory]
    [InlineData("tr-TR")]
    [InlineData("de-DE")]
    [InlineData("ar-SA")]
    public void BytesAreTheSameUnderAnyCulture(string culture)
    {
        var plan = OutSample.Plan();
        byte[] hooping = ProofPicture.Hooping(plan, 2);
        byte[] round = ProofPicture.Round(plan, 1);
        var before = CultureInfo.CurrentCulture;
        try
        {
            CultureInfo.CurrentCulture = CultureInfo.GetCultureInfo(culture);
            Assert.Equal(hooping, ProofPicture.Hooping(plan, 2));
            Assert.Equal(round, ProofPicture.Round(plan, 1));
        }
        finally
        {
            CultureInfo.CurrentCulture = before;
        }
    }

    [Fact]
    public void TheChecksumOfChunksIsThatOfThePngStandard()
    {
        // ISO/IEC 15948 annex D gives the polynomial; the check value of "123456789" is from memory.
        Assert.Equal(0xCBF43926u, Crc32.Of("123456789"u8));
    }

    private const int TilePx = 32;

    /// <summary>A stitch of 1.8 mm covers some 46 pixels at 8 a millimetre.</summary>
    private const int MostFarInATile = 25;

    private static void Compare(string file, byte[] png)
    {
        string golden = Path.Combine(ProofPicture.RepositoryFolder(), "tests", "NameBand.Tests", "Output", "Golden", file);
        if (Environment.GetEnvironmentVariable("NAMEBAND_RENEW_GOLDENS") == "1")
        {
            Directory.CreateDirectory(Path.GetDirectoryName(golden)!);
            File.WriteAllBytes(golden, png);
            Assert.Fail($"{file} was written anew: look at it.");
        }

        using var expected = Image.Load<Rgb24>(golden);
        using var actual = Image.Load<Rgb24>(png);
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
        Assert.True(off / pixels < 0.4, FormattableString.Invariant($"The mean difference is {off / pixels:0.000} steps of colour."));
        Assert.True(far / pixels < 0.0008, FormattableString.Invariant($"{far} pixels are far off."));
        Assert.True(farIn.Values.DefaultIfEmpty(0).Max() <= MostFarInATile, FormattableString.Invariant($"{farIn.Values.DefaultIfEmpty(0).Max()} pixels are far off in one square of {TilePx}."));
    }
}
