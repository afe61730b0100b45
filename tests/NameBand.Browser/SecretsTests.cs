using System.Text;
using Microsoft.Playwright;
using NameBand.Tests;
using Xunit;
using static Microsoft.Playwright.Assertions;

namespace NameBand.Browser;

/// <summary>
/// What stands beside a name in a list comes to no view: all that travels to the browser, and all that stands on the page, is
/// searched for the marks of a marked list.
/// </summary>
[Collection(InBrowser.Name)]
public sealed class SecretsTests(Chromium browser) : BrowserTests(browser)
{
    private const string Job =
        """
        { "format": 1, "title": "Lantern walk", "lists": ["names.csv"], "hem": { "length": "700 mm", "closed": false },
          "columns": { "group": "Paid" }, "groups": [{ "name": "lamps", "from": 100, "heightFactor": 1.1 }, { "name": "rest", "rest": true }] }
        """;

    [SkippableFact]
    public async Task Nothing_beside_a_name_comes_to_any_view()
    {
        Chromium.Require();
        using var folder = new TemporaryFolder().With("names.csv", MarkedList.Csv).With("job.json", Job);
        using var server = RunningPage.Start(folder.FullPath, "--lend");
        var plan = await OpenAsync(server.Url);
        await plan.Page.SettledAsync();
        int parts = await plan.Page.Locator(".sentence .part").CountAsync();
        for (int i = 0; i < parts; i++)
        {
            await plan.Page.Locator(".sentence .part").Nth(i).ClickAsync();
            await Expect(plan.Page.Locator("#panel-heading")).ToBeFocusedAsync();
            await plan.LookAsync("part " + i);
        }

        var print = await OpenAsync(server.Url + "print");
        await print.Page.GetByLabel("with a picture of each name").CheckAsync();
        await print.Page.GetByRole(AriaRole.Button, new() { Name = "make the sheets" }).ClickAsync();
        await Expect(print.Page.GetByText("Done: the sheets are below.")).ToBeVisibleAsync(new() { Timeout = 120_000 });
        await print.LookAsync("print");
        foreach (var link in await print.Page.Locator(".made a").AllAsync())
        {
            string address = (await link.GetAttributeAsync("href"))!;
            MarkedList.AssertNoMark(await (await print.Page.Context.APIRequest.GetAsync(server.Url + address)).BodyAsync(), address);
        }

        await print.Page.GetByRole(AriaRole.Button, new() { Name = "write the letters" }).ClickAsync();
        await Expect(print.Page.Locator(".saying [role=status]")).ToContainTextAsync("in the folder private", new() { Timeout = 60_000 });
        Assert.Contains("qz7mail1@lantern-secret.example", File.ReadAllText(folder["private/mail-merge.csv"]), StringComparison.Ordinal);
        await print.LookAsync("asking");
        Assert.Equal(404, (await print.Page.Context.APIRequest.GetAsync(server.Url + "made/private/mail-merge.csv")).Status);

        var machine = await OpenAsync(server.Url + "machine");
        await Expect(machine.Page.Locator("#machine")).ToHaveAttributeAsync("data-pictured", "1");
        await machine.LookAsync("at the machine");
        var said = machine.Page.Locator(".lend strong");
        var lent = new Watched(await Chromium.OpenAsync(await said.Nth(0).InnerTextAsync(), 820, 1180, alive: "#code"));
        await lent.Page.GetByRole(AriaRole.Textbox).FillAsync(await said.Nth(1).InnerTextAsync());
        await lent.Page.GetByRole(AriaRole.Button, new() { Name = "Open" }).ClickAsync();
        await Expect(lent.Page.Locator("#machine")).ToHaveAttributeAsync("data-pictured", "1");
        await lent.LookAsync("lent");

        // Each of them did show a name of the list, and over its line too.
        foreach (var view in new[] { plan, machine, lent })
        {
            Assert.Contains("Ana Lind", await view.ReceivedAsync(), StringComparison.Ordinal);
        }

        foreach (var view in new[] { plan, print, machine, lent })
        {
            MarkedList.AssertNoMark(await view.ReceivedAsync(), view.Page.Url);
        }
    }

    [SkippableFact]
    public async Task Rows_that_are_shown_to_ask_for_the_column_of_names_are_shown_nowhere_else()
    {
        Chromium.Require();
        using var folder = new TemporaryFolder()
            .With("names.csv", "left,right\nAna Lind,qz7mail1@lantern-secret.example\nBo Varga,qz7mail2@lantern-secret.example\n")
            .With("job.json", """{ "format": 1, "lists": ["names.csv"], "hem": { "length": "700 mm" } }""");
        using var server = RunningPage.Start(folder.FullPath);
        var plan = await OpenAsync(server.Url);
        await Expect(plan.Page.Locator(".begin")).ToContainTextAsync("qz7mail1@lantern-secret.example");
        await plan.Page.Locator(".begin").EvaluateAsync("e => e.remove()");
        await plan.LookAsync("the plan but for the list");

        foreach (string other in (string[])["machine", "print"])
        {
            var view = await OpenAsync(server.Url + other);
            await view.LookAsync(other);
            MarkedList.AssertNoMark(await view.ReceivedAsync(), other);
        }
    }

    private async Task<Watched> OpenAsync(string url)
    {
        Watched? watched = null;
        await Chromium.OpenAsync(url, begun: tab => watched = new Watched(tab));
        return watched!;
    }

    /// <summary>A tab, and all that has come to it: every answer, and what the page's own line brought.</summary>
    private sealed class Watched
    {
        private readonly List<Task<byte[]>> _answers = [];
        private readonly StringBuilder _line = new();

        public Watched(Tab tab)
        {
            Page = tab.Page;
            Page.RequestFinished += (_, request) => _answers.Add(BodyAsync(request));
            Page.WebSocket += (_, line) => line.FrameReceived += (_, frame) =>
            {
                lock (_line)
                {
                    _line.Append(frame.Text ?? Encoding.Latin1.GetString(frame.Binary ?? [])).Append('\n');
                }
            };
        }

        public IPage Page { get; }

        public async Task LookAsync(string where) =>
            MarkedList.AssertNoMark(await Page.ContentAsync() + await Page.InnerTextAsync("body"), where);

        public async Task<string> ReceivedAsync()
        {
            byte[][] answers = await Task.WhenAll(_answers.ToArray());
            lock (_line)
            {
                return string.Join('\n', answers.Select(Encoding.Latin1.GetString)) + _line;
            }
        }

        private static async Task<byte[]> BodyAsync(IRequest request)
        {
            try
            {
                return await request.ResponseAsync() is { } answer ? await answer.BodyAsync() : [];
            }
            catch (PlaywrightException)
            {
                return []; // An answer without a body, such as one that leads elsewhere.
            }
        }
    }
}
