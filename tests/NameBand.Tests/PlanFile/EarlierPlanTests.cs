using NameBand.Output;
using Xunit;

namespace NameBand.Tests.PlanFileRoom;

/// <summary>What a later plan goes on from, read from plan.json.</summary>
public sealed class EarlierPlanTests
{
    [Theory]
    [InlineData(1)]
    [InlineData(2)]
    public void How_many_strips_lay_side_by_side_is_read_from_the_cloths(int lanes)
    {
        using var folder = new TemporaryFolder()
            .With("names.csv", "name\n" + string.Concat(Enumerable.Range(0, 8).Select(i => $"{(char)('A' + i)}nna Quill\n")))
            .With("job.json", $$"""
                { "format": 1, "lists": ["names.csv"], "hem": { "length": "50 cm", "turn": 0 },
                  "strip": { "rounds": 2, "stripsSideBySide": {{lanes}} }, "lettering": { "height": 8 } }
                """);
        Assert.NotNull(Bander.Make(folder.FullPath).Plan);
        var plan = PlanOverview.Read(folder["out"]).Value!.Plan;
        Assert.Equal(lanes, plan.LanesBeside);
        Assert.Equal(2, plan.Rounds.Length);
    }
}
