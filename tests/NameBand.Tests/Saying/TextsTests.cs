using Microsoft.CodeAnalysis.CSharp;
using NameBand.Common;
using NameBand.Tests.House;
using NameBand.Tests.Lettering;
using NameBand.Web.Table;
using Xunit;

namespace NameBand.Tests.Saying;

/// <summary>The resource file has every text that a person reads and no other, and what is not read from it yet is counted.</summary>
public sealed class TextsTests
{
    internal const string Renewing = "NAMEBAND_RENEW_TEXTS";
    private const string Kept = "tests/NameBand.Tests/Data/texts-left.txt";

    /// <summary>
    /// Those of the sources, what the page says of each key in the words of docs/job-file.md, and why each face is on the shelf.
    /// </summary>
    private static IEnumerable<SourceText> Texts => SourceTexts.All.Texts
        .Concat(KeyMeanings.All.Select(m => Of(Said.OfKey(m), "src/NameBand.Web/job-file.md,")))
        .Concat(LetteringRig.Shelf.Cards.Select(c => Of(c.Reason, "src/NameBand.Core/face.json,")));

    private static bool IsRenewed => Environment.GetEnvironmentVariable(Renewing) == "1";

    private static SourceText Of(Said text, string at) => new(SaidTemplate.KeyOf(text.Template), text.Template, at);

    [Fact]
    public void The_resource_file_has_every_text_and_no_other()
    {
        var texts = new SortedDictionary<string, string>(StringComparer.Ordinal);
        foreach (var text in Texts)
        {
            texts[text.Key] = text.English;
        }

        Assert.Equal(texts.Count, texts.Keys.Distinct(StringComparer.OrdinalIgnoreCase).Count());
        Assert.True(texts.Count > 500, $"Only {texts.Count} texts were found: the sources were not understood.");
        if (IsRenewed)
        {
            ResourceFile.Write(texts, Texts.ToLookup(t => t.Key, t => t.At.Split(',')[0]["src/NameBand.".Length..]));
        }

        var kept = ResourceFile.Read();
        var missing = texts.Where(t => !kept.Contains(t)).Select(t => $"missing: {t.Key}");
        var unused = kept.Where(t => !texts.ContainsKey(t.Key)).Select(t => $"unused: {t.Key}");
        Assert.True(
            kept.SequenceEqual(texts), $"{ResourceFile.FileName} is not what the sources say; renew it with {Renewing}=1.\n"
                + string.Join('\n', missing.Concat(unused).Take(20)));
    }

    [Fact]
    public void Nothing_is_said_that_is_neither_known_nor_plain()
    {
        string[] unknown = [.. SourceTexts.All.Unknown];
        Assert.True(
            unknown.Length == 0,
            "A text that is put together beforehand cannot be translated: write it as one text between quotes with holes, "
                + "or Said.Plain if it is a person's own.\n" + string.Join('\n', unknown.Take(40)));
    }

    [Fact]
    public void Nothing_in_the_markup_of_the_page_is_only_English()
    {
        string[] unsaid = [.. SourceTexts.All.UnsaidInMarkup];
        Assert.True(
            unsaid.Length == 0,
            "A text in markup is said by @T(\"…\"), and by @M(…) where other markup stands in it.\n" + string.Join('\n', unsaid.Take(40)));
    }

    /// <summary>What is still only English, room by room, may only get less.</summary>
    [Fact]
    public void English_that_is_not_said_yet_is_counted_and_does_not_grow()
    {
        string[] counts = [.. SourceTexts.All.Left.GroupBy(RoomOf).OrderBy(g => g.Key, StringComparer.Ordinal)
            .Select(g => FormattableString.Invariant($"{g.Key} {g.Count()}"))];
        string path = Path.Combine(Repository.Root, Kept);
        string[] heading = [.. File.ReadAllLines(path).Where(l => l.StartsWith('#'))];
        if (IsRenewed)
        {
            File.WriteAllText(path, string.Concat(heading.Concat(counts).Select(l => l + "\n")));
        }

        string[] kept = [.. File.ReadAllLines(path).Where(l => !l.StartsWith('#'))];
        Assert.True(
            kept.SequenceEqual(counts), $"{Kept} is not what is left; if there is less, renew it with {Renewing}=1.\n"
                + string.Join('\n', counts.Except(kept)) + "\n" + string.Join('\n', SourceTexts.All.Left));
    }

