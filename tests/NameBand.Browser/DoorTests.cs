using Microsoft.Playwright;
using NameBand.Tests;
using Xunit;
using static Microsoft.Playwright.Assertions;

namespace NameBand.Browser;

/// <summary>How a browser gets in, and what one reads that may not.</summary>
[Collection(InBrowser.Name)]
public sealed class DoorTests(Chromium browser) : BrowserTests(browser)
{
    [SkippableTheory]
    [InlineData(true)]
    [InlineData(false)]
    public async Task The_address_and_the_file_that_leads_to_it_open_the_page_and_leave_nothing_behind(bool isFile)
    {
        Chromium.Require();
        using var folder = Jobs.Small();
        using var server = isFile ? RunningPage.Start(folder.FullPath) : RunningPage.StartAlone(folder.FullPath);
        var page = await Chromium.NewPageAsync();
        var asked = new List<string>();
        page.Request += (_, request) => asked.Add(string.Join('\n', request.Headers.Where(h => h.Key == "referer").Select(h => h.Value)));

        await page.GotoAsync(isFile ? new Uri(server.Opener).AbsoluteUri : server.Address);
        await page.WaitForURLAsync(server.Url);

        await Expect(page.Locator("[data-alive]")).ToBeAttachedAsync();
        await Expect(page.Locator(".sentence")).ToContainTextAsync("3 names");
        var cookie = Assert.Single(await page.Context.CookiesAsync(), c => c.Name == server.Cookie.Name);
        Assert.True(cookie.HttpOnly);
        Assert.Equal(SameSiteAttribute.Strict, cookie.SameSite);
        Assert.Equal(server.Cookie, (cookie.Name, cookie.Value));
        Assert.Equal("", await page.EvaluateAsync<string>("() => document.referrer + document.cookie"));
        Assert.All(asked, referer => Assert.DoesNotContain("open", referer, StringComparison.Ordinal));
        await page.ReloadAsync();
        await Expect(page.Locator(".sentence")).ToContainTextAsync("3 names");

        // The address is no step of the tab's own history: who goes back does not see it.
        await page.GoBackAsync();
        Assert.DoesNotContain("/open/", page.Url, StringComparison.Ordinal);
    }

    [SkippableTheory]
    [InlineData("", 390)]
    [InlineData("machine", 1024)]
    [InlineData("open/a-wrong-word", 1920)]
    public async Task Who_has_no_cookie_reads_where_the_address_stands(string view, int width)
    {
        Chromium.Require();
        var page = await Chromium.NewPageAsync(width);

        var answer = await page.GotoAsync(Chromium.LanternWalk.Url + view);

        Assert.Equal(403, answer!.Status);
        await Expect(page.GetByRole(AriaRole.Heading)).ToHaveTextAsync("The worktable opens by its whole address only");
        await Expect(page.Locator("main")).ToContainTextAsync(Chromium.LanternWalk.Url + "open/");
        await Expect(page.Locator("main")).ToContainTextAsync("start it again");
        Assert.True(
            await page.EvaluateAsync<bool>("() => document.documentElement.scrollWidth <= window.innerWidth"),
            "The page is wider than its window.");
        await Axe.ExpectNothingAsync(page, "the closed door", Axe.Wcag);
    }

    /// <summary>What is lent opens the lent view and nothing of the worktable, and the worktable's address opens nothing lent.</summary>
    [SkippableFact]
    public async Task The_worktables_address_and_a_lent_code_open_each_its_own()
    {
        Chromium.Require();
        using var folder = Jobs.LanternWalk();
        using var server = RunningPage.Start(folder.FullPath, "--lend");
        var own = await Chromium.OpenAsync(server.Url + "machine");
        var said = own.Page.Locator(".lend strong");
        string lent = await said.Nth(0).InnerTextAsync();
        string code = await said.Nth(1).InnerTextAsync();
        using var client = server.Client();

        using var word = await client.GetAsync(lent + "open/" + new Uri(server.Address).Segments[^1]);
        Assert.Equal(403, (int)word.StatusCode);
        using var state = await client.GetAsync(lent + "machine/state");
        Assert.Equal(403, (int)state.StatusCode);

        var tablet = await Chromium.OpenAsync(lent, 820, 1180, alive: "#code");
        await tablet.Page.GetByRole(AriaRole.Textbox).FillAsync(code);
        await tablet.Page.GetByRole(AriaRole.Button, new() { Name = "Open" }).ClickAsync();
        await Expect(tablet.Page.Locator("#machine")).ToHaveAttributeAsync("data-pictured", "1");
        var token = Assert.Single(await tablet.Page.Context.CookiesAsync());
        using var stranger = new HttpClient(new HttpClientHandler { UseCookies = false });
        foreach (string name in (string[])[token.Name, server.Cookie.Name])
        {
            using var request = new HttpRequestMessage(HttpMethod.Get, server.Url) { Headers = { { "Cookie", $"{name}={token.Value}" } } };
            using var answer = await stranger.SendAsync(request);
            Assert.Equal(403, (int)answer.StatusCode);
        }

        foreach (string path in (string[])["made/out/plan.json", "made/out/needle-paths/hooping-001.csv", "print"])
        {
            Assert.Equal(404, (await tablet.Page.Context.APIRequest.GetAsync(lent + path)).Status);
        }
    }

    [SkippableFact]
    public async Task A_second_worktable_of_this_computer_takes_nothing_from_the_first()
    {
        Chromium.Require();
        using var one = Jobs.Small();
        using var two = Jobs.Small("name\nZora Pell\n");
        using var first = RunningPage.StartAlone(one.FullPath);
        using var second = RunningPage.StartAlone(two.FullPath);
        var page = await Chromium.NewPageAsync();

        await page.GotoAsync(first.Address);
        await page.WaitForURLAsync(first.Url);
        Assert.Equal(403, (await page.GotoAsync(second.Url))!.Status);
        await page.GotoAsync(second.Address);
        await page.WaitForURLAsync(second.Url);
        await Expect(page.Locator(".sentence")).ToContainTextAsync("1 name");
        await page.GotoAsync(first.Url);
        await Expect(page.Locator(".sentence")).ToContainTextAsync("3 names");
    }
}
