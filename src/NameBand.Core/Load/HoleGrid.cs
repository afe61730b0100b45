using NameBand.Common;

namespace NameBand.Load;

/// <summary>Needle holes sorted into cells, to count those near each other.</summary>
internal static class HoleGrid
{
    /// <summary>Most holes within a radius of one of them, itself counted.</summary>
    public static int MostWithin(List<Point> holes, Box box, double radiusMm)
    {
        int width = (int)(box.WidthMm / radiusMm) + 3;
        int height = (int)(box.HeightMm / radiusMm) + 3;
        int[] first = new int[width * height];
        int[] next = new int[holes.Count + 1];
        int Cell(Point p) => (((int)((p.YMm - box.BottomMm) / radiusMm) + 1) * width) + (int)((p.XMm - box.LeftMm) / radiusMm) + 1;
        for (int i = 0; i < holes.Count; i++)
        {
            int cell = Cell(holes[i]);
            next[i + 1] = first[cell];
            first[cell] = i + 1;
        }

        int most = 0;
        double square = radiusMm * radiusMm;
        foreach (var hole in holes)
        {
            int count = 0;
            int middle = Cell(hole);
            for (int row = -width; row <= width; row += width)
            {
                for (int cell = middle + row - 1; cell <= middle + row + 1; cell++)
                {
                    for (int other = first[cell]; other != 0; other = next[other])
                    {
                        double dx = holes[other - 1].XMm - hole.XMm;
                        double dy = holes[other - 1].YMm - hole.YMm;
                        count += (dx * dx) + (dy * dy) <= square ? 1 : 0;
                    }
                }
            }

            most = Math.Max(most, count);
        }

        return most;
    }
}
