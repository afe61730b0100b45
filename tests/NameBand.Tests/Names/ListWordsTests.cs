using NameBand.Names;
using Xunit;

namespace NameBand.Tests.NamesRoom;

/// <summary>A meaning whose words go on in the next lines of the file is one meaning still.</summary>
public sealed class ListWordsTests
{
    [Theory]
    [InlineData("e-mail", "mail")]
    [InlineData("sähköposti", "mail")]
    [InlineData("belopp", "sum")]
    [InlineData("Guest book", "guestbook")]
    public void A_word_of_a_later_line_means_what_the_first_does(string header, string meaning) =>
        Assert.Equal(meaning, HeaderWords.MeaningOf(header));
}
