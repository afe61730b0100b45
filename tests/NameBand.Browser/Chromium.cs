using Microsoft.Playwright;
using NameBand.Tests;
using NameBand.Tests.Outside;
using Xunit;

namespace NameBand.Browser;

/// <summary>
/// One browser for all tests of a collection; Debian's, since nothing is downloaded for it. The same browser without its own
/// windows, bars and buttons opens a tab in a third of the time, and is taken where it is installed.
/// </summary>
public sealed class Chromium : IAsyncLifetime
{
    private const string Whole = "/usr/bin/chromium";
    private const string Bare = "/usr/bin/chromium-headless-shell";
    private IPlaywright? _playwright;
    private readonly List<IBrowserContext> _open = [];
    private IBrowser? _browser;
    private (TemporaryFolder Folder, RunningPage Page)? _lanternWalk, _madeLanternWalk;

    /// <summary>The lantern walk as it comes, for tests that only look at it.</summary>
    internal RunningPage LanternWalk => (_lanternWalk ??= Served(Jobs.LanternWalk())).Page;

    /// <summary>The lantern walk with all files to sew from, for tests that only look at it.</summary>
    internal RunningPage MadeLanternWalk => (_madeLanternWalk ??= Served(Jobs.MadeLanternWalk())).Page;

    private static (TemporaryFolder Folder, RunningPage Page) Served(TemporaryFolder folder) =>
        (folder, RunningPage.Start(folder.FullPath));

    /// <summary>Skips the running test, or fails it under CI, where there is no chromium.</summary>
    public static void Require() => OutsideTool.Require("chromium", "chromium");

    public async Task InitializeAsync()
    {
        // A busy machine is slow, and nothing here is a timing.
        Assertions.SetDefaultExpectTimeout(30_000);
        string path = File.Exists(Bare) ? Bare : Whole;
        if (File.Exists(path))
        {
            _playwright = await Playwright.CreateAsync();
            _browser = await _playwright.Chromium.LaunchAsync(new() { ExecutablePath = path, Args = ["--no-sandbox"] });
        }
    }

    /// <summary>A tab of its own. Whatever the page complains of in the console fails the test that asks for it.</summary>
    /// <param name="zoom">
    /// The browser's own zoom: at 2 a window has half as many CSS pixels, each of twice as many of the screen's, which is what
    /// a viewport of half the size at twice the device scale factor is.
    /// </param>
    /// <param name="alive">What is there once the page answers.</param>
    /// <param name="begun">Told of the tab before anything is fetched.</param>
    internal async Task<Tab> OpenAsync(
        string url, int width = 1280, int height = 900, ColorScheme scheme = ColorScheme.Light, string alive = "[data-alive]",
        double zoom = 1, bool hasTouch = false, Action<Tab>? begun = null)
    {
        Require();
        var context = await _browser!.NewContextAsync(new()
        {
            ViewportSize = new() { Width = (int)(width / zoom), Height = (int)(height / zoom) },
            DeviceScaleFactor = (float)zoom,
            ColorScheme = scheme,
            ReducedMotion = ReducedMotion.Reduce,
            HasTouch = hasTouch,
        });
        _open.Add(context);
        if (RunningPage.At(url) is { Cookie: var (name, value), Url: var own })
        {
            // As if the whole address had been opened in this browser before; DoorTests do open it.
            await context.AddCookiesAsync([new() { Name = name, Value = value, Url = own, HttpOnly = true,
                SameSite = SameSiteAttribute.Strict }]);
        }

        var tab = new Tab(await context.NewPageAsync());
        begun?.Invoke(tab);
        await tab.Page.GotoAsync(url);
        // The page is there before it is alive.
        await Assertions.Expect(tab.Page.Locator(alive).First).ToBeAttachedAsync();
        return tab;
    }

    /// <summary>A tab of a browser that was never at any worktable.</summary>
    internal async Task<IPage> NewPageAsync(int width = 1280)
    {
        Require();
        var context =
            await _browser!.NewContextAsync(new()
            {
                ViewportSize = new() { Width = width, Height = 900 },
                ReducedMotion = ReducedMotion.Reduce
            });
        _open.Add(context);
        return await context.NewPageAsync();
    }

    internal async Task CloseTabsAsync()
    {
        foreach (var context in _open)
        {
            await context.CloseAsync();
        }

        _open.Clear();
    }

    public async Task DisposeAsync()
    {
        if (_browser is not null)
        {
            await _browser.CloseAsync();
        }

        _playwright?.Dispose();
        foreach (var served in new[] { _lanternWalk, _madeLanternWalk })
        {
            served?.Page.Dispose();
            served?.Folder.Dispose();
        }
    }
}

/// <summary>Waiting until nothing on the plan is still under way.</summary>
internal static class Settling
{
    /// <summary>The figures are counted and the strip is drawn: what is looked at now stays as it is.</summary>
    public static async Task SettledAsync(this IPage page)
    {
        await Assertions.Expect(page.Locator(".row").First).ToBeVisibleAsync();
        await Assertions.Expect(page.Locator(".sentence")).Not.ToContainTextAsync("counting", new() { Timeout = 60_000 });
        await Assertions.Expect(page.GetByRole(AriaRole.Application, new() { Name = "The strip on the table" }))
            .ToHaveAttributeAsync("data-outlines", new System.Text.RegularExpressions.Regex("[0-9]"));
    }
}

/// <summary>A tab and what its console said.</summary>
internal sealed class Tab
{
    public Tab(IPage page)
    {
        Page = page;
        page.Console += (_, message) =>
        {
            // A graphics card that is only played by software says how slow it is.
            if (message.Type is "error" or "warning" && !message.Text.Contains("GL Driver Message", StringComparison.Ordinal))
            {
                Complaints.Add(message.Text);
            }
        };
        page.PageError += (_, error) => Complaints.Add(error);
    }

    public IPage Page { get; }

    public List<string> Complaints { get; } = [];

    /// <summary>Says each complaint whole, with where in the page's files it arose.</summary>
    public void ExpectNoComplaint() => Assert.True(Complaints.Count == 0, string.Join("\n", Complaints));
}

/// <summary>Tests of one collection run one after the other, in a browser of their own; the two collections side by side.</summary>
[CollectionDefinition(Name)]
public sealed class InBrowser : ICollectionFixture<Chromium>
{
    public const string Name = "in a browser";
}

/// <summary>Those that look at what is drawn.</summary>
[CollectionDefinition(Name)]
public sealed class InOtherBrowser : ICollectionFixture<Chromium>
{
    public const string Name = "in the other browser";
}
