using System.Globalization;
using NameBand.Job;
using NameBand.Layout;
using NameBand.Output.Sheets;
using NameBand.Stitching;
using SkiaSharp;

namespace NameBand.Output.Packet;

/// <summary>
/// A hooping at true size, whole and as it lies: every strip in it at its own place, the upper one above, with cut
/// edges, folds, the thread that will be seen, the marks, and the centimetres of its cloth. One that is longer than the
/// paper is wide goes on in further rows, which overlap.
/// </summary>
internal sealed class HoopingPicture(PageFlow flow, StripPlan plan)
{
    private const double BesideMm = 4; // Cloth beside the first and the last mark.
    private const double TapeMm = 5.4; // Of the centimetres above: type of 2.4 mm and the marks.
    private const double OverlapMm = 10; // A name's first letters stand in both rows, so that one finds the place again.
    private const double NumberMm = 3.2; // Of the names: smaller than the marks, larger than the tape's.

    /// <summary>By which a curved strip's ends may stand out beside its segment.</summary>
    private const double RimMm = 1;

    /// <summary>Drawn in hundredths of a millimetre, so that the file holds short whole numbers.</summary>
    private const float Fine = 100;

    // What is sewn under a letter is left out, and thread is drawn thinner than it is, so that single stitches show.
    private const float ThreadMm = 0.22f;

    public double HeightMm(Hooping hooping) => RowMm(hooping) * Rows(hooping).Count();

    /// <summary>Whether type of this size fits beyond the marks and above the fold of every strip, which is drawn in one row.</summary>
    public bool HasRoomInTurnIns(Hooping hooping, double sizeMm)
    {
        double half = plan.Hem.Strip.CutWidthMm / 2;
        double beyondMarks = hooping.Segments.Max(s => Math.Abs(plan.MarkYMm) + s.Segment.MarkArmMm);
        return !plan.Hem.IsCurved && plan.LineStepMm <= 0 && plan.MarkYMm < 0 && AboveMm(hooping) >= half && Rows(hooping).Count() == 1
            && half - beyondMarks >= sizeMm * 1.3 && plan.Hem.Strip.TurnInMm >= NumberMm * 1.5;
    }

    /// <summary>The line of type under a strip's marks, from the picture's top.</summary>
    public double BelowMarksMm(Hooping hooping, HoopedSegment hooped, double sizeMm) =>
        TapeMm + AboveMm(hooping) + HighestMm(hooping) - hooped.YMm + (plan.Hem.Strip.CutWidthMm / 2) - (sizeMm * 0.6);

    /// <param name="path">Null: only its room is taken.</param>
    /// <param name="withNames">Names stand in type with their numbers.</param>
    public void Draw(NeedlePath? path, Hooping hooping, bool withNames = false)
    {
        foreach (var (fromMm, toMm, goesOn) in Rows(hooping))
        {
            flow.Room(RowMm(hooping));
            if (path is not null)
            {
                flow.Pages.AsItLies(() => DrawRow(path, hooping, (fromMm, toMm, goesOn), withNames));
            }

            flow.YMm += RowMm(hooping);
        }
    }

    private static double HighestMm(Hooping hooping) => hooping.Segments.Max(s => s.YMm);

    private static double SpanMm(Hooping hooping) => HighestMm(hooping) - hooping.Segments.Min(s => s.YMm);

    /// <summary>What is shown of a strip above its line; more than a page can take is cut off.</summary>
    private double AboveMm(Hooping hooping) => OnSideMm(hooping, hangs: false);

    private double BelowMm(Hooping hooping) => OnSideMm(hooping, hangs: true);

    /// <summary>A curved strip leaves its chord to one side alone: it hangs below it where it is read from outside.</summary>
    private double OnSideMm(Hooping hooping, bool hangs) => Math.Min(
        Math.Max(plan.Hem.Strip.CutWidthMm / 2, Math.Abs(plan.MarkYMm) + 3)
        + (!plan.Hem.IsCurved ? 0 : hangs == (plan.Hem.ReadBy == Reader.Viewer) ? BowMm : RimMm),
        Math.Max(10, (flow.PageRoomMm - 60 - SpanMm(hooping)) / 2));

    /// <summary>How far the curved strip with the highest bow leaves its chord.</summary>
    private double BowMm => plan.Hem.IsCurved ? plan.Hoopings.SelectMany(h => h.Segments).Max(s => plan.FrameOf(s)!.Value.BowMm) : 0;

