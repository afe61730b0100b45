using Microsoft.Playwright;
using NameBand.Tests;
using Xunit;
using static Microsoft.Playwright.Assertions;

namespace NameBand.Browser;

/// <summary>What stands in a field belongs to whoever fills it in; and what it is taken for is what she meant.</summary>
[Collection(InBrowser.Name)]
public sealed class FieldTests(Chromium browser) : BrowserTests(browser)
{
    [SkippableFact]
    public async Task A_field_that_is_entered_as_soon_as_its_panel_stands_keeps_the_focus()
    {
        Chromium.Require();
        using var folder = Jobs.Small();
        using var server = RunningPage.Start(folder.FullPath);
        var (one, _) = await TwoAsync(server);
        string inUse = await one.EvaluateAsync<string>("""
            () => new Promise(done => {
              new MutationObserver((_, watch) => {
                const field = document.getElementById('key-lettering-height');
                if (!field) return;
                watch.disconnect();
                field.focus();
                setTimeout(() => done(document.activeElement.id), 2000);
              }).observe(document, { subtree: true, childList: true });
              [...document.querySelectorAll('.sentence .part')].find(p => p.textContent.includes('mm')).click();
            })
            """);
        Assert.Equal("key-lettering-height", inUse);
    }

    [SkippableFact]
    public async Task A_field_that_is_typed_in_is_not_overwritten_by_another_tab()
    {
        Chromium.Require();
        using var folder = Jobs.Small();
        using var server = RunningPage.Start(folder.FullPath);
        var (one, two) = await TwoAsync(server);
        var field = await HeightAsync(one);
        var other = await HeightAsync(two);
        await field.PressSequentiallyAsync("8.4");

        await other.FillAsync("7 mm");
        await other.PressAsync("Enter");
        await Expect(one.Locator(".sentence")).ToContainTextAsync("7 mm high");

        await Expect(one.Locator(".elsewhere")).ToContainTextAsync("Elsewhere this was set to “7 mm” meanwhile.");
        await Expect(field).ToHaveValueAsync("8.4");
        await field.PressSequentiallyAsync(" mm");
        await Expect(field).ToHaveValueAsync("8.4 mm");

        await field.PressAsync("Enter");
        await Expect(one.Locator(".wrong")).ToHaveCountAsync(0);
        await Expect(two.Locator(".sentence")).ToContainTextAsync("8.4 mm high");
        await Expect(other).ToHaveValueAsync("7 mm"); // Still in use there.
        await two.Locator("#panel-heading").FocusAsync();
        await Expect(other).ToHaveValueAsync("8.4 mm");
        await Expect(one.Locator(".elsewhere")).ToHaveCountAsync(0);
    }

    [SkippableFact]
    public async Task A_form_that_is_being_filled_in_keeps_each_field()
    {
        Chromium.Require();
        using var folder = Jobs.Small();
        using var server = RunningPage.Start(folder.FullPath);
        var (one, two) = await TwoAsync(server);
        foreach (var page in new[] { one, two })
        {
            await page.GetByRole(AriaRole.Button, new() { Name = "1.2 m" }).ClickAsync();
        }

        await one.GetByLabel("Finished waist").FillAsync("70 cm");
        await one.GetByLabel("Lost to seams and placket").FillAsync("3 c");
        await two.Locator("#hem-measured").FillAsync("3.66 m");
        await two.GetByRole(AriaRole.Button, new() { Name = "use this length" }).ClickAsync();
        await Expect(one.Locator(".sentence")).ToContainTextAsync("3.66 m");

        await Expect(one.Locator("#hem-measured")).ToHaveValueAsync("3.66 m");
        await Expect(one.GetByLabel("Finished waist")).ToHaveValueAsync("70 cm");
        await Expect(one.GetByLabel("Lost to seams and placket")).ToHaveValueAsync("3 c");
    }

