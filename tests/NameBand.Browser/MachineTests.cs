using System.Collections.Concurrent;
using System.Net;
using Microsoft.Playwright;
using NameBand.Tests;
using Xunit;
using static Microsoft.Playwright.Assertions;

namespace NameBand.Browser;

[Collection(InBrowser.Name)]
public sealed class MachineTests(Chromium browser) : BrowserTests(browser)
{
    [SkippableFact]
    public async Task Done_writes_the_sewing_log_and_leads_on_and_it_can_be_taken_back_or_called_spoiled()
    {
        Chromium.Require();
        using var folder = Jobs.MadeLanternWalk();
        using var server = RunningPage.Start(folder.FullPath);
        var tab = await OpenAsync(server.Url + "machine");
        var page = tab.Page;

        await Expect(page.Locator("[data-part=problems]")).ToBeEmptyAsync();
        // One press, and the next one is there; the second half of a double press is not meant for it.
        var done = page.GetByRole(AriaRole.Button, new() { Name = "Done, next" });
        var head = page.Locator("[data-part=head]");
        await page.Locator("[data-part=say] summary").ClickAsync();
        await page.GetByLabel("minutes at the machine").FillAsync("7.5");
        await page.GetByLabel("minutes by hand").FillAsync("4");
        await page.GetByLabel("a note").FillAsync("thread broke once");
        await done.DblClickAsync();
        await Expect(page.Locator("[data-part=answer]").First).ToContainTextAsync("is logged as sewn");
        await Expect(head).ToHaveTextAsync("Hooping 2 of 31");
        await Expect(done).ToBeFocusedAsync();
        string[] log = await File.ReadAllLinesAsync(folder["sewing-log.csv"]);
        Assert.StartsWith("1,sewn,7.5,4,", log[1], StringComparison.Ordinal);
        Assert.Contains("thread broke once", log[1], StringComparison.Ordinal);
        Assert.Equal(2, log.Length);

        await page.GetByRole(AriaRole.Button, new() { Name = "undo" }).ClickAsync();
        await Expect(page.Locator("[data-part=answer]").First).ToContainTextAsync("counts as not sewn");
        Assert.StartsWith("1,mistake,", (await File.ReadAllLinesAsync(folder["sewing-log.csv"]))[2], StringComparison.Ordinal);
        await page.GetByRole(AriaRole.Button, new() { Name = "‹ back" }).ClickAsync();
        await Expect(head).ToHaveTextAsync("Hooping 1 of 31");
        await done.ClickAsync();
        await Expect(head).ToHaveTextAsync("Hooping 2 of 31");
        await page.GetByRole(AriaRole.Button, new() { Name = "‹ back" }).ClickAsync();
        await Expect(head).ToHaveTextAsync("Hooping 1 of 31: sewn ✓");
        await page.GetByRole(AriaRole.Button, new() { Name = "Spoiled: sew it again" }).ClickAsync();
        await Expect(head).ToHaveTextAsync("Hooping 1 of 31: to be sewn again");
        Assert.StartsWith("1,again,", (await File.ReadAllLinesAsync(folder["sewing-log.csv"]))[4], StringComparison.Ordinal);

        await page.GetByRole(AriaRole.Button, new() { Name = "next ›" }).ClickAsync();
        await Expect(page.Locator("[data-part=head]")).ToHaveTextAsync("Hooping 2 of 31");
        await Expect(page.Locator("[data-part=marks]")).ToContainTextAsync("left mark");
        await Expect(page.Locator("#machine")).ToContainTextAsync("manual");
        tab.ExpectNoComplaint();
    }

    private const string WakeLock =
        """
        window.asked = [];
        Object.defineProperty(navigator, 'wakeLock', { value: { request: async kind => {
            window.asked.push(kind);
            return window.lock = { released: false, release() { this.released = true; } };
        } } });
        """;

