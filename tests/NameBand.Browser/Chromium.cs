using Microsoft.Playwright;
using NameBand.Tests;
using NameBand.Tests.Outside;
using Xunit;

namespace NameBand.Browser;

/// <summary>One browser for all tests; Debian's, since nothing is downloaded for it.</summary>
public sealed class Chromium : IAsyncLifetime
{
    private const string Path = "/usr/bin/chromium";
    private IPlaywright? _playwright;
    private readonly List<(string Url, IBrowserContext Context)> _open = [];
    private IBrowser? _browser;
    private (TemporaryFolder Folder, RunningPage Page)? _lanternWalk;

    /// <summary>The lantern walk as it comes, for tests that only look at it.</summary>
    internal RunningPage LanternWalk
    {
        get
        {
            if (_lanternWalk is null)
            {
                var folder = Jobs.LanternWalk();
                _lanternWalk = (folder, RunningPage.Start(folder.FullPath));
            }

            return _lanternWalk.Value.Page;
        }
    }

    /// <summary>Skips the running test, or fails it under CI, where there is no chromium.</summary>
    public static void Require() => OutsideTool.Require("chromium", "chromium");

    public async Task InitializeAsync()
    {
        // A busy machine is slow, and nothing here is a timing.
        Assertions.SetDefaultExpectTimeout(30_000);
        if (File.Exists(Path))
        {
            _playwright = await Playwright.CreateAsync();
            _browser = await _playwright.Chromium.LaunchAsync(new() { ExecutablePath = Path, Args = ["--no-sandbox"] });
        }
    }

    /// <summary>A tab of its own. Whatever the page complains of in the console fails the test that asks for it.</summary>
    /// <param name="zoom">
    /// The browser's own zoom: at 2 a window has half as many CSS pixels, each of twice as many of the screen's, which is what
    /// a viewport of half the size at twice the device scale factor is.
    /// </param>
    /// <param name="alive">What is there once the page answers.</param>
    internal async Task<Tab> OpenAsync(string url, int width = 1280, int height = 900, ColorScheme scheme = ColorScheme.Light, string alive = "[data-alive]", double zoom = 1, bool hasTouch = false)
    {
        Require();
        foreach (var (of, ended) in _open.Where(o => RunningPage.IsEnded(o.Url)).ToList())
        {
            _open.Remove((of, ended));
            await ended.CloseAsync();
        }

        var context = await _browser!.NewContextAsync(new()
        {
            ViewportSize = new() { Width = (int)(width / zoom), Height = (int)(height / zoom) },
            DeviceScaleFactor = (float)zoom,
            ColorScheme = scheme,
            ReducedMotion = ReducedMotion.Reduce,
            HasTouch = hasTouch,
        });
        _open.Add((url, context));
        var tab = new Tab(await context.NewPageAsync());
        await tab.Page.GotoAsync(url);
        // The page is there before it is alive.
        await Assertions.Expect(tab.Page.Locator(alive).First).ToBeAttachedAsync();
        return tab;
    }

    public async Task DisposeAsync()
    {
        if (_browser is not null)
        {
            await _browser.CloseAsync();
        }

        _playwright?.Dispose();
        _lanternWalk?.Page.Dispose();
        _lanternWalk?.Folder.Dispose();
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
            if (message.Type is "error" or "warning")
            {
                Complaints.Add(message.Text);
            }
        };
        page.PageError += (_, error) => Complaints.Add(error);
    }

    public IPage Page { get; }

    public List<string> Complaints { get; } = [];
}

[CollectionDefinition(Name)]
public sealed class InBrowser : ICollectionFixture<Chromium>
{
    public const string Name = "in a browser";
}
