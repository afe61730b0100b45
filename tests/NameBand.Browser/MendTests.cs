using Microsoft.Playwright;
using NameBand.Tests;
using Xunit;
using static Microsoft.Playwright.Assertions;

namespace NameBand.Browser;

/// <summary>What is offered to mend something mends it, and what cannot mend it is not offered.</summary>
[Collection(InBrowser.Name)]
public sealed class MendTests(Chromium browser) : BrowserTests(browser)
{
    [SkippableFact]
    public async Task A_key_that_nobody_knows_is_called_what_was_meant_or_taken_out()
    {
        Chromium.Require();
        using var folder = Jobs.Small();
        folder.With(
            "job.json", """{ "format": 1, "lists": ["names.csv"], "hem": { "lenght": "1.2 m" }, "lettering": { "height": "8 mm", "glitter": [1, 2] }, "thraed": "40" }""");
        using var server = RunningPage.Start(folder.FullPath);
        var page = (await Chromium.OpenAsync(server.Url)).Page;

        await page.GetByRole(AriaRole.Button, new() { Name = "call it “Length of the edge” hem.lenght" }).ClickAsync();
        await Expect(page.GetByRole(AriaRole.Button, new() { Name = "call it “Length of the edge” hem.lenght" })).ToHaveCountAsync(0);
        await page.GetByRole(AriaRole.Button, new() { Name = "take it out lettering.glitter" }).ClickAsync();
        await Expect(page.GetByRole(AriaRole.Button, new() { Name = "take it out lettering.glitter" })).ToHaveCountAsync(0);

        // The last one is moved from under the finger while it is pressed.
        var last = page.GetByRole(AriaRole.Button, new() { Name = "take it out thraed" });
        await last.HoverAsync();
        await page.Mouse.DownAsync();
        await page.EvaluateAsync("() => { document.querySelector('.problems').style.paddingTop = '6rem'; }");
        await page.Mouse.UpAsync();

        await Expect(page.Locator(".sentence")).ToContainTextAsync("3 names on one round of 1.2 m");
        using var job = System.Text.Json.JsonDocument.Parse(File.ReadAllText(folder["job.json"]));
        Assert.Equal("1.2 m", job.RootElement.GetProperty("hem").GetProperty("length").GetString());
        Assert.Equal("8 mm", job.RootElement.GetProperty("lettering").GetProperty("height").GetString());
        Assert.False(job.RootElement.GetProperty("lettering").TryGetProperty("glitter", out _));
        Assert.False(job.RootElement.TryGetProperty("thraed", out _));
        await page.GetByRole(AriaRole.Button, new() { Name = "undo: mending thraed" }).ClickAsync();
        await Expect(page.GetByRole(AriaRole.Button, new() { Name = "take it out thraed" })).ToBeVisibleAsync();
    }

    [SkippableFact]
    public async Task Of_several_wrong_keys_one_is_mended_after_the_other()
    {
        Chromium.Require();
        using var folder = Jobs.Small();
        folder.With(
            "job.json", """{ "format": 1, "lists": ["names.csv"], "hem": { "length": "1.2 m" }, "lettering": { "height": "eight" }, "hoop": { "along": "wide" } }""");
        using var server = RunningPage.Start(folder.FullPath);
        var page = (await Chromium.OpenAsync(server.Url)).Page;

        await page.Locator(".problems").GetByRole(AriaRole.Button, new() { Name = "set it Height" }).First.ClickAsync();
        await page.GetByLabel("Height", new() { Exact = true }).FillAsync("8 mm");
        await page.Keyboard.PressAsync("Enter");
        await Expect(page.GetByRole(AriaRole.Button, new() { Name = "set it Height" })).ToHaveCountAsync(0);
        await page.Locator(".problems").GetByRole(AriaRole.Button, new() { Name = "set it Field along the strip" }).First.ClickAsync();
        await page.GetByLabel("Field along the strip").FillAsync("160 mm");
        await page.Keyboard.PressAsync("Enter");

        await Expect(page.Locator(".sentence")).ToContainTextAsync("letters 8 mm high");
        await Expect(page.Locator(".sentence")).ToContainTextAsync("160 ×");
    }

    [SkippableFact]
    public async Task Only_mends_that_can_help_are_offered()
    {
        Chromium.Require();
        string tooLong = "Wilhelmina Theodora Marguerite Fitzgerald Featherstonehaugh of Weirside";
        using var folder =
            Jobs.Small($"name,mail\nOttilie Marsh,o@example.org\nBram Sedgewick,b@example.org\nBram Sedgewick,other@example.org\nPia \u2605 Tarn,p@example.org\n{tooLong},w@example.org\n");
        folder.With(
            "job.json", """{ "format": 1, "lists": ["names.csv"], "hem": { "length": "1.2 m" }, "lettering": { "height": "10 mm" }, "hoop": { "along": "100 mm" } }""");
        using var server = RunningPage.Start(folder.FullPath);
        var page = (await Chromium.OpenAsync(server.Url)).Page;

        Assert.Equal(["sew it as it stands", "correct it", "leave it out"], await MendsOf("Bram Sedgewick"));
        Assert.Equal(["sew “Pia Tarn”", "correct it", "leave it out"], await MendsOf("Pia"));
        Assert.Equal(["correct it", "leave it out", "choose another face"], await MendsOf(tooLong));
        await page.GetByRole(AriaRole.Button, new() { Name = "choose another face for Wilhelmina" }).ClickAsync();
        await Expect(page.Locator("#panel-heading")).ToHaveTextAsync("The letters");

        async Task<string[]> MendsOf(string name)
        {
            var row = page.Locator(".row.held", new() { HasText = name }).Last;
            await Expect(row.Locator(".mends button").First).ToBeVisibleAsync();
            return await row.Locator(".mends button").EvaluateAllAsync<string[]>(
                "all => all.map(b => [...b.childNodes].filter(n => n.nodeType !== Node.COMMENT_NODE && n.className !== 'unseen').map(n => n.innerText ?? n.textContent).join('').trim())");
        }
    }
}
