using System.Collections.Immutable;

namespace NameBand.Stitching.Sewing;

/// <summary>
/// A dot or an accent within reach of the letter's largest part may be sewn on the way through that: its underlay up, the
/// dot, its satin back. The thread between the two then lies double, but nothing is cut.
/// </summary>
internal static class Excursions
{
    /// <summary>The parts of a piece, those in reach of the largest one sewn with it; empty when none is.</summary>
    public static ImmutableArray<SewnPart> Together(
        ImmutableArray<SewnPart> parts, List<(int Part, PartWays Ways)> satin, Func<SewnRun, NeedleStep[]> finish, double threadMm)
    {
        var host = satin.MaxBy(s => s.Ways.Columns.Sum(c => c.Length));
        var guests = new List<Guest>();
        var others = new List<SewnPart>();
        double seen = 0;
        for (int i = 0; i < parts.Length; i++)
        {
            if (i == host.Part)
            {
                continue;
            }

            if (satin.FirstOrDefault(s => s.Part == i).Ways is { } ways && Link(host.Ways, ways) is var (guest, gap)
                && JoinSight.Within(finish(host.Ways.Sew(null, host.Ways.Out[0], [guest])), threadMm) <= SewingSettings.UsualLongestJoinMm)
            {
                guests.Add(guest);
                seen += gap;
            }
            else
            {
                others.Add(parts[i]);
            }
        }

        return guests.Count == 0 ? [] : [SewnPart.Satin(host.Ways, finish, guests, seen), .. others];
    }

    /// <summary>The shortest way from one part to another and back; null when it is too long to be joined.</summary>
    private static (Guest Guest, double GapMm)? Link(PartWays host, PartWays guest)
    {
        double least = SewingSettings.UsualLongestJoinMm;
        (WayIn From, int Exit)? best = null;
        foreach (var door in host.In)
        {
            for (int exit = 1; exit < guest.Out.Count; exit++)
            {
                double gap = guest.Last[exit].DistanceTo(door.Edge) + (0.05 * guest.Out[exit].Concession);
                if (gap < least)
                {
                    (least, best) = (gap, (door, exit));
                }
            }
        }

        if (best is not var (from, way))
        {
            return null;
        }

        // The needle comes to it beside where it leaves again.
        var into = guest.In.MinBy(d => d.Edge.DistanceTo(from.Edge) + (0.3 * d.Edge.DistanceTo(guest.Last[way])));
        double there = into.Edge.DistanceTo(from.Edge);
        return there > SewingSettings.UsualLongestJoinMm
            ? null : (new Guest(from.Place.Column, from.Place.At, guest.Sew(into, guest.Out[way], []).Needles), Math.Max(least, there));
    }
}
