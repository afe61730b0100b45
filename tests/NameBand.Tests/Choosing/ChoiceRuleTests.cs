using NameBand.Choosing;
using NameBand.Cloth;
using NameBand.Common;
using NameBand.Job;
using NameBand.Layout;
using NameBand.Layout.Pieces;
using NameBand.Layout.Planning;
using NameBand.Lettering;
using Xunit;

namespace NameBand.Tests.ChoosingRoom;

/// <summary>The rules by which one plan is put before another, each by itself.</summary>
public sealed class ChoiceRuleTests
{
    private static readonly Fabric Cotton = FabricTable.Find("quilting cotton")!;

    /// <summary>A hundredth of the hours for each key that is changed, or two tenths of a millimetre.</summary>
    [Theory]
    [InlineData(PlanWish.Soonest, 500, 593, 8, 1, true)]
    [InlineData(PlanWish.Soonest, 500, 595, 8, 1, false)]
    [InlineData(PlanWish.Soonest, 500, 595, 8, 2, false)]
    [InlineData(PlanWish.Soonest, 500, 587, 8, 2, true)]
    [InlineData(PlanWish.FewestHours, 494, 600, 8, 1, true)]
    [InlineData(PlanWish.FewestHours, 496, 600, 8, 1, false)]
    [InlineData(PlanWish.BiggestLetters, 900, 900, 8.2, 1, true)]
    [InlineData(PlanWish.BiggestLetters, 400, 400, 8.1, 1, false)]
    [InlineData(PlanWish.BiggestLetters, 900, 900, 8.3, 2, false)]
    public void A_plan_is_worth_the_keys_it_changes(
        PlanWish wish, double hers, double elapsed, double height, int changes, bool isWorth) => Assert.Equal(
            isWorth, new PlanFigures(hers, elapsed, height, changes).IsWorth(wish, new PlanFigures(500, 600, 8, 0)));

    [Fact]
    public void Marks_are_free_where_they_are_not_written_and_a_machine_could_sew_them()
    {
        var free = Sample.Job with { Holding = Sample.Job.Holding with { AreMarksFree = true } };
        Assert.True(MarkChoice.IsFree(free));
        Assert.False(MarkChoice.IsFree(free with { Holding = free.Holding with { AreMarksFree = false } }));
        Assert.False(MarkChoice.IsFree(free with { Ways = [Way.MachineLetters] }));
    }

    /// <summary>How strips lie on the cloth is not seen, and all else is.</summary>
    [Fact]
    public void Plans_look_the_same_that_put_the_same_things_in_the_same_places()
    {
        var job = Sample.Job.WithHeight(8).WithHem(1800) with { Layout = Sample.Job.Layout with { Lanes = null, AreLanesFree = true } };
        job = job.WithRounds(2);
        var names = Sample.Lettered(Sample.RandomWidths(4, 20));
        var plan = Lay(job, names);

        Assert.True(FrameChoice.LooksTheSame(plan, Lay(job, names, 2)));
        Assert.All(
            new[]
            {
                Lay(job.WithHeight(8.1), names), Lay(job.WithRounds(1), names), Lay(job, names with { Names = names.Names[1..] }),
                Lay(job with { Layout = job.Layout with { Piece = Length.FromMm(900) } }, names),
                Lay(job, names with { Names = [.. names.Names.Reverse()] }),
                plan with { Rounds = [plan.Rounds[0], plan.Rounds[1] with { LengthMm = plan.Rounds[1].LengthMm + 1 }] },
                plan with { Held = [new HeldRow(names.Names[0].Name.Row, "")] },
            },
            other => Assert.False(FrameChoice.LooksTheSame(plan, other)));
    }

    [Fact]
    public void What_is_seen_is_calculated_in_the_frame_that_holds_the_most_names_in_the_largest_letters()
    {
        var names = Sample.Lettered([.. Sample.RandomWidths(4, 20), 16]);
        InFrame In(double alongMm, double height) => new(
            $"{alongMm}", Lay(
                (Sample.Job with { Hoop = Sample.Job.Hoop with { Along = Length.FromMm(alongMm) } }).WithHeight(height), names), () => 0);
        InFrame narrow = In(120, 8), wide = In(220, 8), larger = In(260, 9), none = new("none", null, () => 0);
        Assert.True(narrow.Plan!.Held.Length > wide.Plan!.Held.Length && wide.Plan.Held.Length == larger.Plan!.Held.Length);

        Assert.Equal(1, FrameChoice.Largest([narrow, wide]));
        Assert.Equal(0, FrameChoice.Largest([wide, narrow]));
        Assert.Equal(2, FrameChoice.Largest([none, wide, larger]));
    }

    private static StripPlan Lay(BandJob job, LetteredList names, int lanes = 1) =>
        LayoutPlanner.Plan(job, Sample.Hem(job), names, Cotton, new LaneChoice(lanes, _ => 0)).Value!;
}
