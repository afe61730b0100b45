using NameBand.Common;
using Xunit;
using static Microsoft.Playwright.Assertions;

namespace NameBand.Browser;

/// <summary>The page for supporters, opened from a disk as a supporter would.</summary>
[Collection(InOtherBrowser.Name)]
public sealed class PublicPageTests(Chromium browser) : BrowserTests(browser)
{
    [SkippableFact]
    public async Task A_name_is_found_by_keyboard_shown_as_sewn_and_its_place_marked()
    {
        Chromium.Require();
        using var job = Jobs.Small("name,Show on the web?\nOttilie Marsh,yes\nZdeněk Holub,yes\nBram Sedgewick,no\n");
        job.With("job.json", """
            { "format": 1, "lists": ["names.csv"], "hem": { "length": "1.2 m", "turn": 0.75 }, "colours": { "cloth": "#102030", "thread": "gold" } }
            """);
        Assert.NotEqual(ExitStatus.CannotUse, Bander.Make(job.FullPath).Status);
        var made = Bander.Public(job.FullPath);
        Assert.Equal(2, made.Shown);

        // A phone's width.
        var tab = await Chromium.OpenAsync(
            "file://" + Path.Combine(made.Folder!, "index.html"), width: 390, height: 800, alive: "#letters");
        var page = tab.Page;
        await page.Keyboard.PressAsync("Tab");
        await page.Keyboard.TypeAsync("zdenek");
        await Expect(page.Locator("#said")).ToHaveTextAsync("One name.");
        await Axe.ExpectNothingAsync(page, "a name found", Axe.Wcag);
        await page.Keyboard.PressAsync("Enter");
        await Expect(page.Locator("#who")).ToBeFocusedAsync();
        await Expect(page.Locator("#who")).ToHaveTextAsync("Zdeněk Holub");
        await Expect(page.Locator("#where")).ToContainTextAsync("of centre");
        await Expect(page.Locator("#spot")).ToHaveAttributeAsync("d", new System.Text.RegularExpressions.Regex("^M.*A"));
        await Axe.ExpectNothingAsync(page, "a name shown", Axe.Wcag);

        // The cloth and the thread have the colours of the job, and there is much of both.
        int[] counts = await page.EvaluateAsync<int[]>("""
            () => {
                const c = document.getElementById('sewn');
                const p = c.getContext('2d').getImageData(0, 0, c.width, c.height).data;
                let cloth = 0, thread = 0;
                for (let i = 0; i < p.length; i += 4) { if (p[i] === 16 && p[i + 1] === 32 && p[i + 2] === 48) cloth++; if (p[i] > 140 && p[i + 1] > 115 && p[i + 2] < 90) thread++; }
                return [cloth, thread, c.width * c.height, document.documentElement.scrollWidth - innerWidth];
            }
            """);
        Assert.True(counts[0] > counts[2] / 3 && counts[1] > counts[2] / 200, string.Join(", ", counts));
        Assert.True(counts[3] <= 0);

        await page.EmulateMediaAsync(new() { ColorScheme = Microsoft.Playwright.ColorScheme.Dark });
        await Axe.ExpectNothingAsync(page, "in the dark", Axe.Colours);
        await page.Locator("#letters").FillAsync("sedge");
        await Expect(page.Locator("#said")).ToContainTextAsync("No name with these letters");
        tab.ExpectNoComplaint();

        // The browser is the judge of what a colour word of CSS means.
        string[] words = [.. CssColour.KnownWords];
        string[] meant = await page.EvaluateAsync<string[]>("""
            words => words.map(w => { const c = new OffscreenCanvas(1, 1).getContext('2d'); c.fillStyle = '#010203'; c.fillStyle = w; return c.fillStyle; })
            """, words);
        Assert.Equal(148, words.Length);
        Assert.Equal(meant, words.Select(w => CssColour.TryParse(w, out var colour) ? colour.ToString() : w));
    }
}
