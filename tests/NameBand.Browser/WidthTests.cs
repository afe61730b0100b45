using Microsoft.Playwright;
using Xunit;
using static Microsoft.Playwright.Assertions;

namespace NameBand.Browser;

/// <summary>Every view at every width; where NAMEBAND_PICTURES names a folder, with pictures to look at.</summary>
[Collection(InOtherBrowser.Name)]
public sealed class WidthTests(Chromium browser) : BrowserTests(browser)
{
    /// <param name="widths">A window that is made narrower step by step: what was drawn for the wider one must give way.</param>
    [SkippableTheory]
    [InlineData(ColorScheme.Light, 1, new[] { 2560, 1920, 1024, 390 })]
    [InlineData(ColorScheme.Light, 2, new[] { 1280 })]
    [InlineData(ColorScheme.Dark, 4, new[] { 1280 })] // 320 CSS pixels, as WCAG 2.2 asks of reflow (1.4.10).
    public async Task No_view_is_wider_than_its_window(ColorScheme scheme, double zoom, int[] widths)
    {
        Chromium.Require();
        var page = (await Chromium.OpenAsync(Chromium.LanternWalk.Url, widths[0], scheme: scheme, zoom: zoom)).Page;
        await page.SettledAsync();
        await Look("plan");
        foreach (int part in (int[])[0, 2, 4, 7])
        {
            await page.Locator(".sentence .part").Nth(part).ClickAsync();
            await Expect(page.Locator("#panel-heading")).ToBeFocusedAsync();
            await page.Locator(".panel > details > summary").ClickAsync();
            await Look("part" + part);
        }

        foreach (string view in (string[])["machine", "print"])
        {
            await page.GotoAsync(Chromium.LanternWalk.Url + view);
            await Expect(page.Locator("[data-alive]")).ToBeAttachedAsync();
            await Look(view);
        }

        async Task Look(string what)
        {
            foreach (int width in widths)
            {
                await page.SetViewportSizeAsync((int)(width / zoom), (int)(900 / zoom));
                if (Environment.GetEnvironmentVariable("NAMEBAND_PICTURES") is { Length: > 0 } into)
                {
                    await page.ScreenshotAsync(new() { Path = Path.Combine(into, $"{what}-{width}-{scheme}-{zoom}.png"), FullPage = true });
                }

                int over = await page.EvaluateAsync<int>(Over);
                Assert.True(over <= 0, $"{what} is {over} px wider than a window of {width} px at {zoom * 100} %.");
            }
        }
    }

    /// <summary>By how much the page is wider than its window, once it has been drawn for it.</summary>
    private const string Over =
        """
        () => new Promise(done => requestAnimationFrame(() => requestAnimationFrame(() =>
            done(document.documentElement.scrollWidth - document.documentElement.clientWidth))))
        """;

    /// <summary>The pictures are drawn for the screen; on paper, which is narrower, they must not be squeezed. Only the words of
    /// the sentence stay.</summary>
    [SkippableTheory]
    [InlineData("", ".table canvas")]
    [InlineData("machine", "[data-pictured] canvas, canvas[data-pictured]")]
    public async Task On_paper_pictures_keep_their_proportions_and_nothing_is_offered_to_press(string view, string picture)
    {
        Chromium.Require();
        var page = (await Chromium.OpenAsync(Chromium.LanternWalk.Url + view, 1280)).Page;
        await Expect(page.Locator(picture).First).ToBeVisibleAsync();
        await page.EmulateMediaAsync(new() { Media = Media.Print });
        Assert.Equal("contain", await page.Locator(picture).First.EvaluateAsync<string>("c => getComputedStyle(c).objectFit"));
        await Expect(page.Locator(picture).First).ToBeVisibleAsync();
        Assert.Empty(await page.EvaluateAsync<string[]>(
            "() => [...document.querySelectorAll('button:not(.part), nav, select')].filter(e => e.checkVisibility()).map(e => e.outerHTML.slice(0, 90))"));
    }
}
