using System.Text.Json;
using NameBand.Common;
using Xunit;
using static NameBand.Tests.Saying.Spoken;

namespace NameBand.Tests.Saying;

/// <summary>A text says in English what it always said, and in another language what that language has for it.</summary>
public sealed class SaidTests
{
    private const string Accented = "en-XA";

    [Fact]
    public void English_is_alike_on_every_machine_and_is_what_JSON_has()
    {
        Said said = $"{1234.5:#,0.0} of {2} {Wording.Count(1, "name")}";
        Assert.Equal("1,234.5 of 2 1 name", In("de-DE", said));
        Assert.Equal("1,234.5 of 2 1 name", In("ar-SA", said));
        Assert.Equal(said.English, In("", said));
        Assert.Equal("\"1,234.5 of 2 1 name\"", In(Accented, () => JsonSerializer.Serialize(said)));
        Assert.Equal(said, JsonSerializer.Deserialize<Said>("\"1,234.5 of 2 1 name\""));
    }

    [Fact]
    public void A_text_has_its_template_for_a_key() => Assert.Equal(
        "Sew {0} of {{all}} {1}", ((Said)$"Sew {3:0.0} of {{all}} {"names"}").Template);

    [Fact]
    public void In_another_language_numbers_follow_it_and_names_stay()
    {
        Said said = $"{1234.5:#,0.0} names, “{"Ada Marsh"}” first";
        string told = In(Accented, said);
        Assert.StartsWith("«1\u00a0234,5 ñåméš, “Ada Marsh” fîŕšţ ~", told, StringComparison.Ordinal);
        Assert.EndsWith("»", told, StringComparison.Ordinal);
        Assert.InRange(told.Length, said.English.Length * 1.15, said.English.Length * 1.6);
    }

    [Fact]
    public void A_name_that_is_a_word_of_the_program_is_never_touched()
    {
        Assert.Equal("Round", In(Accented, Said.Plain("Round")));
        Assert.Contains("Round", In(Accented, (Said)$"Sew {"Round"}"), StringComparison.Ordinal);
        Assert.NotEqual("Round", In(Accented, "Round"));
    }

    [Fact]
    public void Texts_in_texts_and_places_are_said_in_the_same_language()
    {
        Said inner = "nothing";
        Assert.Contains("ñôţĥîñĝ", In(Accented, (Said)$"Sew {inner}"), StringComparison.Ordinal);
        Assert.Contains("ļîñé 3", In(Accented, (Said)$"Look at {new RowRef("names.csv", 3)}"), StringComparison.Ordinal);
        Assert.Contains("names.csv", In(Accented, new Where("names.csv", 3).InWords), StringComparison.Ordinal);
        Assert.Equal("names.csv, line 3", new Where("names.csv", 3).ToString());
        Assert.Equal("names.csv, line 3", In(Accented, () => new Where("names.csv", 3).ToString()));
    }

    [Fact]
    public void Figures_stay_in_their_order_where_all_else_runs_from_right_to_left()
    {
        var size = Wording.Size("160", "100");
        Assert.Equal("160 × 100 mm", size.English);
        Assert.DoesNotContain('\u2066', In(Accented, size));
        string mirrored = In("ar-XB", size);
        Assert.StartsWith("\u2066", mirrored, StringComparison.Ordinal);
        Assert.EndsWith("\u2069", mirrored, StringComparison.Ordinal);
        Assert.Equal("3 1/2 in", Length.FromInches(3.5).InInches().English);
        Assert.Contains("\u20663 1/2\u2069", In("ar-XB", Length.FromInches(3.5).InInches()), StringComparison.Ordinal);
        Assert.DoesNotContain('\u2066', In("ar-XB", Length.FromInches(0.5).InInches()));
    }

    [Theory]
    [InlineData(0, "0 names")]
    [InlineData(1, "1 name")]
    [InlineData(2, "2 names")]
    [InlineData(1200, "1,200 names")]
    public void A_count_is_as_before(int count, string said) => Assert.Equal(said, Wording.Count(count, "name").English);

    [Fact]
    public void Lists_lengths_and_spans_are_said_too()
    {
        Assert.Equal("a, b and c", Wording.List(["a", "b", "c"]).English);
        Assert.Contains(" åñđ ", In(Accented, Wording.List(["a", "b", "c"])), StringComparison.Ordinal);
        Assert.StartsWith("«50,8 mm", In(Accented, Length.FromMm(50.8).InMillimetres()), StringComparison.Ordinal);
        Assert.Equal("0 mm", Length.FromMm(-0.01).InMillimetres().English);
        Assert.Equal("1 h 5 min", Duration.InWords(63).English);
    }

    [Fact]
    public void What_is_null_stays_null() => Assert.Null((Said?)(string?)null);

    [Fact]
    public void A_language_that_runs_from_the_right_says_so()
    {
        Assert.True(In("ar-XB", () => Language.Now!.IsRightToLeft));
        Assert.False(In(Accented, () => Language.Now!.IsRightToLeft));
        Assert.Null(In("en-GB", () => Language.Now));
        Assert.Null(In("ar-SA", () => Language.Now));
    }
}
