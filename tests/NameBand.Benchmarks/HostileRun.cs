using System.Collections.Concurrent;
using System.Diagnostics;
using System.Globalization;
using System.Text;
using NameBand.Tests.Hostile;

namespace NameBand.Benchmarks;

/// <summary>
/// Reads spoilt files of every kind, each seed once, in child processes, so that an input that ends the process, hangs it
/// or fills the memory is seen and named and the rest is tried all the same. Prints for each kind how many inputs could be
/// used and what went wrong, the slowest in processor time, and the most memory any child had.
/// </summary>
internal static class HostileRun
{
    private const int Inputs = 1_000_000;
    private const long MostMemory = 1_000_000_000;
    private static readonly TimeSpan Hang = TimeSpan.FromSeconds(5);

    /// <summary>A machine busy with other things is waited for this long before a child that uses no time counts as hung.</summary>
    private static readonly TimeSpan Stuck = TimeSpan.FromMinutes(3);

    public static int Run(string[] args)
    {
        int inputs = args.Length > 0 ? int.Parse(args[0], CultureInfo.InvariantCulture) : Inputs;
        int firstSeed = args.Length > 1 ? int.Parse(args[1], CultureInfo.InvariantCulture) : 1_000_000;
        var shares = HostileKinds.Shares.Where(s => args.Length < 3 || s.Kind == args[2]).ToList();
        int parts = shares.Sum(s => s.Parts);
        int workers = Environment.ProcessorCount;
        int wrong = 0;
        int tried = 0;
        Console.WriteLine("kind                inputs     usable    wrong   slowest   most memory");
        foreach (var (kind, part) in shares)
        {
            int each = (int)Math.Ceiling((double)inputs * part / parts / workers);
            var tally = new Tally();
            Parallel.For(0, workers, worker => Try(kind, firstSeed + (worker * each), each, tally));
            Console.WriteLine(FormattableString.Invariant(
                $"{kind,-16} {each * workers,9} {tally.Usable,10} {tally.Faults.Count,8} {tally.Slowest.TotalSeconds,7:0.00} s {tally.Memory / 1e6,8:0} MB"));
            foreach (string line in tally.Faults.Take(8))
            {
                Console.WriteLine("    " + line);
            }

            wrong += tally.Faults.Count;
            tried += each * workers;
        }

        Console.WriteLine(FormattableString.Invariant($"{tried} inputs, {wrong} answered wrongly"));
        return wrong == 0 ? 0 : 1;
    }

    /// <summary>The child: one line for each input, so that the line that never comes names the input that ended it.</summary>
    public static int Child(string kindName, int first, int count)
    {
        string root = Directory.Exists("/dev/shm") ? "/dev/shm" : Path.GetTempPath();
        string folder = Directory.CreateDirectory(Path.Combine(root, $"nameband-hostile-{Environment.ProcessId}")).FullName;
        try
        {
            var kind = new HostileKinds("samples", "fonts-open", folder).Of(kindName);
            using var output = Console.OpenStandardOutput();
            Tell("ready");
            for (int seed = first; seed < first + count; seed++)
            {
                var before = Environment.CpuUsage.TotalTime;
                string? fault = kind.Fault(seed, out bool usable);
                var took = Environment.CpuUsage.TotalTime - before;
                string line =
                    string.Create(CultureInfo.InvariantCulture, $"{(usable ? 1 : 0)} {took.Ticks} {fault?.ReplaceLineEndings(" | ")}");
                Tell(line.Length > 2000 ? line[..2000] : line);
            }

            return 0;

            void Tell(string line) => output.Write(Encoding.UTF8.GetBytes(line + "\n"));
        }
        finally
        {
            Directory.Delete(folder, recursive: true);
        }
    }

    /// <summary>Writes one input to a file, to be looked at.</summary>
    public static int Keep(string kindName, int seed, string file)
    {
        string folder = Directory.CreateTempSubdirectory("nameband-hostile-").FullName;
        File.WriteAllBytes(file, new HostileKinds("samples", "fonts-open", folder).Of(kindName).Input(seed));
        Directory.Delete(folder, recursive: true);
        return 0;
    }

