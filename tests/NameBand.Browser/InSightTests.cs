using Microsoft.Playwright;
using NameBand.Tests;
using Xunit;
using static Microsoft.Playwright.Assertions;

namespace NameBand.Browser;

/// <summary>The strip is in sight while something is set, and its names can be touched.</summary>
[Collection(InOtherBrowser.Name)]
public sealed class InSightTests(Chromium browser) : BrowserTests(browser)
{
    private const string StripAndPanel =
        """
        () => {
            const strip = document.querySelector('[data-part=table]').getBoundingClientRect(), panel = document.querySelector('#panel').getBoundingClientRect();
            const under = [0.2, 0.5, 0.8].map(part => document.elementFromPoint(innerWidth * part, strip.top + strip.height / 2));
            return [Math.min(strip.bottom, innerHeight) - Math.max(strip.top, 0), innerHeight - panel.top, strip.bottom - panel.top,
                under.every(e => e?.closest('[data-part=table]')) ? 1 : 0];
        }
        """;

    /// <summary>Before, the panel pushed the strip out of the window: none of it was seen with the hem open.</summary>
    [SkippableTheory]
    [InlineData(390, 844)]
    [InlineData(1024, 768)]
    [InlineData(1920, 1080)]
    public async Task The_strip_stays_in_sight_whatever_is_set(int width, int height)
    {
        Chromium.Require();
        var page = (await Chromium.OpenAsync(Chromium.LanternWalk.Url, width, height)).Page;
        await page.SettledAsync();
        await page.EmulateMediaAsync(new() { ReducedMotion = ReducedMotion.Reduce });
        foreach (string part in (string[])["rounds", "3.64", "Nunito", "mm", "cotton"])
        {
            await page.Locator(".sentence .part", new() { HasText = part }).First.ClickAsync();
            await Expect(page.Locator("#panel-heading")).ToBeFocusedAsync();
            await page.WaitForFunctionAsync($"({StripAndPanel})()[3] === 1");
            double[] seen = await page.EvaluateAsync<double[]>(StripAndPanel);
            Assert.True(seen[0] >= 180, $"{part}: {seen[0]} px of the strip are in sight.");
            Assert.True(seen[1] >= 200, $"{part}: {seen[1]} px of what is set are in sight.");
            Assert.True(seen[2] <= 0, $"{part}: what is set lies over the strip.");
        }
    }

    [SkippableFact]
    public async Task Letters_follow_the_slider_at_once_and_are_laid_out_anew_when_it_rests()
    {
        Chromium.Require();
        using var folder = Jobs.Small();
        using var server = RunningPage.Start(folder.FullPath);
        var page = (await Chromium.OpenAsync(server.Url)).Page;
        await page.SettledAsync();
        await page.Locator(".sentence .part", new() { HasText = "mm" }).First.ClickAsync();
        var slider = page.GetByRole(AriaRole.Slider, new() { Name = "Slide, and look at the strip" });
        string largest = await page.Locator(".slide output").InnerTextAsync();
        await Expect(page.Locator(".slide[data-follows]")).ToBeVisibleAsync();

        // The frame after the move shows the new height, long before any answer of the worktable.
        string shown = await slider.EvaluateAsync<string>(
            """
            async slide => {
                const table = document.querySelector('[data-part=table]');
                slide.value = 8;
                slide.dispatchEvent(new Event('input', { bubbles: true }));
                await new Promise(requestAnimationFrame);
                return table.dataset.preview;
            }
            """);
        Assert.Equal("8", shown);
        await Expect(page.Locator(".sentence")).ToContainTextAsync("letters 8 mm high");
        Assert.Contains("\"8 mm\"", File.ReadAllText(folder["job.json"]), StringComparison.Ordinal);

        await slider.FocusAsync();
        await slider.PressAsync("ArrowRight");
        await Expect(page.Locator(".sentence")).ToContainTextAsync("letters 8.1 mm high");
        await page.Keyboard.PressAsync("Control+z");
        await Expect(page.Locator(".sentence")).ToContainTextAsync("letters 8 mm high");
        await Expect(slider).ToHaveValueAsync("8");

        // A second move comes while the first may be laid out: what was laid out for that one does not push the slider back.
        await slider.PressAsync("ArrowRight");
        await slider.PressAsync("ArrowRight");
        await Expect(page.Locator(".sentence")).ToContainTextAsync("letters 8.2 mm high");
        await Expect(slider).ToHaveValueAsync("8.2");
        await page.GetByRole(AriaRole.Button, new() { Name = "as large as fits" }).First.ClickAsync();
        await Expect(page.Locator(".sentence")).ToContainTextAsync($"letters {largest} high");
    }

