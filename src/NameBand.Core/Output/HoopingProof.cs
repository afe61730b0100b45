using System.Globalization;
using NameBand.Common;
using NameBand.Estimating;
using NameBand.Layout;
using NameBand.Output.Drawing;
using NameBand.PlanFile;
using NameBand.Stitching;

namespace NameBand.Output;

/// <summary>
/// Draws one hooping at true scale: the cloth in the field with the strip's lines, the thread as it will lie, the
/// alignment marks, the field's corners, and a tape that reads the place on the flat strip.
/// </summary>
internal static class HoopingProof
{
    /// <summary>A thread of 0.40 mm is three pixels wide, so that each can be told from the next: 203 dots an inch.</summary>
    public const double PixelsPerMm = 8;

    private const double AroundMm = 5; // Cloth about the field, so that its corners stand free.
    private const double CaptionMm = 2.3; // Capitals: with lines 4.6 mm apart they are read at arm's length when printed.

    /// <param name="path">The hooping's needle path.</param>
    public static void Draw(
        Stream png, StripPlan plan, Hooping hooping, NeedlePath path, HoopingFigures figures, ProofLook look)
    {
        var (face, threadMm, sewnBeforeCutting) = look;
        var field = HoopField.Of(plan, hooping);
        double reach = plan.Hem.Strip.CutWidthMm / 2;
        var frame = plan.FrameOf(hooping.Segments[0]);
        double bow = frame?.BowMm ?? 0;
        double top = Math.Max(field.TopMm, hooping.Segments.Max(s => s.YMm) + reach + bow) + 4;
        double bottom = Math.Min(field.BottomMm, hooping.Segments.Min(s => s.YMm) - reach - bow) - 4;
        double left = field.LeftMm - AroundMm;
        double width = field.WidthMm + (2 * AroundMm);
        Said[] clip = figures.IsCutByHand ? [ThreadsToClip.InWords(path, hooping.OnClothMm)] : [];
        string[] words = [.. Words(plan, hooping, figures).Concat(clip).Select(w => w.ToString())];
        var caption = CaptionLines.Wrap(words, face, (int)(CaptionMm * PixelsPerMm), (width - 8) * PixelsPerMm);
        double captionHeight = 3 + (caption.Count * 4.6);
        var page = new ProofPage(left, top + TapeMeasure.WidthMm, width, top + TapeMeasure.WidthMm - bottom + captionHeight, PixelsPerMm)
        {
            InWords = string.Join("; ", words),
            Palette = ThreadSections.Dyes(plan, hooping),
        };

        page.Write(png, picture =>
        {
            var on = new ProofCanvas(picture, page, face);
            if (frame is not null)
            {
                BentHooping.Draw(on, plan, hooping, bottom, top + TapeMeasure.WidthMm, sewnBeforeCutting);
                DrawField(picture, page, field);
            }
            else
            {
                DrawStraight(on, plan, hooping, bottom, top, sewnBeforeCutting);
            }

            var steps = path.Steps.AsSpan();
            ThreadSections.Draw(picture, (plan, hooping), steps, (page.X(0), page.Y(0)), threadMm);
            ThreadLayer.Draw(picture, steps, (page.X(0), page.Y(0)), ThreadKinds.Marks, (Palette.MarkAt, Palette.MarkShades));
            DrawCrosses(picture, page, plan, hooping);
            if (figures.IsCutByHand)
            {
                DrawThreadsToClip(picture, page, path);
            }

            DrawCaption(on, caption, bottom);
        });
    }

    private static void DrawStraight(ProofCanvas on, StripPlan plan, Hooping hooping, double bottom, double top, bool sewnBeforeCutting)
    {
        var field = HoopField.Of(plan, hooping);
        var (picture, page, _) = on;
        DrawCloth(on, plan, hooping, bottom, top, sewnBeforeCutting);
        DrawField(picture, page, field);
        DrawLabels(on, plan, hooping, field, sewnBeforeCutting);
        double zero = -hooping.OnClothMm;
        TapeMeasure.Draw(on, top, zero, page.LeftMm - zero, page.LeftMm + page.WidthMm - zero);
        DrawPlaces(on, plan, hooping, top);
        DrawNames(on, plan, hooping);
    }

    private static void DrawCloth(ProofCanvas on, StripPlan plan, Hooping hooping, double bottom, double top, bool sewnBeforeCutting)
    {
        var (picture, page, _) = on;
        double right = page.LeftMm + page.WidthMm;
        ClothWeave.At(page.PixelsPerMm).Lay(
            picture, 0, page.Y(top), picture.Width, page.Y(bottom), sewnBeforeCutting ? Palette.WasteAt : Palette.TableAt);
        foreach (var hooped in hooping.Segments)
        {
            StripDrawing.Cloth(picture, page, plan.Hem.Strip, hooped.YMm, (page.LeftMm, right));
        }

        foreach (var hooped in hooping.Segments)
        {
            StripDrawing.Lines(picture, page, plan.Hem.Strip, hooped.YMm, (page.LeftMm, right), sewnBeforeCutting);
        }
    }

