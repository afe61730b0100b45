namespace NameBand.Tests.StitchQuality;

/// <summary>How a cloth stretches in its plane, with its backing: newtons for each mm of width.</summary>
/// <param name="Warp">Stiffness along the warp.</param>
/// <param name="Weft">Stiffness across it.</param>
/// <param name="Shear">How hard the one leans over against the other.</param>
/// <param name="Poisson">How much narrower it gets along the weft when it is drawn along the warp.</param>
internal sealed record MembraneCloth(double Warp, double Weft, double Shear, double Poisson);

/// <summary>
/// A small sheet of cloth held all round, as in a hoop, with one column of satin in its middle: each stitch is a thread that is as tight as
/// stated and slackens as its ends come nearer. Bilinear squares, solved by conjugate gradients. It foretells how much narrower and longer
/// a column comes out; it knows no friction, no wrinkles and no hole that tears.
/// </summary>
internal sealed class Membrane
{
    private const double CellMm = 0.5;
    private const double FieldMm = 24;
    private const int Cells = (int)(FieldMm / CellMm);
    private const int Nodes = Cells + 1;
    private const double SpacingMm = 0.4;
    private const double ColumnMm = 10;
    private const int MostRounds = 2000;

    private readonly double[,] _square;
    private readonly List<(int[] Node, double[] Part, double X, double Y, double Stiffness, double Tension)> _threads = [];

    /// <param name="grainRad">From the direction of the stitches to the warp.</param>
    /// <param name="threadNewton">How hard one new stitch draws.</param>
    /// <param name="threadStiffness">Newtons for the whole of its length: what it loses when its ends come nearer by that part of
    /// it.</param>
    public Membrane(MembraneCloth cloth, double grainRad, double widthMm, double threadNewton, double threadStiffness)
    {
        _square = Square(Turned(cloth, grainRad));
        for (double y = -ColumnMm / 2; y <= (ColumnMm / 2) + 1e-9; y += SpacingMm)
        {
            // Two threads to a pace: there and back.
            AddThread((-widthMm / 2, y), (widthMm / 2, y), 2 * threadNewton, 2 * threadStiffness / widthMm);
        }
    }

    /// <summary>How much narrower a column is in its middle, and how much longer from end to end, in mm.</summary>
    public (double NarrowerMm, double LongerMm) Solved()
    {
        double[] u = Displacements();
        var middle = _threads[_threads.Count / 2];
        double narrower = -Along(u, middle);
        double longer = EndOf(u, _threads[^1]) - EndOf(u, _threads[0]);
        return (narrower, longer);
    }

    private static double Along(double[] u, (int[] Node, double[] Part, double X, double Y, double Stiffness, double Tension) thread)
    {
        double sum = 0;
        for (int k = 0; k < 8; k++)
        {
            sum += thread.Part[k] * ((thread.X * u[2 * thread.Node[k]]) + (thread.Y * u[(2 * thread.Node[k]) + 1]));
        }

        return sum;
    }

    /// <summary>How far the middle of a stitch moves along the column.</summary>
    private static double EndOf(double[] u, (int[] Node, double[] Part, double X, double Y, double Stiffness, double Tension) thread) =>
        Enumerable.Range(0, 8).Sum(k => Math.Abs(thread.Part[k]) * u[(2 * thread.Node[k]) + 1]) / 2;

    private void AddThread((double X, double Y) from, (double X, double Y) to, double tension, double stiffness)
    {
        double length = Math.Sqrt(((to.X - from.X) * (to.X - from.X)) + ((to.Y - from.Y) * (to.Y - from.Y)));
        var (a, b) = (Corners(from.X, from.Y), Corners(to.X, to.Y));
        _threads.Add((
            [.. a.Select(c => c.Node), .. b.Select(c => c.Node)], [.. a.Select(c => -c.Part), .. b.Select(c => c.Part)],
            (to.X - from.X) / length, (to.Y - from.Y) / length, stiffness, tension));
    }

    /// <summary>The four nodes about a place, each with its part of it.</summary>
    private static (int Node, double Part)[] Corners(double x, double y)
    {
        double column = Math.Clamp((x + (FieldMm / 2)) / CellMm, 0, Cells - 1e-9);
        double row = Math.Clamp((y + (FieldMm / 2)) / CellMm, 0, Cells - 1e-9);
        var (i, j) = ((int)column, (int)row);
        var (s, t) = (column - i, row - j);
        int node = (j * Nodes) + i;
        return [(node, (1 - s) * (1 - t)), (node + 1, s * (1 - t)), (node + Nodes + 1, s * t), (node + Nodes, (1 - s) * t)];
    }