    [SkippableFact]
    public async Task The_clock_outlives_a_reload_the_screen_stays_awake_and_the_next_one_is_there_already()
    {
        Chromium.Require();
        var fetched = new ConcurrentQueue<string>();
        var tab = await Chromium.OpenAsync(Chromium.MadeLanternWalk.Url + "machine", 820, 1180, begun: tab =>
        {
            _ = tab.Page.AddInitScriptAsync(WakeLock);
            tab.Page.Request += (_, request) => fetched.Enqueue(new Uri(request.Url).AbsolutePath);
        });
        var page = tab.Page;
        var machine = page.Locator("#machine");
        await Expect(machine).ToHaveAttributeAsync("data-pictured", "1");
        await Expect(machine).ToHaveAttributeAsync("data-awake", "");

        // Name, picture, marks and the press, without scrolling, on a tablet as it stands and as it lies.
        await InSight.ExpectAsync(
            page, "[data-part=head]", "[data-part=names]", "canvas.hoop", "[data-part=marks] table", "[data-part=done]");

        await page.GetByRole(AriaRole.Button, new() { Name = "Start the clock" }).ClickAsync();
        fetched.Clear();
        await page.ReloadAsync();
        await Expect(machine).ToHaveAttributeAsync("data-pictured", "1");
        await Expect(page.GetByRole(AriaRole.Button, new() { Name = "Stop the clock" })).ToBeVisibleAsync();
        await Expect(page.Locator("[data-part=clock-says]").First).ToHaveTextAsync(new System.Text.RegularExpressions.Regex(@"^\d+:\d\d$"));
        await Expect(machine).ToHaveAttributeAsync("data-busy", "");

        // A screen that went dark was let go by the browser: it is asked for again as soon as the page is seen.
        Assert.Equal(["screen"], await page.EvaluateAsync<string[]>("() => window.asked"));
        await page.EvaluateAsync("() => { window.lock.released = true; document.dispatchEvent(new Event('visibilitychange')); }");
        await page.WaitForFunctionAsync("() => window.asked.length === 2");

        // What comes next, its picture and its path, was fetched while this one is shown, and is not fetched again.
        for (int i = 0; i < 1000 && fetched.Count(IsSecond) < 2; i++)
        {
            await Task.Delay(20);
        }

        await page.GetByRole(AriaRole.Button, new() { Name = "next ›" }).ClickAsync();
        await Expect(machine).ToHaveAttributeAsync("data-pictured", "2");
        Assert.Equal(2, fetched.Count(IsSecond));
        tab.ExpectNoComplaint();
    }

    /// <summary>The path or the picture of the second hooping.</summary>
    private static bool IsSecond(string path) =>
        path.StartsWith("/hooping/", StringComparison.Ordinal) && path.Split('/') is [_, _, _, "2", ..];

    [SkippableFact]
    public async Task Without_files_to_sew_from_nothing_can_be_called_done()
    {
        var tab = await OpenAsync(Chromium.LanternWalk.Url + "machine");

        await Expect(tab.Page.Locator("[data-part=problems]"))
            .ToContainTextAsync("The files to sew from are not made yet. Make them under print");
        await Expect(tab.Page.GetByRole(AriaRole.Button, new() { Name = "Done" })).ToBeHiddenAsync();
        tab.ExpectNoComplaint();
    }

    /// <summary>Files made meanwhile, by another tab or a command, are seen by a view that stands open.</summary>
    [SkippableFact]
    public async Task An_open_view_sees_that_the_files_are_made()
    {
        Chromium.Require();
        using var folder = Jobs.Small();
        using var server = RunningPage.Start(folder.FullPath);
        var tab = await OpenAsync(server.Url + "machine");
        await Expect(tab.Page.Locator("[data-part=problems]")).ToContainTextAsync("not made yet");
        await Expect(tab.Page.Locator("#machine[data-pictured='1']")).ToBeVisibleAsync();

        Assert.NotEqual(ExitStatus.CannotUse, Bander.Make(folder.FullPath).Status);

        await Expect(tab.Page.Locator("[data-part=problems]")).ToBeEmptyAsync();
        await Expect(tab.Page.GetByRole(AriaRole.Button, new() { Name = "Done" })).ToBeVisibleAsync();

        // A needle path that is another one than is shown is told, and gone with the next making.
        await File.AppendAllTextAsync(folder["out/needle-paths/hooping-001.csv"], "\n");
        File.SetLastWriteTimeUtc(folder["out/plan.json"], DateTime.UtcNow);
        await Expect(tab.Page.Locator("[data-part=problems]")).ToContainTextAsync("is not the one shown here");
        Assert.NotEqual(ExitStatus.CannotUse, Bander.Make(folder.FullPath).Status);
        await Expect(tab.Page.Locator("[data-part=problems]")).ToBeEmptyAsync();
        tab.ExpectNoComplaint();
    }

