using System.Text.RegularExpressions;
using Xunit;

namespace NameBand.Tests.House;

/// <summary>
/// The page mirrors itself for a language that runs from right to left: its styles speak of start and end, not of left and right.
/// </summary>
public sealed partial class MirroringTests
{
    /// <summary>What stays on its side in every language, and why.</summary>
    private static readonly (string Form, string Why)[] Physical =
    [
        (@"^background: var\(--stitch[\w-]*\) repeat-x left ", "a row of stitches runs the whole width"),
        (@"^object-position: left top$", "what is drawn on the canvas is the strip itself, which does not mirror"),
        (@"^transform: translate\(-50%, ", "half of its own width: it stands in the middle of its place"),
    ];

    private static IEnumerable<(string At, string Declaration)> Declarations => Repository.Files("src", ".css")
        .SelectMany(f => Declaration().Matches(Remark().Replace(f.Text, "")).Select(m => (f.Path, m.Groups[1].Value.Trim())));

    [Fact]
    public void Styles_of_the_page_mirror_by_themselves()
    {
        string[] found = [.. Declarations.Where(d => IsPhysical(d.Declaration) && !Physical.Any(p => Regex.IsMatch(d.Declaration, p.Form)))
            .Select(d => $"{d.At}: {d.Declaration}")];
        Assert.True(found.Length == 0, "Say start and end, inline and block, so that it mirrors.\n" + string.Join('\n', found));
    }

    [Fact]
    public void Nothing_is_let_through_that_is_not_there() =>
        Assert.All(Physical, p => Assert.Contains(Declarations, d => IsPhysical(d.Declaration) && Regex.IsMatch(d.Declaration, p.Form)));

    [Fact]
    public void No_style_has_words_of_its_own() => Assert.DoesNotContain(Declarations, d => Words().IsMatch(d.Declaration));

    [Theory]
    [InlineData("margin-left: 1rem", true)]
    [InlineData("right: 0", true)]
    [InlineData("text-align: left", true)]
    [InlineData("padding: 0 1rem 0 0", true)]
    [InlineData("box-shadow: inset 3px 0 0 red", true)]
    [InlineData("transform: translateX(1rem)", true)]
    [InlineData("padding: 0 1rem 2rem 1rem", false)]
    [InlineData("padding: 1rem clamp(1rem, 2vw, 2rem) 3rem", false)]
    [InlineData("margin-inline-start: 1rem", false)]
    [InlineData("box-shadow: 0 6px 14px black", false)]
    [InlineData("grid-area: machine-left", false)]
    public void A_side_is_found(string declaration, bool isFound) => Assert.Equal(isFound, IsPhysical(declaration));

    private static bool IsPhysical(string declaration)
    {
        string[] parts = declaration.Split(':', 2);
        string[] sides = [.. Value().Matches(parts[1]).Select(m => m.Value)];
        return Side().IsMatch(declaration) || (Shorthand().IsMatch(parts[0]) && sides.Length == 4 && sides[1] != sides[3]);
    }

    [GeneratedRegex(@"/\*.*?\*/", RegexOptions.Singleline)]
    private static partial Regex Remark();

    [GeneratedRegex(@"(?<=[{;]\s*)([a-z-]+: [^;{}]+)(?=[;}])")]
    private static partial Regex Declaration();

    [GeneratedRegex(@"(?<![\w-])(?:(?:margin|padding|border|scroll-margin|scroll-padding)-)?(?:left|right)(?![\w-]*\))(?=[\s:;,-]|$)|float|translate|box-shadow:(?: inset)? -?[1-9.]")]
    private static partial Regex Side();

    [GeneratedRegex(@"^(?:margin|padding|inset|border-width|border-color|border-style)$")]
    private static partial Regex Shorthand();

    [GeneratedRegex(@"(?:[^\s(]|\([^)]*\))+")]
    private static partial Regex Value();

    [GeneratedRegex(@"^content: ""[^""]*[A-Za-z]")]
    private static partial Regex Words();
}
