using System.Diagnostics;
using System.Globalization;
using System.Runtime.InteropServices;
using System.Text.Json;
using NameBand.Lettering.Faces;

namespace NameBand.Benchmarks;

/// <summary>
/// The whole command as a cold process: against one picture of each name by hb-view in the same run, and its memory
/// as the list grows. Figures only; nothing is judged here.
/// </summary>
internal static partial class WholeJob
{
    private const long BytesOfThirtyThousand = 12_000_000_000;
    private const string Face = "fonts-open/nunito-bold/Nunito_700Bold.ttf";

    internal readonly record struct Cost(double WallSeconds, double ProcessorSeconds);

    public static int Run(string[] args)
    {
        string root = args.Length > 0 ? args[0] : Environment.CurrentDirectory;
        string program = Path.Combine(root, "src/NameBand.Cli/bin/Release/net10.0/nameband.dll");
        if (!File.Exists(program) || !OperatingSystem.IsLinux())
        {
            Console.Error.WriteLine("Run it on Linux in the project's folder, after: dotnet build -c Release src/NameBand.Cli");
            return 2;
        }

        string scratch = Directory.CreateTempSubdirectory("nameband-bench-").FullName;
        try
        {
            AgainstHbView(root, program, scratch, Path.Combine(root, "samples/lantern-walk"), 5);
            WriteJob(root, Path.Combine(scratch, "job600"), 600);
            AgainstHbView(root, program, scratch, Path.Combine(scratch, "job600"), 3);
            Growth(root, program, scratch);
            return 0;
        }
        finally
        {
            Directory.Delete(scratch, recursive: true);
        }
    }

    private static void AgainstHbView(string root, string program, string scratch, string job, int runs)
    {
        string made = Path.Combine(scratch, "out");
        Start("dotnet", [program, "make", job, "--out", made]);
        var plan = JsonDocument.Parse(File.ReadAllBytes(Path.Combine(made, "plan.json"))).RootElement;
        double height = plan.GetProperty("letterHeightMm").GetDouble();
        string[] names = [.. plan.GetProperty("rounds").EnumerateArray().SelectMany(r => r.GetProperty("segments").EnumerateArray())
            .SelectMany(s => s.GetProperty("names").EnumerateArray()).Select(n => n.GetProperty("text").GetString()!)];

        // The same letter height at 8 pixels a millimetre; Nunito's capitals are 705 of 1000 units high.
        string size = (height * 8 / 0.705).ToString("0", CultureInfo.InvariantCulture);
        var ours = new List<Cost>();
        var theirs = new List<Cost>();
        var start = new List<Cost>();
        for (int i = 0; i < runs; i++)
        {
            // Into an empty folder each time: over an earlier one, files that would come out the same are taken over.
            Directory.Delete(made, recursive: true);
            ours.Add(Measure(() => Start("dotnet", [program, "make", job, "--out", made])));
            theirs.Add(Measure(() =>
            {
                foreach (string name in names)
                {
                    Start("hb-view",
                        [Path.Combine(root, Face), name, $"--font-size={size}", $"--output-file={Path.Combine(scratch, "name.png")}"]);
                }
            }));
            start.Add(Measure(() => Start("dotnet", [program, "--version"])));
        }

        Directory.Delete(made, recursive: true);
        Print(FormattableString.Invariant($"make, {names.Length} names"), ours);
        Print("hb-view, a picture of each of them", theirs);
        Print("start-up alone (--version)", start);
        double cpu = Median(ours.Select(c => c.ProcessorSeconds)) - Median(start.Select(c => c.ProcessorSeconds));
        Say($"processor time a name past start-up: {1000 * cpu / names.Length:0.0} ms");
        Say($"make / hb-view: wall {Median(ours.Zip(theirs, (a, b) => a.WallSeconds / b.WallSeconds)):0.00}, processor {Median(ours.Zip(theirs, (a, b) => a.ProcessorSeconds / b.ProcessorSeconds)):0.00} (median of pairs)");
    }

