using NameBand.Common;
using NameBand.Layout;

namespace NameBand.Output;

/// <summary>Where the sewing field lies about a hooping's segments: its middle on theirs.</summary>
public static class HoopField
{
    /// <summary>The field in the coordinates of the hooping's needle path.</summary>
    public static Box Of(StripPlan plan, Hooping hooping)
    {
        if (hooping.Segments.Length == 1 && plan.FrameOf(hooping.Segments[0]) is { } frame)
        {
            return About(plan.FieldOf(hooping), frame.ChordMm / 2, frame.MiddleYMm);
        }

        if (hooping.Segments.Length > 1 && plan.Hem.IsCurved)
        {
            var box = hooping.Segments.Aggregate(Box.Empty, (all, s) => all.Include(plan.FrameOf(s)!.Value.Reach(
                plan.OnClothMm(s.Segment.LengthMm), plan.Hem.Strip.SewingZoneMm / 2, plan.MarkYMm - s.Segment.MarkArmMm)
                    .Moved(new Point(s.XMm, s.YMm))));
            return About(plan.FieldOf(hooping), (box.LeftMm + box.RightMm) / 2, (box.BottomMm + box.TopMm) / 2);
        }

        double x = (hooping.Segments.Min(s => s.XMm) + hooping.Segments.Max(s => s.XMm + plan.OnClothMm(s.Segment.LengthMm))) / 2;
        double y = (hooping.Segments.Min(s => s.YMm) + hooping.Segments.Max(s => s.YMm)) / 2;
        return About(plan.FieldOf(hooping), x, y);
    }

    private static Box About((double AlongMm, double AcrossMm) field, double x, double y) =>
        new(x - (field.AlongMm / 2), y - (field.AcrossMm / 2), x + (field.AlongMm / 2), y + (field.AcrossMm / 2));
}
