using Microsoft.Playwright;
using NameBand.Tests;
using Xunit;
using static Microsoft.Playwright.Assertions;

namespace NameBand.Browser;

/// <summary>The page is seen before it lives: what is done to it meanwhile is not lost.</summary>
[Collection(InBrowser.Name)]
public sealed class WakingTests(Chromium browser) : BrowserTests(browser)
{
    private const string Saying = "The page is waking up. What you did is kept";

    [SkippableFact]
    public async Task A_press_before_the_page_lives_is_kept_and_done()
    {
        Chromium.Require();
        using var asleep = new Asleep();
        var page = await OpenAsleepAsync(Chromium.LanternWalk.Url, asleep);

        await page.Locator(".sentence .part", new() { HasText = "mm" }).First.ClickAsync();
        await page.GetByLabel("Find in the list").FillAsync("corbeau");
        await Expect(page.GetByText(Saying)).ToBeVisibleAsync();
        await Expect(page.Locator("#panel")).ToHaveCountAsync(0);
        await Axe.ExpectNothingAsync(page, "the plan while it wakes up", Axe.Wcag);
        asleep.Wake();

        await Expect(page.Locator("#panel-heading")).ToHaveTextAsync("How high the letters are");
        await Expect(page.Locator(".row")).ToHaveCountAsync(1);
        await Expect(page.GetByLabel("Find in the list")).ToHaveValueAsync("corbeau");
        await Expect(page.GetByText(Saying)).ToHaveCountAsync(0);
    }

    [SkippableFact]
    public async Task A_form_that_is_sent_before_the_page_lives_is_sent_when_it_does()
    {
        Chromium.Require();
        using var folder = Jobs.Small();
        using var server = RunningPage.Start(folder.FullPath);
        using var asleep = new Asleep();
        var page = await OpenAsleepAsync(server.Url + "steps/workshop", asleep);

        await page.GetByLabel("It follows coordinates from a file").CheckAsync();
        await page.GetByLabel("How long is one of your evenings?").FillAsync("100 min");
        await page.GetByLabel("How long is one of your evenings?").PressAsync("Enter");
        await Expect(page.GetByText(Saying)).ToBeVisibleAsync();
        Assert.False(File.Exists(folder["workshop.json"]));
        asleep.Wake();

        await Expect(page.Locator(".step h2")).ToHaveTextAsync("The plan");
        Assert.Equal(server.Url + "steps/plan", page.Url);
        string told = await File.ReadAllTextAsync(folder["workshop.json"]);
        Assert.Contains("\"coordinates\"", told, StringComparison.Ordinal);
        Assert.Contains("\"100 min\"", told, StringComparison.Ordinal);
    }

    private async Task<IPage> OpenAsleepAsync(string url, Asleep asleep)
    {
        var tab = await Chromium.OpenAsync(url, alive: "main", begun: tab => asleep.Keep(tab.Page));
        await Expect(tab.Page.Locator("[data-alive]")).ToHaveCountAsync(0);
        return tab.Page;
    }

    /// <summary>Holds back the line by which the page lives.</summary>
    private sealed class Asleep : IDisposable
    {
        private readonly TaskCompletionSource _woken = new(TaskCreationOptions.RunContinuationsAsynchronously);

        public void Keep(IPage page) => page.RouteAsync("**/_blazor/negotiate**", async route =>
        {
            await _woken.Task;
            await route.ContinueAsync();
        });

        public void Wake() => _woken.TrySetResult();

        public void Dispose() => Wake();
    }
}
