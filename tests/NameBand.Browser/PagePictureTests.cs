using System.Text.RegularExpressions;
using Xunit;
using static Microsoft.Playwright.Assertions;

namespace NameBand.Browser;

/// <summary>The pictures in docs/page.md show the figures that the page shows now; pictures.js makes them anew.</summary>
[Collection(InBrowser.Name)]
public sealed partial class PagePictureTests(Chromium browser) : BrowserTests(browser)
{
    [SkippableFact]
    public async Task The_pictures_of_the_page_say_what_the_page_says_now()
    {
        Chromium.Require();
        string[] said = await File.ReadAllLinesAsync(Path.Combine(Root(), "docs", "pictures", "page-says.txt"));
        var plan = await Chromium.OpenAsync(Chromium.MadeLanternWalk.Url);
        await Expect(plan.Page.Locator(".sentence")).ToContainTextAsync("names on");
        await Expect(plan.Page.Locator(".sentence")).Not.ToContainTextAsync("counting");
        Assert.Equal(said[0], await Says(plan, ".sentence"));

        var machine = await Chromium.OpenAsync(Chromium.MadeLanternWalk.Url + "machine");
        await Expect(machine.Page.Locator(".machine-left").First).ToContainTextAsync("to sew: about");
        Assert.Equal(said[1], await Says(machine, "#machine h2"));
        Assert.Equal(said[2], await Says(machine, ".machine-left"));
    }

    private static async Task<string> Says(Tab tab, string what) =>
        Blanks().Replace(await tab.Page.Locator(what).First.InnerTextAsync(), " ").Trim();

    private static string Root()
    {
        string at = AppContext.BaseDirectory;
        while (!File.Exists(Path.Combine(at, "NameBand.sln")))
        {
            at = Path.GetDirectoryName(at) ?? throw new InvalidOperationException("The tests run inside the repository.");
        }

        return at;
    }

    [GeneratedRegex(@"\s+")]
    private static partial Regex Blanks();
}
