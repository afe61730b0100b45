using Microsoft.Playwright;
using NameBand.Tests;
using Xunit;
using static Microsoft.Playwright.Assertions;

namespace NameBand.Browser;

/// <summary>The worktable is gone: that is said, nothing typed is lost, and the page comes back by itself.</summary>
[Collection(InBrowser.Name)]
public sealed class LostTests(Chromium browser) : BrowserTests(browser)
{
    private const string Height = "Height";

    [SkippableFact]
    public async Task A_worktable_that_died_is_said_and_what_was_typed_is_there_when_it_comes_back()
    {
        Chromium.Require();
        using var folder = Jobs.Small();
        using var server = RunningPage.StartAlone(folder.FullPath);
        var page = (await Chromium.OpenAsync(server.Url)).Page;
        await page.GetByRole(AriaRole.Button, new() { Name = "1.2 m" }).ClickAsync();
        await page.GetByLabel("Finished waist").FillAsync("70 cm");
        await page.Locator("#hem-measured").FillAsync("3.6");
        var step = (await Chromium.OpenAsync(server.Url + "steps/edge")).Page;
        await step.GetByLabel("two ends").CheckAsync();
        await step.Locator("#edge-measured").FillAsync("4.2");
        string[] views = ["print", "nowhere", "?set=face", "steps/list", "steps/plan", "steps/proofs", "steps/files"];
        var others = new List<IPage>();
        foreach (string view in views)
        {
            others.Add((await Chromium.OpenAsync(server.Url + view)).Page);
        }

        server.Kill();

        // In whatever view: it is said.
        foreach (var other in others.Append(step))
        {
            await Expect(other.Locator("#lost")).ToContainTextAsync("The worktable does not answer");
        }

        var lost = page.Locator("#lost");
        await Expect(lost).ToContainTextAsync("The worktable does not answer");
        await Expect(lost.Locator("code")).ToContainTextAsync($" page {folder.FullPath}");
        await Expect(page.Locator("#hem-measured")).ToBeFocusedAsync();
        await page.Keyboard.TypeAsync("6 m");
        await page.GetByRole(AriaRole.Button, new() { Name = "use this length" }).ClickAsync();
        await page.GetByRole(AriaRole.Link, new() { Name = "print" }).ClickAsync();
        await Expect(lost).ToHaveClassAsync("lost pressed");
        await Axe.ExpectNothingAsync(page, "the plan while nobody answers", Axe.Wcag);
        await page.Locator("#hem-measured").FocusAsync();

        using var again = RunningPage.Start(folder.FullPath);

        Assert.Equal(server.Url, again.Url);
        Assert.Equal(server.Address, again.Address);
        await Expect(lost).ToBeEmptyAsync();
        await Expect(page.Locator("[data-alive]")).ToBeAttachedAsync();
        await Expect(page.Locator("#hem-measured")).ToHaveValueAsync("3.66 m");
        await Expect(page.Locator("#hem-measured")).ToBeFocusedAsync();
        await Expect(page.GetByLabel("Finished waist")).ToHaveValueAsync("70 cm");
        Assert.Contains("1.2 m", await File.ReadAllTextAsync(folder["job.json"]), StringComparison.Ordinal);
        await Expect(step.Locator("#lost")).ToBeEmptyAsync();
        await Expect(step.Locator("#edge-measured")).ToHaveValueAsync("4.2");
        foreach (var (view, other) in views.Zip(others))
        {
            await Expect(other.Locator("#lost")).ToBeEmptyAsync();
            await Expect(other.Locator("[data-alive]")).ToBeAttachedAsync();
            await Expect(other).ToHaveURLAsync(server.Url + view);
        }

        await page.Keyboard.PressAsync("Enter");
        await Expect(page.Locator(".sentence")).ToContainTextAsync("one round of 3.66 m");
    }

    [SkippableFact]
    public async Task The_card_of_a_pressed_name_is_open_again_with_what_was_typed_in_it()
    {
        Chromium.Require();
        using var folder = Jobs.Small();
        using var server = RunningPage.StartAlone(folder.FullPath);
        var page = (await Chromium.OpenAsync(server.Url)).Page;
        await page.SettledAsync();
        var name = page.Locator(".seen button").First;
        string shown = (await name.TextContentAsync())!.Trim();
        await name.FocusAsync();
        await page.Keyboard.PressAsync("Enter");
        var card = page.GetByRole(AriaRole.Region, new() { Name = "What should happen to" });
        await card.GetByRole(AriaRole.Button, new() { Name = "correct it" }).ClickAsync();
        var field = card.GetByLabel("as it should be sewn");
        await field.FillAsync("Odile ");
        server.Kill();
        await Expect(page.Locator("#lost")).ToContainTextAsync("The worktable does not answer");
        await field.FocusAsync();
        await page.Keyboard.PressAsync("End");
        await page.Keyboard.TypeAsync("Quayside");

        using var again = RunningPage.Start(folder.FullPath);

        await Expect(page.Locator("#lost")).ToBeEmptyAsync();
        await Expect(field).ToHaveValueAsync("Odile Quayside");
        string pressed = await page.EvaluateAsync<string>("() => document.querySelector('name-strip').strip.view.pressed.text");
        Assert.Contains(pressed, (await card.GetByRole(AriaRole.Heading).First.TextContentAsync())!, StringComparison.Ordinal);
        Assert.Contains(pressed, shown, StringComparison.Ordinal);
    }

