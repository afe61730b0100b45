using System.Diagnostics;
using System.Text;
using Xunit;

namespace NameBand.Tests.CommandLine;

/// <summary>One run of the command line as a process of its own.</summary>
internal sealed record CliProcess(int Status, string Out, string Errors)
{
    public static string DotNet => Environment.GetEnvironmentVariable("DOTNET_HOST_PATH") is { Length: > 0 } host ? host : "dotnet";

    /// <summary>The command line as it is used, compiled ahead, where the environment names one; else the one built with the
    /// tests.</summary>
    public static string Program => Environment.GetEnvironmentVariable("NAMEBAND_PROGRAM") is { Length: > 0 } asUsed
        ? asUsed : Path.Combine(AppContext.BaseDirectory, "nameband.dll");

    public static CliProcess Run(string[] args, params (string Key, string Value)[] environment) => Run(Program, args, null, environment);

    /// <param name="program">The assembly to run.</param>
    /// <param name="workingFolder">Null: where the tests run.</param>
    public static CliProcess Run(
        string program, string[] args, string? workingFolder, params IEnumerable<(string Key, string Value)> environment)
    {
        var start = new ProcessStartInfo(DotNet)
        {
            RedirectStandardOutput = true,
            RedirectStandardError = true,
            RedirectStandardInput = true,
            StandardOutputEncoding = new UTF8Encoding(false, throwOnInvalidBytes: true),
            StandardErrorEncoding = new UTF8Encoding(false, throwOnInvalidBytes: true),
            WorkingDirectory = workingFolder ?? "",
        };
        start.ArgumentList.Add(program);
        foreach (string arg in args)
        {
            start.ArgumentList.Add(arg);
        }

        foreach (var (key, value) in environment)
        {
            start.Environment[key] = value;
        }

        using var process = Process.Start(start)!;
        process.StandardInput.Close();
        var errors = process.StandardError.ReadToEndAsync();
        string output = process.StandardOutput.ReadToEnd();
        Assert.True(process.WaitForExit(TimeSpan.FromMinutes(5)), $"{Path.GetFileName(program)} did not end.");
        return new CliProcess(process.ExitCode, output, errors.Result);
    }
}
