using CsCheck;
using NameBand.Cloth;
using NameBand.Common;
using NameBand.Job;
using NameBand.Layout;
using NameBand.Layout.Planning;
using NameBand.Lettering;
using NameBand.Names;
using Xunit;

namespace NameBand.Tests.Layout;

/// <summary>Groups on their rounds, in their order and size.</summary>
public class GroupLayoutTests
{
    private static readonly Fabric Cotton = FabricTable.Find("quilting cotton")!;

    /// <summary>Boxes of two groups on rounds of their own, and of some without.</summary>
    private static LetteredList Grouped(int seed, int common, int large, int small, double factor)
    {
        int line = 2;
        IEnumerable<LetteredName> Some(int count, Standing standing) => Sample.RandomWidths(seed + standing.OwnRounds, count)
            .Select(w => Sample.Boxed(
                "name", w * standing.HeightFactor, standing.HeightFactor, -0.3 * standing.HeightFactor,
                line++) with
            { Standing = standing });

        return new LetteredList("boxes", [
            .. Some(common, new Standing()),
            .. Some(large, new Standing(factor, Block: 1, OwnRounds: 1) { Group = "large" }),
            .. Some(small, new Standing(Block: 2, OwnRounds: 2) { Group = "small" }),
        ], []);
    }

    private static BandJob WithGroups(double factor) => Sample.Job with
    {
        Groups = new GroupSettings("gift", [
            new NameGroup("large", [], 50, null, false, factor, null, GroupPlace.OwnRound, null),
            new NameGroup("small", [], null, 50, false, 1, null, GroupPlace.OwnRound, null),
        ]),
    };

    [Fact]
    public void Groups_keep_to_their_rounds_their_order_and_the_least_gap_and_the_next_tenth_would_not_fit() =>
        Gen.Select(Gen.Int[0, 1000], Gen.Int[0, 12], Gen.Int[1, 25], Gen.Int[1, 25], Gen.Int[3, 6], Gen.Double[0.6, 1.8])
            .Sample((seed, common, large, small, rounds, factor) =>
        {
            var job = WithGroups(factor).WithRounds(rounds);
            var names = Grouped(seed, common, large, small, factor);
            var plan = LayoutPlanner.Plan(job, Sample.Hem(job), names, Cotton).Value!;
            Assert.Equal(names.Names.Select(n => n.Name.Row), plan.Rounds.SelectMany(r => r.Names).Select(n => n.Lettered.Name.Row));
            foreach (var round in plan.Rounds)
            {
                Assert.True(round.Names.Select(n => n.Lettered.Standing.OwnRounds).Distinct().Count() <= 1);
                Assert.True(round.GapMm >= (1.5 * plan.LetterHeightMm) - 1e-9);
                foreach (var name in round.Names)
                {
                    Assert.InRange(name.BaselineYMm + (name.Lettered.Ink.TopMm * plan.LetterHeightMm), -8.7, 8.7 + 1e-6);
                    Assert.InRange(name.BaselineYMm + (name.Lettered.Ink.BottomMm * plan.LetterHeightMm), -8.7 - 1e-6, 8.7);
                }
            }

            if (plan.MatchesHem)
            {
                var taller = LayoutPlanner.Plan(job.WithHeight(plan.LetterHeightMm + 0.1), Sample.Hem(job), names, Cotton).Value!;
                bool isOver = !taller.MatchesHem || taller.Rounds.Any(r => r.LengthMm > r.HemMm + 1e-6) || !taller.Held.IsEmpty
                    || taller.Rounds.SelectMany(r => r.Names)
                        .Any(n => n.Lettered.Ink.HeightMm * taller.LetterHeightMm > 17.4 - (2 * Cotton.PullCompensationMm) + 1e-6);
                Assert.True(isOver, $"{plan.LetterHeightMm}");
            }
        }, iter: 300, seed: "0N0XIzNsQ0O2");

    [Fact]
    public void Each_own_round_has_its_capitals_in_the_middle_of_the_strip()
    {
        var job = WithGroups(1.4).WithRounds(3).WithHeight(7);
        var plan = LayoutPlanner.Plan(job, Sample.Hem(job), Grouped(1, 5, 5, 5, 1.4), Cotton).Value!;
        var names = plan.Rounds.SelectMany(r => r.Names).ToList();
        Assert.Equal([1, 1.4], names.Select(n => n.Lettered.Standing.HeightFactor).Distinct().Order());
        Assert.All(
            names,
            n => Assert.Equal(-n.Lettered.Standing.HeightFactor * plan.LetterHeightMm / 2, n.BaselineYMm, 6));
    }

