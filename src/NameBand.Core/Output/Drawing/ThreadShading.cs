namespace NameBand.Output.Drawing;

/// <summary>
/// How bright a thread looks at each place of a stitch, worked out once for every direction: a round, glossy fibre
/// under a lamp to the upper left. Its sheen depends on which way the stitch runs, as satin's does, and shifts along
/// the stitch, which rises out of one hole and dives into the next.
/// </summary>
internal static class ThreadShading
{
    // Steps of a turn (a power of two, so that an angle wraps by its bits), along a stitch and across it: fine enough that no step is
    // seen. Our choice.
    public const int Directions = 128;
    public const int Alongs = 16;
    public const int Acrosses = 8;

    private static readonly byte[] Table = Make();

    /// <summary>Brightness 0–255 at [direction, along, across].</summary>
    public static ReadOnlySpan<byte> Of(int direction) =>
        Table.AsSpan((direction & (Directions - 1)) * Alongs * Acrosses, Alongs * Acrosses);

    /// <summary>Number of the direction of a stitch in picture coordinates (y down).</summary>
    public static int DirectionOf(float dx, float dy) =>
        (int)MathF.Round(MathF.Atan2(dy, dx) * (Directions / (2 * MathF.PI))) & (Directions - 1);

    private static byte[] Make()
    {
        var table = new byte[Directions * Alongs * Acrosses];

        // x right, y down, z towards the eye.
        var (lx, ly, lz) = Unit(-0.50, -0.62, 0.72);
        var (hx, hy, hz) = Unit(lx, ly, lz + 1);
        for (int d = 0; d < Directions; d++)
        {
            double angle = d * 2 * Math.PI / Directions;
            double dx = Math.Cos(angle);
            double dy = Math.Sin(angle);
            for (int a = 0; a < Alongs; a++)
            {
                double u = (2 * (a + 0.5) / Alongs) - 1;
                double rise = -0.85 * u * u * u;
                double cos = Math.Cos(rise);
                double sin = Math.Sin(rise);
                double alongLight = (dx * cos * lx) + (dy * cos * ly) + (sin * lz);
                double alongHalf = (dx * cos * hx) + (dy * cos * hy) + (sin * hz);
                double fibre = Math.Sqrt(Math.Max(0, 1 - (alongLight * alongLight)));
                double sheen = Math.Pow(Math.Max(0, 1 - (alongHalf * alongHalf)), 14);
                double hole = 1 - (0.42 * Math.Pow(Math.Abs(u), 7));
                for (int c = 0; c < Acrosses; c++)
                {
                    double v = (2 * (c + 0.5) / Acrosses) - 1;
                    double up = Math.Sqrt(1 - (v * v));
                    double nx = (-dy * v) - (dx * sin * up);
                    double ny = (dx * v) - (dy * sin * up);
                    double nz = cos * up;
                    double lit = Math.Max(0, (nx * lx) + (ny * ly) + (nz * lz));
                    double faces = Math.Max(0, (nx * hx) + (ny * hy) + (nz * hz));
                    double edge = 1 - (0.40 * v * v * v * v);
                    double bright = ((0.12 + (0.20 * fibre) + (0.30 * lit)) * edge * hole)
                        + (0.42 * sheen * Math.Pow(faces, 6) * hole);
                    table[(((d * Alongs) + a) * Acrosses) + c] = (byte)Math.Clamp(Math.Round(bright * 255), 0, 255);
                }
            }
        }

        return table;
    }

    private static (double X, double Y, double Z) Unit(double x, double y, double z)
    {
        double length = Math.Sqrt((x * x) + (y * y) + (z * z));
        return (x / length, y / length, z / length);
    }
}
