using System.Text.RegularExpressions;
using Microsoft.Playwright;
using NameBand.Tests;
using Xunit;
using static Microsoft.Playwright.Assertions;

namespace NameBand.Browser;

/// <summary>The other ways onto the cloth, and what is not a plain straight strip of names.</summary>
[Collection(InOtherBrowser.Name)]
public sealed class WaysTests(Chromium browser) : BrowserTests(browser)
{
    [SkippableFact]
    public async Task Names_keyed_into_the_machines_own_letters_are_gone_through_one_by_one()
    {
        Chromium.Require();
        using var folder = Jobs.Sample("boat-banner");
        using var server = RunningPage.Start(folder.FullPath);
        var tab = await Chromium.OpenAsync(server.Url);
        var page = tab.Page;
        await page.SettledAsync();
        await Expect(page.Locator(".sentence")).ToContainTextAsync("in the machine’s own letters 9 mm high");
        await Expect(page.Locator(".sentence")).ToContainTextAsync("in 2 runs without a hoop");
        await Expect(page.Locator(".sentence")).Not.ToContainTextAsync("needle path");
        await Expect(page.Locator(".rows")).ToContainTextAsync("run 1");
        await Expect(page.GetByText("Play back the needle’s way")).ToBeHiddenAsync();

        await page.GetByRole(AriaRole.Link, new() { Name = "at the machine", Exact = true }).First.ClickAsync();
        await page.GetByLabel("Go to").SelectOptionAsync("0");
        await Expect(page.Locator("[data-part=keys]")).ToHaveTextAsync("key in Hesper␣Quayle");
        await Expect(page.Locator("[data-part=keying]")).ToContainTextAsync("must come out at");
        await page.GetByRole(AriaRole.Button, new() { Name = "next ›" }).ClickAsync();
        await Expect(page.Locator("[data-part=keys]")).ToHaveTextAsync("key in Tobin␣Marsh");
        await Expect(page.Locator("[data-part=problems]")).ToBeEmptyAsync();
        await Expect(page.GetByRole(AriaRole.Button, new() { Name = "Done, next" })).ToBeVisibleAsync();

        await page.GetByRole(AriaRole.Link, new() { Name = "print" }).ClickAsync();
        await page.GetByRole(AriaRole.Button, new() { Name = "make the sheets" }).ClickAsync();
        await Expect(page.GetByText("Done: the sheets are below.")).ToBeVisibleAsync(new() { Timeout = 120_000 });
        await ExpectPdf(page, "key in, A4");
        tab.ExpectNoComplaint();
    }

    [SkippableFact]
    public async Task Traced_names_follow_a_template()
    {
        Chromium.Require();
        using var folder = Jobs.Small();
        folder.With("job.json", """{ "format": 1, "way": "traced", "lists": ["names.csv"], "hem": { "length": "1.2 m" } }""");
        using var server = RunningPage.Start(folder.FullPath);
        var tab = await Chromium.OpenAsync(server.Url);
        var page = tab.Page;
        await page.SettledAsync();
        await Expect(page.Locator(".sentence"))
            .ToContainTextAsync("traced and sewn free-motion on quilting cotton in 1 run without a hoop");

        await page.GetByRole(AriaRole.Link, new() { Name = "at the machine", Exact = true }).First.ClickAsync();
        await Expect(page.Locator("[data-part=head]")).ToHaveTextAsync("1 of 3, round 1");
        await Expect(page.Locator("[data-part=follow]")).ToContainTextAsync("Follow the line in the middle of each stroke");
        await Expect(page.Locator("[data-part=problems]")).ToBeEmptyAsync();

        await page.GetByRole(AriaRole.Link, new() { Name = "print" }).ClickAsync();
        await page.GetByRole(AriaRole.Button, new() { Name = "make the sheets" }).ClickAsync();
        await Expect(page.GetByText("Done: the sheets are below.")).ToBeVisibleAsync(new() { Timeout = 120_000 });
        await ExpectPdf(page, "template, A4");
        tab.ExpectNoComplaint();
    }

