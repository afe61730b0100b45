using System.Text.RegularExpressions;
using Microsoft.Playwright;
using Xunit;
using static Microsoft.Playwright.Assertions;

namespace NameBand.Browser;

/// <summary>Chosen by looking: her own names in each choice, with the height and the hours that it brings.</summary>
[Collection(InOtherBrowser.Name)]
public sealed partial class GalleryTests(Chromium browser) : BrowserTests(browser)
{
    [SkippableFact]
    public async Task Each_choice_is_seen_with_what_it_brings_while_another_tab_looks_at_another_kind()
    {
        Chromium.Require();
        // As many as lie beside one another in a hooping, else nothing is sewn between them.
        using var folder = Jobs.Small(
            "name\nOttilie Marsh\nBram Sedgewick\nNgozi Farrow\nTuva Lind\nIlse Quill\nNoor Haddad\nJo Weir\nOrla Penhale\nWenna Kit\n"
            + "Solveig Brunt\nAnna Berg\nBo Ash\n");
        using var server = RunningPage.Start(folder.FullPath);
        var tab = await Chromium.OpenAsync(server.Url + "?set=face");
        var page = tab.Page;
        var other = (await Chromium.OpenAsync(server.Url + "?set=thread", 390, scheme: ColorScheme.Dark)).Page;
        await WholeAsync(other, "Colours of the thread", 9);
        await WholeAsync(page, "Faces", 9);
        await UnlikeAsync(page);
        await UnlikeAsync(other);

        // A face that has none of her letters would be seen as the one that helps it out; among all faces it is there.
        await Expect(page.Locator(".look", new() { HasText = "Noto Sans Thai Bold" })).ToHaveCountAsync(0);
        await Expect(page.Locator("option", new() { HasText = "Noto Sans Thai Bold" })).ToHaveCountAsync(1);
        await Axe.ExpectNothingAsync(page, "faces", Axe.Wcag, "#panel");
        await Axe.ExpectNothingAsync(other, "colours of the thread, in the dark", Axe.Colours, "#panel");

        // What a face was said to bring is what it brings; the other tab still has what it looks at.
        var slab = page.Locator(".look", new() { HasText = "Roboto Slab Bold" });
        string height = Height().Match(await slab.InnerTextAsync()).Groups[1].Value;
        await slab.ClickAsync();
        await Expect(slab).ToHaveAttributeAsync("aria-pressed", "true");
        await Expect(page.Locator(".sentence")).ToContainTextAsync($"letters {height} mm high");
        Assert.Contains("\"Roboto Slab Bold\"", await File.ReadAllTextAsync(folder["job.json"]), StringComparison.Ordinal);
        await WholeAsync(other, "Colours of the thread", 9);

        await page.GetByRole(AriaRole.Button, new() { Name = "What is sewn between names" }).ClickAsync();
        await WholeAsync(page, "What is sewn between names", 4);
        await UnlikeAsync(page);
        await page.Locator(".look", new() { HasText = "a diamond" }).ClickAsync();
        await Expect(page.Locator(".look[aria-pressed=true]")).ToContainTextAsync("a diamond");
        Assert.Contains("\"diamond\"", await File.ReadAllTextAsync(folder["job.json"]), StringComparison.Ordinal);

        // How many gaps have one is what the plan has, and where none has, so that all look alike, it says why.
        var (all, with) = Bander.Hours(folder.FullPath).Plan!.Gaps;
        Assert.InRange(with, 1, all);
        await Expect(page.Locator(".look[aria-pressed=true]")).ToContainTextAsync($"in {with} of {all} gaps");
        await Expect(page.Locator(".look", new() { HasText = "nothing" })).Not.ToContainTextAsync("gap");

        await page.Locator(".sentence .part", new() { HasText = "cotton" }).First.ClickAsync();
        await WholeAsync(page, "Colours of the cloth", 8);
        await page.GetByRole(AriaRole.Button, new() { Name = "Cloths", Exact = true }).ClickAsync();
        await WholeAsync(page, "Cloths", 5);
        await other.Locator(".look", new() { HasText = "madder" }).ClickAsync();
        await Expect(other.Locator(".look[aria-pressed=true]")).ToContainTextAsync("madder");
        await WholeAsync(page, "Cloths", 5);

        // What is seen to be chosen from does not go again while it is drawn.
        await page.EvaluateAsync("""
            () => {
                window.everSeen = new Set();
                const faces = '[aria-label^=Faces] .look strong';
                new MutationObserver(() => document.querySelectorAll(faces).forEach(l => everSeen.add(l.textContent)))
                    .observe(document.body, { childList: true, subtree: true });
            }
            """);
        await page.Locator(".sentence .part", new() { HasText = "Roboto Slab" }).First.ClickAsync();
        await WholeAsync(page, "Faces", 9);
        Assert.Equivalent(
            await page.Locator(".look strong").AllTextContentsAsync(),
            await page.EvaluateAsync<string[]>("() => [...everSeen]"), strict: true);
        tab.ExpectNoComplaint();
    }

    /// <summary>Each choice that can be made is a picture of her names, and says its height and its hours.</summary>
    private static async Task WholeAsync(IPage page, string kind, int least)
    {
        var looks = page.GetByRole(AriaRole.Group, new() { Name = kind + ", with your own names" }).Locator(".look");
        await Expect(looks.First).ToBeVisibleAsync();
        await page.WaitForFunctionAsync(
            """
            least => {
                const all = [...document.querySelectorAll('.look')], good = all.filter(l => !l.disabled);
                return good.length >= least && good.every(l => l.querySelector('img')
                    && /[\d.]+ mm high · .*\d.* at the machine, .*\d.* by hand/.test(l.textContent));
            }
            """, least, new() { Timeout = 60_000 });
        await page.WaitForFunctionAsync("() => document.querySelector('.look img')?.naturalWidth > 50");
    }

    /// <summary>What can be chosen is seen: no picture of one choice is that of another.</summary>
    private static async Task UnlikeAsync(IPage page)
    {
        string[] pictures = await page.EvaluateAsync<string[]>("""
            async () => {
                const all = [...document.querySelectorAll('.look:not([disabled]) img')];
                await Promise.all(all.map(i => i.decode()));
                return all.map(i => {
                    const sheet = Object.assign(document.createElement('canvas'), { width: i.naturalWidth, height: i.naturalHeight });
                    sheet.getContext('2d').drawImage(i, 0, 0);
                    return sheet.toDataURL();
                });
            }
            """);
        Assert.Equal(pictures.Length, pictures.Distinct().Count());
    }

    [GeneratedRegex(@"([\d.]+) mm high")]
    private static partial Regex Height();
}
