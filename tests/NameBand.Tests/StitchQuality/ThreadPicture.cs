using NameBand.Common;
using NameBand.Stitching;
using SkiaSharp;

namespace NameBand.Tests.StitchQuality;

/// <summary>Draws needle paths as shaded thread over their outlines, to be looked at.</summary>
internal static class ThreadPicture
{
    public static void Save(
        string file, IReadOnlyList<(string Label, LetterTrial Letter)> letters, int columns, float pixelsPerMm, double threadMm, bool marks)
    {
        double cellWidth = letters.Max(l => l.Letter.Outline.Bounds().WidthMm) + 2;
        double bottom = letters.Min(l => l.Letter.Outline.Bounds().BottomMm) - 1;
        double cellHeight = letters.Max(l => l.Letter.Outline.Bounds().TopMm) + 1 - bottom;
        int rows = (letters.Count + columns - 1) / columns;
        using var bitmap = new SKBitmap((int)(columns * cellWidth * pixelsPerMm), (int)(rows * cellHeight * pixelsPerMm));
        using var canvas = new SKCanvas(bitmap);
        canvas.Clear(new SKColor(0xF4, 0xF1, 0xEA));
        for (int i = 0; i < letters.Count; i++)
        {
            canvas.Save();
            canvas.Translate((float)((i % columns) * cellWidth * pixelsPerMm), (float)((i / columns) * cellHeight * pixelsPerMm));
            using var font = new SKFont(SKTypeface.Default, 14);
            using var ink = new SKPaint { Color = SKColors.Gray, IsAntialias = true };
            canvas.DrawText(letters[i].Label, 3, 14, SKTextAlign.Left, font, ink);
            canvas.Translate(
                (float)((1 - letters[i].Letter.Outline.Bounds().LeftMm) * pixelsPerMm), (float)((cellHeight + bottom) * pixelsPerMm));
            canvas.Scale(pixelsPerMm, -pixelsPerMm);
            Draw(canvas, letters[i].Letter, (float)threadMm, marks);
            canvas.Restore();
        }

        using var data = bitmap.Encode(SKEncodedImageFormat.Png, 90);
        using var stream = File.Create(file);
        data.SaveTo(stream);
    }

    /// <summary>Names under each other.</summary>
    public static void SaveNames(
        string file, IReadOnlyList<(string Label, Outline Outline, NeedlePath Path)> names, float pixelsPerMm, double threadMm)
    {
        double width = names.Max(n => n.Outline.Bounds().RightMm) + 2;
        double bottom = names.Min(n => n.Outline.Bounds().BottomMm) - 0.5;
        double height = names.Max(n => n.Outline.Bounds().TopMm) + 1.2 - bottom;
        using var bitmap = new SKBitmap((int)(width * pixelsPerMm), (int)(names.Count * height * pixelsPerMm));
        using var canvas = new SKCanvas(bitmap);
        canvas.Clear(new SKColor(0xF4, 0xF1, 0xEA));
        for (int i = 0; i < names.Count; i++)
        {
            canvas.Save();
            canvas.Translate(pixelsPerMm, (float)(((i * height) + height + bottom) * pixelsPerMm));
            using var font = new SKFont(SKTypeface.Default, 12);
            using var ink = new SKPaint { Color = SKColors.Gray, IsAntialias = true };
            canvas.DrawText(names[i].Label, 3, (float)(-(height + bottom) * pixelsPerMm) + 12, SKTextAlign.Left, font, ink);
            canvas.Scale(pixelsPerMm, -pixelsPerMm);
            DrawThread(canvas, names[i].Outline, names[i].Path, (float)threadMm);
            canvas.Restore();
        }

        using var data = bitmap.Encode(SKEncodedImageFormat.Png, 90);
        using var stream = File.Create(file);
        data.SaveTo(stream);
    }

    private static void DrawThread(SKCanvas canvas, Outline outline, NeedlePath path, float thread)
    {
        using var gathered = new SKPathBuilder { FillType = SKPathFillType.EvenOdd };
        foreach (var ring in outline.Rings)
        {
            gathered.AddPoly([.. ring.Points.Select(Place)], true);
        }

        using var shape = gathered.Detach();

        using var red = new SKPaint { Color = new SKColor(0xFF, 0x90, 0x80), Style = SKPaintStyle.Fill, IsAntialias = true };
        canvas.DrawPath(shape, red);
        for (int i = 1; i < path.Steps.Length; i++)
        {
            var (a, b) = (path.Steps[i - 1], path.Steps[i]);
            if (b.Action == NeedleAction.Jump)
            {
                using var jump = new SKPaint { Color = SKColors.Magenta, StrokeWidth = 0.06f, IsAntialias = true };
                canvas.DrawLine(Place(a.At), Place(b.At), jump);
                continue;
            }

            if (a.Action != NeedleAction.Stitch || b.Action != NeedleAction.Stitch)
            {
                continue;
            }

            var direction = (b.At - a.At) * (1 / Math.Max(1e-9, a.At.DistanceTo(b.At)));
            byte light = (byte)(70 + (60 * Math.Abs(direction.XMm)));
            var colour = b.Kind switch
            {
                StitchKind.Satin or StitchKind.Running => new SKColor(20, (byte)(light - 20), (byte)(light + 70)),
                StitchKind.Lock => new SKColor(0xC0, 0x80, 0x00),
                _ => new SKColor(0x30, 0x90, 0x30),
            };
            using var dark = new SKPaint { Color = colour.WithAlpha(255), StrokeWidth = thread, IsAntialias = true };
            using var shine = new SKPaint { Color = SKColors.White.WithAlpha(90), StrokeWidth = thread * 0.3f, IsAntialias = true };
            canvas.DrawLine(Place(a.At), Place(b.At), dark);
            canvas.DrawLine(Place(a.At), Place(b.At), shine);
        }

        using var line = new SKPaint { Color = SKColors.Red, Style = SKPaintStyle.Stroke, StrokeWidth = 0.04f, IsAntialias = true };
        canvas.DrawPath(shape, line);
    }

    private static void Draw(SKCanvas canvas, LetterTrial letter, float thread, bool marks)
    {
        var path = letter.Path;
        DrawThread(canvas, letter.Outline, path, thread);
        if (marks)
        {
            using var dot = new SKPaint { Color = SKColors.Yellow, IsAntialias = true };
            foreach (var step in path.Steps.Where(s => s.Action == NeedleAction.Stitch))
            {
                canvas.DrawCircle(Place(step.At), 0.06f, dot);
            }

            // Crossings more than 13 degrees off the normal.
            using var slanted = new SKPaint { Color = SKColors.Red, StrokeWidth = 0.08f, IsAntialias = true };
            foreach (var (from, to, degrees) in SquarenessMeasure.Read(path, letter.Columns, letter.Origin).Where(r => r.Degrees > 13))
            {
                canvas.DrawLine(Place(from), Place(to), slanted);
            }
        }
    }

    private static SKPoint Place(Point p) => new((float)p.XMm, (float)p.YMm);
}