    [SkippableFact]
    public async Task A_name_pressed_on_the_strip_is_corrected_left_out_and_taken_back()
    {
        Chromium.Require();
        using var folder = Jobs.Small();
        using var server = RunningPage.Start(folder.FullPath);
        var page = (await Chromium.OpenAsync(server.Url)).Page;
        await page.SettledAsync();
        await page.Locator(".seen button", new() { HasText = "Ottilie Marsh" }).FocusAsync();
        await page.Keyboard.PressAsync("Enter");
        var card = page.GetByRole(AriaRole.Region, new() { Name = "What should happen to" });
        await Expect(card).ToContainTextAsync("Ottilie Marsh");

        await card.GetByRole(AriaRole.Button, new() { Name = "correct it" }).ClickAsync();
        await card.GetByLabel("as it should be sewn").FillAsync("Ottily Marsh");
        await card.GetByRole(AriaRole.Button, new() { Name = "use that" }).ClickAsync();
        await Expect(card.Locator("h2")).ToContainTextAsync("Ottily Marsh");
        await Expect(page.Locator(".rows")).ToContainTextAsync("Ottily Marsh");

        await card.GetByRole(AriaRole.Button, new() { Name = "leave it out" }).ClickAsync();
        await Expect(page.Locator(".sentence")).ToContainTextAsync("2 names");
        await Expect(card).ToContainTextAsync("left out");
        await card.GetByRole(AriaRole.Button, new() { Name = "take back what was decided" }).ClickAsync();
        await Expect(page.Locator(".sentence")).ToContainTextAsync("3 names");
        await Expect(card.Locator("h2")).ToContainTextAsync("Ottilie Marsh");
    }

    /// <summary>What is pressed before the page shows what was pressed before it goes on from that.</summary>
    [SkippableFact]
    public async Task Two_quick_presses_make_a_name_larger_by_two_steps()
    {
        Chromium.Require();
        using var folder = Jobs.Small();
        using var server = RunningPage.Start(folder.FullPath);
        var page = (await Chromium.OpenAsync(server.Url, 1280, 900)).Page;
        await page.SettledAsync();
        var row = page.Locator(".row", new() { HasText = "Ottilie Marsh" });
        await row.GetByRole(AriaRole.Button, new() { Name = "change Ottilie Marsh" }).ClickAsync();
        await row.GetByRole(AriaRole.Button, new() { Name = "its size, face and place" }).ClickAsync();
        await page.GetByRole(AriaRole.Region, new() { Name = "What should happen to" })
            .GetByRole(AriaRole.Button, new() { Name = "larger" }).EvaluateAsync("larger => { larger.click(); larger.click(); }");
        await page.GetByRole(AriaRole.Button, new() { Name = "undo: Ottilie Marsh: larger letters" }).WaitForAsync();
        await HoldsAsync(folder, "\"heightFactor\": 1.2");
    }

    /// <summary>A name that is too large is made smaller alone, where that is enough, by one press.</summary>
    [SkippableFact]
    public async Task A_name_that_is_too_large_is_made_to_fit_by_its_own_letters()
    {
        Chromium.Require();
        using var folder = Jobs.Small("name\nOttilie Marsh\nWilhelmina Bartholomew Lock\n").With(
            "job.json", """{ "format": 1, "lists": ["names.csv"], "hem": { "length": "2 m", "turn": 0 }, "lettering": { "height": "9 mm" } }""");
        using var server = RunningPage.Start(folder.FullPath);
        var page = (await Chromium.OpenAsync(server.Url, 1280, 900)).Page;
        await page.SettledAsync();
        var row = page.Locator(".row", new() { HasText = "Wilhelmina Bartholomew" });
        await row.GetByRole(AriaRole.Button, new() { Name = "make its letters smaller: 80 % Wilhelmina" }).ClickAsync();
        await HoldsAsync(folder, "\"heightFactor\": 0.8");
        await Expect(page.Locator(".sentence")).ToContainTextAsync("2 names");
        await Expect(page.GetByRole(AriaRole.Button, new() { Name = "undo: Wilhelmina Bartholomew Lock: smaller letters" }))
            .ToBeVisibleAsync();
    }

