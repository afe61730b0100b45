using CsCheck;
using NameBand.Job;
using NameBand.MachineLetters;
using NameBand.MachineLetters.Alphabets;
using Xunit;

namespace NameBand.Tests.MachineLettersRoom;

public class KeyingTests
{
    [Theory]
    [InlineData("Bartholomew Underhill", 16, false, "Bartholomew |Underhill")]
    [InlineData("Bartholomew Underhill", 16, true, "Bartholomew| Underhill")]
    [InlineData("Bartholomew Underhill", 11, false, "Bartholomew|Underhill")]
    [InlineData("Bartholomew Underhill", 5, false, "Barth|olome|w |Under|hill")]
    [InlineData("Kit", 16, false, "Kit")]
    [InlineData("Ada de la Mar", 6, false, "Ada de|la Mar")]
    public void Long_names_are_cut_with_the_blank_in_the_right_part(string name, int holds, bool keepsLeading, string parts) =>
        Assert.Equal(parts, string.Join('|', NameParts.Cut(Letters.Of(name), holds, keepsLeading).Select(p => string.Concat(p.Keyed))));

    [Fact]
    public void No_part_is_too_long_or_begins_with_a_blank_that_would_be_lost_and_no_letter_is_lost()
    {
        Gen.Select(Gen.String[Gen.Char["abc "], 1, 40], Gen.Int[1, 20], Gen.Bool).Sample(
            (raw, holds, keeps) =>
            {
                string name = string.Join(' ', raw.Split(' ', StringSplitOptions.RemoveEmptyEntries));
                if (name.Length == 0)
                {
                    return;
                }

                var letters = Letters.Of(name);
                var parts = NameParts.Cut(letters, holds, keeps);
                Assert.All(parts, p => Assert.InRange(p.Keyed.Length, 1, holds));
                Assert.True(keeps || parts.All(p => p.Keyed[0] != " "));
                Assert.Equal(name.Replace(" ", ""), string.Concat(parts.SelectMany(p => p.Keyed)).Replace(" ", ""));
                Assert.All(parts, p => Assert.Equal(letters.Skip(p.First).Take(p.Keyed.Length), p.Keyed));
            },
            seed: "0000NamePrt1", iter: 500);
    }

    /// <summary>Worked out with a strip of paper: read along the letters, and see whether sewing goes the same way.</summary>
    [Theory]
    [InlineData(StripFeed.Lengthwise, true, false, true)]
    [InlineData(StripFeed.Lengthwise, false, false, false)]
    [InlineData(StripFeed.Lengthwise, true, true, false)]
    [InlineData(StripFeed.Lengthwise, false, true, true)]
    [InlineData(StripFeed.FromRight, true, false, true)]
    [InlineData(StripFeed.FromLeft, true, false, false)]
    [InlineData(StripFeed.FromRight, true, true, false)]
    [InlineData(StripFeed.FromLeft, true, true, true)]
    public void Sewing_goes_against_the_feed(StripFeed feed, bool topsRight, bool mirrored, bool firstLetterFirst) =>
        Assert.Equal(firstLetterFirst, SewingDirection.FirstLetterFirst(
            LettersSettings.Usual with { Feed = feed, TopsRight = topsRight, Mirrored = mirrored }));
}
