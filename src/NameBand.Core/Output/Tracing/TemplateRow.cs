using System.Globalization;
using NameBand.Common;
using NameBand.Layout;
using NameBand.Output.Sheets;
using SkiaSharp;

namespace NameBand.Output.Tracing;

/// <summary>One row of a template: a window on a flat strip.</summary>
/// <param name="fromMm">Left end of the window on the flat strip.</param>
/// <param name="toMm">Right end of the window on the flat strip.</param>
/// <param name="leftMm">Where the row begins on the paper.</param>
/// <param name="centreMm">Where the strip's centre line lies on the paper.</param>
internal sealed class TemplateRow(
    SheetPages pages, StripPlan plan, Round round, int number, int rows, double fromMm, double toMm, double leftMm, double centreMm, bool mirrored)
{
    private const double EdgeLineMm = 0.15;
    private const double CentreLineMm = 0.35;

    private double HalfCutMm => plan.Hem.Strip.CutWidthMm / 2;

    public void Draw(TraceLines lines, double overlapMm)
    {
        double half = plan.Hem.Strip.FinishedWidthMm / 2;
        double width = toMm - fromMm;
        pages.Box(leftMm, centreMm - HalfCutMm, width, 2 * HalfCutMm, 0.15, Ink.Quiet);
        foreach (double y in new[] { centreMm - half, centreMm + half })
        {
            Dashed(y, width);
        }

        var canvas = pages.Canvas;
        canvas.Save();
        canvas.ClipRect(new SKRect((float)leftMm, (float)(centreMm - HalfCutMm), (float)(leftMm + width), (float)(centreMm + HalfCutMm)));
        foreach (var name in round.Names)
        {
            double start = plan.OnClothMm(name.StartMm);
            if (start < toMm + 1 && start + name.WidthMm > fromMm - 1)
            {
                DrawName(name, start, lines);
            }
        }

        canvas.Restore();
        Scale();
        Joins(overlapMm);
        string label = FormattableString.Invariant($"round {round.Number}, row {number} of {rows}");
        pages.Text(leftMm, centreMm + HalfCutMm + 3.6, label, 2.8, Ink.Quiet);
    }

    private void DrawName(PlacedName name, double startMm, TraceLines lines)
    {
        foreach (var line in lines.Outlines(name.Lettered))
        {
            Trace(line, startMm, name.BaselineYMm, EdgeLineMm, Ink.Faint);
        }

        foreach (var line in lines.Centres(name.Lettered))
        {
            Trace(line, startMm, name.BaselineYMm, CentreLineMm, Ink.Full);
        }

        double left = X(startMm);
        pages.Line(left, centreMm + HalfCutMm - 6, left, centreMm + HalfCutMm - 3, 0.2);
        pages.Text(left + (mirrored ? -5 : 0.8), centreMm + HalfCutMm - 3.4, name.Order.ToString(CultureInfo.InvariantCulture), 2.8, Ink.Quiet);
    }

    private void Trace(TraceLine line, double startMm, double baselineYMm, double widthMm, Ink ink)
    {
        using var builder = new SKPathBuilder();
        for (int i = 0; i < line.Points.Length; i++)
        {
            var point = new SKPoint((float)X(startMm + line.Points[i].XMm), (float)(centreMm - baselineYMm - line.Points[i].YMm));
            if (i == 0)
            {
                builder.MoveTo(point);
            }
            else
            {
                builder.LineTo(point);
            }
        }

        using var path = builder.Detach();
        using var paint = ink.Stroke(widthMm);
        paint.StrokeCap = SKStrokeCap.Round;
        paint.StrokeJoin = SKStrokeJoin.Round;
        pages.Canvas.DrawPath(path, paint);
    }

    /// <summary>Centimetres of the flat strip along the lower cut edge.</summary>
    private void Scale()
    {
        for (int cm = (int)Math.Ceiling(fromMm / 10); cm * 10 <= toMm; cm++)
        {
            double x = X(cm * 10);
            double arm = cm % 10 == 0 ? 3 : 1.5;
            pages.Line(x, centreMm + HalfCutMm, x, centreMm + HalfCutMm - arm, 0.12, Ink.Quiet);
            if (cm % 10 == 0)
            {
                pages.Text(x + 0.6, centreMm + HalfCutMm - 1, cm.ToString(CultureInfo.InvariantCulture), 2.4, Ink.Quiet);
            }
        }
    }

    /// <summary>Lines that fall on the same place of the strip on two rows, with the same letter.</summary>
    private void Joins(double overlapMm)
    {
        if (number > 1)
        {
            Join(fromMm + (overlapMm / 2), number - 1);
        }

        if (number < rows)
        {
            Join(toMm - (overlapMm / 2), number);
        }
    }

    private void Join(double atMm, int join)
    {
        double x = X(atMm);
        pages.Line(x, centreMm - HalfCutMm, x, centreMm + HalfCutMm, 0.1, Ink.Quiet);
        pages.Line(x - 2, centreMm - HalfCutMm, x, centreMm - HalfCutMm + 3, 0.2);
        pages.Line(x + 2, centreMm - HalfCutMm, x, centreMm - HalfCutMm + 3, 0.2);
        string letter = join <= 26 ? ((char)('A' + join - 1)).ToString() : "A" + (char)('A' + ((join - 27) % 26));
        pages.Text(x + 1.5, centreMm - HalfCutMm + 6, FormattableString.Invariant($"{round.Number}{letter}"), 3.2);
    }

    private void Dashed(double y, double width)
    {
        for (double x = 0; x < width; x += 4)
        {
            pages.Line(leftMm + x, y, leftMm + Math.Min(x + 2, width), y, 0.12, Ink.Quiet);
        }
    }

    /// <summary>Place on the paper of a place on the flat strip.</summary>
    private double X(double stripMm) => mirrored ? leftMm + (toMm - stripMm) : leftMm + (stripMm - fromMm);
}
