using System.Text.RegularExpressions;
using Microsoft.Playwright;
using NameBand.Tests;
using Xunit;
using static Microsoft.Playwright.Assertions;

namespace NameBand.Browser;

[Collection(InBrowser.Name)]
public sealed class NewcomerTests(Chromium browser) : BrowserTests(browser)
{
    private static readonly string[][] Friends =
    [
        ["name", "household", "mail", "Anonymous", "since"], ["Ottilie Marsh", "Weir Lane 3", "o@example.org", "", "#45627"],
        ["Bram Sedgewick", "", "b@example.org", ""], ["=Ngozi Farow", "", "n@example.org"], ["Zdeněk Holub", "", "z@example.org"],
        ["Zdeněk Holub", "", "z@example.org"], ["Bram Sedgewick", "", "other@example.org"], ["ottilie marsh", "", "o2@example.org"],
        ["Tuva Lind", "", "t@example.org", "perhaps"], ["Noor Haddad", "", "h@example.org", "perhaps"],
        ["Hester Quayle", "", "q@example.org", "yes"],
    ];

    private static readonly Regex NotHerWords = new(@"\p{Ll}\p{Lu}|\.(json|csv)\b|\bneedlePath\b|\bJOB\b");

    private int _presses;

    /// <summary>
    /// From an empty folder to the first hooping, step by step and by the keyboard alone: every press counts, a field that is
    /// entered too. Each step can be left, and is there again as the folder has it.
    /// </summary>
    [SkippableFact]
    public async Task The_first_evening_from_an_empty_folder_to_the_machine()
    {
        Chromium.Require();
        using var folder = new TemporaryFolder();
        using var server = RunningPage.Start(folder.FullPath);
        var tab = await Chromium.OpenAsync(server.Url);
        var page = tab.Page;
        var step = page.Locator(".step");

        // What is no list is said, with what to do, and nothing is kept of it.
        var lists = page.GetByLabel("Drop your lists here");
        foreach (var (file, said) in ((string, string)[])[("walk.ods", "save it as .xlsx or .csv"), ("lantern.png", "is a picture")])
        {
            await lists.SetInputFilesAsync(Jobs.Upload(file, "PK"));
            await Expect(page.GetByRole(AriaRole.Alert)).ToContainTextAsync(said);
        }

        // The workbook's first sheet is another one: it is asked which has the names.
        await ReachAsync(page, lists);
        await lists.SetInputFilesAsync(Jobs.Workbook("walk.xlsx", "Friends", Friends));
        _presses++;
        var sheet = page.GetByLabel("Which sheet of walk.xlsx has the names?");
        await Expect(sheet).ToHaveValueAsync("Money");
        await ReachAsync(page, sheet);
        await page.Keyboard.TypeAsync("F");
        _presses++;
        await Expect(page.Locator(".aloud")).ToHaveTextAsync("8 people; 1 repeat, sewn once; 4 questions of three kinds; one says no.");
        await PressAsync(page, "that is the list");
        await Expect(page).ToHaveURLAsync(server.Url + "steps/questions");
        await LookAsync(page, "questions");
        await PressAsync(page, "sew it as it stands Bram Sedgewick");
        await PressAsync(page, "leave it out ottilie marsh");
        await PressAsync(page, "sew all 2");
        await Expect(step).ToContainTextAsync("Nothing is left to ask");
        await PressAsync(page, "go on");

        await Expect(step.Locator("h2")).ToHaveTextAsync("What do the names go round?");
        await ChooseAsync(page, "full circle", "three quarters");
        await FillAsync(page, "Finished waist", "7");
        await FillAsync(page, "From there to the hem", "15");
        await Expect(step.Locator(".drawn")).ToHaveTextAsync("The hem is 0.777 m long.");
        await LookAsync(page, "edge");
        await Axe.ExpectNothingAsync(page, "the edge", Axe.Wcag);
        await PressAsync(page, "that is the edge");
        await Expect(step.GetByRole(AriaRole.Alert)).ToContainTextAsync("The waist is 70 mm");
        await FillAsync(page, "Finished waist", "70");
        await Expect(step.Locator(".drawn")).ToHaveTextAsync("The hem is 1.407 m long.");
        await PressAsync(page, "that is the edge");

        await Expect(step.Locator("h2")).ToHaveTextAsync("What can your machine take?");
        using (var job = System.Text.Json.JsonDocument.Parse(File.ReadAllText(folder["job.json"])))
        {
            Assert.Equal("70 cm", job.RootElement.GetProperty("hem").GetProperty("skirt").GetProperty("waist").GetString());
        }

        // Left, and taken up again where it was left.
        await page.GotoAsync(server.Url + "steps");
        await Expect(step.Locator("h2")).ToHaveTextAsync("What can your machine take?");
        await Expect(page.Locator(".step-line .done")).ToHaveCountAsync(3);
        await ChooseAsync(page, "It has letters of its own", "It follows coordinates from a file");
        await LookAsync(page, "machine");
        await PressAsync(page, "that is what I have");

        await PressAsync(page, "take this plan");
        await Expect(step.Locator("h2")).ToHaveTextAsync("Read every name");
        await Expect(step.Locator(".proof")).ToHaveCountAsync(7);
        await Expect(step.Locator(".proof img").First).ToHaveJSPropertyAsync("complete", true);
        Assert.True(
            await step.Locator(".proof img").First.EvaluateAsync<bool>("i => i.naturalWidth > 50"), "The picture of a name is empty.");
        await PressAsync(page, "Ngozi Farow");
        await PressAsync(page, "all right, except one");
        await Expect(step.Locator(".proof")).ToHaveCountAsync(1);
        await LookAsync(page, "proofs");
        await PressAsync(page, "correct it");
        await FillAsync(page, "as it should be sewn", "Ngozi Farrow");
        await PressAsync(page, "use that");
        await Expect(step.Locator(".proof")).ToContainTextAsync("Ngozi Farrow");
        await PressAsync(page, "all right");

        await Expect(step.Locator(".hand-over li").First).ToBeVisibleAsync(new() { Timeout = 60_000 });
        await LookAsync(page, "files");
        string path =
            (await step.GetByRole(AriaRole.Link, new() { Name = "save its needle path of hooping 1", Exact = true })
            .GetAttributeAsync("href"))!;
        Assert.StartsWith("step,x_mm", await ContentAsync(server, path), StringComparison.Ordinal);
        Assert.StartsWith(
            "%PDF", await ContentAsync(server, (await step.Locator("a[href$='.pdf']").First.GetAttributeAsync("href"))!),
            StringComparison.Ordinal);
        Assert.Contains(
            "PNG", await ContentAsync(server, (await step.Locator("img").First.GetAttributeAsync("src"))!), StringComparison.Ordinal);
        await ReachAsync(page, page.GetByRole(AriaRole.Link, new() { Name = "to the machine" }));
        await page.Keyboard.PressAsync("Enter");
        _presses++;
        await Expect(page.Locator("[data-part=head]")).ToContainTextAsync("Hooping 1 of");
        await Expect(page.GetByRole(AriaRole.Button, new() { Name = "Done" })).ToBeVisibleAsync();
        Assert.InRange(_presses, 1, 25);
        tab.ExpectNoComplaint();
    }

