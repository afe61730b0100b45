using System.Diagnostics;
using System.Globalization;
using NameBand.Tests.Hostile;

namespace NameBand.Benchmarks;

/// <summary>Kills a working process again and again, several side by side, each in a job of its own, and counts what was left
/// wrong.</summary>
internal static class KillRun
{
    private const int Kills = 1000;
    private const int SideBySide = 4;

    public static int Run(string[] args)
    {
        int kills = args.Length > 0 ? int.Parse(args[0], CultureInfo.InvariantCulture) : Kills;
        int seed = args.Length > 1 ? int.Parse(args[1], CultureInfo.InvariantCulture) : 1;
        var faults = new List<string>();
        var killings = new List<Killing>();
        int done = 0;
        Parallel.For(0, SideBySide, new ParallelOptions { MaxDegreeOfParallelism = SideBySide }, side =>
        {
            string folder = Directory.CreateTempSubdirectory("nameband-kills-").FullName;
            KilledWork.Begin(folder);
            var killing = new Killing(folder, OwnProgram.Again(KilledWork.Verb), seed + side);
            lock (killings)
            {
                killings.Add(killing);
            }

            for (int kill = side; kill < kills; kill += SideBySide)
            {
                string? fault = killing.Once();
                lock (faults)
                {
                    done++;
                    if (fault is not null)
                    {
                        faults.Add($"job {side}, kill {kill}: {fault}");
                        Console.WriteLine(faults[^1]);
                    }

                    if (done % 100 == 0)
                    {
                        Console.WriteLine(FormattableString.Invariant($"{done} kills, {faults.Count} left something wrong"));
                    }
                }
            }

            Directory.Delete(folder, recursive: true);
        });
        foreach (string deed in killings.SelectMany(k => k.Done.Keys).Distinct().Order(StringComparer.Ordinal))
        {
            Console.WriteLine(FormattableString.Invariant(
                $"{deed,-6} done {killings.Sum(k => k.Done.GetValueOrDefault(deed)),6}, killed in the middle {killings.Sum(k => k.KilledIn.GetValueOrDefault(deed)),5}"));
        }

        Console.WriteLine(FormattableString.Invariant($"{done} kills, {faults.Count} left something wrong"));
        return faults.Count == 0 ? 0 : 1;
    }
}
