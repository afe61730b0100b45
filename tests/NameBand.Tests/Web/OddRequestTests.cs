using NameBand.Tests.Hostile;
using NameBand.Tests.House;
using Xunit;

namespace NameBand.Tests.Web;

/// <summary>A request that makes no sense is refused as the asker's fault; the page never fails at it, and goes on.</summary>
public sealed class OddRequestTests(ServedPage page) : IClassFixture<ServedPage>, IAsyncLifetime
{
    private static readonly string[] Posted =
        ["/", "/machine", "/print", "/machine/said", "/strip/drawn", "/_blazor/negotiate", "/_blazor/disconnect", "/_blazor", "/made/x"];

    private readonly ServedPage _page = page;

    public Task InitializeAsync() => Task.CompletedTask;

    /// <summary>Whatever was said, it goes on.</summary>
    public async Task DisposeAsync() => Assert.Equal(200, (await _page.AskAsync("GET", "/machine/state", _page.Cookie)).Status);

    [Theory]
    [InlineData("127.0.0.1:99999")]
    [InlineData("127.0.0.1:-1")]
    [InlineData("127.0.0.1:")]
    [InlineData("127.0.0.1")]
    [InlineData("127.0.0.1:0{0}")]
    [InlineData("127.0.0.1:{0}:{0}")]
    [InlineData("127.0.0.1.:{0}")]
    [InlineData("127.1:{0}")]
    [InlineData("0x7f000001:{0}")]
    [InlineData("[::1]:{0}")]
    [InlineData("[::1")]
    [InlineData("localhost.:{0}")]
    [InlineData("her@localhost:{0}")]
    [InlineData("xn--\u00FF:{0}")]
    [InlineData("\u00FF\u00FE")]
    [InlineData("")]
    [InlineData("rebound.example")]
    public async Task A_host_that_is_not_the_pages_own_is_refused(string host)
    {
        string named = host.Replace("{0}", $"{_page.Port}", StringComparison.Ordinal);
        foreach (string target in (string[])["/", "/machine/state", "/_content/NameBand.Web/page.css", "/open/x"])
        {
            var answer = await _page.SayAsync(
                $"GET {target} HTTP/1.1\r\nHost: {named}\r\nCookie: {_page.Cookie}\r\nConnection: close\r\n\r\n");
            Assert.True(answer.Status is 403 or 400, $"Host “{named}” on {target}: {answer.Text}");
        }
    }

    [Fact]
    public async Task The_pages_own_hosts_are_answered()
    {
        foreach (string host in (string[])["127.0.0.1", "localhost", "LocalHost"])
        {
            var answer = await _page.SayAsync(
                $"GET / HTTP/1.1\r\nHost: {host}:{_page.Port}\r\nCookie: {_page.Cookie}\r\nConnection: close\r\n\r\n");
            Assert.Equal(200, answer.Status);
        }
    }

