using System.Globalization;
using Microsoft.Playwright;
using NameBand.Lettering.Faces;
using NameBand.Tests;
using Xunit;
using static Microsoft.Playwright.Assertions;

namespace NameBand.Browser;

/// <summary>
/// Every view in a language that is made from the English: each text is said in it, has room where it is a third longer, and the
/// page mirrors itself where it is read from right to left. Names and lists of this job have no Latin letter, so that any word
/// that has some is the program's own.
/// </summary>
[Collection(InBrowser.Name)]
public sealed class LanguageTests(Chromium browser) : BrowserTests(browser)
{
    private static readonly (string View, string Ready)[] Views =
    [
        ("", ".row"), ("?set=names", "#panel"), ("?set=rounds", "#panel"), ("?set=face", ".look img"), ("?set=cloth", ".look img"),
        ("?set=height", "#panel"), ("?set=hem", "#panel"), ("?set=hoop", "#panel"), ("?set=machine", "#panel"), ("?set=hands", "#panel"),
        ("?set=thread", "#panel"), ("?set=way", "#panel"), ("steps/list", ".aloud"), ("steps/questions", ".alike"), ("steps/edge", ".edge"),
        ("steps/workshop", ".step form"), ("steps/plan", ".recommended"), ("steps/proofs", ".proof img"), ("steps/files", ".hand-over li"),
        ("machine", "#machine[data-pictured='1']"), ("print", ".made"), ("nowhere", "main p"),
    ];

    /// <summary>What is the same in every language: units, sizes of paper, forms of files, and the names of faces.</summary>
    private static readonly HashSet<string> Alike =
        [.. "mm in wt Letter csv xlsx und".Split(' '), .. new FaceShelf().Cards.SelectMany(f => f.Name.Split(' '))];

    private const string Looking = """
        () => {
            const own = 'script, style, template, bdi, [dir=auto], pre, code, em[dir=ltr], #panel option[value]:not([value=""])';
            const words = (text, where) => [...(text ?? '').matchAll(/(?<![\p{L}~.])[A-Za-z]?[a-z]{2,}(?![\p{L}])/gu)].map(m => `${m[0]}\t${where}\t${text.trim().slice(0, 80)}`);
            const found = [];
            const all = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT);
            for (let text; (text = all.nextNode());) {
                const place = text.parentElement;
                if (!place.closest(own) && place.checkVisibility()) found.push(...words(text.textContent, place.tagName.toLowerCase()));
            }
            for (const name of ['aria-label', 'placeholder', 'title', 'alt']) {
                for (const element of document.querySelectorAll(`[${name}]`)) found.push(...words(element.getAttribute(name), name));
            }
            return found;
        }
        """;

    private const string Cut = """
        () => [...document.querySelectorAll('button, label, legend, summary, th, h2, h3, a.go')]
            .filter(e => e.checkVisibility() && !e.closest('.unseen, .seen, .found') && getComputedStyle(e).display !== 'inline' && getComputedStyle(e).clipPath === 'none'
                && e.scrollWidth > e.clientWidth + 1)
            .map(e => `${e.tagName.toLowerCase()} “${e.textContent.trim().slice(0, 60)}” ${e.scrollWidth} > ${e.clientWidth}`)
        """;

    [SkippableTheory]
    [InlineData("en-XA")]
    [InlineData("ar-XB")]
    public async Task Every_view_is_said_in_the_language_and_has_room_for_it(string language)
    {
        Chromium.Require();
        using var folder = new TemporaryFolder()
            .With("job.json", """
                {
                  "format": 1, "title": "Περίπατος με φανάρια", "lists": ["λίστα.csv"], "hem": { "length": "1.2 m" },
                  "columns": { "name": "Όνομα", "leaveOut": "Σιωπή" }
                }
                """)
            .With("λίστα.csv", "Όνομα,Σιωπή\nΆννα Νέρη,\nΒασίλης Όρμος,\nΖήνα Όχθη,ίσως\nΖήνα Όχθη,ίσως\nΗλίας Λύχνος,\nΆννα Νέρη,\n");
        var before = CultureInfo.CurrentUICulture;
        CultureInfo.CurrentUICulture = CultureInfo.GetCultureInfo(language);
        Assert.NotEqual(ExitStatus.CannotUse, Bander.Print(folder.FullPath).Status);
        CultureInfo.CurrentUICulture = before;
        using var server = RunningPage.StartIn(language, folder.FullPath);
        var tab = await Chromium.OpenAsync(server.Url, 390);
        var found = new SortedDictionary<string, string>(StringComparer.Ordinal);
        var narrow = new List<string>();
        foreach (var (view, ready) in Views)
        {
            await tab.Page.GotoAsync(server.Url + view);
            await Expect(tab.Page.Locator(ready).First).ToBeAttachedAsync(new() { Timeout = 60_000 });
            await Expect(tab.Page.Locator("main[data-alive]")).ToBeAttachedAsync();
            await OpenAllAsync(tab.Page);
            string[] words = await tab.Page.EvaluateAsync<string[]>(Looking);
            foreach (string[] word in words.Select(w => w.Split('\t')).Where(w => !Alike.Contains(w[0])))
            {
                found.TryAdd(word[0], $"{view}, {word[1]}: {word[2]}");
            }

            foreach (int width in (int[])[390, 1280])
            {
                await tab.Page.SetViewportSizeAsync(width, 844);
                narrow.AddRange((await tab.Page.EvaluateAsync<string[]>(Cut)).Select(c => $"{view} at {width}: {c}"));
                if (await tab.Page.EvaluateAsync<bool>("() => document.documentElement.scrollWidth > innerWidth"))
                {
                    narrow.Add($"{view} is wider than its window of {width}.");
                }
            }

            Assert.Equal(
                language == "ar-XB" ? "ar-XB rtl" : "en-XA ltr",
                await tab.Page.EvaluateAsync<string>("() => document.documentElement.lang + ' ' + getComputedStyle(document.body).direction"));
        }

        Assert.True(found.Count == 0, "In English alone:\n" + string.Join('\n', found.Select(f => $"{f.Key}: {f.Value}")));
        Assert.True(narrow.Count == 0, "Without room:\n" + string.Join('\n', narrow.Distinct()));
        Assert.DoesNotContain(tab.Complaints, c => !c.Contains("404", StringComparison.Ordinal));
    }

    /// <summary>What is folded up is looked at, too.</summary>
    private static Task OpenAllAsync(IPage page) =>
        page.EvaluateAsync("() => document.querySelectorAll('main details:not(.playback)').forEach(d => { d.open = true; })");
}
