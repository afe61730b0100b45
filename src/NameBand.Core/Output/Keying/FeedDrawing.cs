using NameBand.Common;
using NameBand.Job;
using NameBand.MachineLetters;
using NameBand.Output.Sheets;
using SkiaSharp;

namespace NameBand.Output.Keying;

/// <summary>How the strip lies under the needle, as the maker sees it from her chair.</summary>
internal static class FeedDrawing
{
    // A drawing beside the sheet's first lines, a strip in it that one tells from the machine, and a word that goes into the strip.
    public const double SizeMm = 56;
    private const double StripMm = 13;
    private const string Word = "Ada";
    private const double WordSizeMm = 6.5;

    /// <param name="xMm">Left edge of the drawing.</param>
    /// <param name="yMm">Upper edge of the drawing.</param>
    public static void Draw(SheetPages pages, double xMm, double yMm, LettersSettings settings)
    {
        pages.AsItLies(() => Drawn(pages, xMm, yMm, settings));
    }

    private static void Drawn(SheetPages pages, double xMm, double yMm, LettersSettings settings)
    {
        double middleX = xMm + (SizeMm / 2);
        double middleY = yMm + (SizeMm / 2);
        bool lengthwise = settings.Feed == StripFeed.Lengthwise;
        pages.Box(xMm, yMm, SizeMm, SizeMm, 0.2, Ink.Faint);
        Said seat = "you sit here";
        Said first = SewingDirection.FirstLetterFirst(settings) ? "first letter first" : "last letter first";
        double size = Math.Min(2.8, 2.8 * (SizeMm - 7) / (pages.WidthMm(seat, 2.8) + pages.WidthMm(first, 2.8)));
        pages.Text(xMm + 2, yMm + SizeMm - 2, seat, size, Ink.Quiet);
        pages.Text(xMm + 2, yMm + 4, "seen from above", 2.8, Ink.Quiet);

        // The strip leaves the picture at the side its sewn end goes to, and at the other its rest comes from.
        var (feedX, feedY) = settings.Feed switch
        {
            StripFeed.Lengthwise => (0, -1),
            StripFeed.FromRight => (-1, 0),
            _ => (1, 0),
        };
        double along = (SizeMm / 2) - 6;
        if (lengthwise)
        {
            pages.Box(middleX - (StripMm / 2), yMm + 6, StripMm, 2 * along, 0.4);
        }
        else
        {
            pages.Box(xMm + 6, middleY - (StripMm / 2), 2 * along, StripMm, 0.4);
        }

        DrawWord(pages, middleX + (feedX * along * 0.6), middleY + (feedY * along * 0.6), settings);
        DrawNeedle(pages, middleX, middleY);
        DrawArrow(pages, middleX + (lengthwise ? StripMm : 0), middleY + (lengthwise ? 0 : StripMm + 3), feedX, feedY);
        pages.TextRight(xMm + SizeMm - 2, yMm + SizeMm - 2, first, size, Ink.Quiet);
    }

    private static void DrawWord(SheetPages pages, double x, double y, LettersSettings settings)
    {
        double width = pages.Face.WidthMm(Word, WordSizeMm);
        using var font = pages.Face.At(WordSizeMm);
        using var paint = Ink.Full.Fill();
        var canvas = pages.Canvas;
        canvas.Save();
        canvas.Translate((float)x, (float)y);
        canvas.RotateDegrees(settings.Feed != StripFeed.Lengthwise ? 0 : settings.TopsRight ? 90 : -90);
        if (settings.Mirrored)
        {
            canvas.Scale(-1, 1);
        }

        canvas.DrawText(Word, (float)(-width / 2), (float)(WordSizeMm * 0.36), SKTextAlign.Left, font, paint);
        canvas.Restore();
    }

    private static void DrawNeedle(SheetPages pages, double x, double y)
    {
        using var fill = Ink.Full.Fill();
        pages.Canvas.DrawCircle((float)x, (float)y, 0.9f, fill);
        pages.Box(x - 4, y - 3, 8, 6, 0.5);
        pages.TextRight(x - 8, y + 9, "needle", 2.8, Ink.Quiet);
        pages.Line(x - 7.5, y + 7.5, x - 1, y + 1, 0.2, Ink.Quiet);
    }

    private static void DrawArrow(SheetPages pages, double x, double y, int dx, int dy)
    {
        double tipX = x + (dx * 9);
        double tipY = y + (dy * 9);
        pages.Line(x - (dx * 9), y - (dy * 9), tipX, tipY, 0.6);
        pages.Line(tipX, tipY, tipX - (dx * 3) + (dy * 2), tipY - (dy * 3) + (dx * 2), 0.6);
        pages.Line(tipX, tipY, tipX - (dx * 3) - (dy * 2), tipY - (dy * 3) - (dx * 2), 0.6);
    }
}
