using System.Diagnostics;
using System.Text.RegularExpressions;
using NameBand.Tests;

namespace NameBand.Browser;

/// <summary>The page as a maker starts it: its own process on a job's folder.</summary>
internal sealed partial class RunningPage : IDisposable
{
    private readonly Process _process;

    private RunningPage(Process process, string url)
    {
        _process = process;
        Url = url;
    }

    public string Url { get; }

    public static RunningPage Start(string folder, params string[] more)
    {
        // The program's own output folder, where its list of the page's files lies; or another build of it, to prove that one.
        string program = Environment.GetEnvironmentVariable("NAMEBAND_PROGRAM") is { Length: > 0 } other ? other : Path.Combine(AppContext.BaseDirectory, "nameband.dll");
        return Start(new ProcessStartInfo("dotnet", [program, "page", folder, "--no-browser", .. more])
        {
            RedirectStandardOutput = true,
            RedirectStandardError = true,
            UseShellExecute = false,
        });
    }

    public static RunningPage Start(ProcessStartInfo start)
    {
        var process = Process.Start(start)!;
        string said = "";
        while (process.StandardOutput.ReadLine() is { } line)
        {
            said += line + "\n";
            if (Address().Match(said) is { Success: true } match)
            {
                return new RunningPage(process, match.Groups[1].Value);
            }
        }

        throw new InvalidOperationException($"The page did not start: {said}{process.StandardError.ReadToEnd()}");
    }

    /// <summary>Ends it as a power cut does.</summary>
    public void Kill()
    {
        _process.Kill();
        _process.WaitForExit();
    }

    public void Dispose()
    {
        if (!_process.HasExited)
        {
            Kill();
        }

        _process.Dispose();
    }

    [GeneratedRegex(@"(http://127\.0\.0\.1:\d+/)")]
    private static partial Regex Address();
}
