using System.Text.RegularExpressions;
using NameBand.Common;
using NameBand.Tests.House;
using Xunit;

namespace NameBand.Tests.CommonRoom;

/// <summary>What work is counted from is told with its number, as one or as several.</summary>
public sealed partial class CountedThingsTests
{
    /// <summary>Also of work that no sample has, such as stops of a machine with several threads.</summary>
    [Fact]
    public void All_that_work_can_be_counted_from_has_words()
    {
        string[] said = [.. Directory.GetFiles(Path.Combine(Repository.Root, "src", "NameBand.Core", "Estimating"), "*.cs")
            .SelectMany(f => CountedFrom().Matches(File.ReadAllText(f))).Select(m => m.Groups["things"].Value)
            .Distinct().Order(StringComparer.Ordinal)];
        Assert.True(said.Length > 12, string.Join(", ", said));
        Assert.Contains("stops", said);
        Assert.DoesNotContain(said, s => CountedThings.Of(2, Said.Plain(s)) is null);
    }

    [Theory]
    [InlineData("lantern-walk")]
    [InlineData("boat-banner")]
    [InlineData("quay-banner")]
    public void All_that_the_work_of_a_sample_is_counted_from_has_words(string sample)
    {
        var rows = Bander.Hours(Path.Combine(Repository.Root, "samples", sample)).Estimate!.Work.Rows;
        Assert.True(rows.Length > 10, sample);
        Assert.Empty(rows.Where(r => CountedThings.Of(2, r.CountedFrom) is null).Select(r => r.CountedFrom.English));
    }

    [Theory]
    [InlineData("hoopings", 1, "1 hooping")]
    [InlineData("stitches", 1, "1 stitch")]
    [InlineData("stitches", 12_345.4, "12,345 stitches")]
    [InlineData("m of line", 12.46, "12.5 m of line")]
    [InlineData("swatch", 1, "1 swatch")]
    [InlineData("of no kind", 3, "3 of no kind")]
    public void An_amount_is_as_before(string several, double count, string said) =>
        Assert.Equal(said, Wording.Amount(count, Said.Plain(several)).English);

    /// <summary>What stands behind the time of a row, or behind its name where the machine works.</summary>
    [GeneratedRegex(@"(?:WorkTime\.\w+,|\bAt\((?:""[^""]*""|\w+),)\s+""(?<things>[^""]+)""")]
    private static partial Regex CountedFrom();
}
