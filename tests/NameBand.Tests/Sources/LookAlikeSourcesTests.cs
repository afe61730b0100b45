using NameBand.Names;
using Xunit;

namespace NameBand.Tests.Sources;

/// <summary>
/// Source: Unicode Technical Standard 39, Unicode Security Mechanisms, section 4 (Confusable Detection): the skeleton,
/// and its data in version 15.0. The word pairs are those UTS 39 and UTR 36 (Unicode Security Considerations, section 2)
/// use as examples, from memory.
/// </summary>
public class LookAlikeSourcesTests
{
    [Theory]
    [InlineData("paypal", "p\u0430yp\u0430l")] // Latin and Cyrillic a
    [InlineData("scope", "\u0455\u0441\u043E\u0440\u0435")] // wholly Cyrillic
    [InlineData("toys-\u044F-us", "toys-\u044F-us")]
    [InlineData("rn", "m")]
    [InlineData("Circle", "\u0421irc\u0049\u0065")] // Cyrillic Es; capital I looks like small l
    [InlineData("s\u00F8s", "so\u0338s")] // o with stroke, o with overlay
    [InlineData("a\u0308", "\u00E4")]
    public void These_are_confusable(string a, string b) => Assert.Equal(Resemblance.Skeleton(a), Resemblance.Skeleton(b));

    [Theory]
    [InlineData("paypal", "paypol")]
    [InlineData("a", "e")]
    [InlineData("o", "c")]
    public void These_are_not(string a, string b) => Assert.NotEqual(Resemblance.Skeleton(a), Resemblance.Skeleton(b));

    [Fact]
    public void The_table_has_the_size_of_version_15_0()
    {
        // Counted when it was made from ICU 72.1: characters that are their own canonical decomposition.
        Assert.Equal(5247, UnicodeTables.Prototypes.Count);
        Assert.Equal("rn", UnicodeTables.Prototypes['m']);
        Assert.Equal("l", UnicodeTables.Prototypes['I']);
        Assert.Equal("O", UnicodeTables.Prototypes['0']);
    }
}
