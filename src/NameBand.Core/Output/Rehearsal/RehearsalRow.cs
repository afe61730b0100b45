using System.Collections.Immutable;
using NameBand.Common;
using NameBand.Layout;
using NameBand.Output.Sheets;
using NameBand.Output.Tracing;
using SkiaSharp;

namespace NameBand.Output.Rehearsal;

/// <summary>Draws one row of the rehearsal: a piece of a finished round with its cut lines, letters and marks.</summary>
/// <param name="leftMm">Of the box about it on the paper.</param>
internal sealed class RehearsalRow(
    SheetPages pages, StripPlan plan, Round round, TemplateWindow window, double leftMm, double topMm)
{
    public const double LabelMm = 5; // Above each row: the line that says which round and which row it is.

    private const double CutLineMm = 0.25; // Seen, and thinner than scissors can stray.
    // Letters of marks, as the margin of the strip allows: no larger than is read at arm's length, no smaller than can be read at all.
    private const double WordMostMm = 2.4;
    private const double WordLeastMm = 1.6;
    private const double AsideMm = 0.7; // From a line to the word beside it: more than the line is thick.

    private readonly RehearsalPiece _piece = new(plan, round, window);

    /// <summary>Letters of marks stand between the edge and the names, where nothing else does.</summary>
    private double WordMm => Math.Clamp(plan.Hem.Strip.MarginMm * 0.6, WordLeastMm, WordMostMm);

    private double HalfMm => _piece.HalfMm;

    public static double HeightMm(StripPlan plan, Round round, TemplateWindow window) =>
        LabelMm + new RehearsalPiece(plan, round, window).Extent.HeightMm;

    public void Draw(ImmutableArray<RehearsalMark> marks)
    {
        Said label = $"round {round.Number}, row {window.Number} of {window.Rows}: {Mm(window.FromMm)} to {Mm(Math.Min(window.ToMm, round.LengthMm))} mm from its start";
        pages.Text(leftMm, topMm + 3.4, label, 2.8, Ink.Quiet);
        using (var edge = PathOf([_piece.EdgePoints()]))
        {
            Stroke(edge, CutLineMm, Ink.Full);
            pages.Canvas.Save();
            pages.Canvas.ClipPath(edge);
            Names();
            pages.Canvas.Restore();
        }

        Scale();
        foreach (var mark in marks.Where(m => IsOn(m.AtMm)))
        {
            Dashed(mark.AtMm);
            Word(mark.AtMm, HalfMm - 0.8 - WordMm, mark.Word, isRight: mark.AtMm > window.ToMm - 25);
        }

        Tucks();
        Joins();
    }

    private void Names()
    {
        using var ink = Ink.Full.Fill();
        foreach (var name in round.NamesAndMotifs.Where(n => n.EndMm > window.FromMm - 1 && n.StartMm < window.ToMm + 1))
        {
            foreach (var letter in _piece.Letters(name))
            {
                using var path = PathOf(letter);
                pages.Canvas.DrawPath(path, ink);
            }
        }
    }

    /// <summary>Centimetres along the lower edge, from the start of the round.</summary>
    private void Scale()
    {
        for (int cm = (int)Math.Ceiling(window.FromMm / 10); cm * 10 <= Math.Min(window.ToMm, round.LengthMm); cm++)
        {
            Across(cm * 10, -HalfMm, -HalfMm + (cm % 10 == 0 ? 2.4 : 1.2), 0.12, Ink.Quiet);
            if (IsFigured(cm))
            {
                Word(cm * 10, -HalfMm + 0.6, Figure(cm), isRight: false);
            }
        }
    }

    private bool IsFigured(int cm) =>
        cm % 10 == 0 && cm * 10 >= window.FromMm && cm * 10 < window.ToMm - 6 && cm * 10 <= round.LengthMm;

    private static Said Figure(int cm) => $"{cm} cm";

    private void Tucks()
    {
        foreach (var tuck in RoundTucks.Of(plan, round).Where(t => IsOn(t.AtMm)))
        {
            foreach (int side in new[] { -1, 1 })
            {
                var (from, to) =
                    (OnPaper(_piece.At(tuck.AtMm + (side * tuck.WidthMm / 2), HalfMm)), OnPaper(_piece.At(tuck.AtMm, -HalfMm)));
                pages.Line(from.XMm, from.YMm, to.XMm, to.YMm, 0.15, Ink.Quiet);
            }
        }
    }

    /// <summary>The lines that come to lie on each other when rows are taped together.</summary>
    private void Joins()
    {
        if (window.Number > 1)
        {
            Join(window.FromMm + (Template.OverlapMm / 2), window.Number - 1);
        }

        if (window.Number < window.Rows)
        {
            Join(window.ToMm - (Template.OverlapMm / 2), window.Number);
        }
    }

    private void Join(double atMm, int number)
    {
        Across(atMm, -HalfMm, HalfMm, 0.12, Ink.Quiet);
        foreach (int side in new[] { -1, 1 })
        {
            var (top, aside) = (OnPaper(_piece.At(atMm, HalfMm - 2.5)), OnPaper(_piece.At(atMm + (side * 1.5), HalfMm)));
            pages.Line(top.XMm, top.YMm, aside.XMm, aside.YMm, 0.2);
        }

        var code = Said.Plain(FormattableString.Invariant($"{round.Number}{TemplateRow.Letter(number)}"));
        double fromMm = atMm - AsideMm - pages.WidthMm(code, WordMm);
        int cm = (int)Math.Floor(atMm / 100) * 10;
        bool isOverFigure = IsFigured(cm) && (cm * 10) + AsideMm + pages.WidthMm(Figure(cm), WordMm) > fromMm;
        Word(atMm, -HalfMm + 0.8 + (isOverFigure ? WordMm : 0), code, isRight: true);
    }

    private void Dashed(double atMm)
    {
        for (double y = -HalfMm; y < HalfMm; y += 3)
        {
            Across(atMm, y, Math.Min(y + 1.5, HalfMm), 0.2, Ink.Full);
        }
    }

    private void Across(double atMm, double fromYMm, double toYMm, double lineMm, Ink ink)
    {
        var (from, to) = (OnPaper(_piece.At(atMm, fromYMm)), OnPaper(_piece.At(atMm, toYMm)));
        pages.Line(from.XMm, from.YMm, to.XMm, to.YMm, lineMm, ink);
    }

    /// <summary>A word beside a line across the strip, turned as the strip lies there.</summary>
    private void Word(double atMm, double yMm, Said text, bool isRight)
    {
        var at = OnPaper(_piece.At(atMm, yMm));
        double x = isRight ? -AsideMm - pages.WidthMm(text, WordMm) : AsideMm;
        pages.Canvas.Save();
        pages.Canvas.Translate((float)at.XMm, (float)at.YMm);
        pages.Canvas.RotateRadians((float)-_piece.TurnRad(atMm));
        pages.Text(x, 0, text, WordMm);
        pages.Canvas.Restore();
    }

    private bool IsOn(double atMm) => atMm >= window.FromMm - 0.01 && atMm <= window.ToMm + 0.01;

    private Point OnPaper(Point at) =>
        new(leftMm + at.XMm - _piece.Extent.LeftMm, topMm + LabelMm + _piece.Extent.TopMm - at.YMm);

    private void Stroke(SKPath path, double lineMm, Ink ink)
    {
        using var paint = ink.Stroke(lineMm);
        pages.Canvas.DrawPath(path, paint);
    }

    private SKPath PathOf(IEnumerable<IEnumerable<Point>> rings)
    {
        using var builder = new SKPathBuilder { FillType = SKPathFillType.EvenOdd };
        foreach (var ring in rings)
        {
            bool isFirst = true;
            foreach (var point in ring.Select(OnPaper))
            {
                var at = new SKPoint((float)point.XMm, (float)point.YMm);
                if (isFirst)
                {
                    builder.MoveTo(at);
                }
                else
                {
                    builder.LineTo(at);
                }

                isFirst = false;
            }

            builder.Close();
        }

        return builder.Detach();
    }

    private static Said Mm(double mm) => $"{mm:0}";
}
