using System.Globalization;
using Microsoft.Playwright;
using NameBand.Tests;
using Xunit;
using static Microsoft.Playwright.Assertions;

namespace NameBand.Browser;

[Collection(InOtherBrowser.Name)]
public sealed class StripTests(Chromium browser) : BrowserTests(browser)
{
    [SkippableFact]
    public async Task Keys_go_from_the_whole_hem_to_single_stitches_and_along_it()
    {
        var (tab, table) = await OpenAsync(Chromium.LanternWalk.Url);

        await table.FocusAsync();
        double begun = await NumberAsync(table, "data-scale");
        await table.PressAsync("0");
        await Expect(table).Not.ToHaveAttributeAsync("data-scale", Text(begun));
        double whole = await NumberAsync(table, "data-scale");
        for (int i = 0; i < 14; i++)
        {
            await table.PressAsync("+");
        }

        await Expect(table).ToHaveAttributeAsync("data-thread", await table.GetAttributeAsync("data-outlines") ?? "");
        double close = await NumberAsync(table, "data-scale");
        await table.PressAsync("Home");
        await Expect(tab.Page.Locator(".strip-says")).ToContainTextAsync("on the table, round 1 on the flat cloth from 3 1/8 in to");
        double left = await NumberAsync(table, "data-left");
        await table.PressAsync("ArrowRight");
        await Expect(table).Not.ToHaveAttributeAsync("data-left", left.ToString("0.0", CultureInfo.InvariantCulture));

        Assert.True(whole < begun && begun < close, $"{whole} {begun} {close}");
        Assert.True(close > 40);
        tab.ExpectNoComplaint();
    }

    [SkippableFact]
    public async Task A_name_is_found_without_its_accents_and_its_facts_are_said()
    {
        var (tab, _) = await OpenAsync(Chromium.LanternWalk.Url);

        await tab.Page.GetByLabel("Find a name").FillAsync("anais cor");
        await tab.Page.Keyboard.PressAsync("Enter");

        var facts = tab.Page.GetByRole(AriaRole.Region, new() { Name = "The name you pressed" });
        await Expect(facts).ToContainTextAsync("Anaïs Corbeau");
        await Expect(facts).ToContainTextAsync("of names.csv");
        await Expect(facts).ToContainTextAsync(new System.Text.RegularExpressions.Regex("hooping.*(min|counting)"));
        await Expect(tab.Page.GetByRole(AriaRole.List, new() { Name = "Names on the table now" })).ToContainTextAsync("Anaïs Corbeau");
        tab.ExpectNoComplaint();
    }

    [SkippableFact]
    public async Task A_name_can_be_pressed_in_the_picture_and_in_the_list_of_those_seen()
    {
        var (tab, table) = await OpenAsync(Chromium.LanternWalk.Url);
        var facts = tab.Page.GetByRole(AriaRole.Region, new() { Name = "The name you pressed" });

        double[] at = await tab.Page.EvaluateAsync<double[]>(
            """
            async () => {
                const { view } = (await import('/_content/NameBand.Web/strip.js')).here.strip;
                const name = view.seen.find(n => n.text === 'Bram Sedgewick');
                return [view.camera.x(name.start + name.width / 2), view.camera.centre(view.camera.rounds.indexOf(name.round))];
            }
            """);
        await table.ClickAsync(new() { Position = new() { X = (float)at[0], Y = (float)at[1] } });
        await Expect(facts).ToContainTextAsync("Bram Sedgewick");

        var seen = tab.Page.Locator(".seen button").First;
        await seen.FocusAsync();
        string name = await seen.InnerTextAsync();
        await seen.PressAsync("Enter");
        await Expect(facts).ToContainTextAsync(name);
        tab.ExpectNoComplaint();
    }

    [SkippableFact]
    public async Task The_needles_way_is_played_back_and_stepped_through()
    {
        var (tab, _) = await OpenAsync(Chromium.LanternWalk.Url);

        await tab.Page.GetByText("Play back the needle’s way").ClickAsync();
        var slider = tab.Page.GetByRole(AriaRole.Slider, new() { Name = "stitch" });
        await Expect(slider).Not.ToHaveAttributeAsync("max", "1");
        string all = await slider.GetAttributeAsync("max") ?? "";
        await slider.FocusAsync();
        await slider.PressAsync("Home");
        await slider.PressAsync("ArrowRight");
        await slider.PressAsync("ArrowRight");
        await Expect(slider).ToHaveAttributeAsync("aria-valuetext", $"2 of {all}: travel");

        var play = tab.Page.GetByRole(AriaRole.Button, new() { Name = "Play", Exact = true });
        await play.ClickAsync();
        await Expect(slider).Not.ToHaveValueAsync("2");
        await tab.Page.GetByRole(AriaRole.Button, new() { Name = "Pause" }).ClickAsync();
        await Expect(play).ToBeVisibleAsync();
        Assert.True(int.Parse(await slider.InputValueAsync(), CultureInfo.InvariantCulture) > 2);
        tab.ExpectNoComplaint();
    }

    [SkippableTheory]
    [InlineData(ColorScheme.Light, 1280)]
    [InlineData(ColorScheme.Dark, 390)]
    public async Task Axe_finds_nothing_in_the_strip(ColorScheme scheme, int width)
    {
        var (tab, _) = await OpenAsync(Chromium.LanternWalk.Url, width, scheme);
        await tab.Page.GetByLabel("Find a name").FillAsync("a");
        await tab.Page.Keyboard.PressAsync("Enter");
        await tab.Page.GetByLabel("load on the cloth").CheckAsync();
        await tab.Page.GetByText("Play back the needle’s way").ClickAsync();
        await tab.Page.GetByLabel("Find a name").FillAsync("o");

        await Axe.ExpectNothingAsync(tab.Page, ".strip", Axe.Wcag, ".strip");
        Assert.True(
            await tab.Page.EvaluateAsync<bool>("() => document.documentElement.scrollWidth <= window.innerWidth"),
            "The page is wider than its window.");
        tab.ExpectNoComplaint();
    }

    private async Task<(Tab Tab, ILocator Table)> OpenAsync(string url, int width = 1280, ColorScheme scheme = ColorScheme.Light)
    {
        var tab = await Chromium.OpenAsync(url, width, scheme: scheme);
        var table = tab.Page.GetByRole(AriaRole.Application, new() { Name = "The strip on the table" });
        await Expect(table).ToHaveAttributeAsync("data-outlines", new System.Text.RegularExpressions.Regex("[0-9]"));
        return (tab, table);
    }

    private static async Task<double> NumberAsync(ILocator table, string attribute) =>
        double.Parse(await table.GetAttributeAsync(attribute) ?? "", CultureInfo.InvariantCulture);

    private static string Text(double scale) => scale.ToString("0.000", CultureInfo.InvariantCulture);
}