    private async Task PressAsync(IPage page, string name)
    {
        var button = page.GetByRole(AriaRole.Button, new() { Name = name }).First;
        await Expect(button).ToBeEnabledAsync(new() { Timeout = 60_000 });
        await ReachAsync(page, button);
        await page.Keyboard.PressAsync("Enter");
        _presses++;
    }

    private async Task FillAsync(IPage page, string label, string text)
    {
        await ReachAsync(page, page.GetByLabel(label).First);
        await page.Keyboard.PressAsync("Control+a");
        await page.Keyboard.TypeAsync(text);
        _presses++;
    }

    /// <summary>Of several, one is reached by Tab and the others from there by an arrow key.</summary>
    private async Task ChooseAsync(IPage page, string first, string wanted)
    {
        await ReachAsync(page, page.GetByLabel(first).First);
        var one = page.GetByLabel(wanted).First;
        await page.Keyboard.PressAsync("Space");
        for (int i = 0; i < 8 && !await one.IsCheckedAsync(); i++)
        {
            await page.Keyboard.PressAsync("ArrowDown");
        }

        await Expect(one).ToBeCheckedAsync();
        _presses++;
    }

    /// <summary>Goes there by Tab, as whoever has no mouse does.</summary>
    private static async Task ReachAsync(IPage page, ILocator place)
    {
        for (int i = 0; i < 150; i++)
        {
            if (await place.EvaluateAsync<bool>("e => e === document.activeElement", null, new() { Timeout = 60_000 }))
            {
                return;
            }

            await page.Keyboard.PressAsync("Tab");
        }

        Assert.Fail($"Tab does not lead to {place}.");
    }

