using System.Diagnostics;
using System.Text;
using Xunit;

namespace NameBand.Tests.Outside;

/// <summary>
/// Programs and files made by others, against which computations are checked. A test that needs one is a
/// <c>[SkippableFact]</c> or <c>[SkippableTheory]</c>: on a maker's own machine a missing tool skips it with the
/// reason, under CI it fails, so that the check cannot silently be left out.
/// </summary>
public static class OutsideTool
{
    private static readonly TimeSpan LongestRun = TimeSpan.FromMinutes(3);

    /// <summary>Skips the running test, or fails it under CI, unless the program is on the PATH.</summary>
    /// <param name="name">The program, such as <c>hb-shape</c>.</param>
    /// <param name="package">The Debian package that has it.</param>
    public static void Require(string name, string package) =>
        Demand(Find(name) is not null, $"the program {name} (Debian package {package}) is not installed");

    /// <summary>Skips the running test, or fails it under CI, unless the file or folder is there.</summary>
    public static void RequireFile(string path, string package) =>
        Demand(Path.Exists(path), $"{path} (Debian package {package}) is not installed");

    /// <summary>Skips the running test, or fails it under CI, unless what is made before the tests is there.</summary>
    /// <param name="path">Null: nobody said where it is.</param>
    /// <param name="by">What makes it.</param>
    public static void RequireMade(string? path, string by) =>
        Demand(path is { Length: > 0 } && Path.Exists(path), $"what {by} makes is not there{(path is { Length: > 0 } ? $": {path}" : "")}");

    /// <summary>Runs a program and hands back what it wrote to standard output, read as UTF-8.</summary>
    /// <exception cref="InvalidOperationException">It could not be started, ended with another status than 0, or took too long.</exception>
    public static string Run(string name, IEnumerable<string> args, string? stdin = null) =>
        Encoding.UTF8.GetString(RunForBytes(name, args, stdin));

    /// <summary>Runs a program and hands back the bytes it wrote to standard output.</summary>
    /// <exception cref="InvalidOperationException">It could not be started, ended with another status than 0, or took too long.</exception>
    public static byte[] RunForBytes(string name, IEnumerable<string> args, string? stdin = null)
    {
        var start = new ProcessStartInfo(Find(name) ?? name)
        {
            RedirectStandardInput = true,
            RedirectStandardOutput = true,
            RedirectStandardError = true,
            StandardErrorEncoding = Encoding.UTF8,
            UseShellExecute = false,
        };
        start.Environment["LC_ALL"] = "C.UTF-8"; // Else a machine without a locale takes names for broken bytes.
        start.Environment["OMP_THREAD_LIMIT"] = "1"; // Threads that wait for each other by turning take the cores from other tests.
        foreach (string arg in args)
        {
            start.ArgumentList.Add(arg);
        }

        using var process = Process.Start(start) ?? throw new InvalidOperationException($"{name} could not be started.");
        using var output = new MemoryStream();
        var reading = process.StandardOutput.BaseStream.CopyToAsync(output);
        var errors = process.StandardError.ReadToEndAsync();
        var writing = WriteAsync(process, stdin);
        if (!process.WaitForExit(LongestRun))
        {
            process.Kill(entireProcessTree: true);
            throw new InvalidOperationException($"{name} took longer than {LongestRun}.");
        }

        Task.WaitAll(reading, errors, writing);
        return process.ExitCode == 0
            ? output.ToArray()
            : throw new InvalidOperationException($"{name} ended with status {process.ExitCode}: {errors.Result}");
    }

    private static async Task WriteAsync(Process process, string? stdin)
    {
        try
        {
            if (stdin is not null)
            {
                await process.StandardInput.BaseStream.WriteAsync(Encoding.UTF8.GetBytes(stdin));
            }

            process.StandardInput.Close();
        }
        catch (IOException)
        {
            // The program ended before it had read everything; its exit status says whether that was right.
        }
    }

    private static void Demand(bool isThere, string what)
    {
        bool mustBeThere = Environment.GetEnvironmentVariable("CI") is { Length: > 0 } ci && ci != "false";
        if (mustBeThere)
        {
            Assert.True(isThere, $"This check must run here, but {what}.");
        }

        Skip.If(!isThere, $"skipped: {what}");
    }

    private static string? Find(string name) =>
        (Environment.GetEnvironmentVariable("PATH") ?? "")
            .Split(Path.PathSeparator, StringSplitOptions.RemoveEmptyEntries)
            .SelectMany(folder => new[] { Path.Combine(folder, name), Path.Combine(folder, name + ".exe") })
            .FirstOrDefault(File.Exists);
}
