using CsCheck;
using MathNet.Numerics.LinearAlgebra;
using NameBand.MachineLetters.Measuring;
using Xunit;

namespace NameBand.Tests.Sources;

/// <summary>The least-squares fit against certified and published results.</summary>
public class LeastSquaresSourcesTests
{
    /// <summary>
    /// NIST Statistical Reference Datasets, linear regression, "Longley" (higher level of difficulty): data and certified
    /// values of the coefficients, their standard deviations and the residual standard deviation.
    /// </summary>
    [Fact]
    public void Longley_as_certified_by_NIST()
    {
        double[] y = [60323, 61122, 60171, 61187, 63221, 63639, 64989, 63761, 66019, 67857, 68169, 66513, 68655, 69564, 69331, 70551];
        double[][] x =
        [
            [83.0, 88.5, 88.2, 89.5, 96.2, 98.1, 99.0, 100.0, 101.2, 104.6, 108.4, 110.8, 112.6, 114.2, 115.7, 116.9],
            [234289, 259426, 258054, 284599, 328975, 346999, 365385, 363112, 397469, 419180, 442769, 444546, 482704, 502601, 518173,
            554894],
            [2356, 2325, 3682, 3351, 2099, 1932, 1870, 3578, 2904, 2822, 2936, 4681, 3813, 3931, 4806, 4007],
            [1590, 1456, 1616, 1650, 3099, 3594, 3547, 3350, 3048, 2857, 2798, 2637, 2552, 2514, 2572, 2827],
            [107608, 108632, 109773, 110929, 112075, 113270, 115094, 116219, 117388, 118734, 120445, 121950, 123366, 125368, 127852,
            130081],
            [1947, 1948, 1949, 1950, 1951, 1952, 1953, 1954, 1955, 1956, 1957, 1958, 1959, 1960, 1961, 1962],
        ];
        double[] certified =
            [-3482258.63459582, 15.0618722713733, -0.0358191792925910, -2.02022980381683, -1.03322686717359, -0.0511041056535807,
                1829.15146461355];
        double[] deviations =
            [890420.383607373, 84.9149257747669, 0.0334910077722432, 0.488399681651699, 0.214274163161675, 0.226073200069370,
                455.478499142212];

        var fit = Unbounded(Matrix<double>.Build.Dense(16, 7, (i, j) => j == 0 ? 1 : x[j - 1][i]), y, [.. y.Select(_ => 1.0)]);
        double sd = Math.Sqrt(fit.WeightedSquares / fit.Spare);
        Assert.Equal(9, fit.Spare);
        Close(304.854073561965, sd, 1e-9);
        for (int j = 0; j < 7; j++)
        {
            Close(certified[j], fit.Unknowns[j], 1e-7);
            Close(deviations[j], sd * Math.Sqrt(fit.Covariance[j, j]), 1e-7);
        }

        // The leverages of a fit add up to the number of its unknowns.
        Assert.Equal(7, fit.Leverages.Sum(), 8);
    }

    /// <summary>
    /// Weighted: Galton's sweet peas (1877), weights 1/SD², as worked in the Pennsylvania State University's course
    /// Stat 501, lesson 13.1, and its R help: 0.127964 (0.006811) + 0.204801 (0.038155) x. The seven rows of data are
    /// from memory; only with the right ones do the published figures come out.
    /// </summary>
    [Fact]
    public void Weighted_sweet_peas_as_published()
    {
        double[] parent = [0.21, 0.20, 0.19, 0.18, 0.17, 0.16, 0.15];
        double[] progeny = [0.1726, 0.1707, 0.1637, 0.1640, 0.1613, 0.1617, 0.1598];
        double[] deviation = [0.01988, 0.01938, 0.01896, 0.02037, 0.01654, 0.01594, 0.01763];
        var a = Matrix<double>.Build.Dense(7, 2, (i, j) => j == 0 ? 1 : parent[i]);
        var weighted = Unbounded(a, progeny, [.. deviation.Select(d => 1 / (d * d))]);
        double sd = Math.Sqrt(weighted.WeightedSquares / weighted.Spare);
        Assert.Equal(0.127964, weighted.Unknowns[0], 6);
        Assert.Equal(0.204801, weighted.Unknowns[1], 6);
        Assert.Equal(0.006811, sd * Math.Sqrt(weighted.Covariance[0, 0]), 6);
        Assert.Equal(0.038155, sd * Math.Sqrt(weighted.Covariance[1, 1]), 6);

        var plain = Unbounded(a, progeny, [.. progeny.Select(_ => 1.0)]);
        Assert.Equal(0.127029, plain.Unknowns[0], 6);
        Assert.Equal(0.210000, plain.Unknowns[1], 6);
    }

    /// <summary>
    /// Bounded: no reference is needed, a solution of this convex problem is proved by the conditions of Karush, Kuhn and
    /// Tucker: no pull on a free unknown, and on a bound only a pull outwards.
    /// </summary>
    [Fact]
    public void Bounded_solutions_prove_themselves()
    {
        Gen.Select(Gen.Int[1, 9], Gen.Int[0, 12], Gen.Int[0, 1_000_000]).Sample(
            (unknowns, extra, seed) =>
            {
                var random = new Random(seed);
                double Next() => (2 * random.NextDouble()) - 1;
                var a = Matrix<double>.Build.Dense(unknowns + extra, unknowns, (_, _) => Next());
                var y = Vector<double>.Build.Dense(unknowns + extra, _ => 3 * Next());
                var w = Vector<double>.Build.Dense(unknowns + extra, _ => 0.2 + random.NextDouble());
                var low = Vector<double>.Build.Dense(unknowns, _ => -random.NextDouble());
                var high = Vector<double>.Build.Dense(unknowns, _ => random.NextDouble());
                var fit = LeastSquares.Solve(a, y, w, low, high);
                var pull = a.TransposeThisAndMultiply((y - (a * fit.Unknowns)).PointwiseMultiply(w));
                for (int j = 0; j < unknowns; j++)
                {
                    Assert.InRange(fit.Unknowns[j], low[j], high[j]);
                    if (!fit.OnBound[j])
                    {
                        Assert.Equal(0, pull[j], 1e-6);
                    }
                    else if (fit.Unknowns[j] == low[j])
                    {
                        Assert.True(pull[j] <= 1e-6);
                    }
                    else
                    {
                        Assert.Equal(high[j], fit.Unknowns[j]);
                        Assert.True(pull[j] >= -1e-6);
                    }
                }
            },
            seed: "0000BoundLs1", iter: 400);
    }

    private static Fit Unbounded(Matrix<double> a, double[] y, double[] weights) => LeastSquares.Solve(
        a, Vector<double>.Build.Dense(y), Vector<double>.Build.Dense(weights),
        Vector<double>.Build.Dense(a.ColumnCount, double.NegativeInfinity),
        Vector<double>.Build.Dense(a.ColumnCount, double.PositiveInfinity));

    private static void Close(double expected, double actual, double relative) =>
        Assert.True(Math.Abs(actual - expected) <= relative * Math.Abs(expected), $"{actual} is not {expected}");
}