    [SkippableTheory]
    [InlineData(ColorScheme.Light, 1024)]
    [InlineData(ColorScheme.Dark, 390)]
    public async Task Axe_finds_nothing_at_the_machine(ColorScheme scheme, int width)
    {
        Chromium.Require();
        var tab = await OpenAsync(Chromium.MadeLanternWalk.Url + "machine", width, scheme);
        await tab.Page.Locator("[data-part=say] summary").ClickAsync();

        await Axe.ExpectNothingAsync(tab.Page, "at the machine", Axe.Wcag, "#machine");
        Assert.True(
            await tab.Page.EvaluateAsync<bool>("() => document.documentElement.scrollWidth <= window.innerWidth"),
            "The page is wider than its window.");
        tab.ExpectNoComplaint();
    }

    [SkippableFact]
    public async Task A_lent_screen_sees_the_view_at_the_machine_and_nothing_else()
    {
        Chromium.Require();
        using var folder = Jobs.LanternWalk();
        using var server = RunningPage.Start(folder.FullPath, "--lend");
        var own = await OpenAsync(server.Url + "machine");
        var said = own.Page.Locator(".lend strong");
        string url = await said.Nth(0).InnerTextAsync();
        string code = await said.Nth(1).InnerTextAsync();

        var lent = await Chromium.OpenAsync(url, 820, 1180, alive: "#code");
        await lent.Page.GetByRole(AriaRole.Textbox).FillAsync(code);
        await lent.Page.GetByRole(AriaRole.Button, new() { Name = "Open" }).ClickAsync();
        await Expect(lent.Page.Locator("#machine")).ToHaveAttributeAsync("data-pictured", "1");
        lent.ExpectNoComplaint();
        await Expect(own.Page.Locator(".lend")).ToContainTextAsync("One screen has it.");

        var cookie = Assert.Single(await lent.Page.Context.CookiesAsync());
        Assert.True(cookie.HttpOnly);
        Assert.Equal(SameSiteAttribute.Strict, cookie.SameSite);
        foreach (string path in new[] { "strip/version", "_blazor/negotiate", "_framework/blazor.web.js", "print" })
        {
            Assert.Equal(404, (await lent.Page.Context.APIRequest.GetAsync(url + path)).Status);
        }

        // The code was for one screen, and a screen without it gets nothing.
        using var client = new HttpClient();
        Assert.Equal(HttpStatusCode.Forbidden, (await client.GetAsync(url + "machine/state")).StatusCode);
        Assert.Equal(HttpStatusCode.Forbidden, await GiveAsync(client, url, code));
        await own.Page.GetByRole(AriaRole.Button, new() { Name = "Take it back from all" }).ClickAsync();
        await Expect(lent.Page.Locator("[data-part=problems]")).ToContainTextAsync("taken back");
    }

    [SkippableFact]
    public async Task One_screen_is_heard_three_times_and_uses_up_no_code_and_no_foreign_host_is_good()
    {
        using var folder = Jobs.LanternWalk();
        using var server = RunningPage.Start(folder.FullPath, "--lend");
        var own = await Chromium.OpenAsync(server.Url + "machine");
        var said = own.Page.Locator(".lend strong");
        string url = await said.Nth(0).InnerTextAsync();
        string code = await said.Nth(1).InnerTextAsync();
        using var client = new HttpClient();

        using var foreign = new HttpRequestMessage(HttpMethod.Get, url) { Headers = { Host = "rebound.example" } };
        Assert.Equal(HttpStatusCode.Forbidden, (await client.SendAsync(foreign)).StatusCode);
        foreach (var expected in (HttpStatusCode[])[HttpStatusCode.Forbidden, HttpStatusCode.Forbidden, HttpStatusCode.TooManyRequests])
        {
            Assert.Equal(expected, await GiveAsync(client, url, code == "0000 0000" ? "1" : "0000 0000"));
        }

        Assert.Equal(HttpStatusCode.TooManyRequests, await GiveAsync(client, url, code));
        Assert.Contains("Too many wrong codes came from this screen", await client.GetStringAsync(url), StringComparison.Ordinal);
        await own.Page.ReloadAsync();
        await Expect(said.Nth(1)).ToHaveTextAsync(code);
    }

    private static async Task<HttpStatusCode> GiveAsync(HttpClient client, string url, string code)
    {
        using var form = new FormUrlEncodedContent([new("code", code)]);
        using var answer = await client.PostAsync(url + "code", form);
        return answer.StatusCode;
    }

    private async Task<Tab> OpenAsync(string url, int width = 1024, ColorScheme scheme = ColorScheme.Light)
    {
        var tab = await Chromium.OpenAsync(url, width, scheme: scheme);
        await Expect(tab.Page.Locator("#machine")).ToHaveAttributeAsync("data-pictured", "1");
        return tab;
    }
}
