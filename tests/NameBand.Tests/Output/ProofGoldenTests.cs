using System.Globalization;
using NameBand.Common;
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

    private static void Compare(string file, byte[] png)
    {
        string golden = Path.Combine(ProofPicture.RepositoryFolder(), "tests", "NameBand.Tests", "Output", "Golden", file);
        if (Environment.GetEnvironmentVariable("NAMEBAND_RENEW_GOLDENS") == "1")
        {
            Directory.CreateDirectory(Path.GetDirectoryName(golden)!);
            File.WriteAllBytes(golden, png);
            Assert.Fail($"{file} was written again: look at it.");
        }

        PictureComparison.AssertSame(file, File.ReadAllBytes(golden), png);
    }
}
