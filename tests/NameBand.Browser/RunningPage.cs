using System.Collections.Concurrent;
using System.Diagnostics;
using System.Text.RegularExpressions;
using NameBand.Common;
using NameBand.Tests;
using NameBand.Web.Serving;

namespace NameBand.Browser;

/// <summary>
/// The page on a job's folder: served from the tests' own process, which has compiled and loaded once what each process would
/// again; or as a maker starts it, in a process of its own, where the process is what is tried.
/// </summary>
internal sealed partial class RunningPage : IDisposable
{
    private static readonly ConcurrentDictionary<string, RunningPage> All = new();

    /// <summary>Where the worktables of these tests keep their secrets; not where those of whoever runs the tests are.</summary>
    private static readonly TemporaryFolder Data = OwnData();

    private readonly Action _end;
    private readonly Process? _process;
    private readonly Lazy<string> _cookie;

    private RunningPage(string address, Action end, Process? process = null)
    {
        _end = end;
        _process = process;
        Address = address;
        Url = new Uri(address).GetLeftPart(UriPartial.Authority) + "/";
        _cookie = new Lazy<string>(Exchange);
        All[Url] = this;
    }

    /// <summary>Where it answers; who has the cookie is let in there.</summary>
    public string Url { get; }

    /// <summary>The whole address as it is said in the terminal.</summary>
    public string Address { get; }

    /// <summary>Name and value of the cookie that the address is exchanged for.</summary>
    public (string Name, string Value) Cookie =>
        _cookie.Value.Split('=') is [var name, var value] ? (name, value) : throw new InvalidOperationException("No cookie was given.");

    /// <summary>The one that answers at an address; null: none that was started here.</summary>
    public static RunningPage? At(string url) => All.GetValueOrDefault(new Uri(url).GetLeftPart(UriPartial.Authority) + "/");

    /// <summary>What may ask as the page's own browser does.</summary>
    public HttpClient Client() =>
        new(new HttpClientHandler { UseCookies = false }) { DefaultRequestHeaders = { { "Cookie", _cookie.Value } } };

    /// <summary>Served from this process.</summary>
    /// <param name="more">Nothing, or <c>--lend</c>.</param>
    public static RunningPage Start(string folder, params string[] more)
    {
        bool lend = more is ["--lend"];
        if (!lend && more.Length > 0)
        {
            return StartAlone(folder, more);
        }

        var stop = new CancellationTokenSource();
        var told = new TaskCompletionSource<PageAddress>(TaskCreationOptions.RunContinuationsAsynchronously);
        var served = Task.Run(() => PageServer.RunAsync(new PageOptions(folder, 0, lend), told.SetResult, stop.Token));
        if (Task.WaitAny(told.Task, served) == 1 && !told.Task.IsCompleted)
        {
            served.GetAwaiter().GetResult();
        }

        return new RunningPage(told.Task.Result.Url, () => End(served, stop));
    }

    /// <summary>As a maker starts it, in a process of its own, which can be killed.</summary>
    public static RunningPage StartAlone(string folder, params string[] more) => StartFor(Data.FullPath, folder, more);

    /// <summary>The page as another account starts it, or the same one after its data were lost.</summary>
    /// <param name="data">Where the account's own data are.</param>
    public static RunningPage StartFor(string data, string folder, params string[] more) => StartIn("", data, folder, more);

    /// <summary>The page in a language that the environment names, as one who translates starts it.</summary>
    public static RunningPage StartIn(string language, string folder) => StartIn(language, Data.FullPath, folder);

    private static RunningPage StartIn(string language, string data, string folder, params string[] more)
    {
        // The program's own output folder, where its list of the page's files lies; or another build of it, to prove that one.
        string program = Environment.GetEnvironmentVariable("NAMEBAND_PROGRAM") is { Length: > 0 } other
            ? other : Path.Combine(AppContext.BaseDirectory, "nameband.dll");
        return Start(new ProcessStartInfo("dotnet", [program, "page", folder, "--no-browser", .. more])
        {
            RedirectStandardOutput = true,
            RedirectStandardError = true,
            UseShellExecute = false,
            Environment = { ["XDG_DATA_HOME"] = data, [Language.Setting] = language },
        });
    }

    public static RunningPage Start(ProcessStartInfo start)
    {
        var process = Process.Start(start)!;
        string said = "";
        while (process.StandardOutput.ReadLine() is { } line)
        {
            said += line + "\n";
            if (WholeAddress().Match(said) is { Success: true } match)
            {
                return new RunningPage(match.Value, () => End(process), process);
            }
        }

        throw new InvalidOperationException($"The page did not start: {said}{process.StandardError.ReadToEnd()}");
    }

    /// <summary>The file with which a browser is started, of a worktable that was started here.</summary>
    public string Opener =>
        Directory.GetFiles(Data["nameband"], "*.html").Single(f => File.ReadAllText(f).Contains(Address, StringComparison.Ordinal));

    /// <summary>Ends it as a power cut does.</summary>
    public void Kill()
    {
        var process = _process ?? throw new InvalidOperationException("Only a page that was started alone can be killed.");
        process.Kill();
        process.WaitForExit();
    }

    public void Dispose() => _end();

    private static void End(Process process)
    {
        if (!process.HasExited)
        {
            process.Kill();
            process.WaitForExit();
        }

        process.Dispose();
    }

    private static void End(Task served, CancellationTokenSource stop)
    {
        stop.Cancel();
        try
        {
            served.GetAwaiter().GetResult();
        }
        catch (OperationCanceledException)
        {
            // It was told to stop before it had come up.
        }

        stop.Dispose();
    }

    private static TemporaryFolder OwnData()
    {
        var data = new TemporaryFolder();
        Environment.SetEnvironmentVariable("XDG_DATA_HOME", data.FullPath);
        return data;
    }

    private string Exchange()
    {
        using var client = new HttpClient(new HttpClientHandler { UseCookies = false });
        using var answer = client.Send(new HttpRequestMessage(HttpMethod.Get, Address));
        return answer.Headers.GetValues("Set-Cookie").Single().Split(';')[0];
    }

    [GeneratedRegex(@"http://127\.0\.0\.1:\d+/open/[a-z0-9-]{23}(?=\s)")]
    private static partial Regex WholeAddress();
}