    private static string RoomOf(string left) => string.Join('/', left.Split(',')[0].Split('/').Skip(1).SkipLast(1).Take(2));

    [Theory]
    [InlineData("""Said A(int n) => $"Sew {n:0.0} of them";""", "Sew {0} of them")]
    [InlineData("""Said A(bool b) => b ? "Sew it" : "Leave it";""", "Leave it|Sew it")]
    [InlineData("""Said A(int n) => $"Sew {n} " + $"of {n}.";""", "Sew {0} of {1}.")]
    [InlineData("""Said A(int n, bool b) => b ? (Said)$"Sew {n}" : "none";""", "Sew {0}|…none")]
    [InlineData("""Said A(int n) => Wording.Count(n, "name");""", "{0} names|{0} names [one]")]
    [InlineData("""Said A(int n) => Said.Plural(n, "it is", $"they are {n}");""", "…they are {0}|…they are {0} [one]")]
    [InlineData("""Said A(int n) => $"{n} – {n}";""", "")]
    public void A_text_is_found_as_it_will_be_asked_for(string code, string keys) =>
        Assert.Equal(keys, string.Join('|', Tried(code).Texts.Where(t => t.At.Contains("Tried", StringComparison.Ordinal))
            .Select(t => t.Key).Distinct().Order(StringComparer.Ordinal)));

    [Theory]
    [InlineData("""Said A(string s) => s;""", 1)]
    [InlineData("""Said A(string s) => "Sew " + s;""", 1)]
    [InlineData("""Said A(bool b, int n) => b ? $"Sew {n}" : "none";""", 1)]
    [InlineData("""Said A(string s) => Said.Plain(s);""", 0)]
    [InlineData("""Said A(Said s) => $"Sew {s}";""", 0)]
    public void What_is_not_known_beforehand_is_found(string code, int found) =>
        Assert.Equal(found, Tried(code).Unknown.Count(u => u.Contains("Tried", StringComparison.Ordinal)));

    [Theory]
    [InlineData("""string A() => "Sew all of it";""", 1)]
    [InlineData("""Said A() => "Sew all of it";""", 0)]
    [InlineData("""string A() => "needle-paths/key";""", 0)]
    [InlineData("""string A() => throw new InvalidOperationException("It is a bug");""", 0)]
    public void English_that_is_left_is_found(string code, int found) =>
        Assert.Equal(found, Tried(code).Left.Count(l => l.Contains("Tried", StringComparison.Ordinal)));

    [Theory]
    [InlineData("""AddContent(1, "sew")""", 1)]
    [InlineData("""AddContent(1, b ? "sew" : T("leave"))""", 1)]
    [InlineData("""AddContent(1, $"sew {n}")""", 1)]
    [InlineData("""AddContent(1, T("sew"))""", 0)]
    [InlineData("""AddContent(1, ": ")""", 0)]
    [InlineData("""AddContent(1, kind == "sew" ? T("sew") : name)""", 0)]
    [InlineData("""AddMarkupContent(1, "<p class=\"lead\">Sew</p>")""", 1)]
    [InlineData("""AddMarkupContent(1, "<img alt=\"Sewn\">")""", 1)]
    [InlineData("""AddMarkupContent(1, "<p class=\"lead\"></p>")""", 0)]
    [InlineData("""AddAttribute(1, "aria-label", "Sew " + (n))""", 1)]
    [InlineData("""AddAttribute(1, "aria-label", T("Sew"))""", 0)]
    [InlineData("""AddAttribute(1, "class", "lead now")""", 0)]
    [InlineData("""AddComponentParameter(1, nameof(Field.Placeholder), RuntimeHelpers.TypeCheck<string>("as usual"))""", 1)]
    [InlineData("""AddComponentParameter(1, "ChildContent", (RenderFragment)((__builder2) => { __builder2.AddContent(2, "sew"); }))""", 1)]
    public void A_text_of_markup_that_is_not_said_is_found(string call, int found) =>
        Assert.Equal(found, MarkupTexts.Unsaid(CSharpSyntaxTree.ParseText($"__builder.{call};").GetRoot()).Count());

    private static SourceTexts Tried(string code) => SourceTexts.Of("using NameBand.Common; class Tried { " + code + " }");
}
