using System.Buffers;
using System.Runtime.CompilerServices;
using NameBand.Cloth;
using NameBand.Common;
using NameBand.Stitching;

namespace NameBand.Output.Drawing;

/// <summary>
/// Thread laid stitch over stitch on a see-through sheet, which is then put on the cloth with its shadow. Each pixel
/// holds how much of it is thread (high byte) and how bright that is (low byte).
/// </summary>
internal sealed class ThreadLayer : IDisposable
{
    private const int MarginPx = 4; // The shadow falls a few pixels beside the thread.

    private readonly ushort[] _pixels;
    private readonly int _left;
    private readonly int _top;
    private readonly int _skipped;
    private readonly int _width;
    private readonly int _height;
    private readonly double _pixelsPerMm;

    /// <param name="top">Top of the whole drawing, from which all is calculated, so that bands agree to the last bit.</param>
    /// <param name="firstRow">First row that is kept.</param>
    private ThreadLayer(int left, int top, int firstRow, int right, int bottom, double pixelsPerMm)
    {
        _left = left;
        _top = top;
        _skipped = firstRow - top;
        _width = right - left;
        _height = bottom - firstRow;
        _pixelsPerMm = pixelsPerMm;
        _pixels = ArrayPool<ushort>.Shared.Rent(_width * _height);
        _pixels.AsSpan(0, _width * _height).Clear();
    }

    /// <summary>Draws the stitches of a path that <paramref name="which"/> asks for.</summary>
    /// <param name="originPx">Where the path's origin lies on the picture, in pixels.</param>
    /// <param name="threadMm">Width at which the thread is drawn.</param>
    /// <param name="shades">The first, and how many, of the thread's colours among <see cref="Palette"/>, dark to light.</param>
    public static void Draw(
        IndexedBitmap picture, ReadOnlySpan<NeedleStep> steps, (double X, double Y) originPx, ThreadKinds which,
        (byte At, int Count) shades,
        double threadMm = SewingThread.FortyWeightMm)
    {
        double scale = picture.PixelsPerMm;
        var box = Box.Empty;
        for (int i = 0; i < steps.Length; i++)
        {
            if (IsDrawn(steps[i], which))
            {
                box = box.Include(steps[i].At);
                if (i > 0)
                {
                    box = box.Include(steps[i - 1].At);
                }
            }
        }

        if (box.IsEmpty)
        {
            return;
        }

        int margin = MarginPx + (int)Math.Ceiling(threadMm * scale);
        int left = Math.Max(0, (int)Math.Floor(originPx.X + (box.LeftMm * scale)) - margin);
        int right = Math.Min(picture.Width, (int)Math.Ceiling(originPx.X + (box.RightMm * scale)) + margin);
        int top = (int)Math.Floor(originPx.Y - (box.TopMm * scale)) - margin;
        int firstRow = Math.Max(picture.Top - MarginPx, top);
        int bottom = Math.Min(picture.Bottom, (int)Math.Ceiling(originPx.Y - (box.BottomMm * scale)) + margin);
        if (left >= right || firstRow >= bottom)
        {
            return;
        }

        using var layer = new ThreadLayer(left, top, firstRow, right, bottom, scale);
        layer.Lay(steps, originPx.X, originPx.Y, which, threadMm);
        layer.PutOn(picture, shades.At, shades.Count);
    }

    public void Dispose() => ArrayPool<ushort>.Shared.Return(_pixels);

    private static bool IsDrawn(in NeedleStep step, ThreadKinds which) =>
        step.Action == NeedleAction.Stitch && (step.Kind == StitchKind.Mark) == (which == ThreadKinds.Marks);

