using System.Collections.Immutable;
using MathNet.Numerics.Distributions;
using MathNet.Numerics.LinearAlgebra;
using NameBand.MachineLetters.Alphabets;

namespace NameBand.MachineLetters.Measuring;

/// <summary>What is known before any line is measured.</summary>
/// <param name="HeightMm">Height of the capitals.</param>
/// <param name="ReadingErrorMm">Standard deviation of one reading of the ruler, used while there are too few spare lines to tell.</param>
/// <param name="FaceWidthMm">A letter's width in a similar face at a letter height of 1 mm; null where the face has none.</param>
internal sealed record Priors(double HeightMm, double ReadingErrorMm, Func<string, double?> FaceWidthMm);

/// <param name="Suspects">Lines whose length is out of line with all others, worst first.</param>
/// <param name="SpareLines">Lines beyond what the unknowns need; 0: nothing checks anything.</param>
/// <param name="ReadingErrorMm">Standard deviation of a reading, as found or as assumed.</param>
internal sealed record Solved(
    Alphabet Alphabet, ImmutableArray<Suspect> Suspects, int SpareLines, double ReadingErrorMm, bool ErrorIsFound);

/// <summary>Finds the letters' widths, the gap and the times from measured lines.</summary>
internal static class WidthSolver
{
    /// <summary>Ranges are stated to hold 19 times in 20.</summary>
    public const double Confidence = 0.95;

    /// <summary>With fewer spare lines than this the scatter tells too little, and the assumed reading error is used.</summary>
    private const int EnoughSpare = 4;

    // Bounds of the fit, as parts of the letter height, far beyond what letters and gaps of machines and faces have: our assumption.
    private const double LeastWidthPart = 0.02;
    private const double MostWidthPart = 3;
    private const double MostGapPart = 1.5;

    /// <param name="lines">Only lines with a length count.</param>
    /// <param name="wanted">Letters that must have a width in the end, measured or not.</param>
    public static Solved Solve(IEnumerable<KeyInLine> lines, IEnumerable<string> wanted, Priors priors)
    {
        KeyInLine[] measured = [.. lines.Where(l => l.LengthMm is not null)];
        string[] letters = [.. measured.SelectMany(l => l.Letters).Distinct(StringComparer.Ordinal).Order(StringComparer.Ordinal)];
        string[] lacking = [.. lines.Where(l => l.CannotBeKeyed).SelectMany(l => l.Letters).Distinct(StringComparer.Ordinal)
            .Where(l => l != Letters.Blank && !letters.Contains(l, StringComparer.Ordinal)).Order(StringComparer.Ordinal)];

        var a = Counts(measured, letters);
        bool[] determined = Determined(a);
        var proportions = new FaceProportions(priors);
        var (fit, sd, quantile, isFound) = Fitted(measured, letters, a, determined, proportions, priors);

        var found = ImmutableSortedDictionary.CreateBuilder<string, MachineLetter>(StringComparer.Ordinal);
        for (int j = 0; j < letters.Length; j++)
        {
            found[letters[j]] = Stated(
                letters[j], fit, j, sd * quantile, (WidthLow(priors), WidthHigh(priors)),
                determined[j] ? WidthOrigin.Measured : WidthOrigin.Estimated);
        }

        var gap = letters.Length == 0
            ? new MachineLetter("", 0.1 * priors.HeightMm, 0, 0.3 * priors.HeightMm, null, WidthOrigin.Estimated)
            : Stated("", fit!, letters.Length, sd * quantile, (0, MostGapPart * priors.HeightMm),
                determined[^1] ? WidthOrigin.Measured : WidthOrigin.Estimated);
        proportions.Learn(found.Values.Where(l => l.Origin == WidthOrigin.Measured), gap.HalfRangeMm);
        foreach (string letter in wanted.Where(l => !found.ContainsKey(l) && !lacking.Contains(l, StringComparer.Ordinal)))
        {
            found[letter] = proportions.Estimate(letter);
        }

        var (timed, start) = TimeSolver.Solve(measured, found.ToImmutable());
        int rank = determined.Length == 0 ? 0 : a.Rank();
        return new Solved(
            new Alphabet(priors.HeightMm, gap, timed, [.. lacking], start),
            fit is null ? [] : MisMeasure.Find(measured, a, priors), measured.Length - rank, sd, isFound);
    }

