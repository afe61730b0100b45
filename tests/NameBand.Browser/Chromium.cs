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
    private IBrowser? _browser;

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
    /// <param name="alive">What is there once the page answers.</param>
    internal async Task<Tab> OpenAsync(string url, int width = 1280, int height = 900, ColorScheme scheme = ColorScheme.Light, string alive = "[data-alive]")
    {
        Require();
        var context = await _browser!.NewContextAsync(new() { ViewportSize = new() { Width = width, Height = height }, ColorScheme = scheme, ReducedMotion = ReducedMotion.Reduce });
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
