using Microsoft.Playwright;
using NameBand.Tests;
using Xunit;
using static Microsoft.Playwright.Assertions;

namespace NameBand.Browser;

/// <summary>That everybody can use the page: axe on every view, and the keyboard for everything.</summary>
[Collection(InOtherBrowser.Name)]
public sealed class AccessTests(Chromium browser) : BrowserTests(browser)
{
    [SkippableTheory]
    [InlineData(ColorScheme.Dark, 1280)]
    [InlineData(ColorScheme.Light, 360)]
    public async Task Axe_finds_nothing_on_any_view(ColorScheme scheme, int width)
    {
        Chromium.Require();
        string[] rules = scheme == ColorScheme.Dark ? Axe.Colours : Axe.Wcag;
        var server = Chromium.LanternWalk;
        var page = (await Chromium.OpenAsync(server.Url, width, scheme: scheme)).Page;
        await page.SettledAsync();
        await Axe.ExpectNothingAsync(page, "the plan", rules);

        int parts = await page.Locator(".sentence .part").CountAsync();
        for (int i = 0; i < parts; i++)
        {
            await page.Locator(".sentence .part").Nth(i).ClickAsync();
            await Expect(page.Locator(".sentence .part").Nth(i)).ToHaveAttributeAsync("aria-expanded", "true");
            await Expect(page.Locator("#panel-heading")).ToBeFocusedAsync();
            await page.Locator(".panel > details > summary").ClickAsync();
            await Expect(page.Locator(".panel > details")).ToHaveAttributeAsync("open", "");
            // The rest of the page was looked at already.
            await Axe.ExpectNothingAsync(page, "part " + i, rules, ".panel");
            await Expect(page.Locator(".sentence .part")).ToHaveCountAsync(parts);
        }

    }

    [SkippableFact]
    public async Task Axe_finds_nothing_where_a_job_begins()
    {
        Chromium.Require();
        using var folder = new TemporaryFolder();
        using var server = RunningPage.Start(folder.FullPath);
        var page = (await Chromium.OpenAsync(server.Url)).Page;
        await Axe.ExpectNothingAsync(page, "a new job", Axe.Wcag);
    }

    [SkippableFact]
    public async Task Axe_finds_nothing_where_letters_are_keyed_in_and_where_nothing_can_be_laid_out()
    {
        Chromium.Require();
        using var banner = Jobs.Sample("boat-banner");
        using var keyed = RunningPage.Start(banner.FullPath);
        var machine = (await Chromium.OpenAsync(keyed.Url + "machine", 360)).Page;
        await Expect(machine.Locator("[data-part=keys]")).ToContainTextAsync("key in");
        await Axe.ExpectNothingAsync(machine, "keying in", Axe.Wcag);

        using var folder = Jobs.Small();
        folder.With("job.json", """{ "format": 1, "lists": ["gone.csv"], "hem": { "length": "eight" } }""");
        using var stopped = RunningPage.Start(folder.FullPath);
        var page = (await Chromium.OpenAsync(stopped.Url, 360)).Page;
        await Expect(page.Locator(".lead")).ToHaveTextAsync("Nothing can be laid out until what is said below is mended.");
        await Expect(page.GetByRole(AriaRole.Application, new() { Name = "The strip on the table" })).ToBeHiddenAsync();
        await Axe.ExpectNothingAsync(page, "what stops the work", Axe.Wcag);

        // At the machine it is said too, and not only that there is nothing to sew.
        await page.GotoAsync(stopped.Url + "machine");
        await Expect(page.Locator("[data-part=problems]")).ToContainTextAsync("eight");
    }

