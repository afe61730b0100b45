using System.Globalization;
using NameBand.Layout;
using NameBand.Output.Sheets;
using NameBand.Stitching;
using SkiaSharp;

namespace NameBand.Output.Packet;

/// <summary>
/// A segment of strip at true size: cut edges, folds, the thread that will be seen, the alignment marks. One that is
/// longer than the paper is wide goes on in further rows, which overlap.
/// </summary>
internal sealed class StripPicture(PageFlow flow, StripPlan plan)
{
    private const double BesideMm = 4;
    private const double AboveMm = 3.6;
    private const double OverlapMm = 10;

    /// <summary>Drawn in hundredths of a millimetre, so that the file holds short whole numbers.</summary>
    private const float Fine = 100;

    // What is sewn under a letter is left out, and thread is drawn thinner than it is, so that single stitches show.
    private const float ThreadMm = 0.22f;

    /// <summary>Half the height that is shown; wider strips than a page can take are cut off above and below.</summary>
    private double HalfMm => Math.Min(Math.Max(plan.Hem.Strip.CutWidthMm / 2, Math.Abs(plan.MarkYMm) + 3) + BowMm, (flow.PageRoomMm - 60) / 2);

    /// <summary>How far the curved strip with the highest bow leaves its chord.</summary>
    private double BowMm => plan.Hem.IsCurved ? plan.Hoopings.SelectMany(h => h.Segments).Max(s => plan.FrameOf(s)!.Value.BowMm) : 0;

    private double RowMm => (2 * HalfMm) + AboveMm + 1.5;

    public double HeightMm(HoopedSegment hooped) => RowMm * Rows(hooped).Count();

    /// <param name="path">Null: only its room is taken.</param>
    public void Draw(NeedlePath? path, HoopedSegment hooped)
    {
        foreach (var (fromMm, toMm, goesOn) in Rows(hooped))
        {
            flow.Room(RowMm);
            if (path is not null)
            {
                DrawRow(path, hooped, fromMm, toMm, goesOn);
            }

            flow.YMm += RowMm;
        }
    }

    /// <summary>Parts of a hooping along its own x that fit the paper.</summary>
    private IEnumerable<(double FromMm, double ToMm, bool GoesOn)> Rows(HoopedSegment hooped)
    {
        double from = hooped.XMm - BesideMm;
        double end = hooped.XMm + plan.OnClothMm(hooped.Segment.LengthMm) + BesideMm;
        while (end - from > flow.WidthMm)
        {
            yield return (from, from + flow.WidthMm, true);
            from += flow.WidthMm - OverlapMm;
        }

        yield return (from, end, false);
    }

    private void DrawRow(NeedlePath path, HoopedSegment hooped, double fromMm, double toMm, bool goesOn)
    {
        var pages = flow.Pages;
        double top = flow.YMm + AboveMm;
        double middle = top + HalfMm;
        double left = PageFlow.LeftMm;
        double right = left + toMm - fromMm;
        var frame = plan.FrameOf(hooped);
        if (frame is { } bent)
        {
            Arcs(pages, bent, fromMm, toMm, middle);
        }
        else
        {
            Edges(pages, left, right, middle);
        }

        Numbers(pages, hooped, fromMm, toMm, top);
        var canvas = pages.Canvas;
        canvas.Save();
        canvas.ClipRect(new SKRect((float)left, (float)(middle - HalfMm), (float)right, (float)(middle + HalfMm)));
        canvas.Translate((float)(left - fromMm), (float)middle);
        canvas.Scale(1 / Fine, -1 / Fine);
        double reach = frame is null ? plan.Hem.Strip.CutWidthMm / 2 : double.PositiveInfinity;
        using (var seen = Lines(path, hooped, reach, marks: false))
        using (var thread = Ink.Full.Stroke(ThreadMm * Fine))
        {
            canvas.DrawPath(seen, thread);
        }

        using (var marks = Lines(path, hooped, reach, marks: true))
        using (var basting = Ink.Quiet.Stroke(0.4f * Fine))
        {
            canvas.DrawPath(marks, basting);
        }

        canvas.Restore();
        if (goesOn)
        {
            pages.TextRight(right, top - 0.8, "goes on below", 2.6, Ink.Quiet);
        }
    }

