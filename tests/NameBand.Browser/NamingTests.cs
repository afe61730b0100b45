using System.Text.RegularExpressions;
using Microsoft.Playwright;
using NameBand.Tests;
using Xunit;
using static Microsoft.Playwright.Assertions;

namespace NameBand.Browser;

/// <summary>Names that are typed or traced are logged one by one at the machine, as the command <c>sewn</c> logs them.</summary>
[Collection(InOtherBrowser.Name)]
public sealed class NamingTests(Chromium browser) : BrowserTests(browser)
{
    private const string Typed = """
        { "format": 1, "way": "machineLetters", "lists": ["names.csv"], "hem": { "length": "1.2 m" }, "letters": { "sizes": ["9 mm"], "holds": 16 } }
        """;

    private static TemporaryFolder Job(string job) =>
        Jobs.Small("name\nOttilie Marsh\nBram Sedgewick\nNgozi Farrow\nZdenek Alexander Holub\n").With("job.json", job);

    [SkippableFact]
    public async Task Typed_names_are_said_done_with_their_lengths_and_the_marks_after_them_move()
    {
        Chromium.Require();
        using var folder = Job(Typed);
        using var server = RunningPage.Start(folder.FullPath);
        var tab = await Chromium.OpenAsync(server.Url + "machine", 820, 1180);
        var page = tab.Page;
        var name = page.Locator(".keying-name");
        var done = page.Locator("[data-part=done-next]");
        var answer = page.Locator("[data-part=say-name] [data-part=answer]");
        await Expect(name).ToHaveTextAsync("1 Ottilie Marsh");
        await InSight.ExpectAsync(page, ".keying-name", "[data-part=keys]", ".keying-facts", ".keying-then", "[data-part=done-next]");

        // On a scrap: measured, not sewn.
        double expected = await LengthAsync(page);
        await page.Locator("[data-part=say-name] summary").ClickAsync();
        await page.GetByRole(AriaRole.Button, new() { Name = "It is on a scrap" }).ClickAsync();
        await Expect(answer).ToContainTextAsync("Give the length");
        await page.GetByLabel("it came out at").FillAsync(Text(expected + 3));
        await page.GetByRole(AriaRole.Button, new() { Name = "It is on a scrap" }).ClickAsync();
        await Expect(answer).ToContainTextAsync("on a scrap: that is logged");
        Assert.False(File.Exists(folder["sewing-log.csv"]));
        await page.GetByRole(AriaRole.Button, new() { Name = "undo" }).ClickAsync();
        await Expect(answer).ToContainTextAsync("that on a scrap counts no longer");
        Assert.EndsWith("\"scrap, taken back\"", (await File.ReadAllLinesAsync(folder["lengths.csv"]))[^1], StringComparison.Ordinal);
        await Expect(done).ToHaveAttributeAsync("aria-disabled", "false");
        await page.Locator("[data-part=say-name] summary").ClickAsync();
        await page.GetByLabel("it came out at").FillAsync(Text(expected + 3));
        await page.GetByRole(AriaRole.Button, new() { Name = "It is on a scrap" }).ClickAsync();
        await Expect(answer).ToContainTextAsync("on a scrap: that is logged");
        await Expect(done).ToHaveAttributeAsync("aria-disabled", "false");

        // Sewn, with its length and where its words end and begin; the next one is there at once, its mark moved.
        await page.GetByRole(AriaRole.Button, new() { Name = "next ›" }).ClickAsync();
        string before = await MarkAsync(page);
        await page.GetByRole(AriaRole.Button, new() { Name = "‹ back" }).ClickAsync();
        double length = await LengthAsync(page) + 4;
        await page.GetByLabel("it came out at").FillAsync(Text(length));
        await page.Locator("[data-part=say-name] summary").ClickAsync();
        await page.GetByLabel("it took at the machine").FillAsync("2.5");
        await page.GetByLabel("its first word ended at").FillAsync(Text(length * 0.55));
        await page.GetByLabel("its second began at").FillAsync(Text(length * 0.6));
        await SayAsync(page, () => done.ClickAsync(), "1 “Ottilie Marsh” is logged as sewn.");
        await Expect(name).ToHaveTextAsync("2 Bram Sedgewick");
        await Expect(done).ToHaveAttributeAsync("aria-disabled", "false");
        await Expect(page.Locator(".keying-facts dd").First).Not.ToHaveTextAsync(before);
        await Expect(done).ToBeFocusedAsync();
        string[] log = await File.ReadAllLinesAsync(folder["sewing-log.csv"]);
        Assert.StartsWith("n1,sewn,2.5,,", log[1], StringComparison.Ordinal);
        Assert.Equal(4, File.ReadAllLines(folder["lengths.csv"]).Length);

        // With the keyboard alone, from a plan whose marks moved; taken back; a length that is of no such name.
        await SayAsync(page, () => page.Keyboard.PressAsync("Enter"), "2 “Bram Sedgewick” is logged as sewn.");
        await page.GetByRole(AriaRole.Button, new() { Name = "undo" }).ClickAsync();
        await Expect(answer).ToContainTextAsync("counts as not sewn");
        Assert.StartsWith("n2,mistake,", (await File.ReadAllLinesAsync(folder["sewing-log.csv"]))[^1], StringComparison.Ordinal);
        await Expect(page.Locator("[data-part=left]")).ToContainTextAsync("3 names still to sew: about");
        await page.GetByLabel("it came out at").FillAsync("400");
        await SayAsync(page, () => done.ClickAsync(), "was expected to come out");
        await Axe.ExpectNothingAsync(page, "a typed name", Axe.Wcag, "#machine");
        Assert.DoesNotMatch(@"sewn JOB|\.csv|\.json|run make", await page.Locator("#machine").InnerTextAsync());
        tab.ExpectNoComplaint();
    }