    /// <summary>The field's corners, and a short line at the middle of each side.</summary>
    internal static void DrawField(IndexedBitmap picture, ProofPage page, Common.Box field)
    {
        const double arm = 7; // Of a corner's mark, in mm: seen, and clear of the names.
        double thick = page.Px(0.35);
        foreach (int side in new[] { -1, 1 })
        {
            double x = page.X(side < 0 ? field.LeftMm : field.RightMm);
            foreach (int end in new[] { -1, 1 })
            {
                double y = page.Y(end < 0 ? field.BottomMm : field.TopMm);
                picture.Level(Math.Min(x, x - (side * page.Px(arm))), Math.Max(x, x - (side * page.Px(arm))), y, thick, Palette.Madder);
                picture.Upright(x, Math.Min(y, y + (end * page.Px(arm))), Math.Max(y, y + (end * page.Px(arm))), thick, Palette.Madder);
            }

            double middleY = page.Y((field.BottomMm + field.TopMm) / 2);
            picture.Level(Math.Min(x, x - (side * page.Px(2.5))), Math.Max(x, x - (side * page.Px(2.5))), middleY, thick, Palette.Madder);
            double middleX = page.X((field.LeftMm + field.RightMm) / 2);
            double edge = page.Y(side < 0 ? field.BottomMm : field.TopMm);
            picture.Upright(
                middleX, Math.Min(edge, edge + (side * page.Px(2.5))), Math.Max(edge, edge + (side * page.Px(2.5))), thick, Palette.Madder);
        }
    }

    /// <summary>Says which line is which.</summary>
    private static void DrawLabels(ProofCanvas on, StripPlan plan, Hooping hooping, Common.Box field, bool sewnBeforeCutting)
    {
        var (picture, page, face) = on;
        int cap = page.CapPx(1.5);
        double right = picture.Width - page.Px(1.2);
        double above = page.Px(0.9);
        Said edge = sewnBeforeCutting ? "cut here" : "cut edge", folded = "fold, finished edge", sewing = "sewing field";
        foreach (var hooped in hooping.Segments)
        {
            double cut = page.Y(hooped.YMm + (plan.Hem.Strip.CutWidthMm / 2));
            double fold = page.Y(hooped.YMm + (plan.Hem.Strip.FinishedWidthMm / 2));
            face.Set(picture, edge.ToString(), (right, cut - above), cap, Palette.Ink, 1);
            face.Set(picture, folded.ToString(), (right, fold - above), cap, Palette.Ink, 1);
        }

        var strips = StripWords.FromAbove(hooping);
        for (int i = 0; i < strips.Count; i++)
        {
            // Words that say nothing are not set: one strip alone is neither upper nor lower.
            face.Set(
                picture, StripWords.Of(i, strips.Count).ToString(),
                (page.Px(1.2), page.Y(strips[i].YMm + (plan.Hem.Strip.FinishedWidthMm / 2)) - above), cap, Palette.Ink);
        }

        face.Set(picture, sewing.ToString(), (page.X(field.LeftMm + 8.5), page.Y(field.TopMm) + (cap / 2.0)), cap, Palette.Madder);
    }

    /// <summary>Drops a line from the tape to each end of each segment and writes its place on the cloth beside it.</summary>
    private static void DrawPlaces(ProofCanvas on, StripPlan plan, Hooping hooping, double top)
    {
        var (picture, page, face) = on;
        int cap = page.CapPx(1.7);
        double reach = plan.Hem.Strip.CutWidthMm / 2;
        double fold = plan.Hem.Strip.FinishedWidthMm / 2;
        var strips = StripWords.FromAbove(hooping);
        foreach (var hooped in strips)
        {
            // One tape for all, for they lie on one cloth; only the upper strip's figures stand beside it.
            bool isUpper = hooped == strips[0];
            double highest = isUpper ? top : hooped.YMm + reach;
            double figures = isUpper ? top - 3.2 : hooped.YMm + fold + 4.2;
            foreach (double x in new[] { hooped.XMm, hooped.XMm + plan.OnClothMm(hooped.Segment.LengthMm) })
            {
                bool isStart = x == hooped.XMm;
                picture.Upright(
                    page.X(x), page.Y(highest), page.Y(hooped.YMm - reach), Math.Max(1, page.Px(0.12)),
                    new Ink(Palette.Madder, 0.6, page.Px(0.8)));
                Said place = $"{hooping.OnClothMm + x:0.0}";
                face.Set(
                    picture, place.ToString(), (page.X(x) + (isStart ? page.Px(0.8) : -page.Px(0.8)), page.Y(figures)), cap, Palette.Madder,
                    isStart ? 0 : 1);
            }
        }
    }

