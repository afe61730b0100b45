using System.Globalization;
using MathNet.Numerics.LinearAlgebra;
using NameBand.MachineLetters.Alphabets;
using NameBand.MachineLetters.Widths;
using NameBand.Tests.MachineLettersRoom;

namespace NameBand.Benchmarks;

/// <summary>
/// How far letters of faces go their own ways: each sixth of the prior’s faces is held out in its turn, and the part of faces that goes
/// with each factor of the variance is found by expectation and maximization over the densities of their advances.
/// </summary>
internal static class OwnWays
{
    private const int Folds = 6;
    private const int Rounds = 500;

    /// <summary>All letters a little larger or smaller than stated, as the model has it.</summary>
    private const double Sized = 0.025;
    private static readonly double[] Factors = [0.5, 1, 2.5, 6];

    public static int Run()
    {
        var known = FaceMetrics.Read(FaceMetrics.File).Where(f => !f.IsHeldOut).ToList();
        var rows = Enumerable.Range(0, Folds).AsParallel().AsOrdered().SelectMany(fold =>
        {
            var prior = LetterPrior.Read(LetterPriorFit.Table(known.Where((_, i) => i % Folds != fold)));
            return known.Where((_, i) => i % Folds == fold).Select(f => (f.Look, Densities(f, prior))).ToList();
        }).ToList();
        foreach (var group in rows.GroupBy(r => r.Look is "script" or "monospaced" ? r.Look : "upright"))
        {
            double[] parts = Parts([.. group.Select(r => r.Item2)]);
            Console.WriteLine($"{group.Key}, {group.Count()} faces: " + string.Join(
                "; ", Factors.Zip(parts)
                .Select(p => string.Create(CultureInfo.InvariantCulture, $"{p.First} times the variance {100 * p.Second:0} %"))));
        }

        return 0;
    }

    private static double[] Densities(FaceMetrics face, LetterPrior prior)
    {
        var look = prior.Looks.First(l => l.Look.ToString().Equals(face.Look, StringComparison.OrdinalIgnoreCase));
        var letters = face.Letters.Keys.Where(k => char.IsLetter(k[0])).Select(k => (look.Letters[k].Advance, face.Letters[k].Advance))
            .ToList();
        var off = Vector<double>.Build.Dense(letters.Count, i => letters[i].Item2 - letters[i].Item1.Mean);
        return [.. Factors.Select(factor =>
        {
            var covariance = Matrix<double>.Build.Dense(letters.Count, letters.Count, (i, j) =>
            {
                var (a, b) = (letters[i].Item1, letters[j].Item1);
                double common = a.Loads.Zip(b.Loads).Sum(l => l.First * l.Second) + (Sized * Sized * a.Mean * b.Mean);
                return common + (i == j ? factor * a.Own * a.Own : 0);
            }).Cholesky();
            return -0.5 * (covariance.DeterminantLn + off.DotProduct(covariance.Solve(off)));
        })];
    }

    private static double[] Parts(List<double[]> logs)
    {
        double[] parts = [.. Factors.Select(_ => 1.0 / Factors.Length)];
        for (int round = 0; round < Rounds; round++)
        {
            double[] next = new double[Factors.Length];
            foreach (double[] log in logs)
            {
                double[] now = [.. log.Select((l, i) => parts[i] * Math.Exp(l - log.Max()))];
                double all = now.Sum();
                for (int i = 0; i < next.Length; i++)
                {
                    next[i] += now[i] / all / logs.Count;
                }
            }

            parts = next;
        }

        return parts;
    }
}