    /// <summary>Room for the tape, which a curved strip has not.</summary>
    private double OverMm => plan.Hem.IsCurved ? RimMm : TapeMm;

    private double RowMm(Hooping hooping) => AboveMm(hooping) + BelowMm(hooping) + SpanMm(hooping) + OverMm + 1.5;

    /// <summary>Parts of a hooping along its own x that fit the paper.</summary>
    private IEnumerable<(double FromMm, double ToMm, bool GoesOn)> Rows(Hooping hooping)
    {
        double from = hooping.Segments.Min(s => s.XMm) - BesideMm;
        double end = hooping.Segments.Max(s => s.XMm + plan.OnClothMm(s.Segment.LengthMm)) + BesideMm;
        while (end - from > flow.WidthMm)
        {
            yield return (from, from + flow.WidthMm, true);
            from += flow.WidthMm - OverlapMm;
        }

        yield return (from, end, false);
    }

    private void DrawRow(NeedlePath path, Hooping hooping, (double FromMm, double ToMm, bool GoesOn) row, bool withNames)
    {
        var (fromMm, toMm, goesOn) = row;
        var pages = flow.Pages;
        double top = flow.YMm + OverMm;
        double half = AboveMm(hooping);
        double left = PageFlow.LeftMm;
        double right = left + toMm - fromMm;
        double zero = top + half + HighestMm(hooping);
        double bottom = zero - hooping.Segments.Min(s => s.YMm) + BelowMm(hooping);
        Tape(pages, hooping, fromMm, toMm, top, goesOn);
        foreach (var hooped in hooping.Segments)
        {
            double middle = zero - hooped.YMm;
            if (plan.FrameOf(hooped) is { } bent)
            {
                Arcs(pages, bent, (fromMm, toMm), hooped.XMm, middle);
            }
            else
            {
                Edges(pages, left, right, middle, half);
            }

            Numbers(pages, hooped, (fromMm, toMm), (middle, half), withNames);
        }

        var canvas = pages.Canvas;
        canvas.Save();
        canvas.ClipRect(new SKRect((float)left, (float)top, (float)right, (float)bottom));
        canvas.Translate((float)(left - fromMm), (float)zero);
        canvas.Scale(1 / Fine, -1 / Fine);
        using (var seen = Lines(path, marks: false))
        using (var thread = Ink.Full.Stroke(ThreadMm * Fine))
        {
            canvas.DrawPath(seen, thread);
        }

        using (var marks = Lines(path, marks: true))
        using (var basting = Ink.Quiet.Stroke(0.4f * Fine))
        {
            canvas.DrawPath(marks, basting);
        }

        DrawCrosses(canvas, hooping);
        canvas.Restore();
    }

    /// <summary>Crosses that no needle sews, where they are drawn or laid on.</summary>
    private void DrawCrosses(SKCanvas canvas, Hooping hooping)
    {
        using var pencil = Ink.Quiet.Stroke(0.25f * Fine);
        foreach (var hooped in plan.AreMarksMet(hooping) ? hooping.Segments : [])
        {
            double arm = hooped.Segment.MarkArmMm;
            var (left, right) = plan.CrossesOf(hooped);
            foreach (var at in new[] { left, right })
            {
                canvas.DrawLine(InFine(new(at.XMm - arm, at.YMm)), InFine(new(at.XMm + arm, at.YMm)), pencil);
                canvas.DrawLine(InFine(new(at.XMm, at.YMm - arm)), InFine(new(at.XMm, at.YMm + arm)), pencil);
            }
        }
    }

    /// <summary>The centimetres of the piece of cloth, from its cut left end; every fifth has its number.</summary>
    private void Tape(SheetPages pages, Hooping hooping, double fromMm, double toMm, double top, bool goesOn)
    {
        if (goesOn)
        {
            pages.TextRight(PageFlow.LeftMm + toMm - fromMm, top - 3.4, "goes on below", 2.4, Ink.Quiet);
        }

        if (plan.Hem.IsCurved)
        {
            return;
        }

        double left = PageFlow.LeftMm - fromMm - hooping.OnClothMm;
        for (int cm = (int)Math.Ceiling((fromMm + hooping.OnClothMm) / 10); cm * 10 <= toMm + hooping.OnClothMm; cm++)
        {
            double x = left + (cm * 10);
            bool isNumbered = cm % 5 == 0;
            pages.Line(x, top - (isNumbered ? 2 : 1.1), x, top, 0.12, Ink.Quiet);
            if (isNumbered)
            {
                string number = cm.ToString(CultureInfo.InvariantCulture);
                pages.Put(x - (pages.Face.WidthMm(number, 2.4) / 2), top - 2.5, number, 2.4, Ink.Quiet);
            }
        }
    }

