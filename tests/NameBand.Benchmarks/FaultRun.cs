using System.Collections.Concurrent;
using System.Collections.Immutable;
using System.Diagnostics;
using System.Globalization;
using System.Text.RegularExpressions;

namespace NameBand.Benchmarks;

/// <summary>
/// Plants faults, drawn by lot in each room, and counts those that the tests notice. All are in one build, one switched on at a time;
/// each is held against the classes of tests that come by it, the quickest first, until one fails or the seconds are over.
/// </summary>
/// <remarks>The last commit is copied, and nothing of the copy is kept. A class that fails without a fault is left out.</remarks>
internal static partial class FaultRun
{
    private const int Each = 30; // Of a room: its share is then told within some 15 of 100, nineteen times in twenty.
    private const int Seed = 1;
    private const int Seconds = 60; // Of tests for a fault that none has noticed.
    private const int LongestClassSeconds = 400;
    private const int SlowerFactor = 4; // A fault that makes tests so much slower is noticed.
    private const int ToStartSeconds = 30;
    private const double OwnRoomFactor = 0.3; // A room's own tests, and those of whole jobs, before others that are three times as quick.
    private const int SideBySide = 2;
    private const int MostBuilds = 8;

    /// <summary>They read the sources, or need a bundle that is not there.</summary>
    private static readonly string[] LeftOut = ["NameBand.Tests.House.", "NameBand.Tests.Docs.", "NameBand.Tests.Windows."];

    private sealed record Outcome(PlantedFault Fault, bool IsNoticed, string By);

    /// <param name="args">Faults of each room, seed, seconds, rooms.</param>
    public static int Run(string[] args)
    {
        int Number(int at, int otherwise) => args.Length > at ? int.Parse(args[at], CultureInfo.InvariantCulture) : otherwise;
        string project = Path.Combine(Directory.CreateTempSubdirectory("nameband-faults-").FullName, "project");
        Must(project, "git", "clone", "-q", ".", project);
        string[] rooms = [.. args.Skip(3)];
        var all = FaultDrawer.All(project).Where(r => rooms.Length == 0 || rooms.Contains(r.Key)).SelectMany(r => r).ToLookup(f => f.Room);
        var faults = Built(project, all, Number(0, Each), Number(1, Seed));
        if (faults is null)
        {
            Console.Error.WriteLine("What was drawn could not be built: look at it in " + project);
            return 1;
        }

        var classes = Classes(project);
        Console.WriteLine(FormattableString.Invariant(
            $"{faults.Count} faults of {all.Sum(r => r.Count())} in {all.Count} rooms; {classes.Count} classes of tests"));
        var outcomes = new ConcurrentBag<Outcome>();
        Parallel.For(0, faults.Count, new ParallelOptions { MaxDegreeOfParallelism = SideBySide }, i =>
        {
            var outcome = Tried(project, faults[i], i + 1, classes, Number(2, Seconds));
            outcomes.Add(outcome);
            Console.WriteLine($"{(outcome.IsNoticed ? "noticed" : "NOT    ")} {outcome.Fault.Said}  [{outcome.By}]");
        });
        foreach (var room in outcomes.GroupBy(o => o.Fault.Room).OrderBy(g => g.Key, StringComparer.Ordinal))
        {
            Console.WriteLine(FormattableString.Invariant(
                $"| {room.Key} | {all[room.Key].Count()} | {room.Count()} | {room.Count(o => o.IsNoticed)} |"));
        }

        Directory.Delete(Path.GetDirectoryName(project)!, recursive: true);
        return 0;
    }

    /// <summary>Draws and builds; what the compiler does not take is drawn anew. Null: it takes none.</summary>
    private static List<PlantedFault>? Built(string project, ILookup<string, PlantedFault> all, int each, int seed)
    {
        for (int build = 0; build < MostBuilds; build++)
        {
            var faults = FaultDrawer.Drawn(all, each, seed);
            Must(project, "git", "-C", project, "checkout", "-q", "-f", ".");
            FaultDrawer.Plant(project, faults);
            var (status, said) = Start(
                project, null, Timeout.Infinite, "dotnet", "build", "tests/NameBand.Tests", "-c", "Release", "-v", "quiet", "-nologo",
                "-p:RunAnalyzers=false", "-p:TreatWarningsAsErrors=false", "-p:Nullable=annotations", "-p:NuGetAudit=false",
                "-p:FastStart=false");
            if (status == 0)
            {
                return faults;
            }

            var refused = CompilerError().Matches(said)
                .Select(m => (File: m.Groups[1].Value.Replace('\\', '/'), Line: int.Parse(m.Groups[2].Value, CultureInfo.InvariantCulture)))
                .ToHashSet();
            var bad = faults.Where(f => refused.Any(r => r.File.EndsWith('/' + f.File, StringComparison.Ordinal) && r.Line == f.Line))
                .ToHashSet();
            if (bad.Count == 0)
            {
                Console.Error.WriteLine(said);
                return null;
            }

            all = all.SelectMany(r => r).Where(f => !bad.Contains(f)).ToLookup(f => f.Room);
        }

        return null;
    }

