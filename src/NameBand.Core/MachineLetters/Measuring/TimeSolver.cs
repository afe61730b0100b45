using System.Collections.Immutable;
using MathNet.Numerics.LinearAlgebra;
using NameBand.MachineLetters.Alphabets;

namespace NameBand.MachineLetters.Measuring;

/// <summary>Shares out the times of the lines to their letters, and to starting and locking once a line.</summary>
internal static class TimeSolver
{
    private const double LeastSeconds = 0.1; // A stitch or two: no letter takes less, not even a point.
    private const double MostSeconds = 600; // Ten minutes: no letter takes more, a unit was mistaken.

    /// <summary>Times of all letters and of starting a line; a letter that had no line of its own takes the time of the others by
    /// its width.</summary>
    public static (ImmutableSortedDictionary<string, MachineLetter> Letters, double StartSeconds) Solve(
        KeyInLine[] lines, ImmutableSortedDictionary<string, MachineLetter> letters)
    {
        Timed[] timed = [.. TimedPieces(lines)];
        if (timed.Length == 0)
        {
            return (letters, 0);
        }

        string[] known = [.. timed.SelectMany(l => l.Letters).Distinct(StringComparer.Ordinal)
            .Where(l => l != Alphabets.Letters.Blank).Order(StringComparer.Ordinal)];
        var rows = timed.Select(l => Vector<double>.Build.Dense(
            known.Length + 1, j => j < known.Length ? l.Letters.Count(x => x == known[j]) : 1)).ToList();
        var observed = timed.Select(l => l.Seconds).ToList();
        var weights = timed.Select(_ => 1.0).ToList();

        // A loose pull of every letter towards the pace of all keeps what the lines leave open at a plain value.
        double pace = observed.Sum() / timed.Sum(l => l.Letters.Sum(x => letters[x].WidthMm));
        for (int j = 0; j < known.Length; j++)
        {
            rows.Add(Vector<double>.Build.Dense(known.Length + 1, k => k == j ? 1 : 0));
            observed.Add(pace * letters[known[j]].WidthMm);
            weights.Add(0.01);
        }

        var fit = LeastSquares.Solve(
            Matrix<double>.Build.DenseOfRowVectors(rows), Vector<double>.Build.DenseOfEnumerable(observed),
            Vector<double>.Build.DenseOfEnumerable(weights),
            Vector<double>.Build.Dense(known.Length + 1, j => j < known.Length ? LeastSeconds : 0),
            Vector<double>.Build.Dense(known.Length + 1, MostSeconds));
        double each = known.Select((_, j) => fit.Unknowns[j]).Sum() / known.Sum(l => letters[l].WidthMm);
        var result = letters.ToBuilder();
        foreach (var (letter, was) in letters)
        {
            int at = Array.IndexOf(known, letter);
            double seconds = letter == Alphabets.Letters.Blank ? 0 : at >= 0 ? fit.Unknowns[at] : each * was.WidthMm;
            result[letter] = was with { Seconds = seconds };
        }

        return (result.ToImmutable(), fit.Unknowns[known.Length]);
    }

    private sealed record Timed(IReadOnlyList<string> Letters, double Seconds);

    /// <summary>Lines with a time of their own, and runs that were timed as one.</summary>
    private static IEnumerable<Timed> TimedPieces(KeyInLine[] lines)
    {
        var runs = lines.GroupBy(l => l.Run == 0 ? -l.Number : l.Run);
        foreach (var run in runs)
        {
            var timed = run.Where(l => l.Seconds is not null).ToList();
            if (timed.Count == 1 && run.Count() > 1)
            {
                yield return new Timed([.. run.SelectMany(l => l.Letters)], timed[0].Seconds!.Value);
                continue;
            }

            foreach (var line in timed)
            {
                yield return new Timed(line.Letters, line.Seconds!.Value);
            }
        }
    }
}
