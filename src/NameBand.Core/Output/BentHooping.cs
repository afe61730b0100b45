using System.Globalization;
using NameBand.Common;
using NameBand.Layout;
using NameBand.Output.Drawing;

namespace NameBand.Output;

/// <summary>What a hooping's proof shows of a curved strip, in place of the straight lines and the straight tape.</summary>
internal static class BentHooping
{
    public static void Draw(ProofCanvas on, StripPlan plan, Hooping hooping, double bottom, double top, bool sewnBeforeCutting)
    {
        var (picture, page, face) = on;
        ClothWeave.At(page.PixelsPerMm).Lay(
            picture, 0, page.Y(top), picture.Width, page.Y(bottom), sewnBeforeCutting ? Palette.WasteAt : Palette.TableAt);
        var strips = hooping.Segments.Select(s => (Hooped: s, Page: page.From(s.XMm, s.YMm)))
            .Select(s => (s.Hooped, s.Page, Bent: new BentStrip(picture, s.Page, plan.Hem.Strip, plan.FrameOf(s.Hooped)!.Value))).ToList();
        strips.ForEach(s => s.Bent.Cloth());
        foreach (var (hooped, own, bent) in strips)
        {
            bent.Lines(sewnBeforeCutting);
            bent.Tape(face, StripPlan.OnClothMm(hooping, hooped));
            if (hooping.HasNeedlePath)
            {
                RuledLine(new ProofCanvas(picture, own, face), plan, hooped, bent);
            }

            Numbers(new ProofCanvas(picture, own, face), plan, hooped);
        }
    }

    private static void Numbers(ProofCanvas on, StripPlan plan, HoopedSegment hooped)
    {
        var (picture, page, face) = on;
        var frame = plan.FrameOf(hooped)!.Value;
        foreach (var name in hooped.Segment.Names)
        {
            double middle = plan.OnClothMm(name.StartMm - hooped.Segment.StartMm) + (name.WidthMm / 2);
            double edge = plan.Hem.Strip.FinishedWidthMm / 2;
            var at = frame.At(middle, frame.Curve.CentreIsAbove ? edge : -edge);
            double y = page.Y(at.YMm) + (frame.Curve.CentreIsAbove ? -page.Px(1.2) : page.Px(1.2) + page.CapPx(2.1));
            face.Set(picture, name.Order.ToString(CultureInfo.InvariantCulture), (page.X(at.XMm), y), page.CapPx(2.1), Palette.Ink, 0.5);
        }
    }

    /// <summary>Crosses stand on it; what is typed has none.</summary>
    private static void RuledLine(ProofCanvas on, StripPlan plan, HoopedSegment hooped, BentStrip bent)
    {
        var (picture, page, face) = on;
        var frame = plan.FrameOf(hooped)!.Value;
        bent.RuledLine(plan.RuledLineYMm(hooped));
        int cap = page.CapPx(1.5);
        Said rule = "the dashed red line through the crosses is the one to rule";
        face.Set(
            picture, rule.ToString(),
            (page.X(frame.ChordMm / 2), page.Y(frame.YAtMm(-plan.Hem.Strip.CutWidthMm / 2, frame.ChordMm / 2)) + cap + page.Px(2)), cap,
            Palette.Madder, 0.5);
    }

    public static Said Words(StripPlan plan, Hooping hooping, HoopedSegment hooped, Said which)
    {
        var frame = plan.FrameOf(hooped)!.Value;
        double radius = plan.Hem.RadiusMm(hooped.Round.Number);
        Said curve = which.IsEmpty ? (Said)$"curved, radius {radius:0} mm" : $"{which}, curved, radius {radius:0} mm";
        double off = frame.MarkBowMm(plan.MarkYMm, hooped.Segment.MarkArmMm);
        return hooping.HasNeedlePath
            ? (Said)$"{curve}; between the marks the arc is {off:0.0} mm off the ruled line; tape along the lower edge"
            : $"{curve}; tape along the lower edge";
    }
}