    public static TheoryData<string, string> Bodies()
    {
        var all = new TheoryData<string, string>();
        const string Form = "Content-Type: application/x-www-form-urlencoded", Json = "Content-Type: application/json";
        const string Parts = "Content-Type: multipart/form-data; boundary=part";
        all.Add(Form, string.Join('&', Enumerable.Range(0, 1100).Select(i => $"k{i}=v")));
        all.Add(Form, new string('k', 5000) + "=v");
        all.Add(Form, "k=" + new string('v', 900_000));
        all.Add(Form, "%=%zz&%ff=%fe&\0=\0&=&&;");
        all.Add(Form + "; charset=utf-99", "k=v");
        all.Add(Form + "; charset=utf-7", "k=v");
        all.Add(Parts, "--part\r\nContent-Disposition: form-data; name=\"k\"\r\n\r\nv");
        all.Add(Parts, "--part\r\n" + new string('h', 40_000) + ": v\r\n\r\nv\r\n--part--\r\n");
        all.Add(Parts,
            string.Concat(Enumerable.Range(0, 1100).Select(i => $"--part\r\nContent-Disposition: form-data; name=\"k{i}\"\r\n\r\nv\r\n"))
            + "--part--\r\n");
        all.Add("Content-Type: multipart/form-data", "k=v");
        all.Add("Content-Type: multipart/form-data; boundary=" + new string('b', 500), "k=v");
        all.Add("Content-Type: ;;;", "k=v");
        all.Add("Content-Type: \u00FF\u00FE/\u00FD", "k=v");
        all.Add("X-None: 1", "k=v");
        all.Add("Content-Encoding: gzip\r\n" + Json, "\u001f\u008bspoilt");
        all.Add(Json, "{\"hooping\":1,\"deed\":\"sewn\",\"note\":\"\\ud800\"}");
        all.Add(Json, "{\"hooping\":1,\"deed\":\"sewn\",\"\\udfff\":\"x\"}");
        all.Add(Json, "{\"hooping\":1,\"deed\":\"\\ud800\"}");
        all.Add(Json, "{\"hooping\":1e999,\"deed\":\"sewn\"}");
        all.Add(Json, "{\"hooping\":1,\"deed\":\"sewn\",\"minutes\":1e999}");
        all.Add(Json, "\u00FF\u00FE{\0\"\0");
        all.Add(Json, "\u00C3\u0028");
        all.Add(Json, "");
        all.Add(Json, "null");
        all.Add(Json, "[[[[[[[[1]]]]]]]]");
        all.Add(Json + "; charset=utf-99", "{\"hooping\":1,\"deed\":\"sewn\"}");
        return all;
    }

    [Theory]
    [MemberData(nameof(Bodies))]
    public async Task What_is_sent_without_sense_is_refused(string type, string body)
    {
        foreach (string target in Posted)
        {
            foreach (string? cookie in (string?[])[_page.Cookie, null])
            {
                var answer = await _page.SendAsync(target, type, body, cookie);
                Assert.True(answer.Status is not (0 or >= 500), $"{target}: {answer.Text}");
                Assert.True(cookie is not null || answer.Status is 403 or 400 or 413, $"{target} without the cookie: {answer.Text}");
            }
        }

        Assert.False(File.Exists(Path.Combine(_page.Job, "sewing-log.csv")));
    }

    public static TheoryData<string> Heads()
    {
        var all = new TheoryData<string>();
        foreach (string target in (string[])
            ["/%00", "/%ff", "/%c3%28", "//", "/..%2f", "/%2e%2e/%2e%2e/etc", "/made/%00", "/made/out/%ff.csv", "/faces/%00", "/open/%ff",
                "/strip/pieces", "/strip/pieces?numbers=%00,%ff,\u00FF",
                "/strip/1/shapes?names=99999999999999999999,-1,%ud800", "/strip/99999999999999999999/map", "/strip/1/thread/-1",
                "/strip/1/thread/2147483647", "/hooping/1/2147483647", "/hooping/-1/-1/path",
                "/machine/state?stamp=%ff%00", "/machine/made/1/-5", "/_blazor?id=%ff", "/_blazor/initializers?x=%",
                "/_blazor/negotiate?negotiateVersion=99999999999", "/?" + new string('q', 7000), "/?" + new string('q', 20_000),
                "/?" + string.Join('&', Enumerable.Range(0, 1500).Select(i => $"k{i}")),
                "/" + string.Join('/', Enumerable.Repeat("a", 3000)), "*", "http://127.0.0.1:99999/", "http://elsewhere.example/", "x"])
        {
            all.Add($"GET {target} HTTP/1.1\r\nHost: {{0}}\r\n");
            all.Add($"POST {target} HTTP/1.1\r\nHost: {{0}}\r\nContent-Length: 0\r\n");
        }

        foreach (string head in (string[])
            ["X-Long: " + new string('x', 40_000), string.Concat(Enumerable.Range(0, 200).Select(i => $"X-{i}: 1\r\n")).TrimEnd(),
                "Cookie: " + new string('c', 20_000), "Cookie: =;=;\u00FF=\u00FE", "Range: bytes=9-1,--", "If-None-Match: \u00FF",
                "If-Modified-Since: never",
                "Accept-Encoding: \u00FF;q=x", "Accept-Language: " + new string(',', 4000), "Content-Length: -1",
                "Content-Length: 99999999999999999999", "Transfer-Encoding: chunked\r\nContent-Length: 3", "Transfer-Encoding: odd",
                "Expect: the-unexpected",
                "Upgrade: websocket\r\nConnection: Upgrade\r\nSec-WebSocket-Version: 99\r\nSec-WebSocket-Key: x", "Origin: \u00FF",
                "Origin: null", "Sec-Fetch-Site: \u00FF", "X-Half\r\n: x", "No colon at all", "X-HTTP-Method-Override: DELETE",
                "X-Forwarded-Host: elsewhere.example"])
        {
            foreach (string target in (string[])["/", "/machine/state", "/_blazor", "/_content/NameBand.Web/page.css"])
            {
                all.Add($"GET {target} HTTP/1.1\r\nHost: {{0}}\r\n{head}\r\n");
            }
        }

        foreach (string line in (string[])["GET / HTTP/1.0", "GET / HTTP/2.0", "GET / HTTP/9.9", "GET /", "get / HTTP/1.1",
            "OPTIONS * HTTP/1.1", "CONNECT 127.0.0.1:99999 HTTP/1.1", "TRACE / HTTP/1.1", "PUT / HTTP/1.1", "DELETE /made/x HTTP/1.1",
            "\u00FF\u00FE / HTTP/1.1", "\0", new string('M', 9000) + " / HTTP/1.1"])
        {
            all.Add($"{line}\r\nHost: {{0}}\r\n");
        }

        return all;
    }

