using Microsoft.Playwright;
using Xunit;
using static Microsoft.Playwright.Assertions;

namespace NameBand.Browser;

/// <summary>Every view at every width; where NAMEBAND_PICTURES names a folder, with pictures to look at.</summary>
[Collection(InBrowser.Name)]
public sealed class WidthTests(Chromium chromium)
{
    [SkippableTheory]
    [InlineData(360, ColorScheme.Light)]
    [InlineData(390, ColorScheme.Dark)]
    [InlineData(1024, ColorScheme.Light)]
    [InlineData(1920, ColorScheme.Dark)]
    [InlineData(2560, ColorScheme.Light)]
    public async Task No_view_is_wider_than_its_window(int width, ColorScheme scheme)
    {
        Chromium.Require();
        using var folder = Jobs.LanternWalk();
        using var server = RunningPage.Start(folder.FullPath);
        var page = (await chromium.OpenAsync(server.Url, width, scheme: scheme)).Page;
        await Expect(page.Locator(".sentence")).Not.ToContainTextAsync("counting");
        await Look(page, "plan");
        foreach (int part in (int[])[0, 2, 4, 7])
        {
            await page.Locator(".sentence .part").Nth(part).ClickAsync();
            await Expect(page.Locator("#panel-heading")).ToBeFocusedAsync();
            await page.Locator(".panel > details > summary").ClickAsync();
            await Look(page, "part" + part);
        }

        foreach (string view in (string[])["machine", "print"])
        {
            await page.GotoAsync(server.Url + view);
            await Look(page, view);
        }

        async Task Look(IPage page, string what)
        {
            if (Environment.GetEnvironmentVariable("NAMEBAND_PICTURES") is { Length: > 0 } into)
            {
                await page.ScreenshotAsync(new() { Path = Path.Combine(into, $"{what}-{width}-{scheme}.png") });
            }

            int over = await page.EvaluateAsync<int>("() => document.documentElement.scrollWidth - document.documentElement.clientWidth");
            Assert.True(over <= 0, $"{what} is {over} px wider than a window of {width} px.");
        }
    }
}
