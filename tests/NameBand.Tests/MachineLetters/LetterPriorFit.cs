using System.Globalization;
using System.Text;
using MathNet.Numerics.LinearAlgebra;
using NameBand.MachineLetters.Alphabets;

namespace NameBand.Tests.MachineLettersRoom;

/// <summary>
/// Makes a prior of faces: for each look the mean of every letter's advance, left and right, and what all of them have in
/// common as factors (principal factors of the faces' deviations from their look, iterated), with each one's own rest.
/// </summary>
internal static class LetterPriorFit
{
    public static readonly string[] Looks = ["sans", "serif", "slab", "script", "monospaced"];

    /// <summary>Advances rounded to a quarter of a millimetre at 9 mm are out by this many hundredths of the height, as a
    /// standard deviation.</summary>
    private const double LeastOwn = 0.8;
    private const int Rounds = 60;

    /// <summary>The table that the program ships: a line for each look, letter and measure.</summary>
    public static string Table(IEnumerable<FaceMetrics> faces)
    {
        var text = new StringBuilder("look\tletter\tmeasure\tmean\town\tf1\tf2\tf3\tf4\n");
        var all = faces.ToList();
        foreach (string[] together in (string[][])[["sans", "serif", "slab"], ["script"], ["monospaced"]])
        {
            var mine = all.Where(f => together.Contains(f.Look)).ToList();
            var means = together.ToDictionary(l => l, l => Mean(mine.Where(f => f.Look == l).ToList()));
            var (loads, own) = Factors(mine, means, together[0] == "monospaced" ? 2 : together[0] == "script" ? 3 : 4);
            foreach (string look in together)
            {
                // A mean of few faces is itself uncertain: another face lies so much farther from it.
                double farther = Math.Sqrt(1 + (1.0 / Math.Max(1, mine.Count(f => f.Look == look))));
                for (int j = 0; j < means[look].Count; j++)
                {
                    string letter = FaceMetrics.Alphabet[j / 3].ToString();
                    string measure = (j % 3) switch { 0 => "advance", 1 => "left", _ => "right" };
                    text.Append(
                        CultureInfo.InvariantCulture, $"{look}\t{letter}\t{measure}\t{means[look][j]:0.00}\t{own[j] * farther:0.00}");
                    for (int k = 0; k < 4; k++)
                    {
                        text.Append(CultureInfo.InvariantCulture, $"\t{(k < loads.ColumnCount ? loads[j, k] * farther : 0):0.00}");
                    }

                    text.Append('\n');
                }
            }
        }

        return text.ToString();
    }

    private static Vector<double> Mean(List<FaceMetrics> faces) => Vector<double>.Build.Dense(
        3 * FaceMetrics.Alphabet.Length,
        j => faces.Select(f => Value(f, j)).OfType<double>().DefaultIfEmpty(j % 3 == 0 ? 75 : 7).Average());

    private static double? Value(FaceMetrics face, int j) =>
        face.Letters.TryGetValue(FaceMetrics.Alphabet[j / 3].ToString(), out var m)
            ? (j % 3) switch { 0 => m.Advance, 1 => m.Left, _ => m.Right } : null;

    private static (Matrix<double> Loads, Vector<double> Own) Factors(
        List<FaceMetrics> faces, Dictionary<string, Vector<double>> means, int count)
    {
        int size = means.Values.First().Count;
        var deviations = Matrix<double>.Build.Dense(
            faces.Count, size, (i, j) => Value(faces[i], j) is { } v ? v - means[faces[i].Look][j] : 0);
        int free = Math.Max(1, faces.Count - means.Count);
        var covariance = deviations.TransposeThisAndMultiply(deviations) / free;
        var own = covariance.Diagonal() * 0.5;
        var loads = Matrix<double>.Build.Dense(size, count);
        for (int round = 0; round < Rounds; round++)
        {
            var evd = (covariance - Matrix<double>.Build.DenseOfDiagonalVector(own)).Evd(Symmetricity.Symmetric);
            for (int k = 0; k < count; k++)
            {
                int at = size - 1 - k;
                var vector = evd.EigenVectors.Column(at);
                double sign = vector.Sum() < 0 ? -1 : 1;
                loads.SetColumn(k, vector * (sign * Math.Sqrt(Math.Max(0, evd.EigenValues[at].Real))));
            }

            own = Vector<double>.Build.Dense(
                size, j => Math.Max(covariance[j, j] - loads.Row(j).DotProduct(loads.Row(j)), LeastOwn * LeastOwn));
        }

        // Factors drawn through few faces also go along with what each of them does by itself, and leave too little of it.
        return (loads, (own * ((double)free / Math.Max(1, free - count))).PointwiseSqrt());
    }
}
