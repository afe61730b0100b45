using System.Collections.Immutable;
using MathNet.Numerics.Distributions;
using MathNet.Numerics.LinearAlgebra;

namespace NameBand.MachineLetters.Measuring;

/// <summary>A line that was probably misread or mis-sewn.</summary>
/// <param name="ExpectedMm">Its length as all other lines have it.</param>
/// <param name="OutBy">How far out it lies, in standard deviations of what the others leave open.</param>
internal sealed record Suspect(KeyInLine Line, double ExpectedMm, double OutBy);

/// <summary>Finds measured lines that do not agree with the rest.</summary>
internal static class MisMeasure
{
    /// <summary>How often a clean sheet may be suspected wrongly.</summary>
    private const double FalseAlarm = 0.05;

    /// <summary>A line so much followed by the fit that nothing else checks it.</summary>
    private const double Unchecked = 1 - 1e-9;

    private const int MostSuspects = 3; // A count: where more seem wrong the model is, and not the ruler. Our assumption.

    /// <summary>The assumed reading error counts as if it had been found from so many readings: spare lines are few.</summary>
    private const int AssumedReadings = 8;

    /// <summary>
    /// Takes out the worst line as long as one lies beyond what chance explains (Student's t of the residual of a line
    /// against the fit without it, Bonferroni's bound for the number of lines), and looks at the rest again.
    /// </summary>
    public static ImmutableArray<Suspect> Find(KeyInLine[] lines, Matrix<double> counts, Priors priors)
    {
        var left = Enumerable.Range(0, lines.Length).ToList();
        var suspects = ImmutableArray.CreateBuilder<Suspect>();
        while (suspects.Count < MostSuspects && Worst(left, lines, counts, priors) is var (worst, expected, outBy))
        {
            suspects.Add(new Suspect(lines[worst], expected, outBy));
            left.Remove(worst);
        }

        return suspects.ToImmutable();
    }

    private static (int Line, double ExpectedMm, double OutBy)? Worst(
        List<int> left, KeyInLine[] lines, Matrix<double> counts, Priors priors)
    {
        var y = Vector<double>.Build.Dense(left.Count, i => lines[left[i]].LengthMm!.Value);
        var a = Matrix<double>.Build.Dense(left.Count, counts.ColumnCount, (i, j) => counts[left[i], j]);
        var (residuals, leverages, rank) = Projected(a, y);
        int spare = left.Count - rank;
        if (spare < 1)
        {
            return null;
        }

        double squares = residuals.DotProduct(residuals);
        (int Line, double ExpectedMm, double OutBy)? worst = null;
        for (int i = 0; i < left.Count; i++)
        {
            double open = 1 - leverages[i];
            if (leverages[i] > Unchecked)
            {
                continue;
            }

            double without = Math.Max(squares - (residuals[i] * residuals[i] / open), 0);
            double sd = Math.Sqrt(((AssumedReadings * priors.ReadingErrorMm * priors.ReadingErrorMm) + without)
                / (AssumedReadings + spare - 1));
            double outBy = Math.Abs(residuals[i]) / (sd * Math.Sqrt(open));
            if (outBy > (worst?.OutBy ?? 0))
            {
                worst = (left[i], y[i] - (residuals[i] / open), outBy);
            }
        }

        double chance = 1 - (FalseAlarm / 2 / left.Count);
        double limit = StudentT.InvCDF(0, 1, AssumedReadings + spare - 1, chance);
        return worst is { } found && found.OutBy > limit ? found : null;
    }

    /// <summary>Residuals and leverages by the singular vectors, so that undetermined letters do no harm.</summary>
    private static (Vector<double> Residuals, Vector<double> Leverages, int Rank) Projected(Matrix<double> a, Vector<double> y)
    {
        var svd = a.Svd();
        int rank = svd.S.Count(s => s > svd.S[0] * 1e-9);
        var fitted = Vector<double>.Build.Dense(y.Count);
        var leverages = Vector<double>.Build.Dense(y.Count);
        for (int k = 0; k < rank; k++)
        {
            var u = svd.U.Column(k);
            fitted += u * u.DotProduct(y);
            leverages += u.PointwiseMultiply(u);
        }

        return (y - fitted, leverages, rank);
    }
}
