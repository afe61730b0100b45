using System.Diagnostics;
using System.Globalization;
using System.Runtime.InteropServices;
using NameBand.Tests.Hostile;
using SharpFuzz;

namespace NameBand.Benchmarks;

/// <summary>
/// Spoils files under the guidance of the branches they take (AFL++ by SharpFuzz): an input that went where none had gone is
/// spoilt further. What is found and small is kept among the tests' data; what was answered wrongly is told and kept beside it.
/// </summary>
internal static class FuzzRun
{
    public const string Child = "fuzz-child";

    private const int TraceBytes = 1 << 16;
    /// <summary>Readers whose branches are counted; of those that are others' own, what a file of a stranger reaches first.</summary>
    private static readonly string[] Watched =
        ["NameBand.Core", "NameBand.Web", "CsvHelper", "ExcelDataReader", "ExcelNumberFormat", "UtfUnknown"];

    private static readonly string[] Kinds =
    [
        "list", "spreadsheet", "job.json", "workshop", "corrections", "sewing log", "letters", "out plan", "manifest", "font guard", "face",
        HostileRequest.Kind,
        "approvals", "measured lines", "drift",
    ];

    public static int Run(string[] args)
    {
        double minutes = args.Length > 0 ? double.Parse(args[0], CultureInfo.InvariantCulture) : 60;
        string folder = Directory.CreateTempSubdirectory("nameband-fuzz-").FullName;
        string program = Watch(Path.Combine(folder, "program"));
        int wrong = 0;
        Console.WriteLine("kind               minutes   executions   a second   branches   kept   answered wrongly");
        foreach (string kind in args.Length > 1 ? args[1..] : Kinds)
        {
            string at = Path.Combine(folder, kind.Replace(' ', '-'));
            Begin(kind, at);
            string? why = Fuzz(program, kind, at, minutes);
            if (why is not null)
            {
                Console.WriteLine($"AFL++ did not run on “{kind}”: {why}");
            }

            wrong += why is null ? Tell(kind, at) : 1;
        }

        if (wrong == 0)
        {
            Directory.Delete(folder, recursive: true);
        }
        else
        {
            Console.WriteLine($"What was answered wrongly lies in {folder}");
        }

        return wrong == 0 ? 0 : 1;
    }

    /// <summary>What AFL++ starts: reads what it is given, over and over.</summary>
    public static int Try(string kindName)
    {
        // Until the fuzzer gives its own memory, branches are counted into this.
        unsafe
        {
            SharpFuzz.Common.Trace.SharedMem = (byte*)NativeMemory.AllocZeroed(TraceBytes);
        }

        string job = Path.Combine(AppContext.BaseDirectory, $"job-{Environment.ProcessId}");
        var kind = KindOf(kindName, Directory.CreateDirectory(job).FullName);

        // What is made once, when it is first asked for, is made before anything is counted: else AFL++ takes it for an input's doing.
        foreach (byte[] seed in kind.SmallSeeds)
        {
            kind.FaultOf(seed, out _);
        }

        Fuzzer.OutOfProcess.Run(stream =>
        {
            using var input = new MemoryStream();
            stream.CopyTo(input);
            if (kind.FaultOf(input.ToArray(), out _) is { } fault)
            {
                throw new InvalidOperationException(fault);
            }
        });
        return 0;
    }

    private static HostileKind KindOf(string name, string folder) =>
        name == HostileRequest.Kind ? new FuzzedPage(folder).Kind : new HostileKinds("samples", "fonts-open", folder).Of(name);

    /// <summary>A copy of this program whose readers count the branches they take.</summary>
    private static string Watch(string folder)
    {
        foreach (string file in Directory.GetFiles(AppContext.BaseDirectory, "*", SearchOption.AllDirectories))
        {
            string to = Path.Combine(folder, Path.GetRelativePath(AppContext.BaseDirectory, file));
            Directory.CreateDirectory(Path.GetDirectoryName(to)!);
            File.Copy(file, to);
        }

        // The page looks for the list of its files under the name of the program.
        File.Copy(
            Path.Combine(folder, "NameBand.Web.staticwebassets.endpoints.json"),
            Path.Combine(folder, "nameband.staticwebassets.endpoints.json"));
        foreach (string library in Watched)
        {
            ComparedValues.Watch(Path.Combine(folder, library + ".dll"));
            Fuzzer.Instrument(Path.Combine(folder, library + ".dll"), _ => true, SharpFuzz.Options.Value);
        }

        return Path.Combine(folder, "NameBand.Benchmarks.dll");
    }