    /// <summary>Rows: lines. Columns: how often each letter stands in the line, and last the number of gaps.</summary>
    internal static Matrix<double> Counts(KeyInLine[] lines, string[] letters)
    {
        if (lines.Length == 0)
        {
            return Matrix<double>.Build.Dense(1, 1);
        }

        var a = Matrix<double>.Build.Dense(lines.Length, letters.Length + 1);
        for (int i = 0; i < lines.Length; i++)
        {
            var counts = lines[i].Counts;
            for (int j = 0; j < letters.Length; j++)
            {
                a[i, j] = counts.GetValueOrDefault(letters[j]);
            }

            a[i, letters.Length] = lines[i].Letters.Count - 1;
        }

        return a;
    }

    /// <summary>An unknown is determined when no change that leaves every line as long as it is touches it.</summary>
    internal static bool[] Determined(Matrix<double> a)
    {
        var svd = a.Svd();
        double slight = Math.Max(svd.S[0], 1e-300) * 1e-9;
        bool[] determined = new bool[a.ColumnCount];
        for (int j = 0; j < a.ColumnCount; j++)
        {
            double loose = 0;
            for (int k = 0; k < a.ColumnCount; k++)
            {
                if (k >= svd.S.Count || svd.S[k] <= slight)
                {
                    loose += svd.VT[k, j] * svd.VT[k, j];
                }
            }

            determined[j] = loose < 1e-12;
        }

        return determined;
    }

    private static (Fit? Fit, double Sd, double Quantile, bool IsFound) Fitted(
        KeyInLine[] measured, string[] letters, Matrix<double> a, bool[] determined, FaceProportions proportions, Priors priors)
    {
        if (measured.Length == 0)
        {
            return (null, priors.ReadingErrorMm, 2, false);
        }

        int unknowns = letters.Length + 1;
        var rows = a.EnumerateRows().ToList();
        var observed = measured.Select(l => l.LengthMm!.Value).ToList();
        var weights = measured.Select(_ => 1.0).ToList();
        for (int j = 0; j < unknowns; j++)
        {
            // What the lines leave open is held, loosely, by the similar face; the rest stays as measured.
            if (!determined[j])
            {
                var (value, error) = j < letters.Length
                    ? proportions.FirstGuess(letters[j]) : (0.1 * priors.HeightMm, 0.1 * priors.HeightMm);
                rows.Add(Vector<double>.Build.Dense(unknowns, k => k == j ? 1 : 0));
                observed.Add(value);
                weights.Add(Math.Pow(priors.ReadingErrorMm / error, 2));
            }
        }

        var low = Vector<double>.Build.Dense(unknowns, j => j < letters.Length ? WidthLow(priors) : 0);
        var high = Vector<double>.Build.Dense(unknowns, j => j < letters.Length ? WidthHigh(priors) : MostGapPart * priors.HeightMm);
        var fit = LeastSquares.Solve(
            Matrix<double>.Build.DenseOfRowVectors(rows), Vector<double>.Build.DenseOfEnumerable(observed),
            Vector<double>.Build.DenseOfEnumerable(weights), low, high);
        int spare = measured.Length - a.Rank();
        if (spare < EnoughSpare)
        {
            return (fit, priors.ReadingErrorMm, Normal.InvCDF(0, 1, 1 - ((1 - Confidence) / 2)), false);
        }

        double sd = Math.Sqrt(fit.WeightedSquares / spare);
        return (fit, sd, StudentT.InvCDF(0, 1, spare, 1 - ((1 - Confidence) / 2)), true);
    }

    private static MachineLetter Stated(
        string letter, Fit? fit, int at, double reach, (double Low, double High) within, WidthOrigin origin)
    {
        double width = fit!.Unknowns[at];
        double half = reach * Math.Sqrt(fit.Covariance[at, at]);
        return new MachineLetter(letter, width, Math.Max(within.Low, width - half), Math.Min(within.High, width + half), null, origin);
    }

    private static double WidthLow(Priors priors) => LeastWidthPart * priors.HeightMm;

    private static double WidthHigh(Priors priors) => MostWidthPart * priors.HeightMm;
}
