using System.Collections.Immutable;
using NameBand.Common;
using NameBand.MachineLetters.Spelling;
using NameBand.Output.Sheets;
using SkiaSharp;

namespace NameBand.Output.Keying;

/// <summary>The words whose marks are added by hand, at true size: the keyed letters grey, what is missing in red at its place.</summary>
internal static class HandMarks
{
    private static readonly SKColor Red = new(200, 20, 30);

    // Under words at true size: letters that are read at the table, a finger between words, and the heading's room.
    private const double CaptionMm = 3.2;
    private const double BetweenMm = 10;
    private const double HeadMm = 17;

    public static void Draw(SheetPages pages, ref double y, double bottomMm, ImmutableArray<KeyInName> names, double heightMm)
    {
        var words = names.SelectMany(n => n.MarkedWords.Select(w => (Name: n, Word: w))).ToList();
        if (words.Count == 0)
        {
            return;
        }

        double row = (2 * heightMm) + 10;
        if (y + HeadMm + row > bottomMm)
        {
            pages.Begin();
            y = KeyInSheet.LeftMm;
        }

        y = Heading(pages, y);
        double x = KeyInSheet.LeftMm;
        double right = pages.Paper.WidthMm - KeyInSheet.LeftMm;
        foreach (var (name, word) in words)
        {
            Said caption = $"n{name.Order} · {InWords(word)}";
            double width = Math.Max(word.LengthMm, Math.Min(right - KeyInSheet.LeftMm, pages.WidthMm(caption, CaptionMm)));
            if (x > KeyInSheet.LeftMm && x + width > right)
            {
                (x, y) = (KeyInSheet.LeftMm, y + row);
            }

            if (y + row > bottomMm)
            {
                pages.Begin();
                (x, y) = (KeyInSheet.LeftMm, KeyInSheet.LeftMm);
            }

            var (left, top) = (x, y);
            pages.AsItLies(() =>
            {
                Word(pages, left, top + (1.5 * heightMm), word);
                pages.Text(left, top + (2 * heightMm) + 5, caption, pages.Fitting(caption, CaptionMm, right - left), Ink.Quiet);
            });
            x += width + BetweenMm;
        }

        y += row;
    }

    private static double Heading(SheetPages pages, double y)
    {
        pages.Text(KeyInSheet.LeftMm, y + 9, "Marks to add by hand", 6);
        return 3 + pages.Wrapped(
            KeyInSheet.LeftMm, y + 14, pages.Paper.WidthMm - (2 * KeyInSheet.LeftMm),
            "The grey letters are keyed and sewn first, in a face like the machine’s, at true size. Then sew what is red, in the same thread.", 3.4);
    }

    /// <summary>What the plain letters do not cover of the whole ones are the marks.</summary>
    private static void Word(SheetPages pages, double x, double baseline, MarkedWord word)
    {
        pages.Line(x, baseline, x + word.LengthMm, baseline, 0.1, Ink.Faint);
        if (pages.IsCounting)
        {
            return;
        }

        using var marks = new SKPaint { Color = Red, IsAntialias = true };
        using var letters = new SKPaint { Color = new SKColor(165, 165, 165), IsAntialias = true };
        using var edge = new SKPaint { Color = letters.Color, IsAntialias = true, Style = SKPaintStyle.Stroke, StrokeWidth = 0.12f };
        Fill(word.Whole, marks);
        Fill(word.Plain, letters);
        Fill(word.Plain, edge);

        void Fill(ImmutableArray<Outline> outlines, SKPaint paint)
        {
            foreach (var outline in outlines)
            {
                using var path = new SKPathBuilder();
                foreach (var ring in outline.Rings)
                {
                    path.AddPoly([.. ring.Points.Select(p => new SKPoint((float)(x + p.XMm), (float)(baseline - p.YMm)))], close: true);
                }

                using var drawn = path.Detach();
                pages.Canvas.DrawPath(drawn, paint);
            }
        }
    }

    private static Said InWords(MarkedWord word) => Said.Join("; ", word.Letters.Select(l => l.InWords).Distinct());
}