    private void Lay(ReadOnlySpan<NeedleStep> steps, double originX, double originY, ThreadKinds which, double threadMm)
    {
        float half = (float)Math.Max(0.5, threadMm * _pixelsPerMm / 2);
        for (int i = 1; i < steps.Length; i++)
        {
            // After a jump or a trim the first needle point only anchors the thread.
            if (IsDrawn(steps[i], which) && steps[i - 1].Action is NeedleAction.Stitch or NeedleAction.Jump)
            {
                var (a, b) = (steps[i - 1].At, steps[i].At);
                Stitch(
                    (float)(originX + (a.XMm * _pixelsPerMm) - _left),
                    (float)(originY - (a.YMm * _pixelsPerMm) - _top),
                    (float)(originX + (b.XMm * _pixelsPerMm) - _left),
                    (float)(originY - (b.YMm * _pixelsPerMm) - _top),
                    half,
                    i);
            }
        }
    }

    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    private void Stitch(float x0, float y0, float x1, float y1, float half, int number)
    {
        float dx = x1 - x0;
        float dy = y1 - y0;
        float length = MathF.Sqrt((dx * dx) + (dy * dy));
        if (length < 0.05f)
        {
            return;
        }

        dx /= length;
        dy /= length;
        var shading = ThreadShading.Of(ThreadShading.DirectionOf(dx, dy));

        // Threads of one spool are never quite alike: a little lighter or darker from stitch to stitch.
        int fleck = (int)(((uint)number * 2654435761u) >> 29) - 3;

        float reach = half + 0.5f;
        float cap = (half * 0.5f) + 0.5f;
        float spanX = (MathF.Abs(dx) * cap) + (MathF.Abs(dy) * reach);
        float spanY = (MathF.Abs(dy) * cap) + (MathF.Abs(dx) * reach);
        int top = Math.Max(_skipped, (int)MathF.Floor(Math.Min(y0, y1) - spanY));
        int bottom = Math.Min(_skipped + _height - 1, (int)MathF.Ceiling(Math.Max(y0, y1) + spanY));
        int leftmost = Math.Max(0, (int)MathF.Floor(Math.Min(x0, x1) - spanX));
        int rightmost = Math.Min(_width - 1, (int)MathF.Ceiling(Math.Max(x0, x1) + spanX));

        float perLength = ThreadShading.Alongs / length;
        float perHalf = ThreadShading.Acrosses / (2 * half);
        float slope = MathF.Abs(dy) > 1e-4f ? 1 / dy : 0;
        float rise = MathF.Abs(dx) > 1e-4f ? 1 / dx : 0;
        float narrow = Math.Min(1, 2 * half);
        for (int y = top; y <= bottom; y++)
        {
            float ry = y + 0.5f - y0;
            float from = leftmost;
            float to = rightmost;
            if (slope != 0)
            {
                // across = ry·dx − rx·dy lies within ±reach
                float p = (((ry * dx) - reach) * slope) + x0;
                float q = (((ry * dx) + reach) * slope) + x0;
                from = Math.Max(from, Math.Min(p, q) - 0.5f);
                to = Math.Min(to, Math.Max(p, q) - 0.5f);
            }

            if (rise != 0)
            {
                // along = rx·dx + ry·dy lies within −cap … length + cap
                float p = ((-cap - (ry * dy)) * rise) + x0;
                float q = ((length + cap - (ry * dy)) * rise) + x0;
                from = Math.Max(from, Math.Min(p, q) - 0.5f);
                to = Math.Min(to, Math.Max(p, q) - 0.5f);
            }

            int start = (int)MathF.Ceiling(from);
            int end = (int)MathF.Floor(to);
            float rx = start + 0.5f - x0;
            float along = (rx * dx) + (ry * dy);
            float across = (ry * dx) - (rx * dy);
            int at = ((y - _skipped) * _width) + start;
            for (int x = start; x <= end; x++, at++, along += dx, across -= dy)
            {
                float cover = Math.Min(Math.Min(reach - MathF.Abs(across), narrow), Math.Min(along, length - along) + cap);
                int part = (int)(Math.Min(cover, 1) * 256);
                if (part <= 0)
                {
                    continue;
                }

                int a = Math.Clamp((int)(along * perLength), 0, ThreadShading.Alongs - 1);
                int c = Math.Clamp((int)((across + half) * perHalf), 0, ThreadShading.Acrosses - 1);
                int bright = Math.Clamp(shading[(a * ThreadShading.Acrosses) + c] + fleck, 0, 255);
                int there = _pixels[at];
                int thereParts = there >> 8;
                if (part >= 255 || thereParts == 0)
                {
                    _pixels[at] = (ushort)((Math.Min(part, 255) << 8) | bright);
                }
                else
                {
                    int wasBright = there & 0xFF;
                    int parts = part + ((thereParts * (256 - part)) >> 8);
                    int mixed = wasBright + (((bright - wasBright) * part) / Math.Max(1, parts));
                    _pixels[at] = (ushort)((Math.Min(parts, 255) << 8) | Math.Clamp(mixed, 0, 255));
                }
            }
        }
    }

    /// <summary>Puts the sheet on the picture: first the shadow it throws to the lower right, then the thread.</summary>
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    private void PutOn(IndexedBitmap picture, byte shadesAt, int shades)
    {
        var dyes = picture.Palette;
        int near = Math.Max(1, (int)Math.Round(_pixelsPerMm * 0.15));
        int far = Math.Max(1, (int)Math.Round(_pixelsPerMm * 0.36));
        int firstRow = _top + _skipped;
        for (int y = Math.Max(firstRow, picture.Top); y < firstRow + _height; y++)
        {
            var row = picture.Row(y).Slice(_left, _width);
            int line = y - firstRow;
            var here = _pixels.AsSpan(line * _width, _width);
            var nearRow = line >= near ? _pixels.AsSpan((line - near) * _width, _width) : default;
            var farRow = line >= far ? _pixels.AsSpan((line - far) * _width, _width) : default;
            for (int x = 0; x < row.Length; x++)
            {
                int pixel = here[x];
                int part = pixel >> 8;
                byte thread = (byte)(shadesAt + ((pixel & 0xFF) * shades >> 8));
                if (part >= 250)
                {
                    row[x] = thread;
                    continue;
                }

                int shadow = (x >= near && nearRow.Length > 0 ? nearRow[x - near] >> 8 : 0)
                    + (x >= far && farRow.Length > 0 ? farRow[x - far] >> 8 : 0);
                if ((part | shadow) == 0)
                {
                    continue;
                }

                int ground = DyePalette.Mixed(dyes.ColourOf(row[x]), dyes.Shadow, shadow * 7 >> 4);
                row[x] = dyes.Blend(ground, dyes.ColourOf(thread), part);
            }
        }
    }
}

/// <summary>Which stitches of a path are drawn.</summary>
internal enum ThreadKinds
{
    Names,
    Marks,
}