    private void Edges(SheetPages pages, double left, double right, double middle)
    {
        double cut = plan.Hem.Strip.CutWidthMm / 2;
        double fold = plan.Hem.Strip.FinishedWidthMm / 2;
        foreach (int side in new[] { -1, 1 })
        {
            if (cut <= HalfMm)
            {
                pages.Line(left, middle + (side * cut), right, middle + (side * cut), 0.15, Ink.Quiet);
            }

            if (fold > HalfMm)
            {
                continue;
            }

            using var paint = Ink.Quiet.Stroke(0.15);
            using var dashes = SKPathEffect.CreateDash([2.4f, 1.6f], 0);
            paint.PathEffect = dashes;
            float y = (float)(middle + (side * fold));
            pages.Canvas.DrawLine((float)left, y, (float)right, y, paint);
        }
    }

    /// <summary>The edges of a curved strip: cut whole, folds dashed, as short straight lines of 2 mm.</summary>
    private void Arcs(SheetPages pages, BentFrame frame, double fromMm, double toMm, double middle)
    {
        const double step = 2;
        foreach (var (y, isFold) in new[] { (plan.Hem.Strip.CutWidthMm / 2, false), (plan.Hem.Strip.FinishedWidthMm / 2, true) })
        {
            foreach (int side in new[] { -1, 1 })
            {
                for (double x = fromMm; x + step <= toMm; x += isFold ? 2 * step : step)
                {
                    double left = PageFlow.LeftMm + x - fromMm;
                    pages.Line(left, middle - frame.YAtMm(side * y, x), left + step, middle - frame.YAtMm(side * y, x + step), 0.15, Ink.Quiet);
                }
            }
        }
    }

    private void Numbers(SheetPages pages, HoopedSegment hooped, double fromMm, double toMm, double top)
    {
        foreach (var name in hooped.Segment.Names)
        {
            double middle = hooped.XMm + plan.OnClothMm(name.StartMm - hooped.Segment.StartMm) + (name.WidthMm / 2);
            if (middle > fromMm && middle < toMm)
            {
                string number = name.Order.ToString(CultureInfo.InvariantCulture);
                pages.Text(PageFlow.LeftMm + middle - fromMm - (pages.Face.WidthMm(number, 3) / 2), top - 0.7, number, 3, Ink.Quiet);
            }
        }
    }

    /// <summary>The stitches of one strip as lines, in hundredths of a millimetre.</summary>
    private static SKPath Lines(NeedlePath path, HoopedSegment hooped, double reachMm, bool marks)
    {
        var lines = new SKPathBuilder();
        bool isDown = false;
        var steps = path.Steps.AsSpan();
        for (int i = 1; i < steps.Length; i++)
        {
            var step = steps[i];
            bool isSeen = step.Action == NeedleAction.Stitch && (marks ? step.Kind == StitchKind.Mark : step.Kind is StitchKind.Satin or StitchKind.Running)
                && Math.Abs(step.At.YMm - hooped.YMm) <= reachMm;
            if (!isSeen)
            {
                isDown = false;
                continue;
            }

            if (!isDown)
            {
                lines.MoveTo(InFine(steps[i - 1].At, hooped));
            }

            lines.LineTo(InFine(step.At, hooped));
            isDown = true;
        }

        var drawn = lines.Detach();
        lines.Dispose();
        return drawn;
    }

    private static SKPoint InFine(Common.Point at, HoopedSegment hooped) =>
        new((float)Math.Round(at.XMm * Fine), (float)Math.Round((at.YMm - hooped.YMm) * Fine));
}
