using MathNet.Numerics.LinearAlgebra;
using NameBand.MachineLetters.Widths;
using Xunit;

namespace NameBand.Tests.Sources;

/// <summary>Our conditioning against a published example and another program's answers.</summary>
public class BayesianRegressionSourcesTests
{
    /// <summary>
    /// P. D. Hoff, A First Course in Bayesian Statistical Methods (2009), section 9.2: maximal oxygen uptake of twelve men, with
    /// the g-prior of g = 12 and the least-squares variance 8.54. The least-squares coefficients are −51.29, 13.11, 2.09 and
    /// −0.32, their posterior means −47.35, 12.10, 1.93 and −0.29.
    /// </summary>
    [Fact]
    public void The_oxygen_uptake_example_comes_out_as_published()
    {
        double[] uptake = [-0.87, -10.74, -3.27, -1.97, 7.50, -7.25, 17.05, 4.96, 10.40, 11.05, 0.26, 2.51];
        double[] age = [23, 22, 22, 25, 27, 20, 31, 23, 27, 28, 22, 24];
        const double variance = 8.54;
        var x = Matrix<double>.Build.Dense(
            12, 4, (i, j) => (j % 2 == 0 || i >= 6 ? 1 : 0) * (j >= 2 ? age[i] : 1) * (j == 1 && i < 6 ? 0 : 1));
        var prior = x.TransposeThisAndMultiply(x).Inverse() * (12 * variance);
        var covariance = x * prior * x.Transpose();
        var given = GaussianReadings.Of(uptake, (i, j) => covariance[i, j] + (i == j ? variance : 0));
        var with = prior * x.Transpose();
        double[] published = [-47.35, 12.10, 1.93, -0.29];
        Assert.All(Enumerable.Range(0, 4), k => Assert.Equal(published[k], given.Mean(with.Row(k).ToArray()), 0.0051));
    }

    /// <summary>
    /// scikit-learn 1.2.1 (Debian 12, python3-sklearn), a Gaussian process whose kernel is the dot product, which is Bayesian
    /// linear regression with coefficients N(0, 1). Made with: python3 -c "import numpy as np; from sklearn.gaussian_process import
    /// GaussianProcessRegressor as R; from sklearn.gaussian_process.kernels import DotProduct as D;
    /// g = R(D(sigma_0=0, sigma_0_bounds='fixed'), alpha=0.25, optimizer=None).fit([[1,2,0],[0,1,3],[2,1,1],[1,0,1]], [3.1,5.2,4.4,1.7]);
    /// print(g.predict([[1,1,1],[3,0,2]], return_cov=True), g.log_marginal_likelihood_value_)".
    /// </summary>
    [Fact]
    public void Means_covariances_and_density_are_those_of_scikit_learn()
    {
        double[][] x = [[1, 2, 0], [0, 1, 3], [2, 1, 1], [1, 0, 1]];
        double[][] asked = [[1, 1, 1], [3, 0, 2]];
        var given = GaussianReadings.Of([3.1, 5.2, 4.4, 1.7], (i, j) => Dot(x[i], x[j]) + (i == j ? 0.25 : 0));
        double[] With(int k) => [.. x.Select(row => Dot(asked[k], row))];
        Assert.Equal(3.27840615, given.Mean(With(0)), 1e-6);
        Assert.Equal(4.9599498, given.Mean(With(1)), 1e-6);
        Assert.Equal(0.05169033, Dot(asked[0], asked[0]) - given.Explained(With(0), With(0)), 1e-6);
        Assert.Equal(0.08824222, Dot(asked[0], asked[1]) - given.Explained(With(0), With(1)), 1e-6);
        Assert.Equal(0.68781865, Dot(asked[1], asked[1]) - given.Explained(With(1), With(1)), 1e-6);
        Assert.Equal(-8.050122437508273, given.LogDensity, 1e-6);
    }

    /// <summary>The other road to the same: coefficients by the normal equations, here by MathNet’s LU and not by Cholesky of the
    /// readings.</summary>
    [Fact]
    public void Conditioning_agrees_with_the_normal_equations()
    {
        var random = new Random(7);
        for (int round = 0; round < 20; round++)
        {
            int n = 2 + random.Next(8);
            int p = 1 + random.Next(12);
            var x = Matrix<double>.Build.Dense(n, p, (_, _) => random.Next(5));
            var root = Matrix<double>.Build.Dense(p, p, (_, _) => random.NextDouble() - 0.5);
            var prior = (root * root.Transpose()) + (Matrix<double>.Build.DenseIdentity(p) * 0.1);
            var y = Vector<double>.Build.Dense(n, _ => 10 * random.NextDouble());
            var ask = Vector<double>.Build.Dense(p, _ => random.Next(4));
            var precision = prior.Inverse() + (x.TransposeThisAndMultiply(x) / 0.25);
            var mean = precision.LU().Solve(x.TransposeThisAndMultiply(y) / 0.25);
            var covariance = precision.Inverse();

            var k = x * prior * x.Transpose();
            var given = GaussianReadings.Of(y.ToArray(), (i, j) => k[i, j] + (i == j ? 0.25 : 0));
            double[] with = (x * prior * ask).ToArray();
            Assert.Equal(ask.DotProduct(mean), given.Mean(with), 1e-8);
            Assert.Equal(ask * covariance * ask, (ask * prior * ask) - given.Explained(with, with), 1e-8);

            // An error of one reading that is far larger: by the rank-one gain, and by doing it all again.
            var wider = given.WithMore(0, 46);
            Assert.Equal(wider.LogDensity - given.LogDensity, given.GainIfMore(0, 46), 1e-8);
            Assert.Equal(Alone(k, y), given.Without(0), 1e-8);
        }
    }

    /// <summary>What all readings but the first make of it, worked out without it.</summary>
    private static double Alone(Matrix<double> covariance, Vector<double> y)
    {
        var given = GaussianReadings.Of(
            y.Skip(1).ToArray(), (i, j) => covariance[i + 1, j + 1] + (i == j ? 0.25 : 0));
        return given.Mean([.. Enumerable.Range(1, y.Count - 1).Select(i => covariance[0, i])]);
    }

    private static double Dot(double[] a, double[] b) => a.Zip(b).Sum(p => p.First * p.Second);
}
