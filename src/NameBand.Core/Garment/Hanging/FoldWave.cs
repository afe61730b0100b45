using System.Collections.Immutable;

namespace NameBand.Garment.Hanging;

/// <summary>
/// How folds come and go along a hanging edge, for a depth of 1: a wave whose crests are a little uneven, as those of cloth are. It
/// is tabled once, since every height of a garment has the same folds.
/// </summary>
public sealed class FoldWave
{
    /// <summary>Steps in which a line is measured; with more, no length changes by a hundredth of a millimetre.</summary>
    internal const int Steps = 2048;

    private readonly ImmutableArray<double> _depths;
    private readonly ImmutableArray<double> _slopes;

    /// <param name="unevenPart">0 for a pure wave.</param>
    public FoldWave(int folds, double unevenPart)
    {
        Folds = folds;
        UnevenPart = unevenPart;
        // The middles of the steps as well: lengths are summed by Simpson's rule.
        _depths = [.. Enumerable.Range(0, (2 * Steps) + 1).Select(i => DepthPart(i / (2.0 * Steps)))];
        _slopes = [.. Enumerable.Range(0, (2 * Steps) + 1).Select(i => Slope(i / (2.0 * Steps)))];
    }

    public int Folds { get; }

    public double UnevenPart { get; }

    internal double DepthAt(int half) => _depths[half];

    internal double SlopeAt(int half) => _slopes[half];

    /// <summary>How far the cloth stands out at a part of the way along.</summary>
    public double DepthPart(double part) => Folds == 0 ? 0 : Height(part) * Math.Cos(Phase(part));

    /// <summary>Its change for a whole way along.</summary>
    private double Slope(double part)
    {
        double turn = 2 * Math.PI;
        double height = -turn * 3 * 0.6 * UnevenPart * Math.Sin((turn * 3 * part) + 1);
        double phase = (turn * Folds) + (turn * 2 * UnevenPart * 2.2 * Math.Cos(turn * 2 * part));
        return Folds == 0 ? 0 : (height * Math.Cos(Phase(part))) - (Height(part) * phase * Math.Sin(Phase(part)));
    }

    private double Height(double part) => 1 + (0.6 * UnevenPart * Math.Cos((2 * Math.PI * 3 * part) + 1));

    private double Phase(double part) =>
        (2 * Math.PI * Folds * part) + (2.2 * UnevenPart * Math.Sin(2 * Math.PI * 2 * part));
}
