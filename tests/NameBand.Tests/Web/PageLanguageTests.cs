using System.Globalization;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Localization;
using Microsoft.Extensions.Logging.Abstractions;
using Microsoft.Extensions.Options;
using NameBand.Common;
using NameBand.Tests.House;
using NameBand.Tests.Saying;
using NameBand.Web.Serving;
using NameBand.Web.Table;
using Xunit;

namespace NameBand.Tests.Web;

/// <summary>
/// Each reader is spoken to in her language, where the program has it, and nobody can ask for one that is made to try it with.
/// </summary>
public sealed class PageLanguageTests(ServedPage page) : IClassFixture<ServedPage>
{
    [Theory]
    [InlineData(null, "de-AT, en;q=0.8", "de")]
    [InlineData(null, "fr, de;q=0.8", "de")]
    [InlineData(null, "fr", "en")]
    [InlineData(null, "", "en")]
    [InlineData(null, "en-XA, ar-XB;q=0.9", "en")]
    [InlineData("ar-XB", "de", "ar-XB")]
    public async Task The_language_is_that_of_the_environment_or_one_that_the_browser_asks_for(string? named, string asked, string spoken)
    {
        var options = PageLanguage.Of(named is null ? null : CultureInfo.GetCultureInfo(named), [CultureInfo.GetCultureInfo("de")]);
        var context = new DefaultHttpContext();
        context.Request.Headers.AcceptLanguage = asked;
        string found = "";
        var asking = new RequestLocalizationMiddleware(_ =>
        {
            found = $"{CultureInfo.CurrentUICulture.Name} {CultureInfo.CurrentCulture.Name}";
            return Task.CompletedTask;
        }, Options.Create(options), NullLoggerFactory.Instance);
        await asking.Invoke(context);
        Assert.Equal($"{spoken} {CultureInfo.CurrentCulture.Name}", found);
    }

    [Fact]
    public async Task A_visitor_who_asks_for_a_made_language_is_spoken_to_in_English()
    {
        var answer = await page.AskAsync("GET", "/print", page.Cookie, "Accept: text/html", "Accept-Language: ar-XB, en-XA;q=0.9");
        Assert.Contains("<html lang=\"en\">", answer.Text, StringComparison.Ordinal);
        Assert.Contains("make the sheets", answer.Text, StringComparison.Ordinal);
        Assert.DoesNotContain("«", answer.Text, StringComparison.Ordinal);
    }

    /// <summary>Beside the English texts lie those of the languages that <c>SatelliteResourceLanguages</c> names, and no others.</summary>
    [Fact]
    public void Every_translation_is_named_in_the_build() => Assert.Equal(
        Repository.Files("src/NameBand.Core/Common", ".resx").Select(f => Path.GetFileName(f.Path)["Texts.".Length..^"resx".Length].TrimEnd('.'))
            .Where(name => name.Length > 0).Order(StringComparer.Ordinal),
        Language.Translated.Select(c => c.Name).Order(StringComparer.Ordinal));

    [Theory]
    [InlineData("en", "lang=\"en\"")]
    [InlineData("en-XA", "lang=\"en-XA\"")]
    [InlineData("ar-XB", "lang=\"ar-XB\" dir=\"rtl\"")]
    public void A_page_names_its_language_and_its_direction(string culture, string attributes) =>
        Assert.Equal(attributes, Spoken.In(culture, () => Language.HtmlNow));

    /// <summary>What one reader sets is drawn anew for all others: for each in her own language.</summary>
    [Fact]
    public void Whoever_hears_of_a_change_hears_it_in_her_own_language()
    {
        var hearers = new Hearers();
        var heard = new List<string>();
        Action hear = () => heard.Add(CultureInfo.CurrentUICulture.Name);
        Spoken.In("en-XA", () => { hearers.Add(hear); return 0; });
        Spoken.In("ar-XB", () => { hearers.Add(() => heard.Add(CultureInfo.CurrentUICulture.Name)); return 0; });
        Spoken.In("en", () => { hearers.Tell(); heard.Add(CultureInfo.CurrentUICulture.Name); return 0; });
        hearers.Remove(hear);
        hearers.Tell();
        Assert.Equal(["en-XA", "ar-XB", "en", "ar-XB"], heard);
    }
}