    /// <summary>The plane stiffness seen from axes turned by an angle.</summary>
    private static double[,] Turned(MembraneCloth cloth, double angle)
    {
        double poissonWeft = cloth.Poisson * cloth.Weft / cloth.Warp;
        double det = 1 - (cloth.Poisson * poissonWeft);
        var (q11, q22, q12, q66) = (cloth.Warp / det, cloth.Weft / det, cloth.Poisson * cloth.Weft / det, cloth.Shear);
        var (c, s) = (Math.Cos(angle), Math.Sin(angle));
        var (c2, s2, cs) = (c * c, s * s, c * s);
        double[,] turned =
        {
            { (q11 * c2 * c2) + (2 * (q12 + (2 * q66)) * s2 * c2) + (q22 * s2 * s2), 0, 0 },
            { 0, (q11 * s2 * s2) + (2 * (q12 + (2 * q66)) * s2 * c2) + (q22 * c2 * c2), 0 },
            { 0, 0, ((q11 + q22 - (2 * q12) - (2 * q66)) * s2 * c2) + (q66 * ((s2 * s2) + (c2 * c2))) },
        };
        turned[0, 1] = turned[1, 0] = ((q11 + q22 - (4 * q66)) * s2 * c2) + (q12 * ((s2 * s2) + (c2 * c2)));
        turned[0, 2] = turned[2, 0] = ((q11 - q12 - (2 * q66)) * cs * c2) + ((q12 - q22 + (2 * q66)) * cs * s2);
        turned[1, 2] = turned[2, 1] = ((q11 - q12 - (2 * q66)) * cs * s2) + ((q12 - q22 + (2 * q66)) * cs * c2);
        return turned;
    }

    /// <summary>Stiffness of one bilinear square, by two Gauss points each way.</summary>
    private static double[,] Square(double[,] cloth)
    {
        double[,] made = new double[8, 8];
        double g = 1 / Math.Sqrt(3);
        foreach (double s in new[] { -g, g })
        {
            foreach (double t in new[] { -g, g })
            {
                double[,] b = new double[3, 8];
                (double S, double T)[] corners = [(-1, -1), (1, -1), (1, 1), (-1, 1)];
                for (int k = 0; k < 4; k++)
                {
                    double dx = corners[k].S * (1 + (corners[k].T * t)) / 4 * 2 / CellMm;
                    double dy = corners[k].T * (1 + (corners[k].S * s)) / 4 * 2 / CellMm;
                    (b[0, 2 * k], b[1, (2 * k) + 1], b[2, 2 * k], b[2, (2 * k) + 1]) = (dx, dy, dy, dx);
                }

                for (int i = 0; i < 8; i++)
                {
                    for (int j = 0; j < 8; j++)
                    {
                        for (int m = 0; m < 9; m++)
                        {
                            made[i, j] += b[m / 3, i] * cloth[m / 3, m % 3] * b[m % 3, j] * CellMm * CellMm / 4;
                        }
                    }
                }
            }
        }

        return made;
    }

    private double[] Displacements()
    {
        int size = 2 * Nodes * Nodes;
        double[] force = new double[size];
        foreach (var thread in _threads)
        {
            for (int k = 0; k < 8; k++)
            {
                force[2 * thread.Node[k]] -= thread.Tension * thread.Part[k] * thread.X;
                force[(2 * thread.Node[k]) + 1] -= thread.Tension * thread.Part[k] * thread.Y;
            }
        }

        Hold(force);
        var (u, p, back) = (new double[size], (double[])force.Clone(), new double[size]);
        double rest = Dot(force, force);
        double enough = rest * 1e-16;
        for (int round = 0; round < MostRounds && rest > enough; round++)
        {
            Apply(p, back);
            double step = rest / Dot(p, back);
            for (int i = 0; i < size; i++)
            {
                u[i] += step * p[i];
                force[i] -= step * back[i];
            }

            double left = Dot(force, force);
            for (int i = 0; i < size; i++)
            {
                p[i] = force[i] + (left / rest * p[i]);
            }

            rest = left;
        }

        return u;
    }

    private void Apply(double[] u, double[] back)
    {
        Array.Clear(back);
        Span<int> at = stackalloc int[8];
        for (int row = 0; row < Cells; row++)
        {
            for (int column = 0; column < Cells; column++)
            {
                int node = (row * Nodes) + column;
                (at[0], at[2], at[4], at[6]) = (2 * node, 2 * (node + 1), 2 * (node + Nodes + 1), 2 * (node + Nodes));
                (at[1], at[3], at[5], at[7]) = (at[0] + 1, at[2] + 1, at[4] + 1, at[6] + 1);
                for (int i = 0; i < 8; i++)
                {
                    double sum = 0;
                    for (int j = 0; j < 8; j++)
                    {
                        sum += _square[i, j] * u[at[j]];
                    }

                    back[at[i]] += sum;
                }
            }
        }

        foreach (var thread in _threads)
        {
            double pull = thread.Stiffness * Along(u, thread);
            for (int k = 0; k < 8; k++)
            {
                back[2 * thread.Node[k]] += pull * thread.Part[k] * thread.X;
                back[(2 * thread.Node[k]) + 1] += pull * thread.Part[k] * thread.Y;
            }
        }

        Hold(back);
    }

    /// <summary>The hoop: nothing moves at the rim.</summary>
    private static void Hold(double[] v)
    {
        for (int i = 0; i < Nodes; i++)
        {
            foreach (int node in (ReadOnlySpan<int>)[i, ((Nodes - 1) * Nodes) + i, i * Nodes, (i * Nodes) + Nodes - 1])
            {
                (v[2 * node], v[(2 * node) + 1]) = (0, 0);
            }
        }
    }

    private static double Dot(double[] a, double[] b)
    {
        double sum = 0;
        for (int i = 0; i < a.Length; i++)
        {
            sum += a[i] * b[i];
        }

        return sum;
    }
}
