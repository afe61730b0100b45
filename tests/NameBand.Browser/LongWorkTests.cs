using System.Text.RegularExpressions;
using Microsoft.Playwright;
using Xunit;
using static Microsoft.Playwright.Assertions;

namespace NameBand.Browser;

/// <summary>Work that takes long: it can be stopped, and nobody waits for work that is out of date.</summary>
[Collection(InBrowser.Name)]
public sealed class LongWorkTests(Chromium browser) : BrowserTests(browser)
{
    private static readonly string[] First = ["Ottilie", "Bram", "Ngozi", "Zdeněk", "Wenna", "Jory", "Anaïs", "Ewa", "Dunstan", "Linda"];

    private static readonly string[] Last =
    [
        "Marsh", "Farrow", "Weir", "Holub", "Tarn", "Mill", "Brook", "Quay", "Ferry", "Lock",
        "Reed", "Heron", "Otter", "Wharf", "Delta", "Ford", "Creek", "Pool", "Shoal", "Birch",
    ];

    [SkippableFact]
    public async Task Counting_and_printing_are_stopped_and_a_change_during_work_starts_over()
    {
        Chromium.Require();
        using var folder =
            Jobs.Small("name\n" + string.Join('\n', First.SelectMany(f => Last.SelectMany(m => Last.Select(l => $"{f} {m} {l}")))) + "\n");
        folder.With(
            "job.json", """{ "format": 1, "lists": ["names.csv"], "hem": { "length": "40 m" }, "lettering": { "height": "8 mm" } }""");
        using var server = RunningPage.Start(folder.FullPath);
        var page = (await Chromium.OpenAsync(server.Url)).Page;
        var sentence = page.Locator(".sentence");

        await page.GetByRole(AriaRole.Button, new() { Name = "stop", Exact = true }).ClickAsync();
        await Expect(page.GetByText("The stitches are not counted.")).ToBeVisibleAsync();
        await Expect(sentence).ToContainTextAsync("not counted at the machine");
        await Expect(page.Locator(".counting progress")).ToHaveCountAsync(0);
        await page.GetByRole(AriaRole.Button, new() { Name = "count them" }).ClickAsync();
        await Expect(page.Locator(".counting progress")).ToBeVisibleAsync();

        // The new height is laid out while the old one would still be counted; its hours are not those of the old one.
        await page.Locator(".sentence .part", new() { HasText = "mm" }).First.ClickAsync();
        await page.GetByLabel("Height", new() { Exact = true }).FillAsync("7 mm");
        await page.Keyboard.PressAsync("Enter");
        await Expect(sentence)
            .ToContainTextAsync(new Regex("letters\\s+7 mm\\s+high.*counting\\s+at the machine", RegexOptions.Singleline));
        await Expect(sentence)
            .ToContainTextAsync(new Regex("about\\s+[0-9].* at the machine", RegexOptions.Singleline), new() { Timeout = 120_000 });

        await page.GetByRole(AriaRole.Link, new() { Name = "print" }).ClickAsync();
        await page.GetByRole(AriaRole.Button, new() { Name = "make the sheets" }).ClickAsync();
        await Expect(page.Locator(".saying [role=status]")).ToContainTextAsync(new Regex("[0-9]+ of [0-9]+"), new() { Timeout = 60_000 });
        await page.GetByRole(AriaRole.Button, new() { Name = "stop", Exact = true }).ClickAsync();
        await Expect(page.GetByText("Stopped; what was made before is as it was.")).ToBeVisibleAsync(new() { Timeout = 60_000 });
        Assert.False(Directory.Exists(folder["out"]));
    }
}
