using System.Text;
using NameBand.Common;
using NameBand.Job;
using Xunit;

namespace NameBand.Tests.JobRoom;

/// <summary>Keys that got plainer names are read by their older ones for ever, and written by the newer ones.</summary>
public sealed class OlderSpellingTests
{
    private const string Before =
        """
        { "format": 1, "way": "traced", "lists": ["names.csv"],
          "hem": { "length": "3.66 m", "turn": 0.75 }, "strip": { "rounds": 2, "lanes": 2 } }
        """;

    private const string Now =
        """
        { "format": 1, "way": "tracedLetters", "lists": ["names.csv"],
          "hem": { "length": "3.66 m", "circlePart": 0.75 }, "strip": { "rounds": 2, "stripsSideBySide": 2 } }
        """;

    [Fact]
    public void Both_names_are_the_same_job()
    {
        var (before, now) = (JobReaderTests.ReadAll(Before), JobReaderTests.ReadAll(Now));

        Assert.Equal((0.75, 2, Way.Traced), (now.Value!.Hem.Turn, now.Value.Layout.Lanes, now.Value.Ways.Single()));
        Assert.Equal((before.Value!.Hem.Turn, before.Value.Layout.Lanes), (now.Value.Hem.Turn, now.Value.Layout.Lanes));
        Assert.Equal(before.Problems, now.Problems);
        var skirt = JobReaderTests.ReadAll(
            """{ "lists": ["names.csv"], "hem": { "skirt": { "circlePart": 0.5, "waist": "70 cm", "length": "60 cm" } } }""");
        Assert.Equal(0.5, skirt.Value!.Hem.Skirt!.Turn);
        Assert.Equal(["hem.circlePart", "hem.skirt.circlePart", "strip.stripsSideBySide"],
            OlderSpellings.All.Select(OlderSpellings.ToToday).Order(StringComparer.Ordinal));
        Assert.All(OlderSpellings.All, o => Assert.Contains(JobKeys.All, k => k.Path == OlderSpellings.ToToday(o)));
    }

    [Theory]
    [InlineData("\"turn\": 3", "hem.turn", "hem.turn is 3.")]
    [InlineData("\"circlePart\": 3", "hem.circlePart", "hem.circlePart is 3.")]
    [InlineData("\"circlePart\": 1, \"turn\": 1", "hem.turn", "hem.turn is another name of hem.circlePart, which stands on line 1.")]
    [InlineData("\"circlepart\": 1", "hem.circlepart", "NameBand does not know the key hem.circlepart.")]
    public void What_is_wrong_is_told_by_the_name_that_was_written(string key, string where, string found)
    {
        var problem = Assert.Single(
            JobReaderTests.ReadAll($$"""{ "format": 1, "lists": ["names.csv"], "hem": { "length": "3 m", {{key}} } }""").Problems,
            p => p.Severity == Severity.CannotUse);
        Assert.Equal((where, found), (problem.Where.Key, problem.Found));
    }

    [Fact]
    public void What_is_set_goes_by_its_newer_name_in_the_place_of_the_older()
    {
        byte[] file = Encoding.UTF8.GetBytes("""{ "hem": { "turn": 0.75, "length": "3 m" }, "strip": { "lanes": 2 } }""");
        Assert.Equal("0.75", JobEditing.ValueOf(file, "hem.circlePart"));
        Assert.Equal("2", JobEditing.ValueOf(file, "strip.lanes"));

        byte[] set = JobEditing.Apply(file, [new JobEdit("hem.circlePart", "0.5"), JobEdit.Remove("strip.stripsSideBySide")])!;
        Assert.Equal(
            """{"hem":{"circlePart":0.5,"length":"3m"}}""", string.Concat(Encoding.UTF8.GetString(set).Where(c => !char.IsWhiteSpace(c))));
        Assert.Equal(set, JobEditing.Apply(file, [new JobEdit("hem.turn", "0.5"), JobEdit.Remove("strip.lanes")]));
    }
}
