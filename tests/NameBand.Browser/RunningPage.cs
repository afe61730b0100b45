using System.Collections.Concurrent;
using System.Diagnostics;
using System.Text.RegularExpressions;
using NameBand.Tests;

namespace NameBand.Browser;

/// <summary>The page as a maker starts it: its own process on a job's folder.</summary>
internal sealed partial class RunningPage : IDisposable
{
    private static readonly ConcurrentDictionary<string, RunningPage> All = new();

    /// <summary>Where the worktables of these tests keep their secrets; not where those of whoever runs the tests are.</summary>
    private static readonly TemporaryFolder Data = new();

    private readonly Process _process;
    private readonly Lazy<string> _cookie;

    private RunningPage(Process process, string url, string address)
    {
        _process = process;
        Url = url;
        Address = address;
        _cookie = new Lazy<string>(Exchange);
        All[url] = this;
    }

    /// <summary>Where it answers; who has the cookie is let in there.</summary>
    public string Url { get; }

    /// <summary>The whole address as it is said in the terminal.</summary>
    public string Address { get; }

    /// <summary>Name and value of the cookie that the address is exchanged for.</summary>
    public (string Name, string Value) Cookie => _cookie.Value.Split('=') is [var name, var value] ? (name, value) : throw new InvalidOperationException("No cookie was given.");

    /// <summary>The one that answers at an address; null: none that was started here.</summary>
    public static RunningPage? At(string url) => All.GetValueOrDefault(new Uri(url).GetLeftPart(UriPartial.Authority) + "/");

    /// <summary>What may ask as the page's own browser does.</summary>
    public HttpClient Client() => new(new HttpClientHandler { UseCookies = false }) { DefaultRequestHeaders = { { "Cookie", _cookie.Value } } };

    public static RunningPage Start(string folder, params string[] more) => StartFor(Data.FullPath, folder, more);

    /// <summary>The page as another account starts it, or the same one after its data were lost.</summary>
    /// <param name="data">Where the account's own data are.</param>
    public static RunningPage StartFor(string data, string folder, params string[] more)
    {
        // The program's own output folder, where its list of the page's files lies; or another build of it, to prove that one.
        string program = Environment.GetEnvironmentVariable("NAMEBAND_PROGRAM") is { Length: > 0 } other ? other : Path.Combine(AppContext.BaseDirectory, "nameband.dll");
        return Start(new ProcessStartInfo("dotnet", [program, "page", folder, "--no-browser", .. more])
        {
            RedirectStandardOutput = true,
            RedirectStandardError = true,
            UseShellExecute = false,
            Environment = { ["XDG_DATA_HOME"] = data },
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
                return new RunningPage(process, match.Groups[1].Value, match.Value);
            }
        }

        throw new InvalidOperationException($"The page did not start: {said}{process.StandardError.ReadToEnd()}");
    }

    /// <summary>The file with which a browser is started, of a worktable that was started by <see cref="Start(string, string[])"/>.</summary>
    public string Opener => Directory.GetFiles(Data["nameband"], "*.html").Single(f => File.ReadAllText(f).Contains(Address, StringComparison.Ordinal));

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

    private string Exchange()
    {
        using var client = new HttpClient(new HttpClientHandler { UseCookies = false });
        using var answer = client.Send(new HttpRequestMessage(HttpMethod.Get, Address));
        return answer.Headers.GetValues("Set-Cookie").Single().Split(';')[0];
    }

    [GeneratedRegex(@"(http://127\.0\.0\.1:\d+/)open/[a-z0-9-]{23}(?=\s)")]
    private static partial Regex WholeAddress();
}