    [Fact]
    public void As_many_rounds_as_needed_begin_one_for_each_group()
    {
        var job = WithGroups(1.2).WithRounds(null).WithHeight(8);
        var plan = LayoutPlanner.Plan(job, Sample.Hem(job), Grouped(4, 3, 70, 3, 1.2), Cotton).Value!;
        int[] rounds = [.. plan.Rounds.Select(r => r.Names.First().Lettered.Standing.OwnRounds)];
        Assert.Equal(rounds.Order(), rounds);
        Assert.Equal([0, 1, 2], rounds.Distinct());
        Assert.True(rounds.Count(r => r == 1) > 1);
        Assert.True(plan.MatchesHem);
    }

    [Fact]
    public void Too_few_rounds_are_refused_with_the_number_it_takes()
    {
        var job = WithGroups(1.2).WithRounds(2);
        var laid = LayoutPlanner.Plan(job, Sample.Hem(job), Grouped(4, 3, 4, 3, 1.2), Cotton);
        Assert.False(laid.IsUsable);
        Assert.Contains("\"rounds\": 3", Assert.Single(laid.Problems).Mend.English, StringComparison.Ordinal);
    }

    [Fact]
    public void The_factor_that_is_said_to_mend_an_overrun_does_and_the_next_one_up_does_not()
    {
        var job = WithGroups(1.5).WithRounds(3).WithHeight(8);
        var problems = LayoutPlanner.Plan(job, Sample.Hem(job), Grouped(7, 4, 45, 5, 1.5), Cotton).Problems;
        string mend = Assert.Single(problems, p => p.Where.Key == "groups").Mend.English;
        double said = double.Parse(mend.Split("\"heightFactor\": ")[1].Split(' ')[0], System.Globalization.CultureInfo.InvariantCulture);
        Assert.True(Lay(said).MatchesHem);
        Assert.False(Lay(said + 0.05).Rounds.All(r => r.LengthMm <= r.HemMm + 1e-6));

        StripPlan Lay(double factor)
        {
            var changed = WithGroups(factor).WithRounds(3).WithHeight(8);
            return LayoutPlanner.Plan(changed, Sample.Hem(changed), Grouped(7, 4, 45, 5, factor), Cotton).Value!;
        }
    }

    [Fact]
    public void Letters_of_a_group_that_come_out_too_small_for_thread_are_told()
    {
        var job = WithGroups(0.6).WithRounds(3).WithHeight(8);
        var problems = LayoutPlanner.Plan(job, Sample.Hem(job), Grouped(7, 4, 5, 5, 0.6), Cotton).Problems;
        Assert.Contains(problems, p => p.Where.Key == "groups" && p.Mend.English.Contains("0.75", StringComparison.Ordinal));
    }

    [Fact]
    public void A_group_too_large_for_the_strip_is_told_the_factor_that_would_fit()
    {
        var job = WithGroups(3).WithRounds(3);
        var laid = LayoutPlanner.Plan(job, Sample.Hem(job), Grouped(7, 4, 3, 5, 3), Cotton);
        Assert.Equal(3, laid.Value!.Held.Length);
        Assert.Contains(laid.Problems, p => p.Where.Key == "groups" && p.Mend.English.Contains("\"heightFactor\": 2.1", StringComparison.Ordinal));
    }

    /// <summary>A heading that is too long is told by itself: it has no owner, and makes no name of the group smaller.</summary>
    [Fact]
    public void A_heading_that_does_not_fit_is_told_apart_from_the_names_of_its_group()
    {
        using var folder = new TemporaryFolder()
            .With("names.csv", "Name,Paid\nAda Marsh,10\nBo Reed,20\nDov Tarn,20\nFenna Weir,10\n")
            .With("job.json", """
                { "format": 1, "lists": ["names.csv"], "columns": { "group": "Paid" }, "hem": { "length": "2 m", "turn": 0 },
                  "groups": [{ "name": "friends", "values": ["20"], "place": "first", "heightFactor": 1.6,
                    "heading": "Friends of the river and of the old stone bridge" }],
                  "lettering": { "height": "12 mm" }, "strip": { "rounds": 1 } }
                """);
        var told = Bander.Hours(folder.FullPath).Problems.Where(p => p.Where.Key == "groups").ToList();

        var heading = Assert.Single(told, p => p.Found.English.StartsWith("The heading ", StringComparison.Ordinal));
        Assert.Matches("too wide for one hooping: at letters 12 mm high it is [0-9]+ mm long and the field holds [0-9.]+ mm once sewn.$", heading.Found.English);
        Assert.DoesNotContain("owner", heading.Found.English + heading.Mend.English, StringComparison.Ordinal);
        var group = Assert.Single(told, p => p != heading);
        Assert.Equal("Of the group “friends”, 2 names do not fit the strip or the hoop at its size.", group.Found.English);
        Assert.Equal("With \"heightFactor\": 1.35 they would fit.", group.Mend.English);
    }
}
