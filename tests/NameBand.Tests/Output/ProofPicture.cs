using NameBand.Layout;
using NameBand.Lettering.Faces;
using NameBand.Output;
using NameBand.Output.Drawing;
using NameBand.Stitching;
using SixLabors.ImageSharp;
using SixLabors.ImageSharp.PixelFormats;

namespace NameBand.Tests.OutputRoom;

/// <summary>Proofs of the sample plan, read back by a decoder nobody here made.</summary>
internal static class ProofPicture
{
    public static byte[] Hooping(StripPlan plan, int number)
    {
        var hooping = plan.Hoopings.Single(h => h.Number == number);
        using var face = Face();
        using var stream = new MemoryStream();
        HoopingProof.Draw(
            stream, plan, hooping, OutSample.Path(plan, hooping), OutSample.Estimate(plan).Hoopings[number - 1], new ProofLook(face));
        return stream.ToArray();
    }

    public static byte[] Round(StripPlan plan, int number, int? mostPixelsAtOnce = null)
    {
        using var face = Face();
        using var stream = new MemoryStream();
        RoundProof.Draw(
            stream, plan, plan.Rounds[number - 1], OutSample.Estimate(plan).ByNumber(), OutSample.Sewn,
            new ProofLook(face) { MostPixelsAtOnce = mostPixelsAtOnce });
        return stream.ToArray();
    }

    public static Image<Rgb24> Read(byte[] png) => Image.Load<Rgb24>(png);

    public static bool IsIndigo(Rgb24 pixel) => pixel.B - pixel.R >= 24;

    public static CaptionFace Face() =>
        CaptionFace.FromFile(Path.Combine(RepositoryFolder(), "fonts-open", "nunito-bold", "Nunito_700Bold.ttf"));

    public static string RepositoryFolder()
    {
        string? at = AppContext.BaseDirectory;
        while (at is not null && !File.Exists(Path.Combine(at, "NameBand.sln")))
        {
            at = Path.GetDirectoryName(at);
        }

        return at ?? throw new InvalidOperationException("The tests run outside the repository.");
    }
}
