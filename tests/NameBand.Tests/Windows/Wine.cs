using System.Diagnostics;
using System.Runtime.InteropServices;
using System.Text;
using NameBand.Tests.Outside;

namespace NameBand.Tests.Windows;

/// <summary>
/// The folder for Windows, run by wine64 in a Windows of its own. <c>NAMEBAND_WINDOWS</c> says where the folder lies; .ci/run
/// makes it.
/// </summary>
public sealed class Wine : IDisposable
{
    private const string Program = "/usr/lib/wine/wine64";
    private const string Server = "/usr/lib/wine/wineserver64";

    private static readonly TimeSpan LongestRun = TimeSpan.FromMinutes(4);
    private static readonly string? Bundle = Environment.GetEnvironmentVariable("NAMEBAND_WINDOWS");

    private readonly TemporaryFolder _own = new();
    private readonly Lazy<bool> _begun;

    public Wine() => _begun = new Lazy<bool>(() =>
    {
        Directory.CreateDirectory(_own["home"]);
        return Run("wineboot", "-i").Status == 0;
    });

    /// <summary>Whether the long form of the tests is asked for: every sample, every picture.</summary>
    public static bool IsLong => Environment.GetEnvironmentVariable("NAMEBAND_LONG") is { Length: > 0 };

    public static string ProgramPath => InWindows(Path.Combine(Bundle ?? "", "program", "nameband.exe"));

    /// <summary>Skips the running test, or fails it under CI, unless all is there that it needs.</summary>
    public void Require()
    {
        Xunit.Skip.IfNot(RuntimeInformation.OSArchitecture == Architecture.X64,
            "skipped: needs a processor of the kind x64 (wine64 runs on no other)");
        OutsideTool.RequireFile(Program, "wine64");
        OutsideTool.RequireMade(Bundle, "src/NameBand.Cli/Bundles/Bundles.proj -p:For=win-x64 (NAMEBAND_WINDOWS)");
        Xunit.Assert.True(_begun.Value, "Wine could not be begun.");
    }

    /// <summary>A path as Windows names it.</summary>
    public static string InWindows(string path) => "Z:" + Path.GetFullPath(path).Replace('/', '\\');

    public Answer NameBand(params string[] args) => Run([ProgramPath, .. args]);

    public Answer Run(params string[] args)
    {
        using var process = Start(args);
        var output = process.StandardOutput.ReadToEndAsync();
        var errors = process.StandardError.ReadToEndAsync();
        if (!process.WaitForExit(LongestRun))
        {
            process.Kill(entireProcessTree: true);
            throw new TimeoutException($"{string.Join(' ', args)} took longer than {LongestRun}.");
        }

        return new Answer(process.ExitCode, output.Result, errors.Result);
    }

    public Process Start(params string[] args)
    {
        var start = new ProcessStartInfo(Program, args)
        {
            RedirectStandardOutput = true,
            RedirectStandardError = true,
            RedirectStandardInput = true,
            StandardOutputEncoding = Encoding.UTF8,
            StandardErrorEncoding = Encoding.UTF8,
        };
        start.Environment["WINEPREFIX"] = _own["prefix"];
        start.Environment["HOME"] = _own["home"];
        start.Environment["WINEDEBUG"] = "-all";
        start.Environment["WINEDLLOVERRIDES"] = "mshtml=;winedbg.exe=d;winemenubuilder.exe=d";
        start.Environment["LC_ALL"] = "C.UTF-8";

        // Wine's memory is never writable and executable under two addresses, which .NET likes to have.
        start.Environment["DOTNET_EnableWriteXorExecute"] = "0";
        return Process.Start(start)!;
    }

    public void Dispose()
    {
        if (_begun.IsValueCreated)
        {
            // The server of this Windows alone: it is known by WINEPREFIX.
            var start = new ProcessStartInfo(Server, ["-k"]);
            start.Environment["WINEPREFIX"] = _own["prefix"];
            using var ended = Process.Start(start);
            ended?.WaitForExit();
        }

        _own.Dispose();
    }

    public sealed record Answer(int Status, string Out, string Errors)
    {
        public string OutOnOneLine => string.Join(' ', Out.Split([' ', '\r', '\n'], StringSplitOptions.RemoveEmptyEntries));

        public override string ToString() => $"status {Status}: {Out} {Errors}";
    }
}
