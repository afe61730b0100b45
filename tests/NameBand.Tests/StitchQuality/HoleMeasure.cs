using NameBand.Common;
using NameBand.Stitching;

namespace NameBand.Tests.StitchQuality;

/// <summary>Crowding and load of the needle holes.</summary>
internal static class HoleMeasure
{
    private const double DiscMm = 1;

    /// <summary>Part of the holes (locks aside) with another within 0.25 mm; most holes (locks included) in a disc of 1 mm, per
    /// mm².</summary>
    public static (double Crowded, double Load) Of(NeedlePath path)
    {
        var all = new List<Point>();
        var plain = new List<Point>();
        foreach (var step in path.Steps)
        {
            if (step.Action == NeedleAction.Stitch && step.Kind != StitchKind.Mark)
            {
                all.Add(step.At);
                if (step.Kind != StitchKind.Lock)
                {
                    plain.Add(step.At);
                }
            }
        }

        int crowded = 0;
        for (int i = 0; i < plain.Count; i++)
        {
            for (int j = 0; j < plain.Count; j++)
            {
                if (i != j && plain[i].DistanceTo(plain[j]) < 0.25)
                {
                    crowded++;
                    break;
                }
            }
        }

        return (plain.Count == 0 ? 0 : (double)crowded / plain.Count, MostInADisc(all) / (Math.PI * DiscMm * DiscMm / 4));
    }

    private static int MostInADisc(List<Point> holes)
    {
        int most = 0;
        var near = new List<Point>();
        foreach (var hole in holes)
        {
            near.Clear();
            foreach (var other in holes)
            {
                if (Math.Abs(other.XMm - hole.XMm) < 1 && Math.Abs(other.YMm - hole.YMm) < 1)
                {
                    near.Add(other);
                }
            }

            for (int dx = -4; dx <= 4; dx += 2)
            {
                for (int dy = -4; dy <= 4; dy += 2)
                {
                    var centre = new Point(hole.XMm + (dx * 0.1), hole.YMm + (dy * 0.1));
                    int count = 0;
                    foreach (var other in near)
                    {
                        count += centre.DistanceTo(other) <= DiscMm / 2 ? 1 : 0;
                    }

                    most = Math.Max(most, count);
                }
            }
        }

        return most;
    }
}
