using Xunit;
using static Microsoft.Playwright.Assertions;

namespace NameBand.Browser;

[Collection(InBrowser.Name)]
public sealed class OpeningTests(Chromium browser) : BrowserTests(browser)
{
    [SkippableFact]
    public async Task The_page_opens_lives_and_says_what_the_job_comes_to()
    {
        Chromium.Require();
        var tab = await Chromium.OpenAsync(Chromium.LanternWalk.Url);

        await Expect(tab.Page.Locator(".sentence")).ToContainTextAsync("names on");
        // The script of the framework runs: without it there is no Blazor in the window.
        Assert.True(await tab.Page.EvaluateAsync<bool>("() => typeof window.Blazor === 'object'"));
        tab.ExpectNoComplaint();
    }

    [SkippableTheory]
    [InlineData("Host", "rebound.example")]
    [InlineData("Origin", "http://elsewhere.example")]
    [InlineData("Sec-Fetch-Site", "cross-site")]
    public async Task A_stranger_is_not_answered(string header, string value)
    {
        using var client = Chromium.LanternWalk.Client();
        using var request = new HttpRequestMessage(HttpMethod.Get, Chromium.LanternWalk.Url);
        request.Headers.TryAddWithoutValidation(header, value);

        using var answer = await client.SendAsync(request);

        Assert.Equal(System.Net.HttpStatusCode.Forbidden, answer.StatusCode);
    }
}
