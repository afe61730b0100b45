using NameBand.Garment.Hanging;
using Xunit;

namespace NameBand.Tests.Sources;

/// <summary>
/// The length of folds against closed forms with the complete elliptic integral of the second kind, worked out here by the
/// arithmetic-geometric mean (Abramowitz and Stegun, Handbook of Mathematical Functions, 17.6).
/// </summary>
public class FoldSourcesTests
{
    /// <summary>From memory: the lemniscate case, E(m = 1/2) = 1.3506438810; and the ends, E(0) = π/2 and E(1) = 1.</summary>
    [Theory]
    [InlineData(0, 1.5707963268)]
    [InlineData(0.5, 1.3506438810)]
    [InlineData(0.999999999999, 1)]
    public void The_integral_used_here_has_its_known_values(double m, double value) => Assert.Equal(value, E(m), 6);

    /// <summary>One wave about a circle is a limaçon, r = b + a·cos φ: 4·(a + b)·E(4ab / (a + b)²) long.</summary>
    [Theory]
    [InlineData(400, 60)]
    [InlineData(120, 95)]
    public void One_fold_about_a_circle_is_a_limacon(double b, double a)
    {
        double length = 4 * (a + b) * E(4 * a * b / ((a + b) * (a + b)));
        var line = HungLine.Round(new FoldWave(1, 0), 0, b, length, 0);
        Assert.Equal(a, line.DepthMm, 4);
        Assert.Equal(length, line.LengthMm, 5);
    }

    /// <summary>A sine of depth a, n times on a width w: with k = 2πn/w its length is
    /// (2w/π)·√(1 + a²k²)·E(a²k² / (1 + a²k²)).</summary>
    [Theory]
    [InlineData(1000, 5, 40)]
    [InlineData(1200, 3, 8)]
    [InlineData(3571, 23, 55)]
    public void Straight_folds_are_a_sine(double width, int folds, double depth)
    {
        double steep = Math.Pow(depth * 2 * Math.PI * folds / width, 2);
        double length = 2 * width / Math.PI * Math.Sqrt(1 + steep) * E(steep / (1 + steep));
        var line = HungLine.Straight(new FoldWave(folds, 0), width, length, 0);
        Assert.Equal(depth, line.DepthMm, 4);
        Assert.Equal(length, line.LengthMm, 5);
    }

    private static double E(double m)
    {
        double a = 1, b = Math.Sqrt(1 - m), c = Math.Sqrt(m), sum = c * c / 2;
        for (double power = 1; Math.Abs(c) > 1e-16; power *= 2)
        {
            (a, b, c) = ((a + b) / 2, Math.Sqrt(a * b), (a - b) / 2);
            sum += power * c * c;
        }

        return Math.PI / (2 * a) * (1 - sum);
    }
}
