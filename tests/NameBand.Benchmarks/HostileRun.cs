using System.Diagnostics;
using System.Globalization;
using NameBand.Tests.Hostile;

namespace NameBand.Benchmarks;

/// <summary>
/// Reads spoilt files of every kind, each seed once, on all cores, and prints for each kind how many could be used, how
/// many were answered wrongly, the slowest, and the most memory the process ever had.
/// </summary>
internal static class HostileRun
{
    private const int Inputs = 1_000_000;

    /// <summary>Parts of a hundred; faces are by far the slowest to read.</summary>
    private static readonly Dictionary<string, int> Share = new()
    {
        ["job.json"] = 30,
        ["list"] = 20,
        ["corrections"] = 4,
        ["sewing log"] = 14,
        ["letters"] = 10,
        ["measured lines"] = 10,
        ["drift"] = 10,
        ["face"] = 2,
    };

    public static int Run(string[] args)
    {
        int inputs = args.Length > 0 ? int.Parse(args[0], CultureInfo.InvariantCulture) : Inputs;
        int firstSeed = args.Length > 1 ? int.Parse(args[1], CultureInfo.InvariantCulture) : 1_000_000;
        int wrong = 0;
        Console.WriteLine("kind                inputs     usable    wrong   slowest    in all");
        using var scratches = new Scratches();
        foreach (string kind in Share.Keys)
        {
            var tally = Try(kind, firstSeed, (int)((long)inputs * Share[kind] / 100), scratches);
            wrong += tally.Wrong;
        }

        Console.WriteLine(FormattableString.Invariant($"most memory of the process: {Process.GetCurrentProcess().PeakWorkingSet64 / 1e6:0} MB"));
        return wrong == 0 ? 0 : 1;
    }

    private static Tally Try(string kind, int firstSeed, int inputs, Scratches scratches)
    {
        var tally = new Tally();
        var clock = Stopwatch.StartNew();
        Parallel.For(
            firstSeed,
            firstSeed + inputs,
            new ParallelOptions { MaxDegreeOfParallelism = Environment.ProcessorCount },
            () => scratches.Take(kind),
            (seed, _, mine) =>
            {
                long start = Stopwatch.GetTimestamp();
                string? fault = mine.Fault(seed, out bool usable);
                tally.Add(seed, usable, fault, Stopwatch.GetElapsedTime(start));
                return mine;
            },
            _ => { });
        Console.WriteLine(FormattableString.Invariant(
            $"{kind,-16} {inputs,9} {tally.Usable,10} {tally.Wrong,8} {tally.Slowest.TotalSeconds,7:0.00} s {clock.Elapsed.TotalSeconds,7:0} s"));
        foreach (string line in tally.Faults.Take(5))
        {
            Console.WriteLine("    " + line);
        }

        return tally;
    }

    private sealed class Tally
    {
        public int Usable { get; private set; }

        public int Wrong { get; private set; }

        public TimeSpan Slowest { get; private set; }

        public List<string> Faults { get; } = [];

        public void Add(int seed, bool usable, string? fault, TimeSpan took)
        {
            lock (Faults)
            {
                Usable += usable ? 1 : 0;
                Slowest = took > Slowest ? took : Slowest;
                if (fault is not null)
                {
                    Wrong++;
                    Faults.Add($"seed {seed}: {fault}");
                }
            }
        }
    }

    /// <summary>A folder for each thread, in memory where the system offers one.</summary>
    private sealed class Scratches : IDisposable
    {
        private readonly string _root = Directory.CreateDirectory(
            Path.Combine(Directory.Exists("/dev/shm") ? "/dev/shm" : Path.GetTempPath(), $"nameband-hostile-{Environment.ProcessId}")).FullName;

        private int _next;

        public HostileKind Take(string kind)
        {
            string folder = Directory.CreateDirectory(Path.Combine(_root, Interlocked.Increment(ref _next).ToString(CultureInfo.InvariantCulture))).FullName;
            return new HostileKinds("samples", "fonts-open", folder).All().Single(k => k.Name == kind);
        }

        public void Dispose() => Directory.Delete(_root, recursive: true);
    }
}
