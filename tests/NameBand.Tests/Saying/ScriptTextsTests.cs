using System.Text.RegularExpressions;
using NameBand.Common;
using NameBand.Tests.House;
using NameBand.Web.Serving;
using Xunit;

namespace NameBand.Tests.Saying;

/// <summary>The page's scripts say nothing that the page does not bring them in the reader's language.</summary>
public sealed partial class ScriptTextsTests
{
    private static IEnumerable<SourceFile> Scripts => Repository.Files("src/NameBand.Web/wwwroot", ".js")
        .Where(f => !f.Path.Contains("/three/", StringComparison.Ordinal) && !f.Path.EndsWith("/said.js", StringComparison.Ordinal))
        .Select(f => f with { Text = Remark().Replace(f.Text, m => m.Value[0] == '\'' ? m.Value : "") });

    [Fact]
    public void The_page_brings_what_its_scripts_say_and_nothing_else()
    {
        string[] said = [.. Scripts.SelectMany(f => Saying().Matches(f.Text)).Select(m => Unescaped(m.Groups[1].Value)).Distinct().Order()];
        string[] counted = [.. Scripts.SelectMany(f => Counting().Matches(f.Text))
            .Select(m => $"{Unescaped(m.Groups[1].Value)}|{Unescaped(m.Groups[2].Value)}").Distinct().Order()];
        Assert.True(said.Length > 150, $"Only {said.Length} texts were found: the scripts were not understood.");
        Assert.Equal(said, ScriptTexts.All.Select(t => t.English).Order());
        Assert.Equal(counted, ScriptTexts.Counted.Select(ScriptTexts.KeyOf).Order());
    }

    [Fact]
    public void No_script_says_what_is_not_known_beforehand() =>
        Assert.Empty(Scripts.SelectMany(f => Unknown().Matches(f.Text).Select(m => $"{f.Path}: {m.Value}")));

    [Fact]
    public void No_script_has_English_of_its_own() => Assert.Empty(Scripts.SelectMany(f => Own(f.Text).Select(own => $"{f.Path}: {own}")));

    [Theory]
    [InlineData("el('p', 'sewn')", 1)]
    [InlineData("says.textContent = `${n} left`", 1)]
    [InlineData("box.setAttribute('aria-label', 'Strip')", 1)]
    [InlineData("ask('Sew it again')", 1)]
    [InlineData("el('p', t('sewn'))", 0)]
    [InlineData("says.textContent = many(n, 'one is left', '{0} are left')", 0)]
    [InlineData("el('p', null, { className: 'machine-buttons machine-answer' })", 0)]
    public void English_of_a_script_is_found(string script, int found) => Assert.Equal(found, Own(script).Count());

    [Fact]
    public void A_page_in_English_brings_none_of_them() => Assert.Equal("", ScriptTexts.Element);

    [Fact]
    public void A_page_in_another_language_brings_all_of_them()
    {
        string element = Spoken.In("en-XA", () => ScriptTexts.Element);
        string json = element[(element.IndexOf('>', StringComparison.Ordinal) + 1)..element.LastIndexOf('<')];
        using var brought = System.Text.Json.JsonDocument.Parse(json);
        var texts = brought.RootElement.GetProperty("texts");
        Assert.Equal(ScriptTexts.All.Count + ScriptTexts.Counted.Count, texts.EnumerateObject().Count());
        Assert.Equal("«ŕôûñđ {0} ~»", texts.GetProperty("round {0}").GetString());
        Assert.Equal("«{0} ñåɱéš ~»".Replace('ɱ', 'm'), texts.GetProperty("{0} name|{0} names").GetProperty("other").GetString());
        Assert.Equal(",", brought.RootElement.GetProperty("decimalSign").GetString());
    }

    /// <summary>What is put on the page as it stands, or reads like a sentence.</summary>
    private static IEnumerable<string> Own(string script)
    {
        string rest = Hole().Replace(Counting().Replace(Saying().Replace(script, "t("), "many("), "0");
        return Shown().Matches(rest).Select(m => m.Value).Concat(Text().Matches(rest).Select(m => m.Value)
            .Where(text => Sentence().IsMatch(text) && !ForBrowser().IsMatch(text))).Distinct();
    }

    private static string Unescaped(string text) =>
        text.Replace("\\u00a0", "\u00a0", StringComparison.Ordinal).Replace("\\'", "'", StringComparison.Ordinal);

    [GeneratedRegex(@"'(?:[^'\\\n]|\\.)*'|/\*.*?\*/|//[^\n]*", RegexOptions.Singleline)]
    private static partial Regex Remark();

    [GeneratedRegex(@"(?<![\w.$])(?:t|parts)\('((?:[^'\\]|\\.)*)'")]
    private static partial Regex Saying();

    [GeneratedRegex(@"(?<![\w.$])many\([^']*?'((?:[^'\\]|\\.)*)',\s*'((?:[^'\\]|\\.)*)'")]
    private static partial Regex Counting();

    [GeneratedRegex(@"(?<![\w.$])(?:t|parts)\((?!')[^\n]{0,60}")]
    private static partial Regex Unknown();

    [GeneratedRegex(@"(?:el(?:ement)?\('\w+', |textContent = |'aria-(?:label|valuetext)', |Option\()['`][^'`\n]*[A-Za-z][^'`\n]*['`]")]
    private static partial Regex Shown();

    [GeneratedRegex(@"'(?:[^'\\\n]|\\.)*'|`[^`]*`")]
    private static partial Regex Text();

    [GeneratedRegex(@"\$\{[^}]*\}")]
    private static partial Regex Hole();

    [GeneratedRegex(@"[A-Za-z]{2,}[,;:.]? [A-Za-z]{2,}")]
    private static partial Regex Sentence();

    /// <summary>Selectors, classes, what the painter of pictures is told, and questions to the browser.</summary>
    [GeneratedRegex(@"[\[:#{=]|\b(?:input|summary|button), |^'(?:done large|machine-[\w -]+)'$|sans-serif|prefers-")]
    private static partial Regex ForBrowser();
}