    [SkippableFact]
    public async Task What_is_keyed_is_large_with_its_blanks_and_signs_that_look_alike_are_told_in_words()
    {
        Chromium.Require();
        using var folder = Jobs.Small("name\nIlla 10O\nAda Oake\n")
            .With("job.json", Typed.Replace("\"holds\": 16", "\"holds\": 6", StringComparison.Ordinal));
        using var server = RunningPage.Start(folder.FullPath);
        var tab = await Chromium.OpenAsync(server.Url + "machine", 820, 1180);
        var page = tab.Page;
        await Expect(page.Locator(".keying-name")).ToContainTextAsync("part 1 of 2");
        await Expect(page.Locator("[data-part=keys] bdi")).ToHaveTextAsync("Illa␣");
        await Expect(page.Locator(".keying-alike")).ToHaveTextAsync("I is large i, l is small L");

        // Read from 1 m: a large letter of 16 minutes of arc is 4.7 mm high (ISO 9241-303, from memory), some 0.7 of the type size.
        Assert.True(await page.Locator("[data-part=keys]")
            .EvaluateAsync<double>("e => parseFloat(getComputedStyle(e).fontSize)") * 0.7 * 25.4 / 96 >= 4.7);
        await page.GetByRole(AriaRole.Button, new() { Name = "next ›" }).ClickAsync();
        await Expect(page.Locator("[data-part=keys] bdi")).ToHaveTextAsync("10O");
        await Expect(page.Locator(".keying-alike")).ToHaveTextAsync("1 is one, 0 is zero, O is large o");
        await page.GetByRole(AriaRole.Button, new() { Name = "next ›" }).ClickAsync();
        await Expect(page.Locator(".keying-alike")).ToBeHiddenAsync();
        tab.ExpectNoComplaint();
    }

