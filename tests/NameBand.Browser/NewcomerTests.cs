using NameBand.Tests;
using Xunit;
using static Microsoft.Playwright.Assertions;

namespace NameBand.Browser;

[Collection(InBrowser.Name)]
public sealed class NewcomerTests(Chromium browser) : BrowserTests(browser)
{
    private const string List = "name,mail\nOttilie Marsh,o@example.org\nBram Sedgewick,b@example.org\nNgozi Farrow,n@example.org\nZdeněk Holub,z@example.org\n";

    [SkippableFact]
    public async Task From_an_empty_folder_to_printed_proofs()
    {
        Chromium.Require();
        using var folder = new TemporaryFolder();
        using var server = RunningPage.Start(folder.FullPath);
        var tab = await Chromium.OpenAsync(server.Url);
        var page = tab.Page;

        await page.GetByLabel("Drop your lists here").SetInputFilesAsync(Jobs.Upload("our walk.csv", List));
        await Expect(page.GetByText("In the job’s folder: our walk.csv.")).ToBeVisibleAsync();
        await page.GetByLabel("How long is the edge?").FillAsync("70 cm");
        await page.GetByLabel("It follows coordinates from a file").CheckAsync();
        await page.GetByRole(Microsoft.Playwright.AriaRole.Button, new() { Name = "lay it out" }).ClickAsync();

        await Expect(page.Locator(".sentence")).ToContainTextAsync("4 names on one round of 0.7 m");
        await Expect(page.Locator(".sentence")).Not.ToContainTextAsync("counting", new() { Timeout = 30_000 });
        await Expect(page.Locator(".rows")).ToContainTextAsync("Zdeněk Holub");

        await page.GetByRole(Microsoft.Playwright.AriaRole.Link, new() { Name = "print" }).ClickAsync();
        await page.GetByRole(Microsoft.Playwright.AriaRole.Button, new() { Name = "make the sheets" }).ClickAsync();
        await Expect(page.GetByText("Done: the sheets are below.")).ToBeVisibleAsync(new() { Timeout = 60_000 });
        string sheet = (await page.Locator("a[href$='.pdf']").First.GetAttributeAsync("href"))!;
        string proof = (await page.Locator("a[href*='proofs/']").First.GetAttributeAsync("href"))!;

        Assert.StartsWith("%PDF", await ContentAsync(server, sheet), StringComparison.Ordinal);
        Assert.Contains("PNG", await ContentAsync(server, proof), StringComparison.Ordinal);
        Assert.Empty(tab.Complaints);
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
        await tab.Page.GetByRole(Microsoft.Playwright.AriaRole.Button, new() { Name = "these are the names left" }).ClickAsync();

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
