using System.Text.RegularExpressions;
using System.Threading.Channels;
using Microsoft.Playwright;
using NameBand.Tests;
using Xunit;
using static Microsoft.Playwright.Assertions;

namespace NameBand.Browser;

/// <summary>Answers that come when the strip has gone on to another layout, with fewer rounds, are let go.</summary>
[Collection(InOtherBrowser.Name)]
public sealed class OvertakenTests(Chromium browser) : BrowserTests(browser)
{
    private const string TwoRounds =
        """{ "format": 1, "lists": ["names.csv"], "hem": { "length": "3 m", "turn": 0, "closed": false }, "strip": { "rounds": 2 } }""";

    [SkippableFact]
    public async Task A_garment_of_rounds_that_are_no_more_is_not_hung()
    {
        Chromium.Require();
        using var folder = Job();
        using var server = RunningPage.Start(folder.FullPath);
        var garments = new Held();
        var tab = await Chromium.OpenAsync(server.Url, 390, begun: t => garments.Keep(t.Page, "**/strip/*/garment"));
        var page = tab.Page;
        await page.SettledAsync();
        var hangs = page.Locator(".hangs");
        await hangs.ScrollIntoViewIfNeededAsync();
        var late = await garments.NextAsync();

        await OutOfSightAsync(page, hangs);
        await LayOnOneRoundAsync(page, server.Url);
        // What draws it is there, so that nothing but the answer is waited for.
        await page.EvaluateAsync("() => import('./_content/NameBand.Web/garment/hanging.js').then(() => true)");
        await late.ComeAsync();
        await FramesAsync(page);
        tab.ExpectNoComplaint();
        await Expect(hangs).Not.ToHaveAttributeAsync("data-hung", new Regex("."));

        await hangs.ScrollIntoViewIfNeededAsync();
        await (await garments.NextAsync()).ComeAsync();
        await Expect(hangs).ToHaveAttributeAsync("aria-label", new Regex("6 names on one round"));
        tab.ExpectNoComplaint();
    }

    [SkippableFact]
    public async Task Letters_that_come_for_rounds_that_are_no_more_are_not_painted_on_the_garment()
    {
        Chromium.Require();
        using var folder = Job();
        using var server = RunningPage.Start(folder.FullPath);
        var letters = new Held();
        var tab = await Chromium.OpenAsync(server.Url, 390, begun: t => letters.Keep(t.Page, "**/strip/pieces?*"));
        var page = tab.Page;
        await page.SettledAsync();
        var hangs = page.Locator(".hangs");
        await hangs.ScrollIntoViewIfNeededAsync();
        await Expect(hangs).ToHaveAttributeAsync("data-hung", new Regex("."));
        var late = await letters.NextAsync();

        await OutOfSightAsync(page, hangs);
        await LayOnOneRoundAsync(page, server.Url);
        await letters.LetGoAsync();
        await late.ComeAsync();
        await FramesAsync(page);
        tab.ExpectNoComplaint();
        await hangs.ScrollIntoViewIfNeededAsync();
        await Expect(hangs).ToHaveAttributeAsync("aria-label", new Regex("6 names on one round"));
        tab.ExpectNoComplaint();
    }

    [SkippableFact]
    public async Task What_a_strip_asked_for_that_is_put_away_does_not_change_the_one_put_up_after_it()
    {
        Chromium.Require();
        using var folder = Job();
        using var server = RunningPage.Start(folder.FullPath);
        var tab = await Chromium.OpenAsync(server.Url, 390);
        var page = tab.Page;
        await page.SettledAsync();
        var maps = new Held();
        maps.Keep(page, "**/strip/*/map");
        await AskForOneRoundAsync(server.Url);
        var late = await maps.NextAsync();
        await page.GetByRole(AriaRole.Link, new() { Name = "print" }).ClickAsync();
        await Expect(page.Locator("name-strip")).ToHaveCountAsync(0);
        await page.GoBackAsync();
        await page.WaitForFunctionAsync("() => document.querySelector('name-strip')?.strip?.data.map");
        var own = await maps.NextAsync();

        await late.ComeAsync();
        await FramesAsync(page);
        tab.ExpectNoComplaint();
        Assert.Equal(2, await RoundsAsync(page));
        await own.ComeAsync();
        await maps.LetGoAsync();
        await page.WaitForFunctionAsync("() => document.querySelector('name-strip').strip.data.map.rounds.length === 1");
        await FramesAsync(page);
        tab.ExpectNoComplaint();
    }

