using System.Globalization;
using CsCheck;
using NameBand.Common;
using Xunit;

namespace NameBand.Tests.CommonRoom;

public class LengthTests
{
    [Theory]
    [InlineData("2 in", 50.8)]
    [InlineData("1 1/2 in", 38.1)]
    [InlineData("1-1/2 in", 38.1)]
    [InlineData("3/4\"", 19.05)]
    [InlineData("3/4 in", 19.05)]
    [InlineData("½ in", 12.7)]
    [InlineData("1½\"", 38.1)]
    [InlineData("1 ½ inches", 38.1)]
    [InlineData("2⅜ in", 60.325)]
    [InlineData("1″", 25.4)]
    [InlineData("1”", 25.4)]
    [InlineData("2''", 50.8)]
    [InlineData("50 mm", 50)]
    [InlineData("50mm", 50)]
    [InlineData("50 MM", 50)]
    [InlineData(".5 mm", 0.5)]
    [InlineData("12 cm", 120)]
    [InlineData("3.66 m", 3660)]
    [InlineData("0.1 m", 100)]
    [InlineData("144\"", 3657.6)]
    [InlineData("4 ft", 1219.2)]
    [InlineData("4'", 1219.2)]
    [InlineData("12 ft 3 1/2 in", 3746.5)]
    [InlineData("12' 3\"", 3733.8)]
    [InlineData("4 yd", 3657.6)]
    [InlineData("3 m 66 cm", 3660)]
    [InlineData("５０ mm", 50)]
    [InlineData("50 ㎜", 50)]
    [InlineData("  50\tmm ", 50)]
    [InlineData("0 mm", 0)]
    [InlineData("10000 m", 10_000_000)]
    public void Reads_what_people_write(string text, double mm)
    {
        Assert.True(Length.TryParse(text, out var length, out Said why), why.English);
        Assert.Equal(mm, length.Mm);
        Assert.Equal("", why);
    }

    [Theory]
    [InlineData(null, "There is no length here.")]
    [InlineData("", "There is no length here.")]
    [InlineData("  ", "There is no length here.")]
    [InlineData("50", "“50” has no unit. Add one, such as \"50 mm\", \"50 cm\" or \"50 in\".")]
    [InlineData("3,66 m", "has a comma")]
    [InlineData("3,660 mm", "has a comma")]
    [InlineData("-3 in", "“-3 in” is negative.")]
    [InlineData("−3 in", "is negative.")]
    [InlineData("NaN mm", "“NaN mm” is not a length.")]
    [InlineData("mm", "“mm” is not a length.")]
    [InlineData("Infinity", "is not a length.")]
    [InlineData("1e400 mm", "“1e400” in “1e400 mm” is not a number")]
    [InlineData("1e3 mm", "is not a number")]
    [InlineData("10001 m", "is more than 10 km.")]
    [InlineData("99999999999999999999999999999999999 mm", "is more than 10 km.")]
    [InlineData("3 furlongs", "“furlongs” is not a unit of length")]
    [InlineData("3 in 4", "“3 in 4” has no unit.")]
    [InlineData("3 in 4 ft", "in a way that is not clear.")]
    [InlineData("3 m 4 in", "in a way that is not clear.")]
    [InlineData("3 in 4 in", "in a way that is not clear.")]
    [InlineData("1 2 in", "“1 2” in “1 2 in” is not a number")]
    [InlineData("1/0 in", "is not a number")]
    [InlineData("1/2/3 in", "is not a number")]
    [InlineData("1.2.3 mm", "is not a number")]
    [InlineData("3 -4 mm", "is not a number")]
    [InlineData("two inches", "is not a length.")]
    [InlineData("5\u0007mm\ud800", "is not a unit")]
    public void Says_what_is_wrong_and_what_to_write(string? text, string part)
    {
        Assert.False(Length.TryParse(text, out _, out Said why));
        Assert.Contains(part, why.English, StringComparison.Ordinal);
        Assert.DoesNotContain(why.English, char.IsControl);
        Assert.EndsWith(".", why.English, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(0, "0 in", "0 mm", "0 m")]
    [InlineData(12.7, "1/2 in", "12.7 mm", "0.013 m")]
    [InlineData(25.4, "1 in", "25.4 mm", "0.025 m")]
    [InlineData(38.1, "1 1/2 in", "38.1 mm", "0.038 m")]
    [InlineData(10.4, "7/16 in", "10.4 mm", "0.01 m")]
    [InlineData(3660, "144 1/8 in", "3660 mm", "3.66 m")]
    [InlineData(3646.04, "143 9/16 in", "3646 mm", "3.646 m")]
    [InlineData(-6.0, "-1/4 in", "-6 mm", "-0.006 m")]
    [InlineData(-0.01, "0 in", "0 mm", "0 m")]
    public void Prints_as_on_a_tape_measure(double mm, string inches, string millimetres, string metres)
    {
        var length = Length.FromMm(mm);
        Assert.Equal(inches, length.InInches());
        Assert.Equal(millimetres, length.InMillimetres());
        Assert.Equal(metres, length.InMetres());
    }

    [Fact]
    public void Every_sixteenth_of_an_inch_is_read_back_as_it_was_printed() =>
        Gen.Int[0, 16 * 12 * 3000].Sample(
            sixteenths =>
            {
                var length = Length.FromInches(sixteenths / 16.0);
                Assert.True(Length.TryParse(length.InInches().English, out var back, out Said why), why.English);
                Assert.Equal(length.Mm, back.Mm, 1e-9 * Math.Max(1, length.Mm));
            },
            seed: "0003d1rPBGu0");

    [Fact]
    public void Any_length_is_read_back_within_what_its_printing_rounds_away() =>
        Gen.Double[0, Length.LongestReadMm].Sample(
            mm =>
            {
                var length = Length.FromMm(mm);
                AssertClose(length, length.ToString(), 1e-6);
                AssertClose(length, length.InMillimetres().English, 0.05 + 1e-6);
                AssertClose(length, length.InMetres().English, 0.5 + 1e-6);
                AssertClose(length, length.InInches().English, (Length.MmPerInch / 32) + 1e-6);
            },
            seed: "0003d1rPBGu0");

    [Fact]
    public void No_text_makes_it_throw() =>
        Gen.String[Gen.Char[" 0123456789.,/-'\"½⅜minftycdeE∞\u2032\ud800\u0000"], 0, 20].Sample(
            text =>
            {
                bool isRead = Length.TryParse(text, out var length, out Said why);
                Assert.Equal(isRead, why.IsEmpty);
                Assert.InRange(length.Mm, 0, Length.LongestReadMm);
            },
            seed: "0003d1rPBGu0", iter: 20_000);

    [Fact]
    public void A_comma_culture_changes_nothing()
    {
        var before = CultureInfo.CurrentCulture;
        try
        {
            CultureInfo.CurrentCulture = new CultureInfo("de-DE");
            Assert.True(Length.TryParse("3.66 m", out var length, out _));
            Assert.Equal(3660, length.Mm);
            Assert.Equal("50.8 mm", Length.FromMm(50.8).InMillimetres());
            Assert.Equal("50.8 mm", Length.FromMm(50.8).ToString());
        }
        finally
        {
            CultureInfo.CurrentCulture = before;
        }
    }

    private static void AssertClose(Length expected, string printed, double toleranceMm)
    {
        Assert.True(Length.TryParse(printed, out var back, out Said why), why.English);
        Assert.InRange(back.Mm - expected.Mm, -toleranceMm, toleranceMm);
    }
}