    private const string PlaceOf =
        """
        async text => {
            const { view } = (await import('/_content/NameBand.Web/strip.js')).here.strip;
            view.box.scrollIntoView({ block: 'center', behavior: 'instant' });
            const name = view.data.names.find(n => n.text === text), box = view.box.getBoundingClientRect();
            const [x, y] = view.camera.at(view.camera.rounds.indexOf(name.round), name.start + name.width / 2);
            return [box.left + x, box.top + y];
        }
        """;

    /// <summary>Size, place and pin by buttons, mouse and finger; a restart of the worktable forgets none of the steps.</summary>
    [SkippableFact]
    public async Task A_name_is_made_larger_moved_pinned_and_carried_and_undo_outlives_a_restart()
    {
        Chromium.Require();
        using var folder = Jobs.Small();
        using var server = RunningPage.StartAlone(folder.FullPath);
        var page = (await Chromium.OpenAsync(server.Url, 1280, 900, hasTouch: true)).Page;
        await page.SettledAsync();
        await page.EmulateMediaAsync(new() { ReducedMotion = ReducedMotion.Reduce });
        var row = page.Locator(".row", new() { HasText = "Ottilie Marsh" });
        await row.GetByRole(AriaRole.Button, new() { Name = "change Ottilie Marsh" }).ClickAsync();
        await row.GetByRole(AriaRole.Button, new() { Name = "its size, face and place" }).ClickAsync();
        var card = page.GetByRole(AriaRole.Region, new() { Name = "What should happen to" });
        await card.GetByRole(AriaRole.Button, new() { Name = "larger" }).ClickAsync();
        await HoldsAsync(folder, "\"heightFactor\": 1.1");
        await card.GetByLabel("face").SelectOptionAsync("Vollkorn Bold");
        await HoldsAsync(folder, "\"face\": \"Vollkorn Bold\"");
        await card.GetByRole(AriaRole.Button, new() { Name = "one place later" }).ClickAsync();
        await HoldsAsync(folder, "\"after\": \"Bram Sedgewick\"");
        await card.GetByLabel("after", new() { Exact = true }).FillAsync("Nobody");
        await card.GetByLabel("after", new() { Exact = true }).PressAsync("Enter");
        await Expect(card).ToContainTextAsync("No other name on the strip is “Nobody”");
        await card.GetByRole(AriaRole.Button, new() { Name = "at centre front" }).ClickAsync();
        await Expect(card).ToContainTextAsync("pinned at centre front");
        await HoldsAsync(folder, "\"at\": \"centreFront\"");

        // By finger: past the name on its right; it is pressed already.
        await card.GetByRole(AriaRole.Button, new() { Name = "like the others again" }).ClickAsync();
        await HoldsNotAsync(folder, "Ottilie Marsh");
        await InOrderAsync(page, "Ottilie Bram Ngozi");
        await page.GetByRole(AriaRole.Button, new() { Name = "whole hem" }).ClickAsync();
        double[] from = await page.EvaluateAsync<double[]>(PlaceOf, "Ottilie Marsh"), to = await page.EvaluateAsync<double[]>(
            PlaceOf, "Ngozi Farrow");
        var touch = await page.Context.NewCDPSessionAsync(page);
        await TouchAsync(touch, "touchStart", from[0], from[1]);
        for (int i = 1; i <= 8; i++)
        {
            await TouchAsync(touch, "touchMove", from[0] + ((to[0] + 20 - from[0]) * i / 8), from[1] + i);
        }

        await TouchAsync(touch, "touchEnd");
        await HoldsAsync(folder, "\"after\": \"Ngozi Farrow\"");
        await InOrderAsync(page, "Bram Ngozi Ottilie");

        // By keys: one place back, and on again.
        await page.GetByRole(AriaRole.Application, new() { Name = "The strip on the table" }).FocusAsync();
        await page.Keyboard.PressAsync("Control+ArrowLeft");
        await HoldsAsync(folder, "\"before\": \"Ngozi Farrow\"");
        await InOrderAsync(page, "Bram Ottilie Ngozi");
        await page.GetByRole(AriaRole.Button, new() { Name = "undo: moving Ottilie Marsh" }).ClickAsync();
        await InOrderAsync(page, "Bram Ngozi Ottilie");

        // By mouse: back to the beginning.
        from = await page.EvaluateAsync<double[]>(PlaceOf, "Ottilie Marsh");
        to = await page.EvaluateAsync<double[]>(PlaceOf, "Bram Sedgewick");
        await page.Mouse.MoveAsync((float)from[0], (float)from[1]);
        await page.Mouse.DownAsync();
        await page.Mouse.MoveAsync((float)to[0] - 20, (float)to[1], new() { Steps = 8 });
        await page.Mouse.UpAsync();
        await HoldsAsync(folder, "\"before\": \"Bram Sedgewick\"");
        await InOrderAsync(page, "Ottilie Bram Ngozi");

        // Until it is known to be gone, the page still shows what was offered before.
        server.Kill();
        await Expect(page.Locator("#lost")).ToContainTextAsync("does not answer");
        using var again = RunningPage.Start(folder.FullPath);
        await Expect(page.Locator("#lost")).ToBeEmptyAsync();
        await Expect(page.Locator("[data-alive]")).ToBeAttachedAsync();
        await page.GetByRole(AriaRole.Button, new() { Name = "undo: moving Ottilie Marsh" }).ClickAsync();
        await HoldsAsync(folder, "\"after\": \"Ngozi Farrow\"");
        await page.GetByRole(AriaRole.Button, new() { Name = "undo: moving Ottilie Marsh" }).ClickAsync();
        await HoldsNotAsync(folder, "Ottilie Marsh");
        await page.GetByRole(AriaRole.Button, new() { Name = "redo: moving Ottilie Marsh" }).ClickAsync();
        await HoldsAsync(folder, "\"after\": \"Ngozi Farrow\"");
    }

