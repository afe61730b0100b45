using NameBand.Layout;
using NameBand.Output;
using SixLabors.ImageSharp;
using SixLabors.ImageSharp.PixelFormats;
using Xunit;

namespace NameBand.Tests.OutputRoom;

public sealed class RoundProofTests
{
    private static readonly StripPlan Plan = OutSample.Plan();

    [Theory]
    [InlineData(400, 4)]
    [InlineData(3660, 4)]
    [InlineData(5000, 3)]
    [InlineData(30_000, 2)]
    [InlineData(300_000, 2)]
    public void TheScaleGoesDownForLongRoundsButNeverUnderTwo(double lengthMm, double pixelsPerMm) =>
        Assert.Equal(pixelsPerMm, RoundProof.PixelsPerMm(lengthMm));

    [Fact]
    public void ThePictureIsTrueToScaleAndHasEveryName()
    {
        var round = Plan.Rounds[0];
        using var image = ProofPicture.Read(ProofPicture.Round(Plan, 1));
        Assert.Equal(4000, image.Metadata.HorizontalResolution);
        Assert.Equal((Plan.OnClothMm(round.LengthMm) + Plan.Hem.OverlapMm + 24) * 4, image.Width, 1.0);
        int baseline = (int)(((Plan.Hem.Strip.CutWidthMm / 2) + 12 - Plan.BaselineYMm) * 4);
        foreach (var name in round.Names)
        {
            var box = new Rectangle(
                (int)((12 + Plan.OnClothMm(name.StartMm)) * 4), baseline - (int)(OutSample.LetterHeightMm * 4), (int)(name.WidthMm * 4),
                (int)(OutSample.LetterHeightMm * 4));
            Assert.True(Indigo(image, box) > 0.1, $"Name {name.Order} is not there.");
            box.Offset((int)((name.WidthMm + 0.8) * 4), 0);
            box.Width = 24;
            Assert.Equal(0, Indigo(image, box));
        }
    }

    /// <summary>Where the picture has a name, its tape reads what every other sheet says of that name's place.</summary>
    [Fact]
    public void TheTapeCountsFromTheCutLeftEndOfTheCloth()
    {
        using var image = ProofPicture.Read(ProofPicture.Round(Plan, 1));
        double[] ticks = CentimetreTicksMm(image, Plan.Hem.Strip.CutWidthMm);
        Assert.True(ticks.Length > 35);
        var (hooping, hooped) = (Plan.Hoopings[1], Plan.Hoopings[1].Segments[0]);
        foreach (var name in hooped.Segment.Names)
        {
            // By hand: cloth that gets 1 % shorter, 80 mm of it before the strip, a margin of 12 mm on the picture.
            double drawnMm = 12 + (name.StartMm / 0.99);
            double readMm = 80 + (name.StartMm / 0.99);
            Assert.Equal(readMm, Plan.OnClothMm(hooping, hooped, name), 9);
            Assert.All(ticks, tick => Assert.Equal(0, Math.IEEERemainder(tick - drawnMm + readMm, 10), 0.2));
        }
    }

    /// <summary>Middles of the tape's long ticks, in mm from the picture's left edge: shorter ones end below this row.</summary>
    private static double[] CentimetreTicksMm(Image<Rgb24> image, double cutWidthMm)
    {
        int tapeBottom = (int)((image.Height / 4.0 - 15 - cutWidthMm - 2) * 4);
        int row = tapeBottom - 12;
        var dark = Enumerable.Range(48, image.Width - 96).Where(x => image[x, row].R < 190).ToList();
        return [.. dark.Where(x => !dark.Contains(x - 1)).Select(x => (x + (dark.Contains(x + 1) ? 1 : 0.5)) / 4)];
    }

    [Fact]
    public void APictureDrawnInBandsIsTheSameAsOneDrawnWhole()
    {
        byte[] whole = ProofPicture.Round(Plan, 2);
        byte[] banded = ProofPicture.Round(Plan, 2, mostPixelsAtOnce: 40_000);
        using var one = ProofPicture.Read(whole);
        using var other = ProofPicture.Read(banded);
        Assert.Equal(one.Size(), other.Size());
        for (int y = 0; y < one.Height; y++)
        {
            for (int x = 0; x < one.Width; x++)
            {
                Assert.True(one[x, y] == other[x, y], FormattableString.Invariant($"Differs at {x}, {y}."));
            }
        }
    }

    private static double Indigo(Image<Rgb24> image, Rectangle box)
    {
        int found = 0;
        for (int y = box.Top; y < box.Bottom; y++)
        {
            for (int x = box.Left; x < box.Right; x++)
            {
                found += ProofPicture.IsIndigo(image[x, y]) ? 1 : 0;
            }
        }

        return found / (double)(box.Width * box.Height);
    }
}