    private static void Growth(string root, string program, string scratch)
    {
        double before = 0;
        int fewer = 0;
        foreach (int count in new[] { 60, 600, 6000, 30_000 })
        {
            if (count == 30_000 && new DriveInfo(scratch).AvailableFreeSpace < BytesOfThirtyThousand)
            {
                Say($"make, {count} names: left out, for there is no room for its pictures in {scratch}");
                continue;
            }

            string job = Path.Combine(scratch, "job" + count.ToString(CultureInfo.InvariantCulture));
            WriteJob(root, job, count);
            var cost = Measure(() => Start("dotnet", [program, "make", job]));
            double memory = PeakOfChildrenMb();
            Say($"make, {count} names: wall {cost.WallSeconds:0.00} s, processor {cost.ProcessorSeconds:0.00} s, {1000 * cost.ProcessorSeconds / count:0.0} ms of it a name, peak memory {memory:0} MB{(before > 0 ? $", {memory / before:0.00} times that of {fewer}" : "")}");
            (before, fewer) = (memory, count);
            Directory.Delete(job, recursive: true);
        }
    }

    /// <summary>A job of so many invented names, on as many rounds as they need.</summary>
    public static void WriteJob(string root, string job, int count)
    {
        string[] lines = File.ReadAllLines(Path.Combine(root, "tests/NameBand.Tests/Sources/Data/names-of-many-locales.csv"));
        string[][] people =
            [.. lines.Skip(1).Where(l => l.All(c => c < 0x250) && !l.Contains('"')).Select(l => l.Split(',')[1].Split(' ', 2))
            .Where(p => p.Length == 2)];
        Directory.CreateDirectory(job);
        File.WriteAllLines(
            Path.Combine(job, "names.csv"),
            ["name", .. Enumerable.Range(0, count)
            .Select(i => people[i % people.Length][0] + " " + people[((i * 7) + (i / people.Length)) % people.Length][1])
                .Select((n, i) => count > people.Length ? n + " " + Initials(i / people.Length) : n)
                    .Distinct(StringComparer.OrdinalIgnoreCase)]);
        File.WriteAllText(
            Path.Combine(job, "job.json"),
            """{ "format": 1, "lists": ["names.csv"], "columns": { "name": "name" }, "hem": { "length": "HEM", "turn": 0 }, "strip": { "rounds": "asNeeded" }, "lettering": { "height": 10 } }"""
            .Replace("HEM", count > 10_000 ? "36.6 m" : "3.66 m", StringComparison.Ordinal));
    }

    private static string Initials(int number) =>
        number < 26 ? ((char)('A' + number)).ToString() : Initials((number / 26) - 1) + Initials(number % 26);

    private static void Print(string what, List<Cost> costs) => Say(
        $"{what}: wall {costs.Min(c => c.WallSeconds):0.00} / {Median(costs.Select(c => c.WallSeconds)):0.00} / {costs.Max(c => c.WallSeconds):0.00} s, processor {costs.Min(c => c.ProcessorSeconds):0.00} / {Median(costs.Select(c => c.ProcessorSeconds)):0.00} / {costs.Max(c => c.ProcessorSeconds):0.00} s (least / median / most of {costs.Count})");

    private static void Say(FormattableString line) => Console.WriteLine(line.ToString(CultureInfo.InvariantCulture));

    private static double Median(IEnumerable<double> values)
    {
        double[] sorted = [.. values.Order()];
        return sorted[sorted.Length / 2];
    }

    internal static Cost Measure(Action run)
    {
        double before = ProcessorOfChildren();
        var watch = Stopwatch.StartNew();
        run();
        return new Cost(watch.Elapsed.TotalSeconds, ProcessorOfChildren() - before);
    }

    private static void Start(string program, string[] args)
    {
        var start = new ProcessStartInfo(program, args) { RedirectStandardOutput = true, RedirectStandardError = true };
        using var process = Process.Start(start)!;
        process.StandardOutput.ReadToEnd();
        process.StandardError.ReadToEnd();
        process.WaitForExit();
    }

    private static double ProcessorOfChildren()
    {
        GetUsage(Children, out var usage);
        return usage.UserSeconds + usage.SystemSeconds + ((usage.UserMicroseconds + usage.SystemMicroseconds) / 1e6);
    }

    private static double PeakOfChildrenMb()
    {
        GetUsage(Children, out var usage);
        return usage.PeakKb / 1024.0;
    }

    private const int Children = -1;

    /// <summary>The first fields of the system's struct rusage, which has eighteen numbers.</summary>
    [StructLayout(LayoutKind.Sequential, Size = 18 * 8)]
    private struct Usage
    {
        public long UserSeconds;
        public long UserMicroseconds;
        public long SystemSeconds;
        public long SystemMicroseconds;
        public long PeakKb;
    }

    [LibraryImport("libc", EntryPoint = "getrusage")]
    private static partial int GetUsage(int who, out Usage usage);
}