    [SkippableTheory]
    [InlineData(false)]
    [InlineData(true)]
    public async Task A_key_that_was_being_typed_is_set_as_soon_as_its_field_is_left(bool isLeftMeanwhile)
    {
        Chromium.Require();
        using var folder = Jobs.Small();
        using var server = RunningPage.StartAlone(folder.FullPath);
        var page = (await Chromium.OpenAsync(server.Url)).Page;
        var field = await HeightAsync(page);
        await field.FillAsync("8 mm");
        server.Kill();
        await Expect(page.Locator("#lost")).ToContainTextAsync("does not answer");
        if (isLeftMeanwhile)
        {
            await field.PressAsync("Tab");
        }

        using var again = RunningPage.Start(folder.FullPath);

        await Expect(page.Locator("#lost")).ToBeEmptyAsync();
        await Expect(field).ToHaveValueAsync("8 mm");
        if (!isLeftMeanwhile)
        {
            await Expect(field).ToBeFocusedAsync();
            Assert.DoesNotContain("8 mm", await File.ReadAllTextAsync(folder["job.json"]), StringComparison.Ordinal);
            await field.PressAsync("Tab");
        }

        await Expect(page.Locator(".sentence")).ToContainTextAsync("8 mm high");
    }

    [SkippableFact]
    public async Task A_line_that_was_only_cut_is_taken_up_again_with_what_was_typed_meanwhile()
    {
        Chromium.Require();
        using var folder = Jobs.Small();
        using var server = RunningPage.StartAlone(folder.FullPath);
        IWebSocketRoute? line = null;
        bool isCut = false;
        var held = new TaskCompletionSource();
        var asked = new TaskCompletionSource();
        var page = (await Chromium.OpenAsync(server.Url, begun: tab => tab.Page.RouteWebSocketAsync("**/_blazor**", route =>
        {
            line = route;
            route.ConnectToServer();
        }))).Page;
        await page.RouteAsync("**/strip/version", async route =>
        {
            if (isCut)
            {
                asked.TrySetResult();
                await held.Task;
            }

            await route.ContinueAsync();
        });
        var field = await HeightAsync(page);
        await page.EvaluateAsync("() => { window.isTheSame = true; }");
        isCut = true;

        await line!.CloseAsync();

        // A press that nobody hears is said at once, also before it is known what became of the worktable.
        await asked.Task;
        await page.GetByRole(AriaRole.Link, new() { Name = "print" }).ClickAsync();
        await Expect(page.Locator("#lost")).ToContainTextAsync("does not answer");
        await field.FillAsync("8 mm");
        await field.PressAsync("Tab");
        isCut = false;
        held.SetResult();

        await Expect(page.Locator(".sentence")).ToContainTextAsync("8 mm high");
        await Expect(page.Locator("#lost")).ToBeEmptyAsync();
        Assert.True(await page.EvaluateAsync<bool>("() => window.isTheSame"));
    }

    [SkippableFact]
    public async Task Minutes_that_were_begun_at_the_machine_are_kept_and_can_be_written_down()
    {
        Chromium.Require();
        using var folder = Jobs.MadeLanternWalk();
        using var server = RunningPage.StartAlone(folder.FullPath);
        var page = (await Chromium.OpenAsync(server.Url + "machine")).Page;
        await Expect(page.Locator("#machine")).ToHaveAttributeAsync("data-pictured", "1");
        await page.Locator("[data-part=say] summary").ClickAsync();
        // Known in the moment it is typed: a worktable that is back within a second would load the page anew over it.
        Assert.True(await page.GetByLabel("minutes at the machine").EvaluateAsync<bool>(
            "f => { f.value = '7.5'; f.dispatchEvent(new Event('input', { bubbles: true })); return 'busy' in document.getElementById('machine').dataset; }"));
        server.Kill();
        await Expect(page.Locator("#lost")).ToContainTextAsync("does not answer");
        await page.GetByLabel("a note").FillAsync("thread broke once");

        using var again = RunningPage.Start(folder.FullPath);

        await Expect(page.Locator("#lost")).ToContainTextAsync("answers again");
        await Expect(page.GetByLabel("minutes at the machine")).ToHaveValueAsync("7.5");
        await page.GetByRole(AriaRole.Button, new() { Name = "Done, next" }).ClickAsync();
        await Expect(page.Locator("#lost")).ToBeEmptyAsync();
        await Expect(page.Locator("[data-part=head]")).ToContainTextAsync("Hooping");
        Assert.Contains("thread broke once", await File.ReadAllTextAsync(folder["sewing-log.csv"]), StringComparison.Ordinal);
    }

    [SkippableFact]
    public async Task A_worktable_under_a_new_secret_is_said()
    {
        Chromium.Require();
        using var folder = Jobs.Small();
        using var elsewhere = new TemporaryFolder();
        using var server = RunningPage.StartAlone(folder.FullPath);
        var page = (await Chromium.OpenAsync(server.Url)).Page;
        var field = await HeightAsync(page);
        await field.FillAsync("8 mm");
        server.Kill();

        using var again = RunningPage.StartFor(elsewhere.FullPath, folder.FullPath, "--port", $"{new Uri(server.Url).Port}");

        Assert.NotEqual(server.Address, again.Address);
        await Expect(page.Locator("#lost")).ToContainTextAsync("under a new address");
        await Expect(field).ToHaveValueAsync("8 mm");
    }

    private static async Task<ILocator> HeightAsync(IPage page)
    {
        await page.Locator(".sentence .part", new() { HasText = "mm" }).First.ClickAsync();
        var field = page.GetByLabel(Height, new() { Exact = true });
        await Expect(field).ToBeVisibleAsync();
        return field;
    }
}
