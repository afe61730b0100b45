using NameBand.Common;
using NameBand.Layout;

namespace NameBand.Stitching.Sewing;

/// <summary>
/// Two crosses of long loose stitches on the ruled line, as far apart as the segment allows, so that a hooping can
/// be set straight as well as in place.
/// </summary>
internal static class AlignmentMarks
{
    public static void Sew(HoopedSegment placed, StripPlan plan, PathWriter writer)
    {
        var (left, right) = plan.CrossesOf(placed);
        Cross(left, placed.Segment.MarkArmMm, writer);
        Cross(right, placed.Segment.MarkArmMm, writer);
    }

    /// <summary>A cross of two long stitches.</summary>
    public static void Cross(Point centre, double half, PathWriter writer)
    {
        writer.Trim(false);
        writer.JumpTo(centre with { XMm = centre.XMm - half }, StitchKind.Mark);
        writer.Stitch(centre with { XMm = centre.XMm + half }, StitchKind.Mark);
        writer.Stitch(centre, StitchKind.Mark);
        writer.Stitch(centre with { YMm = centre.YMm + half }, StitchKind.Mark);
        writer.Stitch(centre with { YMm = centre.YMm - half }, StitchKind.Mark);
    }
}
