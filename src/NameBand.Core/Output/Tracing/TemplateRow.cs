using System.Globalization;
using NameBand.Common;
using NameBand.Garment;
using NameBand.Layout;
using NameBand.Output.Sheets;
using SkiaSharp;

namespace NameBand.Output.Tracing;

/// <summary>How the strips of a template are drawn.</summary>
/// <param name="WithCentres">Whether the middle lines of strokes are drawn too; else outlines alone.</param>
internal sealed record TemplateLook(TraceLines Lines, StripWidths Strip, bool Mirrored, bool WithCentres)
{
    /// <summary>The mark of a hooping.</summary>
    public required Func<Hooping, string> MarkOf { get; init; }

    private const double AboutMarkMm = 4.5; // As far as its arm and its number reach from it, and a little room.

    /// <summary>Half the height that is shown: the cut edges, and the crosses where they lie beyond.</summary>
    public double HalfHeightMm(TemplateStrip strip) =>
        Math.Max(Strip.CutWidthMm / 2, strip.Marks.IsEmpty ? 0 : Math.Abs(strip.MarkYMm) + AboutMarkMm);
}

/// <summary>One row of a template: a window on a flat strip.</summary>
/// <param name="window">What of the cloth is shown; of a strip that is shorter, less.</param>
/// <param name="centreMm">Where the strip's centre line lies on the paper.</param>
internal sealed class TemplateRow(
    SheetPages pages, TemplateStrip strip, TemplateLook look, TemplateWindow window, double centreMm, double halfMm)
{
    private readonly double _fromMm = Math.Max(window.FromMm, strip.FromMm);
    private readonly double _toMm = Math.Min(window.ToMm, strip.ToMm);
    private readonly double _leftMm = Template.MarginMm + Math.Max(0, strip.FromMm - window.FromMm);

    // Light and heavy, so that the line to be followed is told from the one to be looked at.
    private const double EdgeLineMm = 0.15;
    private const double CentreLineMm = 0.35;

    private double BottomMm => centreMm + halfMm;

    public void Draw()
    {
        double fold = look.Strip.FinishedWidthMm / 2;
        double cut = Math.Min(look.Strip.CutWidthMm / 2, halfMm);
        double width = _toMm - _fromMm;
        pages.Box(_leftMm, centreMm - cut, width, 2 * cut, 0.15, Ink.Quiet);
        foreach (double y in new[] { centreMm - fold, centreMm + fold })
        {
            Dashed(y, width);
        }

        foreach (double end in strip.FinishedEndsMm.Where(e => e > _fromMm && e < _toMm))
        {
            DashedUpright(X(end), cut);
        }

        var canvas = pages.Canvas;
        canvas.Save();
        canvas.ClipRect(new SKRect((float)_leftMm, (float)(centreMm - halfMm), (float)(_leftMm + width), (float)BottomMm));
        foreach (var name in strip.Names)
        {
            if (name.AtMm < _toMm + 1 && name.AtMm + name.Placed.WidthMm > _fromMm - 1)
            {
                DrawName(name);
            }
        }

        canvas.Restore();
        foreach (var mark in strip.Marks.Where(m => m.AtMm >= _fromMm && m.AtMm <= _toMm))
        {
            DrawMark(mark);
        }

        Scale();
        Joins();
        Said label = $"{strip.Label}, row {window.Number} of {window.Rows}";
        pages.Text(_leftMm, BottomMm + 3.6, label, 2.8, Ink.Quiet);
    }

    private void DrawName(TemplateName name)
    {
        foreach (var line in look.Lines.Outlines(name.Placed.Lettered))
        {
            Trace(line, name, EdgeLineMm, look.WithCentres ? Ink.Faint : Ink.Full);
        }

        if (look.WithCentres)
        {
            foreach (var line in look.Lines.Centres(name.Placed.Lettered))
            {
                Trace(line, name, CentreLineMm, Ink.Full);
            }
        }

        // A name's number stands at its beginning; with crosses along the lower edge there is room for it only above.
        double left = X(name.AtMm);
        double y = name.Placed.Line switch
        {
            // Of two names at one place each has its number at its own edge.
            1 => centreMm - halfMm,
            2 when !strip.Marks.IsEmpty => centreMm + (look.Strip.FinishedWidthMm / 2) - 3,
            _ => strip.Marks.IsEmpty ? BottomMm - 6 : centreMm - halfMm,
        };
        pages.Line(left, y, left, y + 3, 0.2);
        pages.Put(
            left + (look.Mirrored ? -5 : 0.8), y + 2.6,
            name.Placed.Order > 0 ? name.Placed.Order.ToString(CultureInfo.InvariantCulture) : "", 2.8, Ink.Quiet);
    }

    private void DrawMark(TemplateMark mark)
    {
        double x = X(mark.AtMm);
        double y = centreMm - strip.MarkYMm;
        pages.Line(x - mark.ArmMm, y, x + mark.ArmMm, y, 0.2);
        pages.Line(x, y - 3, x, y + 3, 0.2);
        var at = Thousandths.Tenths(mark.AtMm);
        Said text = mark.IsLeft ? (Said)$"{mark.Hooping.Number}: {at:0.0}, mark {look.MarkOf(mark.Hooping)}"
            : $"{mark.Hooping.Number} end: {at:0.0}";

        // Left marks say their figure to the right and right ones to the left, so that neighbours do not write over each other.
        // One that would run off the row's end stands before its mark.
        if (mark.IsLeft && x + 0.8 + pages.WidthMm(text, 2.4) <= _leftMm + _toMm - _fromMm)
        {
            pages.Text(x + 0.8, y - 0.9, text, 2.4, Ink.Quiet);
        }
        else if (mark.IsLeft)
        {
            pages.TextRight(x - 0.8, y - 0.9, text, 2.4, Ink.Quiet);
        }
        else
        {
            pages.TextRight(x - 0.8, y + 2.7, text, 2.4, Ink.Quiet);
        }
    }

    private void Trace(TraceLine line, TemplateName name, double widthMm, Ink ink)
    {
        using var builder = new SKPathBuilder();
        for (int i = 0; i < line.Points.Length; i++)
        {
            var point = new SKPoint(
                (float)X(name.AtMm + line.Points[i].XMm), (float)(centreMm - name.Placed.BaselineYMm - line.Points[i].YMm));
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

    /// <summary>Centimetres of the flat strip along the lower edge.</summary>
    private void Scale()
    {
        for (int cm = (int)Math.Ceiling(_fromMm / 10); cm * 10 <= _toMm; cm++)
        {
            double x = X(cm * 10);
            double arm = cm % 10 == 0 ? 3 : 1.5;
            pages.Line(x, BottomMm, x, BottomMm - arm, 0.12, Ink.Quiet);
            if (cm % 10 == 0)
            {
                pages.Put(x + 0.6, BottomMm - 1, cm.ToString(CultureInfo.InvariantCulture), 2.4, Ink.Quiet);
            }
        }
    }

    /// <summary>Lines that fall on the same place of the strip on two rows, with the same letter.</summary>
    private void Joins()
    {
        if (window.Number > 1 && strip.FromMm < window.FromMm + Template.OverlapMm)
        {
            Join(window.FromMm + (Template.OverlapMm / 2), window.Number - 1);
        }

        if (window.Number < window.Rows && strip.ToMm > window.ToMm - Template.OverlapMm)
        {
            Join(window.ToMm - (Template.OverlapMm / 2), window.Number);
        }
    }

    private void Join(double atMm, int join)
    {
        double x = X(atMm);
        double top = centreMm - halfMm;
        pages.Line(x, top, x, BottomMm, 0.1, Ink.Quiet);
        pages.Line(x - 2, top, x, top + 3, 0.2);
        pages.Line(x + 2, top, x, top + 3, 0.2);
        pages.Put(x + 1.5, top + 6, strip.Code + Letter(join), 3.2);
    }

    /// <summary>A to Z, then AA, AB … as columns of a table are counted.</summary>
    internal static string Letter(int number)
    {
        string letters = "";
        for (int rest = number; rest > 0; rest = (rest - 1) / 26)
        {
            letters = (char)('A' + ((rest - 1) % 26)) + letters;
        }

        return letters;
    }

    private void Dashed(double y, double width)
    {
        for (double x = 0; x < width; x += 4)
        {
            pages.Line(_leftMm + x, y, _leftMm + Math.Min(x + 2, width), y, 0.12, Ink.Quiet);
        }
    }

    /// <summary>A finished end: cloth beyond it is turned in, or lies under the other end.</summary>
    private void DashedUpright(double x, double reach)
    {
        for (double y = -reach; y < reach; y += 4)
        {
            pages.Line(x, centreMm + y, x, centreMm + Math.Min(y + 2, reach), 0.12, Ink.Quiet);
        }
    }

    /// <summary>Place on the paper of a place on the flat strip.</summary>
    private double X(double stripMm) => look.Mirrored ? _leftMm + (_toMm - stripMm) : _leftMm + (stripMm - _fromMm);
}
