using NameBand.Common;
using NameBand.Layout;

namespace NameBand.Estimating;

/// <summary>
/// Where the names of one hooping lie (a motif is counted with the name before it) on its cloth, in the needle path's own
/// coordinates, so that a stitch of a path,
/// whether just made or read back from a file, can be given to its name.
/// </summary>
internal sealed class NamePlaces
{
    private readonly List<(Box Box, int Order, (BentFrame Frame, Point At)? Bent)> _places = [];

    public static NamePlaces Of(Hooping hooping, StripPlan plan)
    {
        var places = new NamePlaces();
        double half = plan.Hem.Strip.FinishedWidthMm / 2;
        foreach (var segment in hooping.Segments)
        {
            (BentFrame, Point)? bent = plan.FrameOf(segment) is { } frame ? (frame, new Point(segment.XMm, segment.YMm)) : null;
            var (x, y) = bent is null ? (segment.XMm, segment.YMm) : (0, 0);
            foreach (var name in segment.Segment.Names)
            {
                double left = x + plan.OnClothMm(name.StartMm - segment.Segment.StartMm);
                places._places.Add((new Box(left, y - half, left + name.WidthMm, y + half), name.Order, bent));
            }
        }

        return places;
    }

    /// <summary>Number of the name whose place holds the point; null beside all of them, as for an alignment mark or a motif.</summary>
    public int? OrderAt(Point at)
    {
        var needle = at;
        (BentFrame, Point)? last = null;
        foreach (var (box, order, bent) in _places)
        {
            double slight = bent is null ? Tolerance.UnseenMm : TurnedMm;
            if (bent is { } own && bent != last)
            {
                var (along, y) = own.Frame.Unbent(needle - own.At);
                (at, last) = (new Point(along, y), bent);
            }

            if (at.XMm >= box.LeftMm - slight && at.XMm <= box.RightMm + slight && at.YMm >= box.BottomMm && at.YMm <= box.TopMm)
            {
                return order;
            }
        }

        return null;
    }

    /// <summary>A letter that is turned and not bent may lean out of its place at its top by so much; gaps are wider.</summary>
    private const double TurnedMm = 1;
}