    /// <summary>For each class of tests how long it takes, and the faults that it comes by.</summary>
    private static ImmutableDictionary<string, (double Seconds, ImmutableHashSet<int> Passed)> Classes(string project)
    {
        var names = Start(project, null, Timeout.Infinite, "dotnet", Tests(project), "list-classes").Said
            .Split('\n', StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries)
            .Where(n => !LeftOut.Any(l => n.StartsWith(l, StringComparison.Ordinal)));
        var found = new ConcurrentDictionary<string, (double, ImmutableHashSet<int>)>();
        var oneByOne = Partitioner.Create(names, EnumerablePartitionerOptions.NoBuffering);
        Parallel.ForEach(oneByOne, new ParallelOptions { MaxDegreeOfParallelism = SideBySide }, name =>
        {
            string passed = Directory.CreateTempSubdirectory("nameband-passed-").FullName;
            var (status, said) = Start(
                project, ("NAMEBAND_FAULTS_PASSED", passed), LongestClassSeconds, "dotnet", Tests(project), "run-classes", name);
            Directory.Delete(passed, recursive: true);
            string[]? line = said.Split('\n').Select(l => l.Split('\t')).FirstOrDefault(l => l.Length > 3 && l[0] == name);
            if (status == 0 && line is not null)
            {
                found[name] = (double.Parse(line[1], CultureInfo.InvariantCulture), [.. line[3].Split(
                    ' ', StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries)
                    .Select(n => int.Parse(n, CultureInfo.InvariantCulture))]);
            }
            else
            {
                Console.WriteLine($"left out: {name}, {(status is null ? "too slow" : line?[2] ?? "broken off")}");
            }
        });
        return found.ToImmutableDictionary();
    }

    private static Outcome Tried(
        string project, PlantedFault fault, int number, IReadOnlyDictionary<string, (double Seconds, ImmutableHashSet<int> Passed)> classes,
        int most)
    {
        var passing = classes.Where(c => c.Value.Passed.Contains(number))
            .OrderBy(c => c.Value.Seconds * (IsOwn(c.Key, fault) ? OwnRoomFactor : 1))
            .ThenBy(c => c.Key, StringComparer.Ordinal).ToList();
        if (passing.Count == 0)
        {
            return new Outcome(fault, IsNoticed: false, "no test comes by it");
        }

        double seconds = 0;
        var taken = new List<string>();
        foreach (var (name, (takes, _)) in passing.Where(c => taken.Count == 0 || seconds + c.Value.Seconds <= most))
        {
            taken.Add(name);
            seconds += takes;
        }

        var (status, said) = Start(
            project, ("NAMEBAND_FAULT", number.ToString(CultureInfo.InvariantCulture)),
            ToStartSeconds + (SlowerFactor * (int)Math.Ceiling(seconds)), ["dotnet", Tests(project), "run-classes", .. taken]);
        string? failed = said.Split('\n').Select(l => l.Split('\t')).LastOrDefault(l => l.Length > 2 && l[2].Length > 0)?[2];
        return new Outcome(fault, status != 0, status switch
        {
            null => "never done",
            0 => FormattableString.Invariant($"{taken.Count} of {passing.Count} classes that come by it"),
            _ => failed ?? "ended",
        });
    }

    private static bool IsOwn(string name, PlantedFault fault) =>
        name.Contains("." + fault.Room, StringComparison.Ordinal) || name.EndsWith("SheetTests", StringComparison.Ordinal);

    private static string Tests(string project) => Path.Combine(project, "tests/NameBand.Tests/bin/Release/net10.0/NameBand.Tests.dll");

    private static void Must(string project, params string[] command)
    {
        if (Start(Directory.Exists(project) ? project : ".", null, Timeout.Infinite, command) is { Status: not 0 } wrong)
        {
            throw new InvalidOperationException($"{string.Join(' ', command)}: {wrong.Said}");
        }
    }

    /// <param name="seconds">After which it is ended.</param>
    /// <returns>Its status, null where it was ended, and all that it printed.</returns>
    private static (int? Status, string Said) Start(
        string folder, (string Name, string Value)? setting, int seconds, params string[] command)
    {
        var start = new ProcessStartInfo(command[0], command.Skip(1))
        {
            WorkingDirectory = folder,
            RedirectStandardOutput = true,
            RedirectStandardError = true,
        };
        start.Environment["DOTNET_TieredPGO"] = "0";
        start.Environment["NAMEBAND_PROGRAM"] = Path.Combine(Path.GetFullPath(folder), "src/NameBand.Cli/bin/Release/net10.0/nameband.dll");
        if (setting is { } set)
        {
            start.Environment[set.Name] = set.Value;
        }

        using var process = Process.Start(start)!;
        var said = Task.WhenAll(process.StandardOutput.ReadToEndAsync(), process.StandardError.ReadToEndAsync());
        if (!process.WaitForExit(seconds == Timeout.Infinite ? Timeout.InfiniteTimeSpan : TimeSpan.FromSeconds(seconds)))
        {
            process.Kill(entireProcessTree: true);
            return (null, string.Concat(said.Result));
        }

        return (process.ExitCode, string.Concat(said.Result));
    }

    [GeneratedRegex(@"^(.+?)\((\d+),\d+\): error", RegexOptions.Multiline)]
    private static partial Regex CompilerError();
}
