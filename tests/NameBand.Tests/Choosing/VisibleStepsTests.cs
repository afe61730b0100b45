using NameBand.Choosing;
using NameBand.Cloth;
using NameBand.Common;
using NameBand.Job;
using NameBand.Layout.Planning;
using NameBand.Reports;
using Xunit;

namespace NameBand.Tests.ChoosingRoom;

/// <summary>What is tried of what shows on the garment.</summary>
public class VisibleStepsTests
{
    /// <summary>Strips of 50.8 mm with 17.4 mm to sew on: three lie side by side in 150 mm, and not four.</summary>
    [Theory]
    [InlineData(63, 1, new[] { 1, 2, 3 })]
    [InlineData(150, 1, new[] { 1, 2, 3 })]
    [InlineData(203, 1, new[] { 1, 2, 3, 4 })]
    [InlineData(203, 2, new[] { 1, 2, 3 })]
    [InlineData(260, 1, new[] { 1, 2, 3, 4, 5 })]
    public void A_round_is_cut_into_no_more_pieces_than_fill_the_lanes_of_the_field(double acrossMm, int rounds, int[] pieces)
    {
        var job = Sample.Job.WithHeight(8).WithRounds(rounds);
        job = job with { Hoop = job.Hoop with { Across = Length.FromMm(acrossMm) } };
        var plan = LayoutPlanner.Plan(
            job, Sample.Hem(job), Sample.Lettered(Sample.RandomWidths(1, 30 * rounds)), FabricTable.Find("quilting cotton")!).Value!;

        Assert.Equal(17.4, plan.Hem.Strip.SewingZoneMm, 1e-9);
        Assert.Equal(pieces, VisibleSteps.Pieces(plan).Order());
    }

    /// <summary>Letters 8 mm high on one round of 2 m: gaps as wide as they are high and a quarter wider, the two heights that are enough
    /// where nobody reads them, halves and thirds of the round in whole centimetres.</summary>
    [Theory]
    [InlineData("", "gap 10 mm, gap 8 mm, height -, height 6 mm, height 7 mm, piece -, piece 1000 mm, piece 670 mm, rounds 2")]
    [InlineData(
        ", \"plan\": { \"readWhileWorn\": true }", "gap 10 mm, gap 8 mm, height -, piece -, piece 1000 mm, piece 670 mm, rounds 2")]
    public void Around_a_plan_lie_other_gaps_heights_pieces_and_rounds(string more, string around)
    {
        using var folder = new TemporaryFolder().With("names.csv", "Name\nAda Marsh\nBo Reed\nCara Quill\nDov Tarn\nEmlyn Sedge\nFenna Weir\n")
            .With("job.json", $$"""
                { "format": 1, "lists": ["names.csv"], "hem": { "length": "2 m", "turn": 0 },
                  "lettering": { "height": "8 mm" }, "strip": { "rounds": 1, "piece": "900 mm" }{{more}} }
                """);
        var report = Bander.Hours(folder.FullPath);
        var steps = new VisibleSteps(new JobAsWritten([.. File.ReadAllBytes(folder["job.json"])]), report.Job!);

        var found = steps.Around(VisibleChoice.AsSet, report.Job!, report.Plan!).Select(c => Assert.Single(c.Edits))
            .Select(e => $"{e.Path.Split('.')[1]} {e.Json?.Trim('"') ?? "-"}");
        Assert.Equal(around, string.Join(", ", found.Order(StringComparer.Ordinal)));
    }

    /// <summary>Larger letters on five rounds would take more than half as many hours again as hers on two.</summary>
    [Fact]
    public void The_largest_letters_cost_at_most_half_as_many_hours_again()
    {
        using var folder = new TemporaryFolder()
            .With("names.csv", "Name\nAda Marsh\nBo Reed\nCara Quill\nDov Tarn\nEmlyn Sedge\nFenna Weir\nGil Otter\nHesper Lind\n")
            .With("job.json", """
                { "format": 1, "lists": ["names.csv"], "hem": { "length": "0.3 m", "turn": 0 }, "lettering": { "height": "6 mm" },
                  "strip": { "rounds": 2 } }
                """);
        var plans = Bander.Plans(folder.FullPath).Plans;
        var (hers, largest) = (Of(PlanWish.AsSet), Of(PlanWish.BiggestLetters));
        Assert.True(largest.Plan.LetterHeightMm > 2 * hers.Plan.LetterHeightMm, $"{largest.Plan.LetterHeightMm}");
        Assert.InRange(largest.Estimate.Work.HersMinutes, hers.Estimate.Work.HersMinutes, 1.5 * hers.Estimate.Work.HersMinutes);

        OfferedPlan Of(PlanWish wish) => plans.Single(p => p.Wishes.Contains(wish));
    }
}