    /// <summary>Ticks on the finished edge where each name begins and ends, with its number: the lower one, and the upper one for
    /// an upper line.</summary>
    private static void DrawNames(ProofCanvas on, StripPlan plan, Hooping hooping)
    {
        var (picture, page, face) = on;
        int cap = page.CapPx(2.1);
        double hair = Math.Max(1, page.Px(0.16));
        foreach (var hooped in hooping.Segments)
        {
            foreach (var name in hooped.Segment.Names)
            {
                int side = name.Line == 1 ? 1 : -1;
                double edge = hooped.YMm + (side * plan.Hem.Strip.FinishedWidthMm / 2);
                double inside = edge - (side * 1.6);
                var (top, bottom) = (page.Y(Math.Max(edge, inside)), page.Y(Math.Min(edge, inside)));
                double start = hooped.XMm + plan.OnClothMm(name.StartMm - hooped.Segment.StartMm);
                double end = start + name.WidthMm;
                picture.Upright(page.X(start), top, bottom, hair, new Ink(Palette.Ink, 0.8));
                picture.Upright(page.X(end), top, bottom, hair, new Ink(Palette.Ink, 0.8));
                string number = name.Order.ToString(CultureInfo.InvariantCulture);
                face.Set(
                    picture, number, (page.X((start + end) / 2), page.Y(edge + (side * 1.4)) + (side < 0 ? cap : 0)), cap, Palette.Ink,
                    0.5);
            }
        }
    }

    /// <summary>Crosses that no needle sews: in pencil on the cloth, or on the template that this proof is.</summary>
    private static void DrawCrosses(IndexedBitmap picture, ProofPage page, StripPlan plan, Hooping hooping)
    {
        double thick = page.Px(0.25);
        foreach (var hooped in plan.AreMarksMet(hooping) ? hooping.Segments : [])
        {
            double arm = hooped.Segment.MarkArmMm;
            var (left, right) = plan.CrossesOf(hooped);
            foreach (var at in new[] { left, right })
            {
                picture.Level(page.X(at.XMm - arm), page.X(at.XMm + arm), page.Y(at.YMm), thick, Palette.Ink);
                picture.Upright(page.X(at.XMm), page.Y(at.YMm + arm), page.Y(at.YMm - arm), thick, Palette.Ink);
            }
        }
    }

    /// <summary>A tick at each end of each: there it is clipped.</summary>
    private static void DrawThreadsToClip(IndexedBitmap picture, ProofPage page, NeedlePath path)
    {
        foreach (var (from, to) in ThreadsToClip.Of(path))
        {
            foreach (var at in new[] { from, to })
            {
                picture.Upright(page.X(at.XMm), page.Y(at.YMm + 1.2), page.Y(at.YMm - 1.2), page.Px(0.3), Palette.Madder);
            }
        }
    }

    private static void DrawCaption(ProofCanvas on, IReadOnlyList<string> lines, double bottom)
    {
        var (picture, page, _) = on;
        picture.Fill(0, page.Y(bottom), picture.Width, page.HeightPx, Palette.TableAt + 9);
        picture.Level(0, picture.Width, page.Y(bottom), Math.Max(1, page.Px(0.15)), new Ink(Palette.Ink, 0.5));
        for (int i = 0; i < lines.Count; i++)
        {
            CaptionLines.Set(on, lines[i], page.Y(bottom - 4.6 - (i * 4.6)), (int)(CaptionMm * PixelsPerMm), Palette.Ink);
        }
    }

    private static IEnumerable<Said> Words(StripPlan plan, Hooping hooping, HoopingFigures figures)
    {
        yield return $"hooping {hooping.Number}";
        yield return $"mark {SheetMarks.Of(plan, hooping)}";
        if (hooping.Frame is { } smaller)
        {
            yield return $"in the frame “{smaller.Name}”";
        }

        var strips = StripWords.FromAbove(hooping);
        for (int i = 0; i < strips.Count; i++)
        {
            var segment = strips[i].Segment;
            var which = StripWords.Of(i, strips.Count);
            yield return which.IsEmpty ? (Said)$"round {strips[i].Round.Number}" : $"{which}, round {strips[i].Round.Number}";
            yield return $"cloth {hooping.Cloth}: {StripPlan.OnClothMm(hooping, strips[i]):0.0} to {plan.EndOnClothMm(hooping, strips[i]):0.0} mm";
            yield return segment.Names.Length switch
            {
                0 => "no name",
                1 => (Said)$"name {segment.Names[0].Order}",
                _ => $"names {segment.Names[0].Order} to {segment.Names[^1].Order}",
            };
        }

        for (int i = 0; i < strips.Count && plan.Hem.IsCurved; i++)
        {
            yield return BentHooping.Words(plan, hooping, strips[i], StripWords.Of(i, strips.Count));
        }

        bool isLikeness = Likeness.IsIn(hooping.Segments.SelectMany(s => s.Segment.Names));
        Said stitches = Wording.Count(figures.Stitches, "stitch", "stitches");
        yield return isLikeness ? (Said)$"about {stitches}" : stitches;
        yield return $"{Thousandths.Tenths(figures.MachineMinutes):0.0} min";
        yield return "true size";
        if (isLikeness)
        {
            yield return Likeness.OnProofs;
        }
    }
}
