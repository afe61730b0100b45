using Microsoft.Playwright;
using NameBand.Tests;
using Xunit;
using static Microsoft.Playwright.Assertions;

namespace NameBand.Browser;

/// <summary>Three questions about the workshop: what the machine can do, which frames, how long an evening is.</summary>
[Collection(InBrowser.Name)]
public sealed class WorkshopTests(Chromium browser) : BrowserTests(browser)
{
    [SkippableFact]
    public async Task A_new_job_is_typed_and_coordinates_come_for_a_machine_that_takes_them()
    {
        Chromium.Require();
        using var folder = new TemporaryFolder().With("names.csv", "name\nOttilie Marsh\nBram Sedgewick\n");
        using var server = RunningPage.Start(folder.FullPath);
        var tab = await Chromium.OpenAsync(server.Url, 390);
        var page = tab.Page;
        await page.GetByRole(AriaRole.Button, new() { Name = "that is the list" }).ClickAsync();
        await page.GetByLabel("straight, going round").CheckAsync();
        await page.GetByLabel("How long is the edge?").FillAsync("0.7");
        await page.GetByLabel("its unit").SelectOptionAsync("m");
        await page.GetByRole(AriaRole.Button, new() { Name = "that is the edge" }).ClickAsync();
        await Axe.ExpectNothingAsync(page, "the machine", Axe.Wcag);
        string shown = await page.Locator(".step").InnerTextAsync();
        Assert.DoesNotMatch(@"[a-z][A-Z]|\.json|needlePath|\bkeys\b", shown);

        await page.GetByRole(AriaRole.Button, new() { Name = "that is what I have" }).ClickAsync();
        await Expect(page.GetByRole(AriaRole.Alert)).ToContainTextAsync("how high the machine’s letters are");
        Assert.False(File.Exists(folder["workshop.json"]));
        await page.GetByLabel("How high are its letters?").FillAsync("9 mm; 6 mm");
        await page.GetByLabel("How long is one of your evenings?").FillAsync("1 h 30 min");
        await page.GetByLabel("How long is one of your evenings?").PressAsync("Enter");
        await Expect(page.Locator(".step h2")).ToHaveTextAsync("The plan");
        await page.GetByRole(AriaRole.Link, new() { Name = "the plan", Exact = true }).First.ClickAsync();
        await Expect(page.Locator(".sentence")).ToContainTextAsync("2 names on one round of 0.7 m, in the machine’s own letters 9 mm high");

        // Told otherwise afterwards: one step, which undo takes back; what her machine does not do is offered the other way.
        await page.GetByRole(AriaRole.Button, new() { Name = "the machine’s own letters" }).ClickAsync();
        await page.GetByLabel("It follows coordinates from a file").CheckAsync();
        await page.GetByLabel("along the strip").FillAsync("160");
        await page.GetByLabel("across it").FillAsync("100 mm");
        await Expect(page.Locator("#panel")).ToContainTextAsync("They are sewn from a file of coordinates instead.");
        await page.GetByRole(AriaRole.Button, new() { Name = "that is what I have" }).ClickAsync();
        await Expect(page.Locator(".sentence")).ToContainTextAsync("160 × 100 mm");
        Assert.Contains("\"coordinates\"", await File.ReadAllTextAsync(folder["workshop.json"]), StringComparison.Ordinal);
        await page.GetByRole(AriaRole.Button, new() { Name = "undo: what your workshop has" }).ClickAsync();
        await Expect(page.Locator(".sentence")).ToContainTextAsync("in the machine’s own letters 9 mm high");
        await Expect(page.GetByLabel("It has letters of its own")).ToBeCheckedAsync();
        Assert.Contains("\"keys\"", await File.ReadAllTextAsync(folder["workshop.json"]), StringComparison.Ordinal);
        tab.ExpectNoComplaint();
    }
}