    [SkippableFact]
    public async Task A_name_pressed_while_another_layout_comes_stays_pressed()
    {
        Chromium.Require();
        using var folder = Job();
        using var server = RunningPage.Start(folder.FullPath);
        var page = (await Chromium.OpenAsync(server.Url)).Page;
        await page.SettledAsync();
        var maps = new Held();
        maps.Keep(page, "**/strip/*/map");
        await AskForOneRoundAsync(server.Url);
        var late = await maps.NextAsync();
        var name = page.Locator(".seen button", new() { HasText = "Ottilie Marsh" });
        await name.FocusAsync();
        await page.Keyboard.PressAsync("Enter");
        var card = page.GetByRole(AriaRole.Region, new() { Name = "What should happen to" });
        await Expect(card).ToContainTextAsync("Ottilie Marsh");

        await late.ComeAsync();
        await page.WaitForFunctionAsync("() => document.querySelector('name-strip').strip.data.map.rounds.length === 1");
        await FramesAsync(page);
        await Expect(card).ToContainTextAsync("Ottilie Marsh");
        Assert.Equal("Ottilie Marsh", await page.EvaluateAsync<string?>(
            "() => document.querySelector('name-strip').strip.view.pressed?.text ?? null"));
        Assert.Equal(1, maps.Asked); // Whatever else changes while it comes: it is asked for once.
        await maps.LetGoAsync();
    }

    /// <summary>What its last names are written with does not come with the page's first picture.</summary>
    private static TemporaryFolder Job() =>
        Jobs.Small("name\nOttilie Marsh\nBram Sedgewick\nNgozi Farrow\nIlse Quill\nZsuzsa Ørsted\nXaver Jyväskylä\n").With("job.json", TwoRounds);

    private static async Task OutOfSightAsync(IPage page, ILocator hangs)
    {
        await page.EvaluateAsync("() => scrollTo(0, 0)");
        await Expect(hangs).Not.ToBeInViewportAsync();
    }

    private async Task LayOnOneRoundAsync(IPage page, string url)
    {
        await AskForOneRoundAsync(url);
        await page.WaitForFunctionAsync("() => document.querySelector('name-strip').strip.data.map.rounds.length === 1");
    }

    /// <summary>In another tab of the same worktable, so that this one is not moved.</summary>
    private async Task AskForOneRoundAsync(string url)
    {
        var other = await Chromium.OpenAsync(url + "?set=rounds");
        var field = other.Page.GetByLabel("Rounds", new() { Exact = true });
        await field.FillAsync("1");
        await field.PressAsync("Tab");
    }

    private static Task<int> RoundsAsync(IPage page) =>
        page.EvaluateAsync<int>("() => document.querySelector('name-strip').strip.data.map.rounds.length");

    /// <summary>Until what came has been taken and drawn; what is asked for again is asked after a quarter of a second.</summary>
    private static Task FramesAsync(IPage page) =>
        page.EvaluateAsync("() => new Promise(r => setTimeout(() => requestAnimationFrame(() => requestAnimationFrame(r)), 1000))");

    /// <summary>Answers that reach the page when the test says so; each is of when it was asked for.</summary>
    private sealed class Held
    {
        private readonly Channel<Answer> _waiting = Channel.CreateUnbounded<Answer>();
        private volatile bool _isLetGo;
        private int _asked;

        /// <summary>How often it was asked for since it is kept.</summary>
        public int Asked => Volatile.Read(ref _asked);

        public void Keep(IPage page, string what) => page.RouteAsync(what, async route =>
        {
            Interlocked.Increment(ref _asked);
            if (_isLetGo)
            {
                await route.ContinueAsync();
            }
            else
            {
                await _waiting.Writer.WriteAsync(new Answer(route, await route.FetchAsync()));
                if (_isLetGo)
                {
                    await LetGoAsync();
                }
            }
        });

        public async Task<Answer> NextAsync() => await _waiting.Reader.ReadAsync().AsTask().WaitAsync(TimeSpan.FromSeconds(30));

        /// <summary>What is asked for from now on comes at once, and so does what nobody has waited for.</summary>
        public async Task LetGoAsync()
        {
            _isLetGo = true;
            while (_waiting.Reader.TryRead(out var answer))
            {
                await answer.ComeAsync();
            }
        }
    }

    private sealed record Answer(IRoute Route, IAPIResponse Said)
    {
        public Task ComeAsync() => Route.FulfillAsync(new() { Response = Said });
    }
}
