using NameBand.Common;
using NameBand.Tests.House;
using Xunit;

namespace NameBand.Tests.CommonRoom;

/// <summary>What work is counted from is told with its number, as one or as several.</summary>
public sealed class CountedThingsTests
{
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
}
