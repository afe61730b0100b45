using NameBand.Names;
using Xunit;

namespace NameBand.Tests.NamesRoom;

public class ResemblanceTests
{
    [Theory]
    [InlineData("Anna Berg", "anna berg")]
    [InlineData("Anna Berg", "ANNA BERG")]
    [InlineData("Anna Berg", "AnnaBerg")]
    [InlineData("Zoë", "Zoe")]
    [InlineData("Łucja", "Lucja")]
    [InlineData("Søren", "SOREN")]
    [InlineData("Groß", "GROSS")]
    [InlineData("Νίκος", "ΝΙΚΟΣ")]
    [InlineData("İpek", "ipek")]
    [InlineData("Ida", "1da")]
    [InlineData("Olga", "0lga")]
    [InlineData("Ian", "lan")]
    [InlineData("Marna", "Mama")]
    [InlineData("Anna", "Аnnа")] // Cyrillic А and а
    [InlineData("ANNA", "ΑΝΝΑ")] // Greek capitals
    [InlineData("O'Dell", "O’Dell")]
    [InlineData("Ａｎｎａ", "Anna")]
    [InlineData("علی\u200Cرضا", "علیرضا")]
    [InlineData("احمد", "أحمد")]
    [InlineData("Ọlá", "Ola")]
    [InlineData("葛\U000E0100城", "葛城")]
    public void Names_a_reader_would_take_for_each_other_share_a_key(string a, string b) => Assert.True(Alike(a, b));

    [Theory]
    [InlineData("Anna", "Anne")]
    [InlineData("Maria", "Mario")]
    [InlineData("かき", "がぎ")] // another letter, not an accent
    [InlineData("रवि", "रवी")] // another vowel
    [InlineData("สุดา", "สีดา")]
    [InlineData("강나루", "강나라")]
    [InlineData("山田", "川田")]
    [InlineData("J. Berg", "J. Burg")]
    public void Different_names_do_not(string a, string b) => Assert.False(Alike(a, b));

    [Theory]
    [InlineData("Anna", "anna", "capital and small letters")]
    [InlineData("Anna Maria", "AnnaMaria", "blanks")]
    [InlineData("Zoë", "Zoe", "accents, blanks or capital letters")]
    [InlineData("Anna", "Аnna", "letters that look alike")]
    public void It_says_in_what_they_differ(string a, string b, string words) => Assert.Equal(words, Resemblance.DifferOnlyIn(a, b));

    private static bool Alike(string a, string b)
    {
        var (a1, a2) = Resemblance.Keys(a.Normalize());
        var (b1, b2) = Resemblance.Keys(b.Normalize());
        return a1 == b1 || a2 == b2;
    }
}
