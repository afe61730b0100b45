using System.Text.RegularExpressions;
using NameBand.Tests.House;
using Xunit;

namespace NameBand.Tests.Docs;

/// <summary>Each thing has one word: docs/words.md is held against all of the code, the page and docs.</summary>
public sealed partial class WordsTests
{
    private const string Drawing = "docs/pictures/words.svg";

    private static readonly string[] NotSaid = [.. Repository.Read("docs/words.md").Split('\n')
        .Where(l => l.StartsWith("| ", StringComparison.Ordinal)).Skip(2).SelectMany(l => l.Split('|')[4].Split(','))
        .Select(w => w.Trim()).Where(w => w.Length > 0)];

    [Fact]
    public void No_text_and_no_name_in_the_code_has_a_word_that_is_not_said()
    {
        Assert.True(NotSaid.Length >= 12, string.Join("; ", NotSaid));
        var texts = Repository.Files("src", ".cs", ".razor").Concat(Repository.Files("docs", ".schema.json"))
            .Select(f => (f.Path, Text: Parted(f.Text)))
            .Concat(Repository.Files("src", ".js").SelectMany(Scripted))
            .Append((Path: Drawing, Text: Repository.Read(Drawing)))
            .Concat(Repository.Files("docs", ".md").Where(f => f.Path != "docs/words.md").Select(f => (f.Path, Text: f.Text)))
            .Append((Path: "README.md", Text: Repository.Read("README.md")));
        Assert.Equal([], texts.SelectMany(t => Found(t.Text).Select(w => $"{t.Path}: “{w}”")).Distinct());
    }

    [Fact]
    public void Scripts_are_read_too() =>
        Assert.Equal(["a nought", "b ${x} rail", "it’s"],
            Scripted(new SourceFile("x.js", "// 'rail'\nsay('a nought', `b ${x} rail`); // 'rung'\nsay(\"it’s\");")).Select(l => l.Text));

    /// <summary>What is drawn beside the table is called as in the table.</summary>
    [Fact]
    public void The_drawing_has_the_words_of_the_table()
    {
        string[] defined = [.. Repository.Read("docs/words.md").Split('\n').Where(l => l.StartsWith("| ", StringComparison.Ordinal)).Skip(2)
            .SelectMany(l => l.Split('|')[1].Split(',')).Select(w => w.Trim())];
        string[] drawn = ["round", "strip", "piece", "gap", "letter height", "hoop", "hooping", "run", "backing", "marks"];
        Assert.Equal([], drawn.Except(defined));
        string texts = string.Join('\n', SvgText().Matches(Repository.Read(Drawing)).Select(m => m.Groups[1].Value));
        Assert.All(drawn, word => Assert.Matches($@"\b{word}\b", texts));
    }

    /// <summary>The rule can fail.</summary>
    [Theory]
    [InlineData("The plan reckons with 1 %.", "reckons")]
    [InlineData("Both strips: they agree (6 mm a round is allowed).", "they agree (")]
    [InlineData("A rung goes from rail to rail.", "rung", "rail")]
    [InlineData("The rail at the tape's nought.", "rail", "nought")]
    [InlineData("A railing, brought; they agree.")]
    public void A_word_that_is_not_said_is_found(string text, params string[] words) =>
        Assert.Equal(words.Order(StringComparer.Ordinal), Found(text).Order(StringComparer.Ordinal));

    [Fact]
    public void Names_in_the_code_are_read_word_by_word() =>
        Assert.Equal(["rail", "reckoned", "nought"], Found(Parted("double FromNought(ReckonedHooping of) => 0; // a rail")));

    private static IEnumerable<string> Found(string text) => NotSaid.Where(w =>
        Regex.IsMatch(text, $@"(?<!\w){Regex.Escape(w)}{(char.IsLetter(w[^1]) ? @"(?!\w)" : "")}", RegexOptions.IgnoreCase));

    /// <summary>With a blank between the words of each name.</summary>
    private static string Parted(string code) => InName().Replace(code, " ");

    /// <summary>What stands between quotation marks of any kind in a script.</summary>
    private static IEnumerable<(string Path, string Text)> Scripted(SourceFile file) =>
        file.Text.Split('\n').Select(l => l.TrimStart())
            .Where(l => !CommentLine().IsMatch(l))
            .SelectMany(l => Quoted().Matches(Comment().Replace(l, ""))).Select(m => (file.Path, m.Groups[2].Value));

    [GeneratedRegex("(?<=[a-z])(?=[A-Z])|_")]
    private static partial Regex InName();

    [GeneratedRegex("""(['"`])((?:(?!\1)[^\\]|\\.)*)\1""")]
    private static partial Regex Quoted();

    [GeneratedRegex("<text [^>]*>([^<]*)</text>")]
    private static partial Regex SvgText();

    [GeneratedRegex(@"^(//|\*|/\*)")]
    private static partial Regex CommentLine();

    [GeneratedRegex("; // .*$")]
    private static partial Regex Comment();
}