    /// <summary>The strip shows the names in an order, and what stands above it has come to rest.</summary>
    private static async Task InOrderAsync(IPage page, string order)
    {
        await page.WaitForFunctionAsync(
            """
            order => {
                // Asked at once: what is still to come would count as seen.
                const { strip } = document.querySelector('name-strip'), { names } = strip.view.data;
                return names.includes(strip.view.pressed) && names.toSorted((a, b) => a.start - b.start).map(
                    n => n.text.split(' ')[0]).join(' ') === order;
            }
            """, order);
        await Expect(page.Locator(".sentence")).Not.ToContainTextAsync("counting", new() { Timeout = 30_000 });
    }

    private static Task HoldsAsync(TemporaryFolder folder, string text) => UntilAsync(
        () => File.ReadAllText(folder["job.json"]).Contains(text, StringComparison.Ordinal), text);

    private static Task HoldsNotAsync(TemporaryFolder folder, string text) => UntilAsync(
        () => !File.ReadAllText(folder["job.json"]).Contains(text, StringComparison.Ordinal), text);

    private static async Task UntilAsync(Func<bool> isSo, string what)
    {
        for (int i = 0; i < 1200 && !isSo(); i++)
        {
            await Task.Delay(50);
        }

        Assert.True(isSo(), what);
    }

    private static async Task TouchAsync(ICDPSession touch, string type, params double[] at) =>
        await touch.SendAsync("Input.dispatchTouchEvent", new Dictionary<string, object>
        {
            ["type"] = type,
            ["touchPoints"] = at.Length == 0 ? [] : new[] { new Dictionary<string, object> { ["x"] = at[0], ["y"] = at[1], ["id"] = 0 } },
        });

    [SkippableFact]
    public async Task Every_row_of_the_list_can_be_changed_and_brings_its_name_into_sight()
    {
        Chromium.Require();
        using var folder = Jobs.LanternWalk();
        using var server = RunningPage.Start(folder.FullPath);
        var page = (await Chromium.OpenAsync(server.Url, 1024, 768)).Page;
        await page.SettledAsync();
        await page.EmulateMediaAsync(new() { ReducedMotion = ReducedMotion.Reduce });
        var row = page.Locator(".row", new() { HasText = "Solveig Åmot" });
        await row.ScrollIntoViewIfNeededAsync();
        await row.GetByRole(AriaRole.Button, new() { Name = "show Solveig Åmot on the strip" }).ClickAsync();
        await page.WaitForFunctionAsync(
            "() => { const r = document.querySelector('[data-part=table]').getBoundingClientRect(); return r.top >= -1 && r.bottom <= innerHeight + 1; }");
        await Expect(page.Locator(".seen")).ToContainTextAsync("Solveig Åmot");

        await row.GetByRole(AriaRole.Button, new() { Name = "change Solveig Åmot" }).ClickAsync();
        await row.GetByRole(AriaRole.Button, new() { Name = "leave it out" }).ClickAsync();
        await Expect(row).ToContainTextAsync("left out");
        Assert.Contains("Solveig Åmot", File.ReadAllText(folder["corrections.csv"]), StringComparison.Ordinal);
        await page.GetByRole(AriaRole.Button, new() { Name = "undo: deciding about line" }).ClickAsync();
        await Expect(row).ToContainTextAsync("placed");
    }
}
