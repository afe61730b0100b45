using System.Text;
using System.Text.Json;
using NameBand.Web.Table;
using Xunit;

namespace NameBand.Tests.WebRoom;

public class TapeUnitTests
{
    [Theory]
    [InlineData("144 in", true)]
    [InlineData("144\"", true)]
    [InlineData("12 ft", true)]
    [InlineData("4 yards", true)]
    [InlineData("12' 6\"", true)]
    [InlineData("11 1/2″", true)]
    [InlineData("3.66 m", false)]
    [InlineData("366 cm", false)]
    public void The_tape_is_the_one_the_lengths_are_written_in(string length, bool isInches) =>
        Assert.Equal(isInches, TapeUnit.IsInches(Job("A cloak", length)));

    /// <summary>Only lengths count, whatever else is written in the file.</summary>
    [Theory]
    [InlineData("Lanterns 2026 in the old town, 3 ft high, 2 in each window")]
    [InlineData("12 in")]
    public void A_title_is_no_length(string title) => Assert.False(TapeUnit.IsInches(Job(title, "3.66 m")));

    [Fact]
    public void Of_several_lengths_the_more_usual_unit_holds()
    {
        Assert.True(TapeUnit.IsInches("""{ "hem": { "length": ["3.66 m", "144 in"], "overlap": "1 in" } }"""u8));
        Assert.False(TapeUnit.IsInches("""{ "hem": { "length": ["3.66 m", "144 in"] } }"""u8));
        Assert.False(TapeUnit.IsInches("not JSON"u8));
        Assert.False(TapeUnit.IsInches(""u8));
    }

    private static byte[] Job(string title, string length) =>
        Encoding.UTF8.GetBytes(JsonSerializer.Serialize(new { title, hem = new { length } }));
}
