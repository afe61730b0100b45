using System.Collections.Immutable;
using NameBand.Common;
using SkiaSharp;

namespace NameBand.Output.Public;

/// <summary>A photo as the page has it: its pixels alone, drawn anew, so that nothing a camera wrote beside them is left.</summary>
/// <param name="Names">Numbers of the names that it shows.</param>
internal sealed record PublicPhoto(ImmutableArray<int> Names, bool IsOfPart, byte[] Jpeg, int WidthPx, int HeightPx);

/// <summary>A photo's pixels, upright.</summary>
internal sealed class PhotoPixels : IDisposable
{
    /// <summary>Longer side in memory: no page shows more.</summary>
    private const int MostPx = 1600;

    /// <summary>What unpacks to more than any camera has is refused before it fills the memory.</summary>
    private const long MostPixels = 150_000_000;

    private static readonly (int LongPx, int Quality)[] Steps =
        [(1600, 82), (1280, 80), (1024, 78), (800, 76), (640, 72), (480, 68), (360, 62), (280, 55)];

    private readonly SKBitmap _bitmap;

    private PhotoPixels(SKBitmap bitmap) => _bitmap = bitmap;

    public static Result<PhotoPixels> Read(string jobFolder, string file)
    {
        var where = new Where(file);
        if (InnerFile.Objection(jobFolder, file) is { } objection)
        {
            return Result.Fail<PhotoPixels>(objection);
        }

        if (!InnerFile.IsPlain(jobFolder, file))
        {
            return Fail(where, "This is not a file.", "Put the photo itself there.");
        }

        long bytes = InnerFile.Length(jobFolder, file);
        if (bytes > PhotoFiles.MostBytes)
        {
            return Fail(
                where, $"This photo has {bytes / 1e6:0} MB; more than {PhotoFiles.MostBytes / 1e6:0} MB are not read.",
                "Save it smaller; a width of 1,600 pixels is enough.");
        }

        using var data = SKData.CreateCopy(InnerFile.Bytes(jobFolder, file));
        using var codec = SKCodec.Create(data);
        if (codec is null || codec.EncodedFormat is not (SKEncodedImageFormat.Jpeg or SKEncodedImageFormat.Png))
        {
            return Fail(where, "This is not a photo: it is neither JPEG nor PNG.", "Save the photo as JPEG.");
        }

        var info = codec.Info;
        if ((long)info.Width * info.Height > MostPixels)
        {
            return Fail(
                where, $"This photo has {info.Width} × {info.Height} pixels, which is more than is read.",
                "Save it smaller; a width of 1,600 pixels is enough.");
        }

        // What the format can shrink while it unpacks need not fill the memory.
        float part = Math.Min(1, 2f * MostPx / Math.Max(info.Width, info.Height));
        var size = codec.GetScaledDimensions(part);
        using var raw = new SKBitmap(new SKImageInfo(size.Width, size.Height, SKColorType.Rgba8888, SKAlphaType.Premul));
        return codec.GetPixels(raw.Info, raw.GetPixels()) == SKCodecResult.Success
            ? Result.Of(new PhotoPixels(Upright(raw, codec.EncodedOrigin)))
            : Fail(where, "This photo is not whole: its pixels cannot be read to the end.", "Copy it again from the camera.");
    }

    public void Dispose() => _bitmap.Dispose();

    /// <summary>The largest of our sizes that takes at most so many bytes; null: not even the smallest does.</summary>
    public (byte[] Jpeg, int WidthPx, int HeightPx)? Within(long mostBytes)
    {
        foreach (var (longPx, quality) in Steps)
        {
            double scale = Math.Min(1, (double)longPx / Math.Max(_bitmap.Width, _bitmap.Height));
            var (width, height) =
                (Math.Max(1, (int)Math.Round(_bitmap.Width * scale)), Math.Max(1, (int)Math.Round(_bitmap.Height * scale)));
            using var surface = new SKBitmap(new SKImageInfo(width, height, SKColorType.Rgba8888, SKAlphaType.Opaque));
            using (var canvas = new SKCanvas(surface))
            using (var image = SKImage.FromBitmap(_bitmap))
            {
                canvas.Clear(SKColors.White);
                canvas.DrawImage(image, new SKRect(0, 0, width, height), new SKSamplingOptions(SKFilterMode.Linear, SKMipmapMode.Linear));
            }

            using var encoded = surface.Encode(SKEncodedImageFormat.Jpeg, quality);
            if (encoded.Size <= mostBytes)
            {
                return (encoded.ToArray(), width, height);
            }
        }

        return null;
    }

    /// <summary>As it was held when it was taken: cameras turn the pixels only in what they write beside them, and that goes.</summary>
    private static SKBitmap Upright(SKBitmap raw, SKEncodedOrigin origin)
    {
        bool isTurned = origin >= SKEncodedOrigin.LeftTop;
        var (width, height) = isTurned ? (raw.Height, raw.Width) : (raw.Width, raw.Height);
        var upright = new SKBitmap(new SKImageInfo(width, height, SKColorType.Rgba8888, SKAlphaType.Premul));
        using var canvas = new SKCanvas(upright);
        canvas.SetMatrix(origin switch
        {
            SKEncodedOrigin.TopRight => new SKMatrix(-1, 0, width, 0, 1, 0, 0, 0, 1),
            SKEncodedOrigin.BottomRight => new SKMatrix(-1, 0, width, 0, -1, height, 0, 0, 1),
            SKEncodedOrigin.BottomLeft => new SKMatrix(1, 0, 0, 0, -1, height, 0, 0, 1),
            SKEncodedOrigin.LeftTop => new SKMatrix(0, 1, 0, 1, 0, 0, 0, 0, 1),
            SKEncodedOrigin.RightTop => new SKMatrix(0, -1, width, 1, 0, 0, 0, 0, 1),
            SKEncodedOrigin.RightBottom => new SKMatrix(0, -1, width, -1, 0, height, 0, 0, 1),
            SKEncodedOrigin.LeftBottom => new SKMatrix(0, 1, 0, -1, 0, height, 0, 0, 1),
            _ => SKMatrix.Identity,
        });
        using var image = SKImage.FromBitmap(raw);
        canvas.DrawImage(image, 0, 0, new SKSamplingOptions(SKFilterMode.Nearest));
        return upright;
    }

    private static Result<PhotoPixels> Fail(Where where, Said found, Said mend) =>
        Result.Fail<PhotoPixels>(Problem.CannotUse(where, found, mend));
}
