using System.Net;
using System.Net.Sockets;
using System.Text;
using NameBand.Tests;
using Xunit;
using static Microsoft.Playwright.Assertions;

namespace NameBand.Browser;

/// <summary>The page under load, in small: load.js does the same in earnest and prints figures.</summary>
[Collection(InBrowser.Name)]
public sealed class LoadTests(Chromium browser) : BrowserTests(browser)
{
    [SkippableFact]
    public async Task Whatever_others_do_the_page_answers_or_refuses_and_goes_on()
    {
        Chromium.Require();
        using var folder = Jobs.Small();
        using var server = RunningPage.Start(folder.FullPath);
        var tab = await Chromium.OpenAsync(server.Url);
        await Expect(tab.Page.Locator(".sentence")).ToContainTextAsync("3 names");
        using var client = server.Client();

        // Slow ones hold the line while all else goes on.
        var slow = Enumerable.Range(0, 20).Select(_ => Begun(server, "GET / HTTP/1.1\r\nHost: {0}\r\nX-Slow: ")).ToList();

        // Cut in the middle of a request and of an answer.
        for (int i = 0; i < 40; i++)
        {
            using var half =
                Begun(server,
                    "POST /machine/said HTTP/1.1\r\nHost: {0}\r\nContent-Type: application/json\r\nContent-Length: 500\r\n\r\n{\"hoop");
            using var deaf = Begun(server, "GET / HTTP/1.1\r\nHost: {0}\r\n\r\n");
        }

        var answers = await Task.WhenAll(Enumerable.Range(0, 300).Select(async i =>
        {
            using var answer = await client.GetAsync(server.Url + (i % 2 == 0 ? "" : "machine/state"));
            return answer.StatusCode;
        }));
        Assert.All(answers, status => Assert.Equal(HttpStatusCode.OK, status));

        foreach (var (header, value) in new[] { ("Host", "rebound.example"), ("Origin", "http://elsewhere.example"), ("Origin", "null"),
            ("Sec-Fetch-Site", "cross-site"), ("Sec-Fetch-Site", "same-site") })
        {
            using var request = new HttpRequestMessage(HttpMethod.Get, server.Url + "machine/state");
            request.Headers.TryAddWithoutValidation(header, value);
            using var answer = await client.SendAsync(request);
            Assert.Equal(HttpStatusCode.Forbidden, answer.StatusCode);
        }

        foreach (string path in (string[])["machine/said", "strip/drawn", "_blazor/negotiate", ""])
        {
            Assert.InRange((int)await UploadAsync(client, server.Url + path), 400, 499);
            using var after = await client.GetAsync(server.Url + "machine/state");
            Assert.Equal(HttpStatusCode.OK, after.StatusCode);
        }

        Assert.False(
            Directory.EnumerateFiles(folder.FullPath).Any(f => new FileInfo(f).Length > 100_000), "Something of the uploads was kept.");
        slow.ForEach(s => s.Dispose());
        await tab.Page.Locator(".sentence .part", new() { HasText = "mm" }).First.ClickAsync();
        await tab.Page.GetByLabel("Height", new() { Exact = true }).FillAsync("8 mm");
        await tab.Page.Keyboard.PressAsync("Enter");
        await Expect(tab.Page.Locator(".sentence")).ToContainTextAsync("8 mm high");
        tab.ExpectNoComplaint();
    }

    [SkippableFact]
    public async Task Ten_tabs_follow_a_change_made_in_one()
    {
        Chromium.Require();
        using var folder = Jobs.Small();
        using var server = RunningPage.Start(folder.FullPath);
        var first = await Chromium.OpenAsync(server.Url);
        var others = new List<Microsoft.Playwright.IPage>();
        for (int i = 0; i < 9; i++)
        {
            var page = await first.Page.Context.NewPageAsync();
            await page.GotoAsync(server.Url);
            others.Add(page);
        }

        await first.Page.Locator(".sentence .part", new() { HasText = "mm" }).First.ClickAsync();
        await first.Page.GetByLabel("Height", new() { Exact = true }).FillAsync("8 mm");
        await first.Page.Keyboard.PressAsync("Enter");

        foreach (var page in others)
        {
            await Expect(page.Locator(".sentence")).ToContainTextAsync("8 mm high");
        }
    }

    /// <summary>A connection on which something was said and nothing more.</summary>
    private static TcpClient Begun(RunningPage server, string said)
    {
        var client = new TcpClient();
        client.Connect(IPAddress.Loopback, new Uri(server.Url).Port);
        var (name, value) = server.Cookie;
        string own = $"{new Uri(server.Url).Authority}\r\nCookie: {name}={value}";
        client.GetStream().Write(Encoding.ASCII.GetBytes(said.Replace("{0}", own, StringComparison.Ordinal)));
        return client;
    }

    /// <summary>Thirty times what is taken in; the server may hang up before all of it is sent, which is an answer too.</summary>
    private static async Task<HttpStatusCode> UploadAsync(HttpClient client, string url)
    {
        using var content = new ByteArrayContent(new byte[30_000_000]);
        content.Headers.ContentType = new("application/json");
        try
        {
            using var answer = await client.PostAsync(url, content);
            return answer.StatusCode;
        }
        catch (HttpRequestException e) when (e.InnerException is IOException)
        {
            return HttpStatusCode.RequestEntityTooLarge;
        }
    }
}
