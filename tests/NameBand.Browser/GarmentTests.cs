using System.Globalization;
using System.Text.RegularExpressions;
using Microsoft.Playwright;
using NameBand.Tests;
using Xunit;
using static Microsoft.Playwright.Assertions;

namespace NameBand.Browser;

/// <summary>The garment as it hangs: in depth, drawn by the browser's own software here, and flat where it draws none.</summary>
[Collection(InOtherBrowser.Name)]
public sealed class GarmentTests(Chromium browser) : BrowserTests(browser)
{
    [SkippableFact]
    public async Task It_is_turned_by_mouse_and_keys_a_name_pressed_on_it_brings_the_strip_and_its_picture_is_saved()
    {
        var tab = await Chromium.OpenAsync(Chromium.LanternWalk.Url);
        var page = tab.Page;
        var hangs = await HungAsync(page);
        await Expect(hangs)
            .ToHaveAttributeAsync("aria-label", new Regex("^The garment. A skirt, hanging in [0-9]+ folds, with 60 names on 2 rounds$"));
        await Expect(page.Locator(".garment-says")).ToContainTextAsync("0 of 60 names sewn");
        // Thread is painted aside, by a worker.
        await Expect(page.Locator("[data-part=table]")).ToHaveAttributeAsync("data-painter", "worker");
        await Expect(page.Locator("[data-part=table]")).ToHaveAttributeAsync("data-thread", new Regex("[0-9]"));

        var box = (await hangs.BoundingBoxAsync())!;
        await page.Mouse.MoveAsync(box.X + 150, box.Y + 200);
        await page.Mouse.DownAsync();
        await page.Mouse.MoveAsync(box.X + 230, box.Y + 200, new() { Steps = 4 });
        await page.Mouse.UpAsync();
        // What was in front goes with the hand, to the right.
        await Expect(hangs).ToHaveAttributeAsync("data-angle", new Regex("^0\\.[2-9]|^1"));
        await hangs.FocusAsync();
        await page.Keyboard.PressAsync("Home");
        await Expect(hangs).ToHaveAttributeAsync("data-angle", "0.000");
        await page.Keyboard.PressAsync("ArrowLeft");
        await Expect(hangs).ToHaveAttributeAsync("data-angle", "-0.200");
        await page.Keyboard.PressAsync("+");
        await Expect(hangs).ToHaveAttributeAsync("data-times", "1.300");

        // From name to name by keys: it turns so that each comes to the front.
        var facts = page.GetByRole(AriaRole.Region, new() { Name = "The name you pressed" });
        await page.Keyboard.PressAsync("PageDown");
        await Expect(hangs).Not.ToHaveAttributeAsync("data-angle", "-0.200");
        string name = await facts.Locator("h3").InnerTextAsync();
        await Expect(page.Locator(".garment-says")).ToContainTextAsync(name);

        // The next name but one along the round lies beside it, and is pressed there.
        var at = await PlaceAsync(page, 1);
        await page.Mouse.ClickAsync(at.X, at.Y);
        await Expect(facts).ToContainTextAsync(at.Name);
        await Expect(page.GetByRole(AriaRole.Application, new() { Name = "The strip on the table" })).ToBeInViewportAsync();

        await page.GetByRole(AriaRole.Button, new() { Name = "inside", Exact = true }).ClickAsync();
        await Expect(page.GetByRole(AriaRole.Button, new() { Name = "inside", Exact = true })).ToHaveAttributeAsync("aria-pressed", "true");
        var saved = await page.RunAndWaitForDownloadAsync(() =>
            page.GetByRole(AriaRole.Button, new() { Name = "save a picture" }).ClickAsync());
        byte[] picture = await File.ReadAllBytesAsync(await saved.PathAsync() ?? "");
        Assert.Equal("garment.png", saved.SuggestedFilename);
        // The head of a PNG: its width and height as it says them.
        Assert.True(picture[..4] is [0x89, 0x50, 0x4e, 0x47] && Math.Max(Number(16), Number(20)) == 2000, "No whole picture was saved.");

        int Number(int from) => (picture[from + 2] << 8) | picture[from + 3];
        await page.GetByText("All names, round by round").ClickAsync();
        await Expect(page.Locator(".garment li")).ToHaveCountAsync(60);
        await Axe.ExpectNothingAsync(page, ".garment", Axe.Wcag, ".garment");
        tab.ExpectNoComplaint();
    }

