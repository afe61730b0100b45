using System.Text.RegularExpressions;
using NameBand.Job;
using NameBand.Web.Table;
using Xunit;

namespace NameBand.Tests.Web;

/// <summary>What a key is called on the page says by itself what it is.</summary>
public sealed partial class KeyLabelTests
{
    [Fact]
    public void No_two_keys_are_called_the_same() =>
        Assert.Equal([], JobKeyCard.All.GroupBy(KeyLabels.Of).Where(g => g.Count() > 1)
            .Select(g => $"{g.Key}: {string.Join(", ", g.Select(c => c.Path))}"));

    [Fact]
    public void Words_and_figures_stand_apart() =>
        Assert.Equal([], JobKeyCard.All.Select(KeyLabels.Of).Where(l => Glued().IsMatch(l) || l.StartsWith(' ')));

    [Theory]
    [InlineData("machine.breaksPer1000Stitches", "Thread breaks per 1,000 stitches")]
    [InlineData("bobbin.core", "Bobbin core")]
    [InlineData("hands.spoiledPer100Names", "Spoiled names per 100")]
    [InlineData("hem.circlePart", "Part of a full circle")]
    public void Words_that_were_glued_or_bare_are_said_in_full(string path, string label) =>
        Assert.Equal(label, KeyLabels.Of(JobKeyCard.All.Single(c => c.Path == path)));

    [GeneratedRegex("[a-z][0-9]")]
    private static partial Regex Glued();
}
