using NameBand.Common;
using NameBand.Lettering;

namespace NameBand.Tests.StitchQuality;

/// <summary>
/// The least number of cuts for letters sewn in reading order, whatever their stitches, the last cut aside: every outline
/// may be come to and left anywhere, and as often as one likes; but thread goes only from an outline to one near by of the
/// same letter or the next. It is what hangs together so, less one.
/// </summary>
internal static class CutBound
{
    /// <param name="nearMm">Outlines that come no nearer to each other are not joined.</param>
    public static int Of(LetteredName name, double height, double nearMm)
    {
        var rings = name.Pieces
            .SelectMany((p, letter) => p.Piece.Outline.Rings.Where(r => r.SignedAreaMm2() > 0)
                .Select(r => (Letter: letter, Points: r.Points.Select(q => (q + p.At) * height).ToArray())))
            .ToList();
        int[] group = [.. Enumerable.Range(0, rings.Count)];
        for (int i = 0; i < rings.Count; i++)
        {
            for (int j = 0; j < i; j++)
            {
                if (group[i] != group[j] && rings[i].Letter - rings[j].Letter <= 1 && IsNear(rings[i].Points, rings[j].Points, nearMm))
                {
                    int gone = group[i];
                    group = [.. group.Select(g => g == gone ? group[j] : g)];
                }
            }
        }

        return group.Distinct().Count() - 1;
    }

    private static bool IsNear(Point[] a, Point[] b, double nearMm) => IsNearTo(a, b, nearMm) || IsNearTo(b, a, nearMm);

    /// <summary>Whether a corner of the one ring is near to a side of the other.</summary>
    private static bool IsNearTo(Point[] corners, Point[] ring, double nearMm)
    {
        for (int i = 0, j = ring.Length - 1; i < ring.Length; j = i++)
        {
            var (from, along) = (ring[j], ring[i] - ring[j]);
            double square = (along.XMm * along.XMm) + (along.YMm * along.YMm);
            foreach (var p in corners)
            {
                var to = p - from;
                double t = square < 1e-18 ? 0 : Math.Clamp(((to.XMm * along.XMm) + (to.YMm * along.YMm)) / square, 0, 1);
                if (p.DistanceTo(from + (along * t)) <= nearMm)
                {
                    return true;
                }
            }
        }

        return false;
    }
}
