using System.Text.Json;
using NameBand.Job;
using NameBand.Reports.Answers;
using NameBand.Tests.CommandLine;
using Xunit;

namespace NameBand.Tests.ChoosingRoom;

/// <summary>What her machines cannot do is offered as it is set only; what they can, is found.</summary>
public sealed class WorkshopPlansTests
{
    /// <summary>Pasted line by line, no group comes twice.</summary>
    [Fact]
    public void Keys_of_one_group_are_one_line()
    {
        JobEdit[] edits =
        [
            new("fabric", "\"linen\""), new("lettering.height", "\"6 mm\""), new("strip.cutWidth", "\"60 mm\""),
            JobEdit.Remove("strip.piece"), new("strip.rounds", "1"),
        ];
        string[] lines =
        [
            "\"fabric\": \"linen\"", "\"lettering\": { \"height\": \"6 mm\" }", "\"strip\": { \"cutWidth\": \"60 mm\", \"rounds\": 1 }",
            "take strip.piece out",
        ];
        Assert.Equal(lines, PlansTelling.Lines(edits).Select(l => l.English));
    }

    [Fact]
    public void Where_every_machine_is_guided_by_hand_tracing_is_offered_and_no_other_needle_paths()
    {
        using var folder = new TemporaryFolder().With("names.csv", "Name\nOrla Penhale\nBram Sedgewick\nTuva Lind\n")
            .With("job.json", """{ "format": 1, "lists": ["names.csv"], "hem": { "length": "0.7 m", "turn": 0 } }""")
            .With("workshop.json", """{ "format": 1, "machines": [{ "name": "treadle", "takes": ["hands"] }] }""");
        var run = CliRun.Of("plans", folder.FullPath, "--json");
        Assert.Equal(0, run.Status);
        var plans = JsonDocument.Parse(run.Out).RootElement.GetProperty("plans").EnumerateArray().ToList();
        Assert.Equal("asSet", plans[0].GetProperty("wish").GetString());
        Assert.InRange(plans.Count, 2, 5);
        Assert.All(plans.Skip(1), p => Assert.Equal(["traced"], p.GetProperty("ways").EnumerateObject().Select(w => w.Name)));
    }
}
