using System.Net;
using System.Net.NetworkInformation;
using System.Text.RegularExpressions;
using Microsoft.AspNetCore.Routing;
using NameBand.Web.Machine;
using NameBand.Web.Serving;
using Xunit;

namespace NameBand.Tests.Web;

/// <summary>Another account of the computer can knock at the worktable's port; it is not let in.</summary>
public sealed partial class DoorTests(ServedPage page) : IClassFixture<ServedPage>
{
    private readonly ServedPage _page = page;

    /// <summary>The machine view asked for thread in the cloth's colour though the crosses of this job are pencilled.</summary>
    [Fact]
    public async Task Pencilled_marks_ask_for_no_thread()
    {
        var state = await _page.AskAsync("GET", "/machine/state", _page.Cookie);
        Assert.Contains("\"marksSewn\":false", state.Text, StringComparison.Ordinal);
    }

    /// <summary>The worktable on no network, the lent view on the one whose address is told, and on no other there may be.</summary>
    [Fact]
    public async Task It_listens_only_where_it_must()
    {
        using var desk = new LendDesk(TimeProvider.System);
        await using var lent = await _page.LendAsync(desk);
        var told = new Uri(desk.Url!);

        var all = IPGlobalProperties.GetIPGlobalProperties().GetActiveTcpListeners();

        Assert.Equal([IPAddress.Loopback], all.Where(l => l.Port == _page.Port).Select(l => l.Address));
        Assert.Equal([IPAddress.Parse(told.Host)], all.Where(l => l.Port == told.Port).Select(l => l.Address));
    }

    /// <summary>From the table of routes itself, so that no page or file that is added later can be forgotten.</summary>
    [Fact]
    public async Task Whatever_there_is_is_refused_without_the_cookie_and_answered_with_it()
    {
        var all = _page.Endpoints.SelectMany(e => Methods(e).Select(m => (Method: m, Target: Filled(e)))).Distinct().ToList();
        foreach (string known in (string[])["/", "/machine", "/print", "/machine/state", "/machine/said", "/strip/version", "/made/x",
            "/_blazor/negotiate", "/_blazor", "/_content/NameBand.Web/page.css", "/_framework/blazor.web.js"])
        {
            Assert.Contains(all, e => e.Target == known);
        }

        foreach (var (method, target) in all)
        {
            string length = method is "GET" or "HEAD" ? "" : "Content-Length: 0";
            var refused = await AskAsync(method, target, null, length);
            if (refused.Status == 0)
            {
                // A line that was cut says nothing of the door.
                refused = await AskAsync(method, target, null, length);
            }

            Assert.True(refused.Status == 403, $"{method} {target} was answered {refused.Status} without the cookie: {refused.Text}");
            var let = await AskAsync(method, target, _page.Cookie, length);
            Assert.True(let.Status is not (403 or 0 or >= 500), $"{method} {target} was answered {let.Status} with the cookie: {let.Text}");
        }

        Assert.Equal(403, (await AskAsync("GET", "/not/there", null)).Status);
        Assert.Equal(404, (await AskAsync("GET", "/not/there", _page.Cookie)).Status);
    }

    [Fact]
    public async Task The_page_lines_own_socket_is_refused_without_the_cookie()
    {
        string[] upgrade = ["Upgrade: websocket", "Sec-WebSocket-Version: 13", "Sec-WebSocket-Key: dGhlIHNhbXBsZSBub25jZQ=="];

        async Task<int> StatusAsync(string? cookie) => (await _page.SayAsync(
            $"GET /_blazor HTTP/1.1\r\nHost: 127.0.0.1:{_page.Port}\r\nConnection: Upgrade\r\n{(cookie is null ? "" : $"Cookie: {cookie}\r\n")}{string.Join("\r\n", upgrade)}\r\n\r\n")).Status;

        Assert.Equal(403, await StatusAsync(null));
        Assert.Equal(101, await StatusAsync(_page.Cookie));
    }

    [Fact]
    public async Task The_address_is_exchanged_for_a_cookie_and_leads_on_to_a_clean_one()
    {
        var answer = await AskAsync("GET", PageKey.Way + _page.Key.Word, null, "Sec-Fetch-Site: cross-site", "Sec-Fetch-Mode: navigate");

        Assert.Equal(200, answer.Status);
        string cookie = Assert.Single(answer.Of("Set-Cookie"));
        Assert.StartsWith(_page.Cookie + ";", cookie, StringComparison.Ordinal);
        Assert.Contains("path=/", cookie, StringComparison.OrdinalIgnoreCase);
        Assert.Contains("httponly", cookie, StringComparison.OrdinalIgnoreCase);
        Assert.Contains("samesite=strict", cookie, StringComparison.OrdinalIgnoreCase);
        Assert.DoesNotContain("domain", cookie, StringComparison.OrdinalIgnoreCase);
        Assert.Contains("""<meta http-equiv="refresh" content="0; url=/" />""", answer.Text, StringComparison.Ordinal);
        Assert.Contains("no-store", answer.Of("Cache-Control"));
        Assert.Contains("no-referrer", answer.Of("Referrer-Policy"));
        Assert.DoesNotContain(ServedPage.Name, answer.Text, StringComparison.Ordinal);
        Assert.DoesNotContain(_page.Key.Word, answer.Text, StringComparison.Ordinal);
    }