    /// <summary>Real files and what earlier runs found, to start from; and the words that stand in them.</summary>
    private static void Begin(string kindName, string at)
    {
        string scratch = Directory.CreateDirectory(Path.Combine(at, "scratch")).FullName;
        var kind = kindName == HostileRequest.Kind ? new HostileKind(kindName, HostileRequest.Seeds, _ => default)
            : new HostileKinds("samples", "fonts-open", scratch).Of(kindName);
        string seeds = Directory.CreateDirectory(Path.Combine(at, "seeds")).FullName;
        var ofEachKey = kindName == "job.json" ? FuzzWords.JobsOfEachKey() : [];
        byte[][] all = [.. kind.SmallSeeds, .. ofEachKey, .. FuzzedInputs.Of(FuzzedInputs.Place, kindName)];
        for (int i = 0; i < all.Length; i++)
        {
            File.WriteAllBytes(Path.Combine(seeds, i.ToString("0000", CultureInfo.InvariantCulture)), all[i]);
        }

        var words = FuzzWords.Of(kindName, kind.SmallSeeds).Select((word, i) => $"w{i}=\"{string.Concat(word.Select(Escaped))}\"");
        File.WriteAllLines(Path.Combine(at, "words"), words);

        static string Escaped(byte b) => b is >= 32 and < 127 and not (byte)'"' and not (byte)'\\' ? ((char)b).ToString() : $"\\x{b:x2}";
    }

    private static string? Fuzz(string program, string kind, string at, double minutes)
    {
        var start = new ProcessStartInfo("afl-fuzz",
        [
            "-i", Path.Combine(at, "seeds"), "-o", Path.Combine(at, "found"), "-x", Path.Combine(at, "words"), "-t", "10000", "-m", "none",
            "-V", (minutes * 60).ToString("0", CultureInfo.InvariantCulture), "--", "dotnet", program, Child, kind,
        ])
        {
            RedirectStandardOutput = true,
            RedirectStandardError = true,
        };
        foreach (string name in (string[])["AFL_SKIP_BIN_CHECK", "AFL_NO_UI", "AFL_SKIP_CPUFREQ", "AFL_NO_AFFINITY",
            "AFL_I_DONT_CARE_ABOUT_MISSING_CRASHES", "AFL_FAST_CAL", "AFL_SKIP_CRASHES"])
        {
            start.Environment[name] = "1";
        }

        start.Environment["AFL_FORKSRV_INIT_TMOUT"] = "120000";
        start.Environment["DOTNET_gcConcurrent"] = "0";
        start.Environment["DOTNET_TieredPGO"] = "0";
        using var fuzzer = Process.Start(start) ?? throw new InvalidOperationException("afl-fuzz cannot be started.");
        var errors = fuzzer.StandardError.ReadToEndAsync();
        string said = fuzzer.StandardOutput.ReadToEnd();
        fuzzer.WaitForExit();
        return File.Exists(Path.Combine(at, "found", "default", "fuzzer_stats")) ? null : $"{said} {errors.Result}";
    }

    private static int Tell(string kindName, string at)
    {
        string found = Path.Combine(at, "found", "default");
        var figures = File.ReadLines(Path.Combine(found, "fuzzer_stats")).Select(l => l.Split(':', 2)).Where(l => l.Length == 2)
            .ToDictionary(l => l[0].Trim(), l => l[1].Trim(), StringComparer.Ordinal);
        var kind = kindName == HostileRequest.Kind ? null
            : new HostileKinds("samples", "fonts-open", Path.Combine(at, "scratch")).Of(kindName);
        string[] faults = [.. new[] { "crashes", "hangs" }.Select(f => Path.Combine(found, f)).Where(Directory.Exists)
            .SelectMany(Directory.GetFiles).Where(f => Path.GetFileName(f).StartsWith("id", StringComparison.Ordinal))];
        int kept = FuzzedInputs.Keep(
            FuzzedInputs.Place, kindName,
            [
                .. FuzzedInputs.Of(FuzzedInputs.Place, kindName),
                .. Directory.GetFiles(Path.Combine(found, "queue"), "*+cov").Select(File.ReadAllBytes),
            ]);
        Console.WriteLine(string.Create(CultureInfo.InvariantCulture,
            $"{kindName,-16} {Figure("run_time") / 60,9:0.0} {Figure("execs_done"),12:0} {Figure("execs_per_sec"),10:0} " +
            $"{Figure("edges_found"),10:0} {kept,6} {faults.Length,8}"));
        foreach (string file in faults.Take(5))
        {
            string? fault = kind?.FaultOf(File.ReadAllBytes(file), out _);
            Console.WriteLine($"    {file}: {fault?.ReplaceLineEndings(" | ") ?? "right when read again: slow, or not the input's fault"}");
        }

        return faults.Length;

        double Figure(string name) => double.Parse(figures.GetValueOrDefault(name, "0"), CultureInfo.InvariantCulture);
    }
}
