using System.Text.RegularExpressions;
using Microsoft.Playwright;
using NameBand.Job;
using NameBand.Tests;
using NameBand.Web.Table;
using Xunit;
using static Microsoft.Playwright.Assertions;

namespace NameBand.Browser;

/// <summary>That everything a job can say is reached from the page, and everything that stands in its way.</summary>
[Collection(InBrowser.Name)]
public sealed class ReachTests(Chromium browser) : BrowserTests(browser)
{
    [Fact]
    public void Every_key_of_the_job_belongs_to_a_part_of_the_sentence() =>
        Assert.Equal("", string.Join(", ", JobKeyCard.All.Select(c => c.Path).Where(path => !Theme.All.Any(t => t.Names(path)))));

    [SkippableFact]
    public async Task Every_key_of_the_job_is_offered_on_the_page()
    {
        Chromium.Require();
        var page = (await Chromium.OpenAsync(Chromium.MadeLanternWalk.Url)).Page;
        await page.SettledAsync();
        await HerWords.ExpectAsync(page, "the plan", ".sentence, .side, .plans, .steps, .top, .strip-tools");
        var offered = new HashSet<string>(StringComparer.Ordinal);
        var parts = page.Locator(".sentence .part");
        for (int i = 0; i < await parts.CountAsync(); i++)
        {
            await parts.Nth(i).ClickAsync();
            await Expect(parts.Nth(i)).ToHaveAttributeAsync("aria-expanded", "true");
            await Expect(page.Locator("#panel-heading")).ToBeFocusedAsync();
            await page.Locator(".panel > details > summary").ClickAsync();
            offered.UnionWith(await OfferedAsync(page));
            await HerWords.ExpectAsync(page, $"part {i}", "#panel");
        }

        // What is wished for one name is set where that name is pressed.
        await page.Locator(".seen button").First.FocusAsync();
        await page.Keyboard.PressAsync("Enter");
        await Expect(page.Locator(".name-wishes")).ToBeVisibleAsync();
        offered.UnionWith(await OfferedAsync(page));
        await HerWords.ExpectAsync(page, "a name", ".touched");

        var all = JobKeyCard.All.Select(c => c.Path).Append("workshop.people");
        Assert.Equal("", string.Join(", ", all.Where(path => !offered.Contains(path))));
    }

    private static Task<string[]> OfferedAsync(IPage page) => page.EvaluateAsync<string[]>(
        """
        () => [...document.querySelectorAll('.panel [data-key], .name-wishes[data-key]')]
            .filter(e => [e, ...e.querySelectorAll('*')].some(f => f.matches('input, select, textarea') && f.checkVisibility() && !f.disabled))
            .map(e => e.dataset.key)
        """);

    [SkippableFact]
    public async Task What_is_set_is_undone_and_done_again_by_its_keys_but_not_while_typing()
    {
        Chromium.Require();
        using var folder = Jobs.Small();
        using var server = RunningPage.Start(folder.FullPath);
        var page = (await Chromium.OpenAsync(server.Url)).Page;
        await page.Locator(".sentence .part", new() { HasText = "mm" }).First.ClickAsync();
        var field = page.GetByLabel("Height", new() { Exact = true });
        await field.FillAsync("8 mm");
        await field.PressAsync("Enter");
        await Expect(page.Locator(".sentence")).ToContainTextAsync("letters 8 mm high");

        // In the field the keys take back what was typed, as everywhere; what was set stands.
        await field.PressAsync("Control+z");
        await field.FillAsync("8 mm");
        await page.Locator("#panel-heading").FocusAsync();
        Assert.Contains("8 mm", File.ReadAllText(folder["job.json"]), StringComparison.Ordinal);
        await page.Keyboard.PressAsync("Control+z");
        await Expect(page.Locator(".sentence")).Not.ToContainTextAsync("letters 8 mm high");
        await page.Keyboard.PressAsync("Control+y");
        await Expect(page.Locator(".sentence")).ToContainTextAsync("letters 8 mm high");
        await page.Keyboard.PressAsync("Control+z");
        await page.Keyboard.PressAsync("Control+Shift+z");
        await Expect(page.Locator(".sentence")).ToContainTextAsync("letters 8 mm high");
    }

    [SkippableFact]
    public async Task A_list_dropped_anywhere_joins_the_job()
    {
        Chromium.Require();
        using var folder = Jobs.Small();
        using var server = RunningPage.Start(folder.FullPath);
        var tab = await Chromium.OpenAsync(server.Url);
        await Expect(tab.Page.Locator(".sentence")).ToContainTextAsync("3 names");

        await tab.Page.EvaluateAsync(
            """
            () => {
                const dropped = new DataTransfer();
                dropped.items.add(new File(['name\nZora Pell\n'], 'late.csv', { type: 'text/csv' }));
                for (const kind of ['dragover', 'drop']) {
                    document.querySelector('.rows').dispatchEvent(new DragEvent(kind, { dataTransfer: dropped, bubbles: true, cancelable: true }));
                }
            }
            """);

        await Expect(tab.Page.Locator(".sentence")).ToContainTextAsync("4 names");
        await Expect(tab.Page.GetByText("In the job’s folder: late.csv.")).ToBeVisibleAsync();
        Assert.Contains("late.csv", File.ReadAllText(folder["job.json"]), StringComparison.Ordinal);
        tab.ExpectNoComplaint();
    }