    private static void Try(string kind, int first, int count, Tally tally)
    {
        int done = 0;
        while (done < count)
        {
            string? end = Follow(kind, first + done, count - done, tally, out int told);
            done += told;
            if (end is not null)
            {
                tally.Faults.Enqueue($"seed {first + done}: {end}");
                done++;
            }
        }
    }

    /// <summary>Runs a child and reads what it says; returns what ended it before its time.</summary>
    private static string? Follow(string kind, int first, int count, Tally tally, out int told)
    {
        var start = OwnProgram.Again("hostile-child", kind, Text(first), Text(count));
        start.RedirectStandardOutput = start.RedirectStandardError = true;
        start.Environment["DOTNET_gcConcurrent"] = "0";
        start.Environment["DOTNET_TieredPGO"] = "0";
        using var child = Process.Start(start)!;
        var errors = child.StandardError.ReadToEndAsync();
        int lines = 0;
        string? why = null;
        using var watch = new Timer(_ => why ??= Look(child, ref lines), null, 1000, 1000);
        if (child.StandardOutput.ReadLine() == "ready")
        {
            for (string? line = child.StandardOutput.ReadLine(); line is not null; line = child.StandardOutput.ReadLine())
            {
                tally.Take(first + lines, line);
                Interlocked.Increment(ref lines);
            }
        }

        child.WaitForExit();
        told = lines;
        string said = errors.Result.ReplaceLineEndings(" | ");
        string? cut = child.ExitCode == 0 ? null
            : why ?? $"the process ended with status {Text(child.ExitCode)}: {said[..Math.Min(said.Length, 300)]}";
        return cut is null || lines > 0 || count == 0 || why is not null
            ? cut : throw new InvalidOperationException($"The child did not start: {cut}");

        string? Look(Process process, ref int now)
        {
            try
            {
                process.Refresh();
                tally.Weigh(process.PeakWorkingSet64);
                string? fault = process.PeakWorkingSet64 > MostMemory
                    ? "more than 1 GB of memory" : tally.HangOf(process, Volatile.Read(ref now));
                if (fault is not null)
                {
                    process.Kill();
                }

                return fault;
            }
            catch (InvalidOperationException)
            {
                return null; // It has just ended.
            }
        }
    }

    private static string Text(int number) => number.ToString(CultureInfo.InvariantCulture);

    private sealed class Tally
    {
        private readonly ConcurrentDictionary<int, (int Line, TimeSpan Used, DateTime Since)> _seen = new();
        private readonly Lock _lock = new();

        public int Usable { get; private set; }

        public TimeSpan Slowest { get; private set; }

        public long Memory { get; private set; }

        public ConcurrentQueue<string> Faults { get; } = [];

        public void Take(int seed, string line)
        {
            string[] said = line.Split(' ', 3);
            var took = TimeSpan.FromTicks(long.Parse(said[1], CultureInfo.InvariantCulture));
            lock (_lock)
            {
                Usable += said[0] == "1" ? 1 : 0;
                Slowest = took > Slowest ? took : Slowest;
            }

            if (said[2].Length > 0 || took > Hang)
            {
                Faults.Enqueue($"seed {Text(seed)}: {(said[2].Length > 0 ? said[2] : "more than 5 s")}");
            }
        }

        public void Weigh(long bytes)
        {
            lock (_lock)
            {
                Memory = Math.Max(Memory, bytes);
            }
        }

        /// <summary>Counts processor time, so that a busy machine is not mistaken for a hang.</summary>
        public string? HangOf(Process process, int line)
        {
            var used = process.TotalProcessorTime;
            var (seenLine, usedThen, since) = _seen.AddOrUpdate(
                process.Id, (line, used, DateTime.UtcNow), (_, before) => before.Line == line ? before : (line, used, DateTime.UtcNow));
            return seenLine != line ? null
                : used - usedThen > Hang || DateTime.UtcNow - since > Stuck ? "hangs" : null;
        }
    }
}