    [SkippableFact]
    public async Task Traced_names_are_said_done_spoiled_and_finished()
    {
        Chromium.Require();
        using var folder = Jobs.Small("name\nOttilie Marsh\nBram Sedgewick\n")
            .With("job.json", """{ "format": 1, "way": "traced", "lists": ["names.csv"], "hem": { "length": "1.2 m" } }""");
        using var server = RunningPage.Start(folder.FullPath);
        var tab = await Chromium.OpenAsync(server.Url + "machine", 390);
        var page = tab.Page;
        var done = page.Locator("[data-part=done-next]");
        await Expect(page.Locator(".keying-name")).ToHaveTextAsync("1 Ottilie Marsh");
        await Expect(page.GetByLabel("it came out at")).ToBeHiddenAsync();
        await InSight.ExpectAsync(page, ".keying-name", ".keying-facts", ".keying-then", "[data-part=done-next]");
        await page.SetViewportSizeAsync(390, 900);
        await SayAsync(page, () => done.ClickAsync(), "1 “Ottilie Marsh” is logged as sewn.");
        await Expect(page.Locator(".keying-name")).ToHaveTextAsync("2 Bram Sedgewick");
        await SayAsync(page, () => done.ClickAsync(), "That was the last one.");
        await page.GetByRole(AriaRole.Button, new() { Name = "Spoiled: sew it again" }).Last.ClickAsync();
        await Expect(page.Locator("[data-part=head]")).ToHaveTextAsync("2 of 2, round 1: to be sewn again");
        await Expect(page.GetByRole(AriaRole.Button, new() { Name = "pressed" })).ToBeDisabledAsync();
        await SayAsync(page, () => done.ClickAsync(), "2 “Bram Sedgewick” is logged as sewn.");
        await Expect(page.Locator("[data-part=left]")).ToContainTextAsync("All names are sewn");

        // From pressing to sewing down: a step takes those before it along, and is taken back.
        await page.GetByRole(AriaRole.Button, new() { Name = "turned in" }).ClickAsync();
        await Expect(page.GetByRole(AriaRole.Button, new() { Name = "pressed" })).ToHaveAttributeAsync("aria-pressed", "true");
        await page.GetByRole(AriaRole.Button, new() { Name = "pressed" }).ClickAsync();
        await Expect(page.GetByRole(AriaRole.Button, new() { Name = "turned in" })).ToHaveAttributeAsync("aria-pressed", "false");
        Assert.Equal(
            ["n1,sewn", "n2,sewn", "n2,again", "n2,sewn", "all,done", "all,undone"],
            (await File.ReadAllLinesAsync(folder["sewing-log.csv"]))[1..].Select(l => string.Join(',', l.Split(',')[..2])));
        Assert.True(
            await page.EvaluateAsync<bool>("() => document.documentElement.scrollWidth <= window.innerWidth"),
            "The page is wider than its window.");
        tab.ExpectNoComplaint();
    }

    /// <summary>Presses as she would: where marks are still being set out she is told so, and presses once more when they are.</summary>
    private static async Task SayAsync(IPage page, Func<Task> press, string answer)
    {
        const string Again = "press once more";
        var said = page.Locator("[data-part=say-name] [data-part=answer]");
        await press();
        await Expect(said).ToContainTextAsync(new Regex(Regex.Escape(answer) + "|" + Again));
        if ((await said.InnerTextAsync()).Contains(Again, StringComparison.Ordinal))
        {
            await press();
        }

        await Expect(said).ToContainTextAsync(answer);
    }

    private static Task<string> MarkAsync(IPage page) => page.Locator(".keying-facts dd").First.InnerTextAsync();

    private static async Task<double> LengthAsync(IPage page) => double.Parse(
        (await page.Locator(".keying-facts dt", new() { HasText = "must come out at" }).Locator("+ dd").InnerTextAsync())
        .Trim('~', ' ', 'm'),
        System.Globalization.CultureInfo.InvariantCulture);

    private static string Text(double mm) => mm.ToString("0.#", System.Globalization.CultureInfo.InvariantCulture);
}
