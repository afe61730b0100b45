using System.Net;
using Microsoft.Playwright;
using NameBand.Tests;
using Xunit;
using static Microsoft.Playwright.Assertions;

namespace NameBand.Browser;

/// <summary>What the page refuses, besides strangers.</summary>
[Collection(InBrowser.Name)]
public sealed class SafetyTests(Chromium browser) : BrowserTests(browser)
{
    [SkippableTheory]
    [InlineData("")]
    [InlineData("machine")]
    [InlineData("print")]
    public async Task No_script_runs_but_the_pages_own_files(string view)
    {
        Chromium.Require();
        var page = (await Chromium.OpenAsync(Chromium.LanternWalk.Url + view)).Page;

        string taken = await page.EvaluateAsync<string>(
            """
            async () => {
                const inline = document.createElement('script');
                inline.textContent = 'window.taken = "inline"';
                const frame = document.createElement('div');
                frame.innerHTML = '<img src="/gone" onerror="window.taken = \'attribute\'">';
                const data = document.createElement('script');
                data.src = 'data:text/javascript,window.taken="data"';
                document.body.append(inline, frame, data);
                await new Promise(done => setTimeout(done, 500));
                return window.taken ?? 'nothing';
            }
            """);

        Assert.Equal("nothing", taken);
    }

    [SkippableTheory]
    [InlineData("made/names.csv")]
    [InlineData("made/job.json")]
    [InlineData("made/%2e%2e/names.csv")]
    [InlineData("made/out/..%2f..%2fnames.csv")]
    [InlineData("made/out%2f..%2fjob.json")]
    [InlineData("made/%2fetc%2fhostname")]
    [InlineData("faces/..%2f..%2fnames.csv")]
    [InlineData("_content/NameBand.Web/..%2f..%2fnameband.dll")]
    public async Task No_path_leads_to_a_file_that_was_not_made_to_be_shown(string path)
    {
        Chromium.Require();
        using var client = Chromium.MadeLanternWalk.Client();

        using var answer =
            await client.GetAsync(new Uri(
                Chromium.MadeLanternWalk.Url + path, new UriCreationOptions { DangerousDisablePathAndQueryCanonicalization = true }));

        Assert.Contains(answer.StatusCode, (HttpStatusCode[])[HttpStatusCode.NotFound, HttpStatusCode.BadRequest]);
        Assert.DoesNotContain("Sedgewick", await answer.Content.ReadAsStringAsync(), StringComparison.Ordinal);
    }

    [SkippableFact]
    public async Task A_form_without_the_pages_own_mark_is_refused()
    {
        Chromium.Require();
        using var client = Chromium.LanternWalk.Client();
        using var form = new FormUrlEncodedContent([new("_handler", "begin")]);

        using var answer = await client.PostAsync(Chromium.LanternWalk.Url, form);

        Assert.InRange((int)answer.StatusCode, 400, 499);
    }

    [SkippableFact]
    public async Task Several_lists_are_taken_in_at_once_and_none_that_is_too_large()
    {
        Chromium.Require();
        using var folder = new TemporaryFolder();
        using var server = RunningPage.Start(folder.FullPath);
        var page = (await Chromium.OpenAsync(server.Url)).Page;
        var lists = page.GetByLabel("Drop your lists here");

        await lists.SetInputFilesAsync(Jobs.Upload("huge.csv", "name\n" + new string('x', 10_500_000)));
        await Expect(page.GetByRole(AriaRole.Alert)).ToContainTextAsync("huge.csv");
        Assert.False(File.Exists(folder["huge.csv"]));
        await lists.SetInputFilesAsync([Jobs.Upload("one.csv", "name\nOttilie Marsh\nBram Sedgewick\n"),
            Jobs.Upload("two.csv", "name\nNgozi Farrow\n")]);
        await Expect(page.GetByText("In the job’s folder: one.csv, two.csv.")).ToBeVisibleAsync();
        await Expect(page.Locator(".aloud")).ToContainTextAsync("3 people; no question.");
    }
}
