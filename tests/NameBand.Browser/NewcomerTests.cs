using System.Text.RegularExpressions;
using Microsoft.Playwright;
using NameBand.Tests;
using Xunit;
using static Microsoft.Playwright.Assertions;

namespace NameBand.Browser;

[Collection(InBrowser.Name)]
public sealed class NewcomerTests(Chromium browser) : BrowserTests(browser)
{
    private const string List =
        "name,mail,Anonymous\nOttilie Marsh,o@example.org,\nBram Sedgewick,b@example.org,\nNgozi Farow,n@example.org,\n"
        + "Zdeněk Holub,z@example.org,\nZdeněk Holub,z@example.org,\nBram Sedgewick,other@example.org,\nottilie marsh,o2@example.org,\n"
        + "Tuva Lind,t@example.org,perhaps\nNoor Haddad,h@example.org,perhaps\nHester Quayle,q@example.org,yes\n";

    private static readonly Regex NotHerWords = new(@"\p{Ll}\p{Lu}|\.(json|csv)\b|\bneedlePath\b|\bJOB\b");

    private int _presses;

    /// <summary>
    /// From an empty folder to the first hooping, step by step: every press counts, a field that is entered too. Each step can be
    /// left, and is there again as the folder has it.
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

        await page.GetByLabel("Drop your lists here").SetInputFilesAsync(Jobs.Upload("walk.csv", List));
        _presses++;
        await Expect(page.Locator(".aloud")).ToHaveTextAsync("8 people; 1 repeat, sewn once; 4 questions of three kinds; one says no.");
        await Axe.ExpectNothingAsync(page, "the list", Axe.Wcag);
        await PressAsync(page, "that is the list");
        await Expect(page).ToHaveURLAsync(server.Url + "steps/questions");
        await LookAsync(page, "questions");
        await Axe.ExpectNothingAsync(page, "questions", Axe.Wcag);
        await PressAsync(page, "sew it as it stands Bram Sedgewick");
        await PressAsync(page, "leave it out ottilie marsh");
        await PressAsync(page, "sew all 2");
        await Expect(step).ToContainTextAsync("Nothing is left to ask");
        await PressAsync(page, "go on");

        await Expect(step.Locator("h2")).ToHaveTextAsync("What do the names go round?");
        await page.GetByLabel("three quarters").CheckAsync();
        _presses++;
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
        await page.GetByLabel("It follows coordinates from a file").CheckAsync();
        _presses++;
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
        await Axe.ExpectNothingAsync(page, "proofs", Axe.Wcag);
        await PressAsync(page, "correct it");
        await FillAsync(page, "as it should be sewn", "Ngozi Farrow");
        await PressAsync(page, "use that");
        await Expect(step.Locator(".proof")).ToContainTextAsync("Ngozi Farrow");
        await PressAsync(page, "all right");

        await Expect(step.Locator(".hand-over li").First).ToBeVisibleAsync(new() { Timeout = 60_000 });
        await LookAsync(page, "files");
        await Axe.ExpectNothingAsync(page, "files", Axe.Wcag);
        string path =
            (await step.GetByRole(AriaRole.Link, new() { Name = "save its needle path of hooping 1", Exact = true })
            .GetAttributeAsync("href"))!;
        Assert.StartsWith("step,x_mm", await ContentAsync(server, path), StringComparison.Ordinal);
        Assert.StartsWith(
            "%PDF", await ContentAsync(server, (await step.Locator("a[href$='.pdf']").First.GetAttributeAsync("href"))!),
            StringComparison.Ordinal);
        Assert.Contains(
            "PNG", await ContentAsync(server, (await step.Locator("img").First.GetAttributeAsync("src"))!), StringComparison.Ordinal);
        await page.GetByRole(AriaRole.Link, new() { Name = "to the machine" }).ClickAsync();
        _presses++;
        await Expect(page.Locator("[data-part=head]")).ToContainTextAsync("Hooping 1 of");
        await Expect(page.GetByRole(AriaRole.Button, new() { Name = "Done" })).ToBeVisibleAsync();
        Assert.InRange(_presses, 1, 25);
        Assert.Empty(tab.Complaints);
    }

    private async Task PressAsync(IPage page, string name)
    {
        await page.GetByRole(AriaRole.Button, new() { Name = name }).First.ClickAsync(new() { Timeout = 60_000 });
        _presses++;
    }

    private async Task FillAsync(IPage page, string label, string text)
    {
        await page.GetByLabel(label).First.FillAsync(text);
        _presses++;
    }

    /// <summary>Nothing on a step is a key, a file's name or a command; where NAMEBAND_PICTURES names a folder, with a picture to
    /// look at.</summary>
    private static async Task LookAsync(IPage page, string step)
    {
        string said = await page.Locator(".step").InnerTextAsync();
        Assert.DoesNotMatch(NotHerWords, said.Replace("walk.csv", "", StringComparison.Ordinal));
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
