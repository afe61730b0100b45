using Microsoft.Playwright;
using NameBand.Tests;
using Xunit;
using static Microsoft.Playwright.Assertions;

namespace NameBand.Browser;

[Collection(InBrowser.Name)]
public sealed class WorkingTests(Chromium browser) : BrowserTests(browser)
{
    private const string Doubtful =
        "name,mail\nOttilie Marsh,o@example.org\nBram Sedgewick,b@example.org\nBram Sedgewick,other@example.org\nPia \u2605 Tarn,p@example.org\n";

    [SkippableFact]
    public async Task What_is_set_in_one_tab_stands_in_the_other_and_is_undone_there()
    {
        Chromium.Require();
        using var folder = Jobs.Small();
        using var server = RunningPage.Start(folder.FullPath);
        var one = (await Chromium.OpenAsync(server.Url)).Page;
        var other = (await Chromium.OpenAsync(server.Url)).Page;

        await one.Locator(".sentence .part", new() { HasText = "mm" }).First.ClickAsync();
        await one.GetByLabel("Height", new() { Exact = true }).FillAsync("8 mm");
        await one.Keyboard.PressAsync("Enter");

        await Expect(other.Locator(".sentence")).ToContainTextAsync("letters 8 mm high");
        Assert.Contains("\"height\": \"8 mm\"", File.ReadAllText(folder["job.json"]), StringComparison.Ordinal);
        await other.GetByRole(AriaRole.Button, new() { Name = "undo" }).ClickAsync();
        await Expect(one.Locator(".sentence")).Not.ToContainTextAsync("letters 8 mm high");
        Assert.DoesNotContain("height", File.ReadAllText(folder["job.json"]), StringComparison.Ordinal);
        await one.GetByRole(AriaRole.Button, new() { Name = "redo" }).ClickAsync();
        await Expect(other.Locator(".sentence")).ToContainTextAsync("letters 8 mm high");
    }

    /// <summary>The hem's own fields follow what another tab set and what was undone.</summary>
    [SkippableFact]
    public async Task The_fields_of_the_hem_show_what_holds_now()
    {
        Chromium.Require();
        using var folder = Jobs.Small();
        using var server = RunningPage.Start(folder.FullPath);
        var one = (await Chromium.OpenAsync(server.Url)).Page;
        var other = (await Chromium.OpenAsync(server.Url)).Page;
        foreach (var page in new[] { one, other })
        {
            await page.Locator(".sentence .part", new() { HasText = "1.2" }).First.ClickAsync();
            await Expect(page.Locator("#hem-measured")).ToHaveValueAsync("1.2 m");
        }

        await one.Locator("#hem-measured").FillAsync("1.5 m");
        await one.GetByRole(AriaRole.Button, new() { Name = "use this length" }).ClickAsync();
        await Expect(other.Locator("#hem-measured")).ToHaveValueAsync("1.5 m");
        await other.GetByRole(AriaRole.Button, new() { Name = "undo" }).ClickAsync();
        await Expect(one.Locator("#hem-measured")).ToHaveValueAsync("1.2 m");
    }

    [SkippableFact]
    public async Task What_cannot_be_is_refused_with_the_reason_and_not_written()
    {
        Chromium.Require();
        using var folder = Jobs.Small();
        string before = File.ReadAllText(folder["job.json"]);
        using var server = RunningPage.Start(folder.FullPath);
        var page = (await Chromium.OpenAsync(server.Url)).Page;

        await page.Locator(".sentence .part", new() { HasText = "mm" }).First.ClickAsync();
        await page.GetByLabel("Height", new() { Exact = true }).FillAsync("eight");
        await page.Keyboard.PressAsync("Enter");

        await Expect(page.Locator(".panel [role=alert]")).ToContainTextAsync("eight");
        Assert.Equal(before, File.ReadAllText(folder["job.json"]));
    }

    [SkippableFact]
    public async Task A_held_name_is_settled_right_there()
    {
        Chromium.Require();
        using var folder = Jobs.Small(Doubtful);
        using var server = RunningPage.Start(folder.FullPath);
        var page = (await Chromium.OpenAsync(server.Url)).Page;

        await page.GetByRole(AriaRole.Button, new() { Name = "go there" }).ClickAsync();
        await page.GetByRole(AriaRole.Button, new() { Name = "correct it Pia" }).ClickAsync();
        await page.GetByLabel("as it should be sewn").FillAsync("Pia Tarn");
        await page.GetByRole(AriaRole.Button, new() { Name = "use that" }).ClickAsync();
        await Expect(page.GetByRole(AriaRole.Button, new() { Name = "correct it Pia" })).ToHaveCountAsync(0);
        await page.GetByRole(AriaRole.Button, new() { Name = "sew it as it stands Bram Sedgewick" }).First.ClickAsync();

        await Expect(page.Locator(".side")).Not.ToContainTextAsync("waits for you");
        string corrections = File.ReadAllText(folder["corrections.csv"]);
        Assert.Contains("change,Pia Tarn", corrections, StringComparison.Ordinal);
        Assert.Contains("keep", corrections, StringComparison.Ordinal);
    }

