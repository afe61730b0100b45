using NameBand.Job;
using NameBand.Layout;
using NameBand.Output.Drawing;
using NameBand.Stitching;

namespace NameBand.Output;

/// <summary>
/// A needle path as a moving picture: the stitches come one after another in the order of sewing, each frame as many as
/// the one before, with a spot where the needle is. The picture stands still on the finished hooping.
/// </summary>
internal static class Playback
{
    private const double FramesPerSecond = 6; // The eye follows the needle, and the file stays small: our choice.
    private const int LastMilliseconds = 2000; // So long the finished hooping stands, before it begins anew where a viewer repeats it.
    private const double AroundMm = 4; // Table about the cut edges, as about a proof's field.
    private const double SpotMm = 0.7; // Nearly two threads wide: seen on a picture that is drawn small.

    public static void Write(Stream png, StripPlan plan, Hooping hooping, NeedlePath path, ShowSettings show, double threadMm)
    {
        var field = HoopField.Of(plan, hooping);
        double reach = (plan.Hem.Strip.CutWidthMm / 2) + AroundMm;
        double top = hooping.Segments.Max(s => s.YMm) + reach;
        double bottom = hooping.Segments.Min(s => s.YMm) - reach;
        double wide = field.WidthMm + (2 * AroundMm);
        var page = new ProofPage(field.LeftMm - AroundMm, top, wide, top - bottom, show.PlaybackWidthPixels / wide)
        {
            Palette = ThreadSections.Dyes(plan, hooping),
        };
        int frames = FrameCount(path, show.PlaybackSeconds);
        int milliseconds = (int)Math.Round(show.PlaybackSeconds * 1000 / frames);
        var steps = path.Steps.AsSpan();
        byte[] cloth = new byte[page.WidthPx * page.HeightPx];
        using (var picture = new IndexedBitmap(page.WidthPx, 0, page.HeightPx, page.PixelsPerMm) { Palette = page.Palette })
        {
            DrawCloth(picture, page, plan, hooping);
            CopyOut(picture, cloth);
        }

        byte[] frame = new byte[cloth.Length];
        Draw((frame, cloth), page, (plan, hooping), steps, null, threadMm);
        using var moving = new ApngWriter(png, page, frames, frame);
        for (int i = 1; i <= frames; i++)
        {
            int shown = (int)((long)steps.Length * i / frames);
            Draw((frame, cloth), page, (plan, hooping), steps[..shown], i < frames ? steps[shown - 1] : null, threadMm);
            moving.Add(frame, i < frames ? milliseconds : LastMilliseconds);
        }
    }

    /// <summary>Six a second, at least two, and never more than there are steps.</summary>
    public static int FrameCount(NeedlePath path, double seconds) =>
        Math.Clamp((int)Math.Round(seconds * FramesPerSecond), 2, Math.Max(2, path.Steps.Length));

    private static void DrawCloth(IndexedBitmap picture, ProofPage page, StripPlan plan, Hooping hooping)
    {
        ClothWeave.At(page.PixelsPerMm).Lay(picture, 0, 0, picture.Width, page.HeightPx, Palette.WasteAt);
        double right = page.LeftMm + page.WidthMm;
        foreach (var hooped in hooping.Segments)
        {
            StripDrawing.Cloth(picture, page, plan.Hem.Strip, hooped.YMm, (page.LeftMm, right));
        }
    }

    private static void Draw(
        (byte[] Frame, byte[] Cloth) pixels, ProofPage page, (StripPlan Plan, Hooping Hooping) of, ReadOnlySpan<NeedleStep> steps,
        NeedleStep? needle, double threadMm)
    {
        using var picture = new IndexedBitmap(page.WidthPx, 0, page.HeightPx, page.PixelsPerMm) { Palette = page.Palette };
        for (int y = 0; y < page.HeightPx; y++)
        {
            pixels.Cloth.AsSpan(y * page.WidthPx, page.WidthPx).CopyTo(picture.Row(y));
        }

        ThreadLayer.Draw(picture, steps, (page.X(0), page.Y(0)), ThreadKinds.Marks, (Palette.MarkAt, Palette.MarkShades));
        ThreadSections.Draw(picture, of, steps, (page.X(0), page.Y(0)), threadMm);
        if (needle is { } at)
        {
            double half = Math.Max(2, page.Px(SpotMm));
            picture.Box(
                page.X(at.At.XMm) - half, page.Y(at.At.YMm) - half, page.X(at.At.XMm) + half, page.Y(at.At.YMm) + half, Palette.Madder);
        }

        CopyOut(picture, pixels.Frame);
    }

    private static void CopyOut(IndexedBitmap picture, byte[] to)
    {
        for (int y = 0; y < picture.Rows; y++)
        {
            picture.Row(y).CopyTo(to.AsSpan(y * picture.Width));
        }
    }
}