    [SkippableFact]
    public async Task Groups_that_are_being_filled_in_stay()
    {
        Chromium.Require();
        using var folder = Jobs.Small("name,gift\nOttilie Marsh,10\nBram Sedgewick,200\n");
        using var server = RunningPage.Start(folder.FullPath);
        var (one, two) = await TwoAsync(server);
        foreach (var page in new[] { one, two })
        {
            await page.Locator(".sentence .part").First.ClickAsync();
            await page.Locator(".panel > details > summary").ClickAsync();
            await page.GetByLabel("The column that tells who is in which group").SelectOptionAsync("gift");
            await page.GetByRole(AriaRole.Button, new() { Name = "add a group" }).ClickAsync();
        }

        await one.GetByLabel("What it is called").FillAsync("patr");
        await two.GetByLabel("What it is called").FillAsync("lamps");
        await two.GetByLabel("from that and more").FillAsync("100");
        await two.GetByRole(AriaRole.Button, new() { Name = "use these groups" }).ClickAsync();
        await Expect(one.GetByRole(AriaRole.Button, new() { Name = "undo: the groups" })).ToBeVisibleAsync();

        await Expect(one.GetByLabel("What it is called")).ToHaveValueAsync("patr");
    }

    [SkippableFact]
    public async Task A_row_that_is_being_corrected_stays_when_another_tab_settles_it()
    {
        Chromium.Require();
        using var folder = Jobs.Small("name\nOttilie Marsh\nM\uFFFDller\n");
        using var server = RunningPage.Start(folder.FullPath);
        var (one, two) = await TwoAsync(server);
        await one.GetByLabel("only those that wait for you").CheckAsync();
        await one.GetByRole(AriaRole.Button, new() { Name = "correct it" }).ClickAsync();
        await one.GetByLabel("as it should be sewn").FillAsync("Müll");

        await two.GetByRole(AriaRole.Button, new() { Name = "leave it out" }).ClickAsync();
        await Expect(one.Locator(".row.leftout")).ToBeVisibleAsync();

        await Expect(one.GetByLabel("as it should be sewn")).ToHaveValueAsync("Müll");
    }

    [SkippableFact]
    public async Task A_length_without_a_unit_is_asked_about()
    {
        Chromium.Require();
        using var folder = Jobs.Small();
        using var server = RunningPage.Start(folder.FullPath);
        var page = (await Chromium.OpenAsync(server.Url)).Page;
        string before = await File.ReadAllTextAsync(folder["job.json"]);
        await page.GetByRole(AriaRole.Button, new() { Name = "1.2 m" }).ClickAsync();
        await page.Locator("#skirt-turn").FillAsync("0.75");
        await page.GetByLabel("Finished waist").FillAsync("70");
        await page.GetByLabel("From waist to hem").FillAsync("60 cm");
        await page.GetByLabel("Lost to seams and placket").FillAsync("0");
        var use = page.GetByRole(AriaRole.Button, new() { Name = "use this skirt" });
        await use.ClickAsync();

        await Expect(page.Locator(".panel [role=alert]"))
            .ToHaveTextAsync("“70” has no unit. Add one, such as \"70 mm\", \"70 cm\" or \"70 in\".");
        Assert.Equal(before, await File.ReadAllTextAsync(folder["job.json"]));

        await page.GetByLabel("Finished waist").FillAsync("70 mm");
        await use.ClickAsync();
        const string Question = "The waist is 70 mm (2 3/4 in) long, which is little for a garment.";
        await Expect(page.Locator(".panel .why", new() { HasText = Question })).ToBeVisibleAsync();
        await Expect(page.Locator(".problems li", new() { HasText = Question })).ToBeVisibleAsync();

        await page.GetByLabel("Finished waist").FillAsync("70 cm");
        await use.ClickAsync();
        await Expect(page.GetByText(Question)).ToHaveCountAsync(0);
        await page.Locator("details summary", new() { HasText = "more of this" }).ClickAsync();
        await page.Locator("#key-hem-overlap").FillAsync("30");
        await page.Keyboard.PressAsync("Enter");
        await Expect(page.Locator("#key-hem-overlap-wrong")).ToContainTextAsync("“30” has no unit.");
    }

    /// <summary>By contract a bare number of job.json is millimetres; the page says so and does not ask where nobody typed it.</summary>
    [SkippableFact]
    public async Task A_bare_number_of_the_file_is_shown_with_its_unit_and_a_small_one_is_questioned()
    {
        Chromium.Require();
        using var folder = Jobs.Small();
        folder.With(
            "job.json", """{ "format": 1, "lists": ["names.csv"], "hem": { "skirt": { "turn": 0.75, "waist": 70, "length": 600 } } }""");
        using var server = RunningPage.Start(folder.FullPath);
        var page = (await Chromium.OpenAsync(server.Url)).Page;

        await Expect(page.Locator(".problems li", new() { HasText = "The waist is 70 mm (2 3/4 in) long" }))
            .ToContainTextAsync("A number without a unit is taken as millimetres.");
        await page.GetByRole(AriaRole.Button, new() { Name = "set it Waist" }).ClickAsync();
        await Expect(page.GetByLabel("Finished waist")).ToHaveValueAsync("70 mm");
        await Expect(page.GetByLabel("From waist to hem")).ToHaveValueAsync("600 mm");
    }

