using NameBand.Lettering.Fonts;
using NameBand.Tests.MachineLettersRoom;

namespace NameBand.Benchmarks;

/// <summary>Reads the letters of the faces listed in letter-faces.csv, and makes of them the prior that the program ships.</summary>
internal static class LetterFaces
{
    private const string List = "tests/NameBand.Benchmarks/letter-faces.csv";
    private const string Table = "tests/NameBand.Tests/Data/letter-metrics.csv";
    private const string Prior = "src/NameBand.Core/MachineLetters/Widths/letter-prior.csv";

    /// <param name="project">The project's folder.</param>
    /// <param name="packages">A folder with a folder for each package of the list, unpacked.</param>
    public static int Metrics(string project, string packages)
    {
        var faces = new List<FaceMetrics>();
        foreach (string[] row in File.ReadLines(Path.Combine(project, List)).Skip(1).Select(l => l.Split(',')))
        {
            string folder = row[3] == "fonts-open" ? Path.Combine(project, row[3]) : Path.Combine(packages, row[3]);
            string? file = Directory.EnumerateFiles(folder, row[2], SearchOption.AllDirectories).Order(StringComparer.Ordinal)
                .FirstOrDefault();
            if (file is null)
            {
                Console.Error.WriteLine($"{folder} has no {row[2]}.");
                return 2;
            }

            try
            {
                faces.Add(FaceMetrics.Of(row[0], row[1] == FaceMetrics.HeldOut, file));
            }
            catch (FontFault fault)
            {
                Console.Error.WriteLine($"{row[2]} is left out: {fault.Message}.");
                continue;
            }

            Console.WriteLine(
                $"{row[0],-11} {(faces[^1].IsHeldOut ? "held out" : "prior"),-9} {faces[^1].Face,-32} {faces[^1].Letters.Count} letters, a {faces[^1].Letters["a"].Advance:0.0}");
        }

        File.WriteAllText(Path.Combine(project, Table), FaceMetrics.Write(faces));
        return 0;
    }

    public static int MakePrior(string project)
    {
        var faces = FaceMetrics.Read(Path.Combine(project, Table));
        File.WriteAllText(Path.Combine(project, Prior), LetterPriorFit.Table(faces.Where(f => !f.IsHeldOut)));
        return 0;
    }
}
