using NameBand.Common;
using NameBand.Layout;

namespace NameBand.Estimating;

/// <summary>
/// Where the names of one hooping lie (a motif is counted with the name before it) on its cloth, in the needle path's own coordinates, so that a stitch of a path,
/// whether just made or read back from a file, can be given to its name.
/// </summary>
internal sealed class NamePlaces
{
    private readonly List<(Box Box, int Order)> _places = [];

    private BentFrame? _frame;

    public static NamePlaces Of(Hooping hooping, StripPlan plan)
    {
        var places = new NamePlaces();
        double half = plan.Hem.Strip.FinishedWidthMm / 2;
        foreach (var segment in hooping.Segments)
        {
            places._frame = plan.FrameOf(segment);
            foreach (var name in segment.Segment.Names)
            {
                double left = segment.XMm + plan.OnClothMm(name.StartMm - segment.Segment.StartMm);
                places._places.Add((new Box(left, segment.YMm - half, left + name.WidthMm, segment.YMm + half), name.Order));
            }
        }

        return places;
    }

    /// <summary>Number of the name whose place holds the point; null beside all of them, as for an alignment mark or a motif.</summary>
    public int? OrderAt(Point at)
    {
        if (_frame is { } frame)
        {
            var (along, y) = frame.Unbent(at);
            at = new Point(along, y);
        }

        double slight = _frame is null ? Slight : TurnedMm;
        foreach (var (box, order) in _places)
        {
            if (at.XMm >= box.LeftMm - slight && at.XMm <= box.RightMm + slight && at.YMm >= box.BottomMm && at.YMm <= box.TopMm)
            {
                return order;
            }
        }

        return null;
    }

    private const double Slight = 0.01;

    /// <summary>A letter that is turned and not bent may lean out of its place at its top by so much; gaps are wider.</summary>
    private const double TurnedMm = 1;
}
