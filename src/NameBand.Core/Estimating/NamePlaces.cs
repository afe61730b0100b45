using NameBand.Common;
using NameBand.Layout;

namespace NameBand.Estimating;

/// <summary>
/// Where the names of one hooping lie on its cloth, in the needle path's own coordinates, so that a stitch of a path,
/// whether just made or read back from a file, can be given to its name.
/// </summary>
internal sealed class NamePlaces
{
    private readonly List<(Box Box, int Order)> _places = [];

    public static NamePlaces Of(Hooping hooping, StripPlan plan)
    {
        var places = new NamePlaces();
        double half = plan.Hem.Strip.FinishedWidthMm / 2;
        foreach (var segment in hooping.Segments)
        {
            foreach (var name in segment.Segment.Names)
            {
                double left = segment.XMm + plan.OnClothMm(name.StartMm - segment.Segment.StartMm);
                places._places.Add((new Box(left, segment.YMm - half, left + name.WidthMm, segment.YMm + half), name.Order));
            }
        }

        return places;
    }

    /// <summary>Number of the name whose place holds the point; null beside all of them, as for an alignment mark.</summary>
    public int? OrderAt(Point at)
    {
        foreach (var (box, order) in _places)
        {
            if (at.XMm >= box.LeftMm - Slight && at.XMm <= box.RightMm + Slight && at.YMm >= box.BottomMm && at.YMm <= box.TopMm)
            {
                return order;
            }
        }

        return null;
    }

    private const double Slight = 0.01;
}