    private void Edges(SheetPages pages, double left, double right, double middle, double half)
    {
        double cut = plan.Hem.Strip.CutWidthMm / 2;
        double fold = plan.Hem.Strip.FinishedWidthMm / 2;
        foreach (int side in new[] { -1, 1 })
        {
            if (cut <= half)
            {
                pages.Line(left, middle + (side * cut), right, middle + (side * cut), 0.15, Ink.Quiet);
            }

            if (fold > half)
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
    /// <param name="xMm">Where the segment's left end lies.</param>
    private void Arcs(SheetPages pages, BentFrame frame, (double FromMm, double ToMm) row, double xMm, double middle)
    {
        const double step = 2; // In mm, of a dashed line: as long as its gap.
        foreach (var (y, isFold) in new[] { (plan.Hem.Strip.CutWidthMm / 2, false), (plan.Hem.Strip.FinishedWidthMm / 2, true) })
        {
            foreach (int side in new[] { -1, 1 })
            {
                for (double x = row.FromMm; x + step <= row.ToMm; x += isFold ? 2 * step : step)
                {
                    double left = PageFlow.LeftMm + x - row.FromMm;
                    pages.Line(left, middle - frame.YAtMm(side * y, x - xMm), left + step, middle - frame.YAtMm(side * y, x + step - xMm),
                        0.15, Ink.Quiet);
                }
            }
        }
    }

    /// <summary>The names' numbers, in the turn-in above their own strip where it has room for them; those of a lower line below
    /// it.</summary>
    private void Numbers(
        SheetPages pages, HoopedSegment hooped, (double FromMm, double ToMm) row, (double Y, double HalfMm) middle, bool withNames)
    {
        var (fromMm, toMm) = row;
        double cut = Math.Min(plan.Hem.Strip.CutWidthMm / 2, middle.HalfMm);
        double over = cut - NumberMm - (plan.Hem.Strip.TurnInMm >= NumberMm + 1 ? 0.8 : -NumberMm);
        var bent = plan.FrameOf(hooped);
        foreach (var name in hooped.Segment.Names)
        {
            double along = plan.OnClothMm(name.StartMm - hooped.Segment.StartMm) + (name.WidthMm / 2);
            double above = name.Line == 2 ? -over - NumberMm : over;
            // On a strip cut to the curve the number follows the arc, as its edges do.
            var stand = bent?.At(along, above) ?? new Common.Point(along, above);
            double at = hooped.XMm + stand.XMm;
            if (at > fromMm && at < toMm)
            {
                string number = name.Order.ToString(CultureInfo.InvariantCulture) + (withNames ? "\u00a0" + name.Lettered.Name.Text : "");
                double left = PageFlow.LeftMm + at - fromMm - (pages.Face.WidthMm(number, NumberMm) / 2);
                pages.Put(left, middle.Y - stand.YMm, number, NumberMm, withNames ? Ink.Full : Ink.Quiet);
            }
        }
    }

    /// <summary>The stitches of the hooping as lines, in hundredths of a millimetre.</summary>
    private static SKPath Lines(NeedlePath path, bool marks)
    {
        var lines = new SKPathBuilder();
        bool isDown = false;
        var steps = path.Steps.AsSpan();
        for (int i = 1; i < steps.Length; i++)
        {
            var step = steps[i];
            bool isSeen = step.Action == NeedleAction.Stitch
                && (marks ? step.Kind == StitchKind.Mark : step.Kind is StitchKind.Satin or StitchKind.Running);
            if (!isSeen)
            {
                isDown = false;
                continue;
            }

            if (!isDown)
            {
                lines.MoveTo(InFine(steps[i - 1].At));
            }

            lines.LineTo(InFine(step.At));
            isDown = true;
        }

        var drawn = lines.Detach();
        lines.Dispose();
        return drawn;
    }

    private static SKPoint InFine(Common.Point at) => new((float)Math.Round(at.XMm * Fine), (float)Math.Round(at.YMm * Fine));
}
