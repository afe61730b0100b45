using MathNet.Numerics.LinearAlgebra;

namespace NameBand.MachineLetters.Measuring;

/// <summary>A weighted least-squares fit with every unknown kept within its bounds.</summary>
/// <param name="Unknowns">The solution.</param>
/// <param name="Covariance">
/// (AᵀWA)⁻¹, to be multiplied by the variance of an observation of weight 1. Rows and columns of unknowns that rest on
/// a bound are zero: the bound holds them, not the measures.
/// </param>
/// <param name="Residuals">Observed less fitted, not weighted.</param>
/// <param name="Leverages">Part of each observation's own error that the fit swallows, from 0 to 1.</param>
/// <param name="OnBound">Which unknowns rest on a bound.</param>
internal sealed record Fit(
    Vector<double> Unknowns, Matrix<double> Covariance, Vector<double> Residuals, Vector<double> Leverages,
    IReadOnlyList<bool> OnBound, double WeightedSquares)
{
    public int FreeCount => OnBound.Count(b => !b);

    /// <summary>Observations beyond what the unknowns need.</summary>
    public int Spare => Residuals.Count - FreeCount;
}

/// <summary>
/// Least squares over a box by an active set, as Stark and Parker describe it (bounded-variable least squares,
/// Computational Statistics 10, 1995: from memory), each step solved by QR.
/// </summary>
internal static class LeastSquares
{
    /// <summary>A pull off a bound that is a smaller part of the largest there can be is rounding.</summary>
    private const double LeastPullPart = 1e-9;

    /// <param name="a">One row for each observation; its columns must be linearly independent.</param>
    /// <param name="weights">1/variance of each observation, up to a common factor; above 0.</param>
    public static Fit Solve(
        Matrix<double> a, Vector<double> observed, Vector<double> weights, Vector<double> low, Vector<double> high)
    {
        var roots = weights.PointwiseSqrt();
        var wa = Matrix<double>.Build.Dense(a.RowCount, a.ColumnCount, (i, j) => a[i, j] * roots[i]);
        var wy = observed.PointwiseMultiply(roots);
        int[] state = new int[a.ColumnCount];
        var x = Vector<double>.Build.Dense(a.ColumnCount, j => Math.Clamp(0, low[j], high[j]));
        Free(wa, wy, x, low, high, state);

        // Every round frees the unknown that pulls hardest away from its bound, so the squares fall each time.
        for (int round = 0; round < 10 * a.ColumnCount; round++)
        {
            int pulled = HardestPulled(wa, wy, x, state);
            if (pulled < 0)
            {
                break;
            }

            int was = state[pulled];
            state[pulled] = 0;
            Free(wa, wy, x, low, high, state);
            if (state[pulled] == was)
            {
                break;
            }
        }

        return Described(a, observed, weights, wa, x, state);
    }

    /// <summary>
    /// Solves for the unknowns that are off their bounds; those that would leave the box are put on the bound they
    /// meet first, and the rest solved again.
    /// </summary>
    private static void Free(Matrix<double> wa, Vector<double> wy, Vector<double> x, Vector<double> low, Vector<double> high, int[] state)
    {
        while (true)
        {
            int[] free = [.. Enumerable.Range(0, state.Length).Where(j => state[j] == 0)];
            if (free.Length == 0)
            {
                return;
            }

            var rest = wy - (wa * Held(x, state));
            var solved = Columns(wa, free).QR(MathNet.Numerics.LinearAlgebra.Factorization.QRMethod.Thin).Solve(rest);
            double step = 1;
            int stopped = -1;
            for (int k = 0; k < free.Length; k++)
            {
                int j = free[k];
                double bound = solved[k] < low[j] ? low[j] : solved[k] > high[j] ? high[j] : double.NaN;
                if (!double.IsNaN(bound))
                {
                    double part = solved[k] == x[j] ? 0 : (bound - x[j]) / (solved[k] - x[j]);
                    if (part < step)
                    {
                        (step, stopped) = (Math.Max(part, 0), k);
                    }
                }
            }

            for (int k = 0; k < free.Length; k++)
            {
                x[free[k]] = stopped < 0 ? solved[k] : x[free[k]] + (step * (solved[k] - x[free[k]]));
            }

            if (stopped < 0)
            {
                return;
            }

            int met = free[stopped];
            bool isLow = solved[stopped] < low[met];
            x[met] = isLow ? low[met] : high[met];
            state[met] = isLow ? -1 : 1;
        }
    }

    private static int HardestPulled(Matrix<double> wa, Vector<double> wy, Vector<double> x, int[] state)
    {
        var pull = wa.TransposeThisAndMultiply(wy - (wa * x));
        double scale = wa.FrobeniusNorm() * Math.Max(wy.L2Norm(), 1e-300);
        int hardest = -1;
        double most = LeastPullPart * scale;
        for (int j = 0; j < state.Length; j++)
        {
            double inward = -state[j] * pull[j];
            if (state[j] != 0 && inward > most)
            {
                (hardest, most) = (j, inward);
            }
        }

        return hardest;
    }

    private static Fit Described(
        Matrix<double> a, Vector<double> observed, Vector<double> weights, Matrix<double> wa, Vector<double> x, int[] state)
    {
        int[] free = [.. Enumerable.Range(0, state.Length).Where(j => state[j] == 0)];
        var covariance = Matrix<double>.Build.Dense(state.Length, state.Length);
        var leverages = Vector<double>.Build.Dense(a.RowCount);
        if (free.Length > 0)
        {
            var qr = Columns(wa, free).QR(MathNet.Numerics.LinearAlgebra.Factorization.QRMethod.Thin);
            var inverse = qr.R.Inverse();
            var small = inverse.TransposeAndMultiply(inverse);
            for (int i = 0; i < free.Length; i++)
            {
                for (int j = 0; j < free.Length; j++)
                {
                    covariance[free[i], free[j]] = small[i, j];
                }
            }

            for (int i = 0; i < a.RowCount; i++)
            {
                leverages[i] = Math.Min(1, qr.Q.Row(i).DotProduct(qr.Q.Row(i)));
            }
        }

        var residuals = observed - (a * x);
        double squares = residuals.PointwiseMultiply(residuals).DotProduct(weights);
        return new Fit(x, covariance, residuals, leverages, [.. state.Select(s => s != 0)], squares);
    }

    private static Vector<double> Held(Vector<double> x, int[] state) =>
        Vector<double>.Build.Dense(x.Count, j => state[j] == 0 ? 0 : x[j]);

    private static Matrix<double> Columns(Matrix<double> a, int[] columns) =>
        Matrix<double>.Build.Dense(a.RowCount, columns.Length, (i, k) => a[i, columns[k]]);
}
