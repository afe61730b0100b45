using System.Text.RegularExpressions;
using Microsoft.Playwright;
using NameBand.Tests;
using NameBand.Tests.Outside;
using Xunit;
using static Microsoft.Playwright.Assertions;

namespace NameBand.Browser;

/// <summary>
/// Every view and step of one job, each opened once: in her words, for everybody, on paper, and with names that are not meant
/// kindly. There is one of each thing, so that a word that is always in the plural shows.
/// </summary>
[Collection(InBrowser.Name)]
public sealed partial class EveryViewTests(Chromium browser) : BrowserTests(browser)
{
    private const string Hostile = "<img src=x onerror=\"document.title='taken'\">";

    private static readonly (string View, string Ready)[] Views =
    [
        ("", ".row"), ("?set=names", "#panel"), ("?set=face", ".look img"), ("?set=cloth", ".look img"), ("?set=hem", "#panel"),
        ("?set=machine", "#panel"), ("steps/list", ".aloud"), ("steps/questions", ".alike"), ("steps/edge", ".edge"),
        ("steps/workshop", ".step form"),
        ("steps/plan", ".recommended"), ("steps/proofs", ".proof img"), ("steps/files", ".hand-over li"),
        ("machine", "#machine[data-pictured='1']"),
        ("print", ".made"), ("nowhere", "main p"),
    ];

    [SkippableFact]
    public async Task Every_view_is_in_her_words_and_for_everybody_and_comes_whole_on_paper()
    {
        Chromium.Require();
        OutsideTool.Require("pdftoppm", "poppler-utils");
        using var folder = Jobs.Small(
            "name,mail,Anonymous\nBo \"Bram\" <b>Sedge</b>,b@example.org,\nTuva Lind,t@example.org,\nTuva Lind,t@example.org,\n"
            + $"\"{Hostile.Replace("\"", "\"\"", StringComparison.Ordinal)}\",h@example.org,\nHester Quayle,q@example.org,yes\n");
        folder.With("corrections.csv", "list,line,was,decision,text,why\r\nnames.csv,2,\"Bo \"\"Bram\"\" <b>Sedge</b>\",leaveOut,,\r\n");
        Assert.NotEqual(ExitStatus.CannotUse, Bander.Print(folder.FullPath).Status);
        using var server = RunningPage.Start(folder.FullPath);
        var tab = await Chromium.OpenAsync(server.Url, 390);
        var page = tab.Page;
        foreach (var (view, ready) in Views)
        {
            await page.GotoAsync(server.Url + view);
            await Expect(page.Locator(ready).First).ToBeAttachedAsync(new() { Timeout = 60_000 });
            await Expect(page.Locator("main[data-alive]")).ToBeAttachedAsync();
            await SeenAsync(page, view);
        }

        // The step of the plan has looked for them.
        await page.GotoAsync(server.Url);
        await Expect(page.Locator(".card").First).ToBeVisibleAsync();
        await Expect(page.Locator("main[data-alive]")).ToBeAttachedAsync();
        await SeenAsync(page, "plans side by side");
        Assert.NotEqual("taken", await page.TitleAsync());
        Assert.DoesNotContain(tab.Complaints, c => !c.Contains("404", StringComparison.Ordinal));
    }

    private static async Task SeenAsync(IPage page, string view)
    {
        await page.SetViewportSizeAsync(390, 844);
        await HerWords.ExpectAsync(page, view, "main");
        string said = await page.Locator("body").InnerTextAsync();
        var lone = LonePlural().Match(said);
        Assert.False(lone.Success, $"{view}: “{lone.Value}”");
        Assert.Equal(0, await page.Locator("main img[src=x], main b").CountAsync());
        await Axe.ExpectNothingAsync(page, view, Axe.Wcag);
        Assert.True(
            await page.EvaluateAsync<bool>("() => document.documentElement.scrollWidth <= innerWidth"),
            $"{view} is wider than its window.");
        await page.EmulateMediaAsync(new() { ColorScheme = ColorScheme.Dark });
        await Axe.ExpectNothingAsync(page, view + ", in the dark", Axe.Colours);
        // Axe looks at no drawing: names lie on a ground of their own in any light.
        Assert.Equal(
            0, await page.EvaluateAsync<int>(
                "() => [...document.querySelectorAll('.sample')].filter(s => /, 0\\)$/.test(getComputedStyle(s).backgroundColor)).length"));
        await page.EmulateMediaAsync(new() { ColorScheme = ColorScheme.Light });
        await page.SetViewportSizeAsync(1024, 768);
        await Paper.ExpectNoEmptySheetAsync(page, view);
    }

    /// <summary>One of a thing and yet several: <c>1 names</c>.</summary>
    [GeneratedRegex(
        @"(?<![\d.,–-])\b(1|[Oo]ne) (names|rows|people|repeats|questions|kinds|hoopings|runs|rounds|plans|evenings|files|lists|screens|"
        + @"sheets|minutes|hours|stitches|faces|letters|wait|are|were)\b")]
    private static partial Regex LonePlural();
}
