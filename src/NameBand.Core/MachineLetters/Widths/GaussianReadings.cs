using MathNet.Numerics.LinearAlgebra;

namespace NameBand.MachineLetters.Widths;

/// <summary>
/// Readings y of quantities that are Gaussian beforehand, and what follows from them: the mean of another quantity f is its own
/// plus cov(f, y)·K⁻¹·(y − mean), its covariance less cov(f, y)·K⁻¹·cov(y, f), where K is the covariance of the readings, their
/// errors with it. This is Bayesian linear regression written without its coefficients.
/// </summary>
internal sealed class GaussianReadings
{
    private readonly Matrix<double> _covariance;
    private readonly Vector<double> _off;
    private readonly Matrix<double> _inverse;
    private readonly Vector<double> _solved;

    private GaussianReadings(Matrix<double> covariance, Vector<double> off)
    {
        var factor = covariance.Cholesky();
        (_covariance, _off) = (covariance, off);
        _inverse = factor.Solve(Matrix<double>.Build.DenseIdentity(off.Count));
        _solved = factor.Solve(off);
        LogDensity = -0.5 * (factor.DeterminantLn + off.DotProduct(_solved) + (off.Count * Math.Log(2 * Math.PI)));
    }

    private GaussianReadings()
    {
        (_covariance, _inverse) = (Matrix<double>.Build.Dense(1, 1), Matrix<double>.Build.Dense(1, 1));
        (_off, _solved) = (Vector<double>.Build.Dense(1), Vector<double>.Build.Dense(1));
    }

    /// <summary>Logarithm of the readings' density beforehand.</summary>
    public double LogDensity { get; }

    /// <param name="off">Each reading less what it was expected to be.</param>
    /// <param name="covariance">Of two readings, errors included.</param>
    public static GaussianReadings Of(double[] off, Func<int, int, double> covariance) => off.Length == 0
        ? new GaussianReadings()
        : new GaussianReadings(Matrix<double>.Build.Dense(off.Length, off.Length, covariance), Vector<double>.Build.DenseOfArray(off));

    /// <summary>How much the mean of a quantity moves by the readings.</summary>
    /// <param name="with">Its covariance with each of them.</param>
    public double Mean(double[] with)
    {
        double sum = 0;
        for (int i = 0; i < with.Length; i++)
        {
            sum += with[i] * _solved[i];
        }

        return sum;
    }

    /// <summary>How much of the covariance of two quantities the readings take away.</summary>
    public double Explained(double[] one, double[] other)
    {
        double sum = 0;
        for (int i = 0; i < one.Length; i++)
        {
            for (int j = 0; j < other.Length; j++)
            {
                sum += one[i] * _inverse[i, j] * other[j];
            }
        }

        return sum;
    }

    /// <summary>The same where the error of one reading has so much more variance.</summary>
    public GaussianReadings WithMore(int reading, double variance)
    {
        var more = _covariance.Clone();
        more[reading, reading] += variance;
        return new GaussianReadings(more, _off);
    }

    /// <summary>By how much the log density would grow by that: an update of rank one.</summary>
    public double GainIfMore(int reading, double variance)
    {
        double open = 1 + (variance * _inverse[reading, reading]);
        return -0.5 * (Math.Log(open) - (variance * _solved[reading] * _solved[reading] / open));
    }

    /// <summary>What the other readings make one expected to be off by.</summary>
    public double Without(int reading) => _off[reading] - (_solved[reading] / _inverse[reading, reading]);
}
