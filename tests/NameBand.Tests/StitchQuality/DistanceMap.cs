namespace NameBand.Tests.StitchQuality;

/// <summary>Exact distance of each cell from the nearest cell of a set (Felzenszwalb and Huttenlocher 2012, from memory).</summary>
internal static class DistanceMap
{
    /// <summary>Squared distance in cells from each cell to the nearest cell where <paramref name="isSource"/> is true.</summary>
    public static float[] Squared(int width, int height, Func<int, bool> isSource)
    {
        const float Far = 1e12f;
        var map = new float[width * height];
        for (int i = 0; i < map.Length; i++)
        {
            map[i] = isSource(i) ? 0 : Far;
        }

        int most = Math.Max(width, height);
        var line = new float[most];
        var made = new float[most];
        var parabola = new int[most];
        var edge = new float[most + 1];
        for (int x = 0; x < width; x++)
        {
            for (int y = 0; y < height; y++)
            {
                line[y] = map[(y * width) + x];
            }

            Sweep(line, made, height, parabola, edge);
            for (int y = 0; y < height; y++)
            {
                map[(y * width) + x] = made[y];
            }
        }

        for (int y = 0; y < height; y++)
        {
            Array.Copy(map, y * width, line, 0, width);
            Sweep(line, made, width, parabola, edge);
            Array.Copy(made, 0, map, y * width, width);
        }

        return map;
    }

    private static void Sweep(float[] f, float[] made, int n, int[] v, float[] z)
    {
        int k = 0;
        v[0] = 0;
        z[0] = float.NegativeInfinity;
        z[1] = float.PositiveInfinity;
        for (int q = 1; q < n; q++)
        {
            float s;
            while (true)
            {
                int r = v[k];
                s = (float)(((double)f[q] + ((double)q * q) - f[r] - ((double)r * r)) / (2.0 * (q - r)));
                if (s > z[k] || k == 0)
                {
                    break;
                }

                k--;
            }

            if (s <= z[k])
            {
                v[k] = q;
                z[k + 1] = float.PositiveInfinity;
                continue;
            }

            k++;
            v[k] = q;
            z[k] = s;
            z[k + 1] = float.PositiveInfinity;
        }

        k = 0;
        for (int q = 0; q < n; q++)
        {
            while (z[k + 1] < q)
            {
                k++;
            }

            made[q] = ((q - v[k]) * (q - v[k])) + f[v[k]];
        }
    }
}
