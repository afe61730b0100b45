using System.Globalization;
using System.Text.Json;
using Microsoft.Playwright;
using Xunit;
using static Microsoft.Playwright.Assertions;

namespace NameBand.Browser;

/// <summary>The strip under fingers, as the browser itself passes touches on.</summary>
[Collection(InOtherBrowser.Name)]
public sealed class TouchTests(Chromium browser) : BrowserTests(browser)
{
    [SkippableFact]
    public async Task A_finger_moves_the_strip_two_come_closer_and_a_tap_presses_a_name()
    {
        Chromium.Require();
        var tab = await Chromium.OpenAsync(Chromium.LanternWalk.Url, 390, 844, hasTouch: true);
        var page = tab.Page;
        await page.SettledAsync();
        var table = page.GetByRole(AriaRole.Application, new() { Name = "The strip on the table" });
        await table.ScrollIntoViewIfNeededAsync();
        var box = (await table.BoundingBoxAsync())!;
        var touch = await page.Context.NewCDPSessionAsync(page);
        double x = box.X + 300, y = box.Y + (box.Height * 0.6);

        double left = await NumberAsync(table, "data-left");
        await TouchAsync(touch, "touchStart", (x, y));
        for (int i = 1; i <= 12; i++)
        {
            await TouchAsync(touch, "touchMove", (x - (15 * i), y));
        }

        await TouchAsync(touch, "touchEnd");
        await Expect(table).Not.ToHaveAttributeAsync("data-left", left.ToString("0.0", CultureInfo.InvariantCulture));
        double scale = await NumberAsync(table, "data-scale");
        await page.WaitForFunctionAsync(
            "([left, least, most]) => { const by = document.querySelector('[data-part=table]').dataset.left - left; return by >= least && by <= most; }",
            new[] { left, 120 / scale, 200 / scale });

        double middle = box.X + 195;
        await TouchAsync(touch, "touchStart", (middle - 30, y), (middle + 30, y));
        for (int i = 1; i <= 12; i++)
        {
            await TouchAsync(touch, "touchMove", (middle - 30 - (8 * i), y), (middle + 30 + (8 * i), y));
        }

        await TouchAsync(touch, "touchEnd");
        await Expect(table).Not.ToHaveAttributeAsync("data-scale", scale.ToString("0.000", CultureInfo.InvariantCulture));
        await page.WaitForFunctionAsync(
            "scale => { const times = document.querySelector('[data-part=table]').dataset.scale / scale; return times >= 2.5 && times <= 4.5; }", scale);
        Assert.Equal(1, await page.EvaluateAsync<double>("() => visualViewport.scale"));

        await page.GetByRole(AriaRole.Button, new() { Name = "whole hem" }).TapAsync();
        await page.GetByLabel("Find a name").FillAsync("bram sedge");
        await page.Keyboard.PressAsync("Enter");
        var facts = page.GetByRole(AriaRole.Region, new() { Name = "The name you pressed" });
        await facts.GetByRole(AriaRole.Button, new() { Name = "Close" }).TapAsync();
        await Expect(facts).ToBeHiddenAsync();
        double[] at = await page.EvaluateAsync<double[]>(
            """
            async () => {
                const { view } = (await import('/_content/NameBand.Web/strip.js')).here.strip;
                const name = view.seen.find(n => n.text === 'Bram Sedgewick');
                return view.camera.at(view.camera.rounds.indexOf(name.round), name.start + name.width / 2);
            }
            """);
        box = (await table.BoundingBoxAsync())!;
        await page.Touchscreen.TapAsync((float)(box.X + at[0]), (float)(box.Y + at[1]));
        await Expect(facts).ToContainTextAsync("Bram Sedgewick");
        tab.ExpectNoComplaint();
    }

    [SkippableFact]
    public async Task A_finger_that_goes_up_or_down_over_the_strip_scrolls_the_page()
    {
        Chromium.Require();
        var page = (await Chromium.OpenAsync(Chromium.LanternWalk.Url, 390, 844, hasTouch: true)).Page;
        await page.SettledAsync();
        var table = page.GetByRole(AriaRole.Application, new() { Name = "The strip on the table" });
        await table.ScrollIntoViewIfNeededAsync();
        var box = (await table.BoundingBoxAsync())!;
        var touch = await page.Context.NewCDPSessionAsync(page);
        double before = await page.EvaluateAsync<double>("() => scrollY");

        (double x, double y) = (box.X + 195, box.Y + (box.Height / 2));
        await TouchAsync(touch, "touchStart", (x, y));
        for (int i = 1; i <= 15; i++)
        {
            await TouchAsync(touch, "touchMove", (x, y - (15 * i)));
        }

        await TouchAsync(touch, "touchEnd");
        await page.WaitForFunctionAsync("y => scrollY > y + 150", before);
    }

    private static async Task TouchAsync(ICDPSession touch, string type, params (double X, double Y)[] fingers) =>
        await touch.SendAsync("Input.dispatchTouchEvent", new Dictionary<string, object>
        {
            ["type"] = type,
            ["touchPoints"] = fingers.Select((f, i) => new Dictionary<string, object> { ["x"] = f.X, ["y"] = f.Y, ["id"] = i }).ToArray(),
        });

    private static async Task<double> NumberAsync(ILocator table, string attribute) =>
        double.Parse(await table.GetAttributeAsync(attribute) ?? "", CultureInfo.InvariantCulture);
}
