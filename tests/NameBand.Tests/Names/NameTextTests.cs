using NameBand.Names;
using Xunit;

namespace NameBand.Tests.NamesRoom;

public class NameTextTests
{
    [Theory]
    [InlineData("Anna Berg", "Anna Berg")]
    [InlineData("  Anna \t  Berg ", "Anna Berg")]
    [InlineData("Anna\u00A0\u2003\u3000Berg\u2028", "Anna Berg")]
    [InlineData("\u2800Anna\u1680Berg", "Anna Berg")]
    [InlineData("Zoe\u0308 Nun\u0303ez", "Zoë Nuñez")]
    [InlineData("mcdonald O’NEILL van der berg", "mcdonald O’NEILL van der berg")]
    [InlineData("=SUM(A1)", "=SUM(A1)")]
    [InlineData("+Plus", "+Plus")]
    [InlineData("-minus", "-minus")]
    [InlineData("@river", "@river")]
    [InlineData("'=x", "'=x")]
    public void Blanks_and_form_are_mended_and_nothing_else_is_touched(string raw, string clean)
    {
        var name = NameText.Clean(raw);

        Assert.Equal(clean, name.Text);
        Assert.Empty(name.Notes);
    }

    [Theory]
    [InlineData("An\u200Bna", "Anna", "1 invisible character taken out (zero width space U+200B)")]
    [InlineData("\uFEFFAnna", "Anna", "1 invisible character taken out (byte order mark U+FEFF)")]
    [InlineData("An\u00ADna", "Anna", "1 invisible character taken out (soft hyphen U+00AD)")]
    [InlineData(
        "\u202EgreB\u202C", "greB", "2 invisible characters taken out (writing direction mark U+202E, writing direction mark U+202C)")]
    [InlineData("An\u0007na", "Anna", "1 invisible character taken out (control character U+0007)")]
    [InlineData("Anna\uFE0F", "Anna", "1 invisible character taken out (variation selector U+FE0F)")]
    [InlineData("Anna\U000E0041", "Anna", "1 invisible character taken out (tag U+E0041)")]
    [InlineData("Anna\u3164", "Anna", "1 invisible character taken out (U+3164)")]
    [InlineData("An\uFFFEna", "Anna", "1 invisible character taken out (U+FFFE)")]
    [InlineData("Anna\r\nBerg", "Anna Berg", "a line break inside the name became a blank")]
    [InlineData("An\u200Dna", "Anna", "1 invisible character taken out (zero width joiner U+200D)")]
    public void What_cannot_be_seen_is_taken_out_with_a_note(string raw, string clean, string note)
    {
        var name = NameText.Clean(raw);

        Assert.Equal(clean, name.Text);
        Assert.Equal(note, Assert.Single(name.Notes));
    }

    /// <summary>Names in many scripts stay as they are, letter for letter (all are in NFC as written here).</summary>
    [Theory]
    [InlineData("ليلى النهري")]
    [InlineData("علی\u200Cرضا")] // Persian, non-joiner between joining letters
    [InlineData("נועה בן־נחל")]
    [InlineData("שָׁלוֹם")]
    [InlineData("नदी माथुर")]
    [InlineData("क\u094D\u200Dष")] // half form: joiner after virama
    [InlineData("শ্রীমতী র\u200D\u09CDযাব")] // Bengali: joiner between ra and virama
    [InlineData("ක\u0DCA\u200Dරිස්ටි")] // Sinhala: joiner after al-lakuna
    [InlineData("สมชาย ใจดี")]
    [InlineData("川上 みなと")]
    [InlineData("葛\U000E0100城")] // a variant of a Han character
    [InlineData("侮\uFE00城")] // a variant in Unicode's StandardizedVariants.txt
    [InlineData("Mia \u2764\uFE0F")] // a pictograph asked for in colour: emoji-variation-sequences.txt
    [InlineData("\u1000\uFE00")] // Myanmar, dotted form: StandardizedVariants.txt
    [InlineData("\uA856\uFE00")] // Phags-pa, reversed form: StandardizedVariants.txt
    [InlineData("강나루")]
    [InlineData("Σοφία Λυμπέρη")]
    [InlineData("Ваня Речной")]
    [InlineData("Անի Սարգսյան")]
    [InlineData("ნინო")]
    [InlineData("Đỗ Thu Lan Nguyễn")]
    [InlineData("Omolará Adéwùsì Ọlá")]
    [InlineData("𝒜 𠮷野")]
    [InlineData("👩\u200D🚀")] // held later by the letters' room, but shown whole
    public void Names_of_every_script_come_through_whole(string text)
    {
        var name = NameText.Clean(text);

        Assert.Equal(text.Normalize(), name.Text);
        Assert.Empty(name.Notes);
    }

    [Fact]
    public void Half_a_surrogate_pair_is_shown_as_broken()
    {
        Assert.True(NameText.Clean("An" + '\uD800' + "na").IsBroken);
    }

    [Fact]
    public void Cleaning_twice_is_cleaning_once()
    {
        CsCheck.Check.Sample(CsCheck.Gen.String, raw =>
        {
            string once = NameText.Clean(raw).Text;
            var again = NameText.Clean(once);
            Assert.Equal(once, again.Text);
            Assert.Empty(again.Notes);
        }, seed: "0000KOIPe036", iter: 5000);
    }

    [Fact]
    public void Very_long_text_is_cut_before_it_is_worked_on()
    {
        var name = NameText.Clean(string.Concat(Enumerable.Repeat("e\u0323\u0301", 5_000_000)));

        Assert.True(name.IsTooLong);
        Assert.Equal(15_000_000, name.Length);
        Assert.True(name.Text.Length <= 101);
    }
}
