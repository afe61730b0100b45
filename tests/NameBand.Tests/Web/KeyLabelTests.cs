using System.Text.RegularExpressions;
using NameBand.Common;
using NameBand.Job;
using NameBand.Web.Table;
using Xunit;
using static NameBand.Tests.Saying.Spoken;

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
        Assert.Equal([], JobKeyCard.All.Select(c => KeyLabels.Of(c).English).Where(l => Glued().IsMatch(l) || l.StartsWith(' ')));

    [Fact]
    public void Every_key_and_every_word_to_choose_can_be_said_in_another_language()
    {
        Assert.Equal([], JobKeyCard.All.Where(c => !IsSaid(KeyLabels.Of(c))).Select(c => c.Path));
        Assert.Equal([], JobKeyCard.All.SelectMany(c => c.Words).Distinct().Where(w => !IsSaid(KeyLabels.Said(w))));

        static bool IsSaid(Said label) => In("en-XA", label).StartsWith('«');
    }

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
