using System.Globalization;
using Microsoft.Playwright;
using NameBand.Tests;
using Xunit;
using static Microsoft.Playwright.Assertions;

namespace NameBand.Browser;

/// <summary>Plans side by side, what the next evening holds, and the days until all is done.</summary>
[Collection(InOtherBrowser.Name)]
public sealed class PlansTests(Chromium browser) : BrowserTests(browser)
{
    [SkippableFact]
    public async Task Plans_stand_side_by_side_and_one_is_taken_with_a_press()
    {
        Chromium.Require();
        var today = DateOnly.FromDateTime(DateTime.Now);
        var far = today.AddDays(90);
        using var folder = Jobs.Small("name\nOttilie Marsh\nBram Sedgewick\nNgozi Farrow\nIlse Quill\n").With(
            "job.json", $$"""{ "format": 1, "lists": ["names.csv"], "hem": { "length": "60 cm", "turn": 0, "closed": false }, "strip": { "rounds": 2 }, "evening": "1h", "finishBy": "{{far:yyyy-MM-dd}}" }""");
        string before = await File.ReadAllTextAsync(folder["job.json"]);
        using var server = RunningPage.Start(folder.FullPath);
        var tab = await Chromium.OpenAsync(server.Url, 390);
        var page = tab.Page;
        await page.SettledAsync();

        // What this evening holds, and by when to begin.
        await Expect(page.Locator(".tonight")).ToContainTextAsync("Tonight");
        var told = Bander.Hours(folder.FullPath, today: today);
        await Expect(page.Locator(".tonight p")).ToHaveTextAsync(told.Tonight!.InWords.English);
        await Expect(page.Locator(".side"))
            .ToContainTextAsync(
                $"Begin by {told.Calendar!.BeginBy!.Value.ToString("dddd d MMMM", CultureInfo.InvariantCulture)} at the latest");
        await page.GetByText("day by day").ClickAsync();
        await Expect(page.Locator(".days li")).ToHaveCountAsync(told.Calendar.Plan.Evenings);

        await page.GetByRole(AriaRole.Button, new() { Name = "look for plans" }).ClickAsync();
        var cards = page.Locator(".card");
        await Expect(page.Locator(".plans [role=status]")).ToContainTextAsync("found", new() { Timeout = 60_000 });
        await Expect(cards.Filter(new() { HasText = "this is the plan" })).ToContainTextAsync("As you set it");
        var found = Bander.Plans(folder.FullPath);
        Assert.Equal(found.Plans.Length + 1, await cards.CountAsync());

        // Letters at true scale: a millimetre of the strip is a millimetre of the screen, as browsers count them.
        var width = await page.Locator(".card svg").First.EvaluateAsync<double>("s => s.getBoundingClientRect().height * 25.4 / 96");
        Assert.Equal(found.Plans[0].Plan.Hem.Strip.FinishedWidthMm, width, 1);
        Assert.DoesNotMatch(@"[a-z][A-Z]|\.json|strip\.|lettering\.", await page.Locator(".plans").InnerTextAsync());

        // Two of them act by act, by the keyboard.
        await cards.Nth(0).GetByLabel("compare").FocusAsync();
        await page.Keyboard.PressAsync("Space");
        await cards.Nth(1).GetByLabel("compare").FocusAsync();
        await page.Keyboard.PressAsync("Space");
        var rows = page.Locator(".beside tbody tr");
        await Expect(rows.First).ToBeVisibleAsync();
        int[] minutes =
            [.. (await rows.Locator("td:nth-of-type(1)").AllInnerTextsAsync()).Select(t => int.Parse(t, CultureInfo.InvariantCulture))];
        int all = int.Parse(await page.Locator(".beside tfoot td").First.InnerTextAsync(), CultureInfo.InvariantCulture);
        Assert.InRange(minutes.Sum(), all - (minutes.Length / 2.0) - 1, all + (minutes.Length / 2.0) + 1);
        Assert.Equal(found.Plans[0].Estimate.Work.All.Likely, all, 1.0);
        await Axe.ExpectNothingAsync(page, "plans", Axe.Wcag, ".plans");
        Assert.True(
            await page.EvaluateAsync<bool>("() => document.documentElement.scrollWidth <= window.innerWidth"),
            "The page is wider than its window.");

        // One press to take, one to take it back.
        var other = found.Plans.First(p => !p.Edits.IsEmpty && p.Plan.HasNeedlePaths);
        await cards.Nth(found.Plans.IndexOf(other)).GetByRole(AriaRole.Button, new() { Name = "take it" }).ClickAsync();
        await Expect(page.Locator(".sentence"))
            .ToContainTextAsync($"{other.Plan.LetterHeightMm.ToString("0.#", CultureInfo.InvariantCulture)} mm high");
        Assert.NotEqual(before, await File.ReadAllTextAsync(folder["job.json"]));
        await Expect(cards).ToHaveCountAsync(0);
        await page.GetByRole(AriaRole.Button, new() { Name = "undo: taking the plan" }).ClickAsync();
        await Expect(page.GetByRole(AriaRole.Button, new() { Name = "redo: taking the plan" })).ToBeVisibleAsync();
        Assert.Equal(before, await File.ReadAllTextAsync(folder["job.json"]));
        tab.ExpectNoComplaint();
    }
}