    [SkippableFact]
    public async Task Every_control_is_reached_by_the_keyboard()
    {
        Chromium.Require();
        using var folder = Jobs.Small();
        using var server = RunningPage.Start(folder.FullPath);
        var page = (await Chromium.OpenAsync(server.Url)).Page;
        await Expect(page.Locator(".row").First).ToBeVisibleAsync();
        // What is fetched where it comes into sight stands there already: nothing moves while one walks.
        await page.Locator("[data-part=hangs]").ScrollIntoViewIfNeededAsync();
        await Expect(page.Locator(".garment-says")).ToContainTextAsync("sewn");
        await Expect(page.Locator(".sentence")).Not.ToContainTextAsync("counting");
        await page.Locator(".sentence .part").Nth(4).FocusAsync();
        await page.Keyboard.PressAsync("Enter");
        await Expect(page.Locator("#panel-heading")).ToBeFocusedAsync();

        // Every control that can be seen is marked, then one walks through the page and takes the marks off.
        int all = await page.EvaluateAsync<int>(
            """
            () => {
                const controls = [...document.querySelectorAll('a[href], button, input, select, textarea, summary, [tabindex="0"]')]
                    .filter(e => !e.disabled && e.checkVisibility());
                controls.forEach(e => e.setAttribute('data-unreached', ''));
                document.activeElement.blur();
                return controls.length;
            }
            """);
        Assert.True(all > 20, $"Only {all} controls were found.");
        await WalkAsync(page, all);
        Assert.Empty(await page.Locator("[data-unreached]").EvaluateAllAsync<string[]>("all => all.map(e => e.outerHTML.slice(0, 120))"));

        await page.Locator("#panel").GetByRole(AriaRole.Button, new() { Name = "close" }).FocusAsync();
        await page.Keyboard.PressAsync("Escape");
        await Expect(page.Locator(".sentence .part").Nth(4)).ToBeFocusedAsync();

        // On a narrow window other things stand beneath each other, and at the machine.
        await page.SetViewportSizeAsync(390, 844);
        await page.EvaluateAsync("() => document.activeElement.blur()");
        await WalkAsync(page, all);
        await page.GotoAsync(server.Url + "machine");
        await Expect(page.Locator("#machine[data-pictured]")).ToBeAttachedAsync();
        await WalkAsync(page, 12);
    }

    /// <summary>Where the focus is on the page, in whole pixels, and what it is on; takes the mark off it.</summary>
    private const string Focused =
        """
        () => {
            const e = document.activeElement, r = e.getBoundingClientRect();
            e.removeAttribute('data-unreached');
            // What stands beside the list scrolls by itself, so that what comes next there may be seen higher up.
            let x = scrollX, y = scrollY;
            for (let p = e.parentElement; p && p !== document.documentElement; p = p.parentElement) { x += p.scrollLeft; y += p.scrollTop; }
            const box = [r.left + x, r.top + y, r.right + x, r.bottom + y];
            return e === document.body || r.width < 2 ? null : [e.outerHTML.slice(0, 90), ...box.map(String)];
        }
        """;

    /// <summary>
    /// Goes through the page by Tab. The focus goes as one reads: on along a line, down to the next one, or to the top of what
    /// stands to the right; never up again, and never back on the same line.
    /// </summary>
    private static async Task WalkAsync(IPage page, int controls)
    {
        string[]? last = null;
        for (int i = 0; i < controls + 5; i++)
        {
            await page.Keyboard.PressAsync("Tab");
            string[]? now = await page.EvaluateAsync<string[]?>(Focused);
            if (last is not null && now is not null)
            {
                double[] from = Box(last), to = Box(now);
                bool isBelow = to[1] >= from[3] - 6, isRight = to[0] >= from[2] - 6,
                isAtOnce = to[1] >= from[1] - 6 && to[0] >= from[0] - 6;
                Assert.True(isBelow || isRight || isAtOnce, $"From {last[0]} the focus goes back to {now[0]}.");
            }

            last = now;
        }

        static double[] Box(string[] of) => [.. of.Skip(1).Select(t => double.Parse(t, System.Globalization.CultureInfo.InvariantCulture))];
    }
}