    [SkippableFact]
    public async Task What_is_left_of_a_name_without_its_picture_sign_is_offered_in_one_press()
    {
        Chromium.Require();
        using var folder = Jobs.Small(Doubtful);
        using var server = RunningPage.Start(folder.FullPath);
        var page = (await Chromium.OpenAsync(server.Url)).Page;

        await page.GetByRole(AriaRole.Button, new() { Name = "sew “Pia Tarn” in place of Pia \u2605 Tarn" }).ClickAsync();

        await Expect(page.GetByRole(AriaRole.Button, new() { Name = "correct it Pia" })).ToHaveCountAsync(0);
        Assert.Contains("change,Pia Tarn", File.ReadAllText(folder["corrections.csv"]), StringComparison.Ordinal);
    }

    [SkippableFact]
    public async Task A_change_by_hand_is_noticed_and_asked_about()
    {
        Chromium.Require();
        using var folder = Jobs.Small();
        using var server = RunningPage.Start(folder.FullPath);
        var page = (await Chromium.OpenAsync(server.Url)).Page;
        await Expect(page.Locator(".sentence")).ToContainTextAsync("names on one round");

        File.WriteAllText(
            folder["job.json"],
            File.ReadAllText(folder["job.json"]).Replace("\"format\"", "\"title\": \"By hand\", \"format\"", StringComparison.Ordinal));
        await Expect(page.GetByText("The job was changed outside this page")).ToBeVisibleAsync();
        await page.GetByRole(AriaRole.Button, new() { Name = "the changed file" }).ClickAsync();

        await Expect(page.Locator(".top .title")).ToHaveTextAsync("By hand");
    }

    [SkippableFact]
    public async Task Hostile_texts_are_shown_as_text()
    {
        Chromium.Require();
        string longName = new('x', 10_000);
        using var folder = Jobs.Small(
            "name\nOttilie Marsh\n<script>document.title='taken'</script>\n\"<img src=x onerror=\"\"document.title='taken'\"\">\"\n"
            + longName + "\n\u202Eevil\u202C name\nمريم الحسن\n");
        using var server = RunningPage.Start(folder.FullPath);
        var tab = await Chromium.OpenAsync(server.Url, width: 390);
        var page = tab.Page;

        await Expect(page.Locator(".rows")).ToContainTextAsync("<script>document.title='taken'</script>");
        await Expect(page.Locator(".rows")).ToContainTextAsync("مريم الحسن");

        Assert.NotEqual("taken", await page.TitleAsync());
        Assert.Equal(0, await page.Locator(".rows script, .rows img").CountAsync());
        Assert.Equal(
            "rtl", await page.Locator(".row .name", new() { HasText = "مريم" })
            .EvaluateAsync<string>("e => getComputedStyle(e).direction"));
        Assert.True(
            await page.EvaluateAsync<bool>("() => document.documentElement.scrollWidth <= document.documentElement.clientWidth"),
            "The page is wider than its window.");
        Assert.DoesNotContain("\u202E", await page.Locator(".rows").InnerTextAsync(), StringComparison.Ordinal);
        tab.ExpectNoComplaint();
    }

    [SkippableFact]
    public async Task A_kill_during_a_save_leaves_the_job_whole()
    {
        Chromium.Require();
        using var folder = Jobs.Small();
        for (int round = 0; round < 3; round++)
        {
            using var server = RunningPage.StartAlone(folder.FullPath);
            var page = (await Chromium.OpenAsync(server.Url)).Page;
            await page.Locator(".sentence .part", new() { HasText = "mm" }).First.ClickAsync();
            var field = page.GetByLabel("Height", new() { Exact = true });
            for (int i = 0; i < 4; i++)
            {
                await field.FillAsync($"{7 + (i / 10.0) + (round / 100.0)}".Replace(',', '.') + " mm");
                await page.Keyboard.PressAsync("Enter");
            }

            server.Kill(); // The last changes are on their way to the disk.

            using var whole = System.Text.Json.JsonDocument.Parse(File.ReadAllText(folder["job.json"]));
            Assert.Equal("names.csv", whole.RootElement.GetProperty("lists")[0].GetString());
        }

        using var again = RunningPage.Start(folder.FullPath);
        var after = (await Chromium.OpenAsync(again.Url)).Page;
        await Expect(after.Locator(".sentence")).ToContainTextAsync("names on one round");
    }
}