    [SkippableFact]
    public async Task Groups_and_their_column_are_set_together()
    {
        Chromium.Require();
        using var folder = Jobs.Small("name,gift\nOttilie Marsh,10\nBram Sedgewick,200\n");
        using var server = RunningPage.Start(folder.FullPath);
        var page = (await Chromium.OpenAsync(server.Url)).Page;
        await page.Locator(".sentence .part").First.ClickAsync();
        await page.Locator(".panel > details > summary").ClickAsync();
        await page.GetByLabel("The column that tells who is in which group").SelectOptionAsync("gift");
        await page.GetByRole(AriaRole.Button, new() { Name = "add a group" }).ClickAsync();
        await page.GetByLabel("What it is called").FillAsync("patrons");
        await page.GetByLabel("from that and more").FillAsync("100");
        await page.GetByLabel("Its letters as a multiple of the height").FillAsync("large");
        await page.GetByRole(AriaRole.Button, new() { Name = "use these groups" }).ClickAsync();
        await Expect(page.Locator(".panel [role=alert]")).ToContainTextAsync("height factor takes a number from 0.3 to 3");
        await page.GetByLabel("Its letters as a multiple of the height").FillAsync("1.25");
        await page.GetByRole(AriaRole.Button, new() { Name = "use these groups" }).ClickAsync();

        await Expect(page.GetByRole(AriaRole.Button, new() { Name = "undo: the groups" })).ToBeVisibleAsync();
        using var job = System.Text.Json.JsonDocument.Parse(File.ReadAllText(folder["job.json"]));
        Assert.Equal("gift", job.RootElement.GetProperty("columns").GetProperty("group").GetString());
        Assert.Equal(100, job.RootElement.GetProperty("groups")[0].GetProperty("from").GetDouble());
        Assert.Equal(1.25, job.RootElement.GetProperty("groups")[0].GetProperty("heightFactor").GetDouble());

        await page.GetByRole(AriaRole.Button, new() { Name = "undo: the groups" }).ClickAsync();
        await Expect(page.GetByLabel("What it is called")).ToHaveCountAsync(0);
        await Expect(page.GetByLabel("The column that tells who is in which group")).ToHaveValueAsync("");
    }

    [SkippableFact]
    public async Task Each_problem_leads_with_one_press_to_where_it_is_mended()
    {
        Chromium.Require();
        using var folder = Jobs.Small();
        folder.With("corrections.csv", "list,line,was,decision,text,why\r\nnames.csv,3,Bram Sedgewick,perhaps,,\r\n");
        using var server = RunningPage.Start(folder.FullPath);
        var page = (await Chromium.OpenAsync(server.Url)).Page;

        await page.GetByRole(AriaRole.Button, new() { Name = "go to the row names.csv, line 3" }).First.ClickAsync();
        await Expect(page.Locator("#the-list")).ToBeFocusedAsync();
        await Expect(page.Locator(".row")).ToHaveCountAsync(1);
        await Expect(page.Locator(".row")).ToContainTextAsync("Bram Sedgewick");

        // The address has it, with what is open and where on the strip one is: a reload brings it again, and back takes it back.
        await page.Locator(".sentence .part", new() { HasText = "1.2 m" }).ClickAsync();
        await Expect(page.Locator("#panel-heading")).ToHaveTextAsync("The edge the names go round");
        await page.GetByRole(AriaRole.Button, new() { Name = "Closer", Exact = true }).ClickAsync();
        await Expect(page).ToHaveURLAsync(new Regex(@"set=hem.*at=|at=.*set=hem"));
        double scale = await page.EvaluateAsync<double>(Scale);
        await page.ReloadAsync();
        await Expect(page.Locator("[data-alive]")).ToBeAttachedAsync();
        await Expect(page.Locator("#panel-heading")).ToHaveTextAsync("The edge the names go round");
        await Expect(page.Locator(".row")).ToHaveCountAsync(1);
        await page.WaitForFunctionAsync($"scale => Math.abs(({Scale})() - scale) < scale / 100", scale);
        await page.GoBackAsync();
        await Expect(page.Locator("#panel")).ToHaveCountAsync(0);
        await Expect(page.Locator(".row")).ToHaveCountAsync(1);
        await page.GetByRole(AriaRole.Button, new() { Name = "show all rows" }).ClickAsync();
        await Expect(page.Locator(".row")).ToHaveCountAsync(3);
    }

    private const string Scale = "() => document.querySelector('name-strip')?.strip?.view?.camera?.scale";

    [SkippableFact]
    public async Task A_problem_of_a_key_leads_to_it_and_is_mended_there()
    {
        Chromium.Require();
        using var folder = Jobs.Small();
        folder.With(
            "job.json", """{ "format": 1, "lists": ["names.csv"], "hem": { "length": "1.2 m" }, "lettering": { "height": "eight" } }""");
        using var server = RunningPage.Start(folder.FullPath);
        var page = (await Chromium.OpenAsync(server.Url)).Page;

        await page.Locator(".problems").GetByRole(AriaRole.Button, new() { Name = "set it Height" }).First.ClickAsync();
        await Expect(page.Locator("#panel-heading")).ToHaveTextAsync("How high the letters are");
        await page.GetByLabel("Height", new() { Exact = true }).FillAsync("8 mm");
        await page.Keyboard.PressAsync("Enter");
        await Expect(page.Locator(".sentence")).ToContainTextAsync("letters 8 mm high");
    }
}
