using NameBand.Common;
using NameBand.Job;
using NameBand.Lettering.Faces;
using Xunit;

namespace NameBand.Tests.JobRoom;

/// <summary>Groups in job.json, read and refused.</summary>
public class GroupsKeysTests
{
    private static Result<BandJob> Read(string groups, string more = "") => JobReaderTests.ReadAll(
        $$"""{ "format": 1, "lists": ["names.csv"], "hem": { "length": "3.66 m" }, "columns": { "group": "gift" }, "groups": {{groups}}{{more}} }""");

    [Fact]
    public void Rules_and_wishes_are_read()
    {
        var job = Read("""
            [ { "name": "lamp bearers", "from": 100, "heightFactor": 1.25, "face": "Lato Bold", "place": "ownRound", "heading": "Lamp bearers" },
              { "name": "oars", "from": 50, "below": 100, "place": "first" },
              { "name": "quay", "values": ["Quay Street", "Ropewalk"], "place": "last" },
              { "name": "others", "rest": true } ]
            """).Value!;
        Assert.Equal("gift", job.Groups.Column);
        var all = job.Groups.All;
        Assert.Equal(
            ("lamp bearers", 1.25, "Lato Bold", GroupPlace.OwnRound, "Lamp bearers"),
            (all[0].Name, all[0].HeightFactor, all[0].Face, all[0].Place, all[0].Heading));
        Assert.Equal((50, 100, GroupPlace.First), (all[1].From, all[1].Below, all[1].Place));
        Assert.Equal(["Quay Street", "Ropewalk"], all[2].Values.AsEnumerable());
        Assert.True(all[3].IsRest);
        Assert.Equal(1, all[3].HeightFactor);
    }

    [Theory]
    [InlineData("""5""", "a list of groups")]
    [InlineData("""[]""", "a list of groups")]
    [InlineData("""[ "patrons" ]""", "a list of groups")]
    [InlineData("""[ null ]""", "a list of groups")]
    [InlineData("""[ {} ]""", "no name")]
    [InlineData("""[ { "name": "a" } ]""", "who is in it")]
    [InlineData("""[ { "name": "a", "rest": true, "from": 3 } ]""", "more than one way")]
    [InlineData("""[ { "name": "a", "rest": "yes" } ]""", "true or false")]
    [InlineData("""[ { "name": "", "rest": true } ]""", "one to 80")]
    [InlineData("""[ { "name": "a", "values": ["gold", " "] } ]""", "a list of texts")]
    [InlineData("""[ { "name": "a\u0000b", "rest": true } ]""", "one to 80")]
    [InlineData("""[ { "name": "a", "values": [] } ]""", "a list of texts")]
    [InlineData("""[ { "name": "a", "values": "gold" } ]""", "a list of texts")]
    [InlineData("""[ { "name": "a", "values": [ { } ] } ]""", "a list of texts")]
    [InlineData("""[ { "name": "a", "from": 10, "below": 10 } ]""", "not below its end")]
    [InlineData("""[ { "name": "a", "from": "10" } ]""", "takes a number")]
    [InlineData("""[ { "name": "a", "from": 1e999 } ]""", "takes a number")]
    [InlineData("""[ { "name": "a", "rest": true, "heightFactor": 0 } ]""", "from 0.3 to 3")]
    [InlineData("""[ { "name": "a", "rest": true, "heightFactor": -1 } ]""", "from 0.3 to 3")]
    [InlineData("""[ { "name": "a", "rest": true, "heightFaktor": 1.2 } ]""", "Did you mean heightFactor")]
    [InlineData("""[ { "name": "a", "rest": true, "place": "frist" } ]""", "Did you mean \"first\"")]
    [InlineData("""[ { "name": "a", "rest": true, "heading": "A" } ]""", "among the others")]
    [InlineData("""[ { "name": "a", "rest": true, "rest": true } ]""", "twice")]
    [InlineData("""[ { "name": "a", "rest": true }, { "name": "b", "rest": true } ]""", "the rest")]
    [InlineData("""[ { "name": "a", "rest": true }, { "name": "A", "from": 1 } ]""", "Two groups are called")]
    [InlineData("""[ { "name": "a", "values": ["gold"] }, { "name": "b", "values": ["GOLD"] } ]""", "both hold the value")]
    [InlineData("""[ { "name": "a", "from": 10 }, { "name": "b", "from": 5 } ]""", "some of the same numbers")]
    [InlineData("""[ { "name": "a", "rest": true, "face": "../x.ttf" } ]""", "outside the job's folder")]
    public void What_cannot_be_meant_is_refused_with_what_to_do(string groups, string says)
    {
        var read = Read(groups);
        Assert.False(read.IsUsable);
        Assert.Contains(
            read.Problems, p => p.Severity == Severity.CannotUse && $"{p.Found} {p.Mend}".Contains(says, StringComparison.Ordinal));
        Assert.All(read.Problems.Where(p => p.Severity == Severity.CannotUse), p => Assert.NotEmpty(p.Mend.English));
    }

    [Fact]
    public void What_is_wrong_with_a_group_is_told_of_that_group() => Assert.Equal(
        ["groups[1].heightFactor", "groups[3].heightFactor"],
        Read("""
            [ { "name": "a", "below": 2, "heightFactor": "x" }, { "name": "b", "values": ["y"] },
              { "name": "c", "from": 3, "heightFactor": 99 } ]
            """)
            .Problems.Where(p => p.Severity == Severity.CannotUse).Select(p => p.Where.Key));

    [Fact]
    public void Numbers_that_meet_at_a_border_are_in_one_group_only() =>
        Assert.True(Read("""[ { "name": "a", "from": 10 }, { "name": "b", "below": 10 } ]""").IsUsable);

    [Fact]
    public void Free_order_and_places_do_not_go_together() => Assert.Contains(
        Read("""[ { "name": "a", "from": 10, "place": "first" } ]""", """, "lettering": { "order": "bestFit" }""").Problems,
        p => p.Where.Key == "lettering.order" && p.Severity == Severity.CannotUse);

    [Fact]
    public void A_machines_own_letters_have_groups_without_faces()
    {
        const string typed = """, "way": "machineLetters", "letters": { "sizes": ["8 mm"] }""";
        Assert.True(Read("""[ { "name": "a", "from": 10 } ]""", typed).IsUsable);
        Assert.Contains(
            Read("""[ { "name": "a", "from": 10, "face": "Lato Bold" } ]""", typed).Problems,
            p => p.Where.Key == "groups[1].face" && p.Severity == Severity.CannotUse);
    }

    [Fact]
    public void Groups_without_a_column_and_a_column_without_groups_are_told()
    {
        Assert.False(
            JobReaderTests.ReadAll(
                """{ "lists": ["names.csv"], "hem": { "length": "3 m" }, "groups": [ { "name": "a", "from": 1 } ] }""").IsUsable);
        Assert.False(
            JobReaderTests.ReadAll("""{ "lists": ["names.csv"], "hem": { "length": "3 m" }, "columns": { "group": "gift" } }""").IsUsable);
    }
}