    [SkippableFact]
    public async Task A_curved_strip_hangs_as_it_is_cut_and_its_names_are_pressed_where_they_hang()
    {
        Chromium.Require();
        using var folder = Jobs.Sample("lantern-cape");
        using var server = RunningPage.Start(folder.FullPath);
        var tab = await Chromium.OpenAsync(server.Url);
        var page = tab.Page;
        await page.SettledAsync();
        var table = page.GetByRole(AriaRole.Application, new() { Name = "The strip on the table" });
        double[] at = await page.EvaluateAsync<double[]>(
            """
            async () => {
                const { view } = (await import('/_content/NameBand.Web/strip.js')).here.strip;
                const name = view.seen[0], { camera } = view;
                return [...camera.at(0, name.start + name.width / 2), camera.at(0, camera.middle)[1]];
            }
            """);

        // The first name hangs left of the middle: higher than the middle, and turned clockwise on the screen.
        Assert.True(at[1] < at[3] - 5, $"{at[1]} {at[3]}");
        Assert.InRange(at[2], 0.05, 0.6);
        await table.ClickAsync(new() { Position = new() { X = (float)at[0], Y = (float)at[1] } });
        await Expect(page.GetByRole(AriaRole.Region, new() { Name = "The name you pressed" })).ToContainTextAsync("Wenna Tregear");
        Assert.True(await IsThreadAt(page, "name"), "No thread is drawn where the first letter hangs.");
        tab.ExpectNoComplaint();
    }

    [SkippableFact]
    public async Task Motifs_are_drawn_between_names_and_headings_said_to_be_such()
    {
        Chromium.Require();
        using var folder = Jobs.Sample("quay-banner");
        using var server = RunningPage.Start(folder.FullPath);
        var tab = await Chromium.OpenAsync(server.Url, 1600);
        var page = tab.Page;
        await page.SettledAsync();

        Assert.True(await IsThreadAt(page, "motif"), "No thread is drawn in the middle of a motif.");
        await page.GetByLabel("Find a name").FillAsync("lamp bearers");
        await page.Keyboard.PressAsync("Enter");
        await Expect(page.GetByRole(AriaRole.Region, new() { Name = "The name you pressed" })).ToContainTextAsync("the heading of a group");
        Assert.Equal(27, await page.EvaluateAsync<int>(
            "async () => (await import('/_content/NameBand.Web/strip.js')).here.strip.data.names.length"));

        // A heading is no name, and the letters of groups are not all of one height.
        await Expect(page.Locator(".sentence")).ToContainTextAsync(new Regex("^26 names.* letters [0-9.]+ to [0-9.]+ mm high"));
        await page.GetByRole(AriaRole.Button, new() { Name = "whole hem" }).ClickAsync();
        await Expect(page.GetByText("26 names on the table")).ToBeVisibleAsync();
        await page.Locator(".garment-says").ScrollIntoViewIfNeededAsync();
        await Expect(page.Locator(".garment-says")).ToContainTextAsync("0 of 26 names sewn");
        tab.ExpectNoComplaint();
    }

    /// <summary>Whether thread's colour lies where something of a kind is sewn: over its middle, or in its first letter.</summary>
    private static Task<bool> IsThreadAt(IPage page, string kind) => page.EvaluateAsync<bool>(
        """
        async kind => {
            const { view } = (await import('/_content/NameBand.Web/strip.js')).here.strip;
            const { camera, data, canvas } = view;
            const lane = camera.rounds.length - 1, round = camera.rounds[lane];
            const wait = ms => new Promise(done => setTimeout(done, ms));
            const sewn = () => data.within(round, camera.left, camera.right).find(n => n.kind === kind && n.start > camera.left);
            if (!sewn()) { camera.left = data.byRound[round].find(n => n.kind === kind).start - 40; camera.clamp(); view.changed(); }
            for (let i = 0; i < 100 && !(sewn() && data.threads.has(sewn().index)); i++) await wait(100);
            await wait(500);
            const name = sewn(), ratio = canvas.width / camera.width;
            const width = kind === 'motif' ? name.width : Math.min(name.width, data.map.height);
            const [x, y] = camera.at(lane, name.start + (kind === 'motif' ? name.width / 2 : width / 2), name.base + data.map.height / 2);
            const half = Math.ceil(width / 2 * camera.scale);
            const pixels = canvas.getContext('2d').getImageData((x - half) * ratio, (y - half) * ratio, 2 * half * ratio, 2 * half * ratio).data;
            let blue = 0;
            for (let i = 0; i < pixels.length; i += 4) if (pixels[i + 2] > pixels[i] + 40) blue++;
            return blue > 20;
        }
        """, kind);

    private static async Task ExpectPdf(IPage page, string name)
    {
        string address = (await page.GetByRole(AriaRole.Link, new() { Name = name }).First.GetAttributeAsync("href"))!;
        using var client = RunningPage.At(page.Url)!.Client();
        byte[] pdf = await client.GetByteArrayAsync(new Uri(new Uri(page.Url), "/" + address));
        Assert.True(pdf.AsSpan().StartsWith("%PDF"u8), name + " is no PDF.");
    }
}