    [SkippableFact]
    public async Task A_new_job_has_a_unit_beside_each_length()
    {
        Chromium.Require();
        using var folder = new TemporaryFolder();
        using var server = RunningPage.Start(folder.FullPath);
        var page = (await Chromium.OpenAsync(server.Url)).Page;
        await page.GetByLabel("Drop your lists here").SetInputFilesAsync(Jobs.Upload("names.csv", "name\nOttilie Marsh\n"));
        await page.GetByRole(AriaRole.Button, new() { Name = "that is the list" }).ClickAsync();
        await page.GetByLabel("straight, going round").CheckAsync();

        // A unit that nobody knows is refused, and nothing is written; one that is chosen holds for the bare number.
        await page.GetByLabel("How long is the edge?").FillAsync("366 ells");
        await page.GetByRole(AriaRole.Button, new() { Name = "that is the edge" }).ClickAsync();
        await Expect(page.GetByRole(AriaRole.Alert).First).ToContainTextAsync("“ells” is not a unit of length");
        Assert.False(File.Exists(folder["job.json"]));
        await page.GetByLabel("How long is the edge?").FillAsync("144");
        await page.Locator("#edge-measured-unit").SelectOptionAsync("in");
        await page.GetByRole(AriaRole.Button, new() { Name = "that is the edge" }).ClickAsync();
        await Expect(page.Locator(".step h2")).ToHaveTextAsync("What can your machine take?");
        Assert.Contains("\"144 in\"", File.ReadAllText(folder["job.json"]), StringComparison.Ordinal);
    }

    [SkippableFact]
    public async Task Each_hoopings_needle_path_can_be_carried_away()
    {
        Chromium.Require();
        using var folder = Jobs.MadeLanternWalk();
        using var server = RunningPage.Start(folder.FullPath);
        var page = (await Chromium.OpenAsync(server.Url + "print")).Page;
        var made = page.GetByRole(AriaRole.Region, new() { Name = "Needle paths, to carry to the machine" });
        await made.Locator("summary").ClickAsync();
        string[] paths =
            [.. Directory.EnumerateFiles(folder["out/needle-paths"]).Select(f => Path.GetFileName(f)!).Order(StringComparer.Ordinal)];
        Assert.Equal(paths.Select((_, i) => $"hooping {i + 1}"), await made.GetByRole(AriaRole.Link).AllInnerTextsAsync());
        await ExpectAsync(page, made.GetByRole(AriaRole.Link).Nth(6), folder, paths[6]);

        var machine = (await Chromium.OpenAsync(server.Url + "machine")).Page;
        await Expect(machine.Locator("#machine")).ToHaveAttributeAsync("data-pictured", "1");
        await machine.Locator("[data-part=next]").ClickAsync();
        await Expect(machine.Locator("#machine h2").First).ToHaveTextAsync("Hooping 2 of 31");
        await ExpectAsync(machine, machine.Locator("[data-part=file]").GetByRole(AriaRole.Link), folder, paths[1]);
    }

    private static async Task ExpectAsync(IPage page, ILocator link, TemporaryFolder folder, string name)
    {
        var got = await page.RunAndWaitForDownloadAsync(() => link.ClickAsync());
        Assert.Equal(name, got.SuggestedFilename);
        Assert.Equal(await File.ReadAllBytesAsync(folder["out/needle-paths/" + name]), await File.ReadAllBytesAsync(await got.PathAsync()));
    }

    private async Task<(IPage One, IPage Two)> TwoAsync(RunningPage server)
    {
        var one = (await Chromium.OpenAsync(server.Url)).Page;
        var two = (await Chromium.OpenAsync(server.Url)).Page;
        return (one, two);
    }

    private static async Task<ILocator> HeightAsync(IPage page)
    {
        await page.Locator(".sentence .part", new() { HasText = "mm" }).First.ClickAsync();
        return page.GetByLabel("Height", new() { Exact = true });
    }
}