    [Fact]
    public async Task No_other_word_and_no_other_cookie_opens()
    {
        string word = _page.Key.Word, other = PageKey.New().Word;
        foreach (string tried in (string[])["", "x", word[..^1], word + "a", other, _page.Key.Cookie, word + "/", "%20",
            new string('a', 5000)])
        {
            var refused = await AskAsync("GET", PageKey.Way + tried, null);
            Assert.Equal(403, refused.Status);
            Assert.Empty(refused.Of("Set-Cookie"));
        }

        string name = PageKey.CookieName(_page.Port), next = PageKey.CookieName(_page.Port + 1), value = _page.Key.Cookie;
        foreach (string tried in (string[])[$"{name}=", $"{name}={word}", $"{name}={PageKey.New().Cookie}", $"{next}={value}",
            $"{name}={value}0", $"{name}={value[..^1]}", $"nameband-lent={value}", ";;=", name])
        {
            Assert.Equal(403, (await AskAsync("GET", "/", tried)).Status);
        }

        Assert.Equal(403, (await AskAsync("POST", PageKey.Way + word, null, "Content-Length: 0")).Status);
        Assert.Equal(200, (await AskAsync("GET", "/", $"{name}=of another server; {_page.Cookie}")).Status);
        Assert.Equal(403, (await AskAsync("GET", "/", _page.Cookie, "Sec-Fetch-Site: cross-site")).Status);
    }

    [Fact]
    public async Task Who_is_refused_reads_where_the_address_stands_and_nothing_of_the_job()
    {
        var refused = await AskAsync("GET", "/", null);

        Assert.Contains($"http://127.0.0.1:{_page.Port}/open/", refused.Text, StringComparison.Ordinal);
        Assert.Contains("the window in which the worktable was started", refused.Text.ReplaceLineEndings("\n"), StringComparison.Ordinal);
        Assert.DoesNotContain(_page.Key.Word, refused.Text, StringComparison.Ordinal);
        Assert.DoesNotContain(ServedPage.Name, refused.Text, StringComparison.Ordinal);
        Assert.DoesNotContain(_page.Job, refused.Text, StringComparison.Ordinal);
    }

    [Fact]
    public async Task The_secret_stands_on_no_page_and_in_no_file_of_the_job()
    {
        foreach (string target in (string[])["/", "/machine", "/print", "/machine/state"])
        {
            var answer = await AskAsync("GET", target, _page.Cookie);
            Assert.Equal(200, answer.Status);
            Assert.DoesNotContain(_page.Key.Word, answer.Text, StringComparison.Ordinal);
            Assert.DoesNotContain(_page.Key.Cookie, answer.Text, StringComparison.Ordinal);
        }

        foreach (string file in Directory.EnumerateFiles(_page.Job, "*", SearchOption.AllDirectories))
        {
            string text = await File.ReadAllTextAsync(file);
            Assert.DoesNotContain(_page.Key.Word, text, StringComparison.Ordinal);
            Assert.DoesNotContain(_page.Key.Cookie, text, StringComparison.Ordinal);
        }
    }

    private Task<ServedPage.Answer> AskAsync(string method, string target, string? cookie, params string[] more) =>
        _page.AskAsync(method, target, cookie, [.. more.Where(m => m.Length > 0)]);

    private static IEnumerable<string> Methods(RouteEndpoint endpoint) =>
        endpoint.Metadata.GetMetadata<HttpMethodMetadata>()?.HttpMethods is { Count: > 0 } methods ? methods : ["GET", "POST"];

    /// <summary>An address that its route takes.</summary>
    private static string Filled(RouteEndpoint endpoint) => "/" + Parameter().Replace(
        endpoint.RoutePattern.RawText!.TrimStart('/'),
        match => match.Value.Contains(":int", StringComparison.Ordinal) || match.Value.Contains(":long", StringComparison.Ordinal)
        ? "1" : "x");

    [GeneratedRegex(@"\{[^}]*\}")]
    private static partial Regex Parameter();
}