    /// <summary>Nothing on a step is a key, a file's name or a command; where NAMEBAND_PICTURES names a folder, with a picture to
    /// look at.</summary>
    private static async Task LookAsync(IPage page, string step)
    {
        string said = await page.Locator(".step").InnerTextAsync();
        Assert.DoesNotMatch(NotHerWords, said.Replace("walk.xlsx", "", StringComparison.Ordinal));
        if (Environment.GetEnvironmentVariable("NAMEBAND_PICTURES") is { Length: > 0 } into)
        {
            foreach (int width in (int[])[390, 1024, 1920])
            {
                await page.SetViewportSizeAsync(width, 900);
                await page.ScreenshotAsync(new() { Path = Path.Combine(into, $"step-{step}-{width}.png"), FullPage = true });
                Assert.True(
                    await page.EvaluateAsync<bool>("() => document.documentElement.scrollWidth <= innerWidth"),
                    $"{step} is wider than a window of {width} px.");
            }

            await page.SetViewportSizeAsync(1280, 900);
        }
    }

    [SkippableFact]
    public async Task Unclear_columns_are_asked_with_the_first_rows_shown()
    {
        Chromium.Require();
        using var folder = new TemporaryFolder();
        folder.With("job.json", """{ "format": 1, "lists": ["a.csv"], "hem": { "length": "70 cm" } }""")
            .With("a.csv", "left,right\nOttilie Marsh,12\nBram Sedgewick,13\n");
        using var server = RunningPage.Start(folder.FullPath);
        var tab = await Chromium.OpenAsync(server.Url);

        await Expect(tab.Page.Locator(".begin")).ToContainTextAsync("Bram Sedgewick");
        await tab.Page.GetByRole(AriaRole.Button, new() { Name = "these are the names left" }).ClickAsync();

        await Expect(tab.Page.Locator(".sentence")).ToContainTextAsync("2 names on one round");
        Assert.Contains("\"name\": \"left\"", File.ReadAllText(folder["job.json"]), StringComparison.Ordinal);
    }

    [SkippableTheory]
    [InlineData("names.exe", "a,b\n", "is neither a CSV file nor a workbook", null)]
    [InlineData("../../names.csv", "name\nOttilie Marsh\n", "In the job’s folder: names.csv.", "inner/job/names.csv")]
    public async Task A_file_lands_in_the_folder_or_nowhere(string name, string text, string said, string? lands)
    {
        Chromium.Require();
        using var folder = new TemporaryFolder();
        Directory.CreateDirectory(folder["inner/job"]);
        using var server = RunningPage.Start(folder["inner/job"]);
        var tab = await Chromium.OpenAsync(server.Url);

        await tab.Page.GetByLabel("Drop your lists here").SetInputFilesAsync(Jobs.Upload(name, text));

        await Expect(tab.Page.GetByText(said)).ToBeVisibleAsync();
        string[] there = [.. Directory.EnumerateFiles(folder.FullPath, "*", SearchOption.AllDirectories)
            .Select(f => Path.GetRelativePath(folder.FullPath, f).Replace('\\', '/')).Where(f => !Path.GetFileName(f).StartsWith('.'))];
        Assert.Equal(lands is null ? [] : [lands], there);
    }

    private static async Task<string> ContentAsync(RunningPage server, string address)
    {
        using var client = server.Client();
        return System.Text.Encoding.Latin1.GetString(await client.GetByteArrayAsync(server.Url + address));
    }
}