    [Theory]
    [MemberData(nameof(Heads))]
    public async Task A_head_without_sense_is_refused_or_passed_over(string head)
    {
        string said = head.Replace("{0}", $"127.0.0.1:{_page.Port}", StringComparison.Ordinal);

        var answer = await _page.SayAsync($"{said}Cookie: {_page.Cookie}\r\nConnection: close\r\n\r\n");

        // 505: the version of the protocol is not spoken here.
        Assert.True(answer.Status is < 500 or 505, answer.Text);
    }

    [Fact]
    public async Task A_body_that_ends_too_early_is_no_fault_of_the_page()
    {
        foreach (string target in Posted)
        {
            foreach (string type in (string[])["application/json", "application/x-www-form-urlencoded",
                "multipart/form-data; boundary=part"])
            {
                var answer = await _page.SayAsync(
                    $"POST {target} HTTP/1.1\r\nHost: 127.0.0.1:{_page.Port}\r\nCookie: {_page.Cookie}\r\nContent-Type: {type}\r\nContent-Length: 500\r\n\r\n--part\r\n", isAll: true);
                Assert.True(answer.Status < 500, $"{target}, {type}: {answer.Text}");
                var chunked = await _page.SayAsync(
                    $"POST {target} HTTP/1.1\r\nHost: 127.0.0.1:{_page.Port}\r\nCookie: {_page.Cookie}\r\nContent-Type: {type}\r\nTransfer-Encoding: chunked\r\n\r\nzz\r\nk=v\r\n", isAll: true);
                Assert.True(chunked.Status < 500, $"{target}, {type}: {chunked.Text}");
            }
        }
    }

    /// <summary>What the benchmark “fuzz” found by following the branches of the server.</summary>
    [Fact]
    public async Task What_guided_spoiling_found_is_answered_or_refused()
    {
        byte[][] found = [.. FuzzedInputs.Of(Path.Combine(Repository.Root, FuzzedInputs.Place), HostileRequest.Kind)];
        Assert.True(found.Length > 20, "The file of what was found is missing or has lost the requests.");
        foreach (var request in found.Select(HostileRequest.Of).Where(r => !r.IsToLent))
        {
            var answer = await _page.SayAsync(request.Said($"127.0.0.1:{_page.Port}", _page.Cookie));
            Assert.True(HostileRequest.Fault(answer.Status) is null, $"{request.Method} {request.Target} {request.Type}: {answer.Text}");
        }
    }
}
