using System.Diagnostics;
using System.Globalization;
using NameBand.Job;

namespace NameBand.Benchmarks;

/// <summary>
/// What it costs to plan again after one latecomer, against making the same plan with nothing to take over. Figures
/// only; but it stops when the two do not give the same files.
/// </summary>
internal static class Replanning
{
    private const int Runs = 3;

    public static int Run(string[] args)
    {
        string root = Environment.CurrentDirectory;
        string program = Path.Combine(root, "src/NameBand.Cli/bin/Release/net10.0/nameband.dll");
        if (!File.Exists(program))
        {
            Console.Error.WriteLine("Run it in the project's folder, after: dotnet build -c Release src/NameBand.Cli");
            return 2;
        }

        int count = args.Length > 0 ? int.Parse(args[0], CultureInfo.InvariantCulture) : 1000;
        foreach (bool begun in new[] { true, false })
        {
            string scratch = Directory.CreateTempSubdirectory("nameband-bench-").FullName;
            try
            {
                if (!Compare(root, program, scratch, count, begun))
                {
                    return 1;
                }
            }
            finally
            {
                Directory.Delete(scratch, recursive: true);
            }
        }

        return 0;
    }

    private static bool Compare(string root, string program, string job, int count, bool begun)
    {
        var names = Names(root, count + 1);
        Write(job, names.SkipLast(1));
        File.WriteAllText(
            Path.Combine(job, "job.json"),
            """{ "format": 1, "lists": ["names.csv"], "columns": { "name": "name" }, "hem": { "length": "3.66 m", "turn": 0 }, "strip": { "rounds": "asNeeded" }, "lettering": { "height": 10 } }""");
        string first = Path.Combine(job, "out");
        Make(program, job, first);
        if (begun)
        {
            for (int hooping = 1; hooping <= 3; hooping++)
            {
                Bander.Sewn(job, null, new SewingWord(hooping, SewingDeed.Sewn, 12, When: "2026-11-25T20:00"), () => Thread.Sleep(50));
            }

            Make(program, job, first);
        }

        string kept = Path.Combine(job, "kept");
        Directory.Move(first, kept);
        Write(job, names);
        var full = new List<WholeJob.Cost>();
        var again = new List<WholeJob.Cost>();
        for (int i = 0; i < Runs; i++)
        {
            Remove(first);
            Copy(kept, first);
            again.Add(Make(program, job, first));
            Remove(Path.Combine(job, "full"));
            full.Add(Make(program, job, Path.Combine(job, "full")));
        }

        string what = begun ? "three hoopings sewn" : "nothing sewn yet";
        Tell("wall", c => c.WallSeconds);
        Tell("processor", c => c.ProcessorSeconds);
        return AreSame(Path.Combine(job, "full"), first);

        void Tell(string time, Func<WholeJob.Cost, double> of)
        {
            double one = Median(full.Select(of));
            double other = Median(again.Select(of));
            Say($"{names.Count - 1} names and one latecomer, {what}, {time}: full make {one:0.00} s, again {other:0.00} s ({other / one:0.00} ×; least {full.Min(of):0.00} and {again.Min(of):0.00}; median of {Runs})");
        }
    }

    private static List<string> Names(string root, int count)
    {
        string[] lines = File.ReadAllLines(Path.Combine(root, "tests/NameBand.Tests/Sources/Data/names-of-many-locales.csv"));
        string[][] people =
            [.. lines.Skip(1).Where(l => l.All(c => c < 0x250) && !l.Contains('"')).Select(l => l.Split(',')[1].Split(' ', 2))
            .Where(p => p.Length == 2)];
        return [.. Enumerable.Range(0, 4 * count)
            .Select(i => people[i % people.Length][0] + " " + people[((i * 7) + (i / people.Length)) % people.Length][1])
            .Distinct(StringComparer.OrdinalIgnoreCase).Take(count)];
    }

    private static void Write(string job, IEnumerable<string> names) =>
        File.WriteAllLines(Path.Combine(job, "names.csv"), names.Prepend("name"));

    private static WholeJob.Cost Make(string program, string job, string to) => WholeJob.Measure(() =>
    {
        using var process =
            Process.Start(new ProcessStartInfo(
                "dotnet", [program, "make", job, "--out", to])
            { RedirectStandardOutput = true, RedirectStandardError = true })!;
        process.StandardOutput.ReadToEnd();
        process.WaitForExit();
    });

    /// <summary>changes.csv apart, which says what changed and so cannot be in a plan made with nothing before it.</summary>
    private static bool AreSame(string one, string other)
    {
        string[] files =
            [.. Directory.EnumerateFiles(one, "*", SearchOption.AllDirectories).Select(f => Path.GetRelativePath(one, f))
            .Order(StringComparer.Ordinal)];
        foreach (string file in files.Where(f => !f.StartsWith('.')))
        {
            if (!File.Exists(Path.Combine(other, file)) || !File.ReadAllBytes(Path.Combine(one, file)).AsSpan()
                .SequenceEqual(File.ReadAllBytes(Path.Combine(other, file))))
            {
                Console.Error.WriteLine($"{file} is not the same.");
                return false;
            }
        }

        return true;
    }

    private static void Copy(string from, string to)
    {
        foreach (string file in Directory.EnumerateFiles(from, "*", SearchOption.AllDirectories))
        {
            string at = Path.Combine(to, Path.GetRelativePath(from, file));
            Directory.CreateDirectory(Path.GetDirectoryName(at)!);
            File.Copy(file, at);
        }
    }

    private static void Remove(string folder)
    {
        if (Directory.Exists(folder))
        {
            Directory.Delete(folder, recursive: true);
        }
    }

    private static double Median(IEnumerable<double> values) => values.Order().ElementAt(Runs / 2);

    private static void Say(FormattableString line) => Console.WriteLine(line.ToString(CultureInfo.InvariantCulture));
}