    [SkippableFact]
    public async Task A_finger_turns_it_and_a_tap_presses_a_name_over_the_whole_window_too()
    {
        var tab = await Chromium.OpenAsync(Chromium.LanternWalk.Url, 390, 844, ColorScheme.Dark, hasTouch: true);
        var page = tab.Page;
        var hangs = await HungAsync(page);
        await page.GetByRole(AriaRole.Button, new() { Name = "larger", Exact = true }).TapAsync();
        var box = (await hangs.BoundingBoxAsync())!;
        Assert.True(box.Width > 340 && box.Height > 500, $"{box.Width} × {box.Height}");

        var touch = await page.Context.NewCDPSessionAsync(page);
        await TouchAsync("touchStart", box.X + 250, box.Y + 200);
        for (int i = 1; i <= 6; i++)
        {
            await TouchAsync("touchMove", box.X + 250 - (20 * i), box.Y + 200);
        }

        await TouchAsync("touchEnd");
        await Expect(hangs).ToHaveAttributeAsync("data-angle", new Regex("^-0\\.[3-9]|^-1"));
        await page.EvaluateAsync(
            "() => document.querySelector('.garment').garment.look.face(document.querySelector('.garment').garment.data.names[20])");
        await Axe.ExpectNothingAsync(page, ".garment", Axe.Wcag, ".garment");
        var at = await PlaceAsync(page, 20, byIndex: true);
        await page.Touchscreen.TapAsync(at.X, at.Y);
        await Expect(page.GetByRole(AriaRole.Region, new() { Name = "The name you pressed" })).ToContainTextAsync(at.Name);
        // It goes, and the strip is seen.
        await Expect(page.GetByRole(AriaRole.Application, new() { Name = "The strip on the table" })).ToBeInViewportAsync();
        tab.ExpectNoComplaint();

        async Task TouchAsync(string type, double x = 0, double y = 0) =>
            await touch.SendAsync("Input.dispatchTouchEvent", new Dictionary<string, object>
            {
                ["type"] = type,
                ["touchPoints"] = type == "touchEnd" ? Array.Empty<object>() : [new Dictionary<string, object> { ["x"] = x, ["y"] = y }],
            });
    }

    [SkippableFact]
    public async Task Where_nothing_is_drawn_in_depth_it_is_drawn_flat_and_stays_when_the_worktable_is_gone()
    {
        Chromium.Require();
        using var folder = Jobs.Sample("quay-banner");
        using var server = RunningPage.StartAlone(folder.FullPath);
        var tab = await Chromium.OpenAsync(server.Url, 1920, begun: t => t.Page.AddInitScriptAsync(
            """
            delete window.OffscreenCanvas;
            const made = HTMLCanvasElement.prototype.getContext;
            HTMLCanvasElement.prototype.getContext = function (kind, ...more) {
                return kind === 'webgl2' ? null : made.call(this, kind, ...more);
            };
            """));
        var page = tab.Page;
        var hangs = await HungAsync(page);
        await Expect(hangs).ToHaveAttributeAsync("aria-label", new Regex("^The garment. A banner, hanging in"));
        await Expect(page.GetByRole(AriaRole.Button, new() { Name = "Turn to the left" })).ToBeHiddenAsync();
        await Axe.ExpectNothingAsync(page, ".garment", Axe.Wcag, ".garment");
        // Without a canvas for workers the page paints by itself.
        await Expect(page.Locator("[data-part=table]")).ToHaveAttributeAsync("data-painter", "page");
        await Expect(page.Locator("[data-part=table]")).ToHaveAttributeAsync("data-thread", new Regex("[0-9]"));

        server.Kill();
        await Expect(page.Locator("#lost")).ToContainTextAsync("does not answer");
        await hangs.ScrollIntoViewIfNeededAsync();
        var at = await PlaceAsync(page, 3, byIndex: true);
        await page.Mouse.ClickAsync(at.X, at.Y + 2);
        await Expect(page.GetByRole(AriaRole.Region, new() { Name = "The name you pressed" })).ToContainTextAsync(at.Name);
        var saved = await page.RunAndWaitForDownloadAsync(() =>
            page.GetByRole(AriaRole.Button, new() { Name = "save a picture" }).ClickAsync());
        Assert.True(new FileInfo(await saved.PathAsync() ?? "").Length > 5000);
    }

    private static async Task<ILocator> HungAsync(IPage page)
    {
        var hangs = page.Locator(".hangs");
        await page.SettledAsync();
        await hangs.ScrollIntoViewIfNeededAsync();
        await Expect(hangs).ToHaveAttributeAsync("data-hung", new Regex("[0-9]"));
        return hangs;
    }

    /// <summary>Where on the screen a name is seen on the garment.</summary>
    /// <param name="number">From the one that is pressed; or of all of them.</param>
    private static async Task<(float X, float Y, string Name)> PlaceAsync(IPage page, int number, bool byIndex = false)
    {
        await page.WaitForFunctionAsync(
            """
            () => document.querySelector('.garment').garment.look
                && new Promise(r => requestAnimationFrame(() => requestAnimationFrame(() => r(true))))
            """);
        string[] at = await page.EvaluateAsync<string[]>(
            """
            ([number, byIndex]) => {
                const { garment } = document.querySelector('.garment'), { names } = garment.data;
                const name = names[byIndex ? number : names.indexOf(garment.strip.view.pressed) + number];
                const spot = garment.look.spot(name), box = garment.box.getBoundingClientRect();
                return [String(box.left + spot.x), String(box.top + spot.y), name.text];
            }
            """, new object[] { number, byIndex });
        return (float.Parse(at[0], CultureInfo.InvariantCulture), float.Parse(at[1], CultureInfo.InvariantCulture) + 2, at[2]);
    }
}
