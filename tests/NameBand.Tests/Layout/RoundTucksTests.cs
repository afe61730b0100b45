using NameBand.Cloth;
using NameBand.Common;
using NameBand.Garment;
using NameBand.Job;
using NameBand.Layout;
using NameBand.Layout.Planning;
using NameBand.Lettering;
using Xunit;

namespace NameBand.Tests.Layout;

/// <summary>Where the tapered tucks of a round lie, along the round and on the cloth.</summary>
public sealed class RoundTucksTests
{
    private static readonly Fabric Cotton = FabricTable.Find("quilting cotton")!;

    /// <summary>Thirty names of 104 mm on a three-quarter circle: gaps of some 17 mm, which would lose nearly a quarter.</summary>
    private static StripPlan Tight(Func<BandJob, BandJob>? change = null, double lengthMm = 3652)
    {
        var job = Sample.Job.WithHem(lengthMm).WithHeight(10) with { Layout = new LayoutSettings { HasTucks = true } };
        job = job with { Hem = job.Hem with { Turn = 0.75 } };
        job = change?.Invoke(job) ?? job;
        return LayoutPlanner.Plan(job, Sample.Hem(job), Sample.Lettered(Enumerable.Repeat(10.4, 30)), Cotton).Value!;
    }

    [Fact]
    public void Tucks_take_up_what_easing_cannot()
    {
        var ease = Assert.Single(Tight().Easing);
        Assert.Equal(EaseVerdict.WithTucks, ease.Verdict);
        Assert.Equal(VerdictKind.Note, ease.Judged().Kind);
        double gapsMm = 30 * ease.GapMm;
        double leftMm = ease.ShorterMm - ease.Tucked!.TakesMm;
        Assert.InRange(leftMm / (gapsMm - ease.Tucked.TakesMm), 0, 0.10);
        Assert.Equal(leftMm / (gapsMm - ease.Tucked.TakesMm), ease.EasedGapsPart, 9);
    }

    /// <summary>What is asked for is no tuck, where easing does.</summary>
    [Fact]
    public void Where_easing_does_nothing_is_tucked()
    {
        var plan = Tight(j => j with { Hem = j.Hem with { Turn = 0.25 } });
        Assert.Equal(EaseVerdict.CanBeEased, plan.Easing[0].Verdict);
        Assert.Empty(RoundTucks.Of(plan, plan.Rounds[0]));
    }

    [Fact]
    public void Without_the_wish_they_are_only_possible()
    {
        var plan = Tight(j => j with { Layout = j.Layout with { HasTucks = false } });
        Assert.Equal(EaseVerdict.WantsShaping, plan.Easing[0].Verdict);
        Assert.NotNull(plan.Easing[0].PossibleTucks);
        Assert.Empty(RoundTucks.Of(plan, plan.Rounds[0]));
    }

    [Fact]
    public void Each_lies_in_the_middle_of_its_gap_clear_of_the_satin_and_none_where_the_ends_meet()
    {
        var plan = Tight();
        var round = plan.Rounds[0];
        var tucks = RoundTucks.Of(plan, round);
        Assert.Equal(plan.Easing[0].Tucked!.Count, tucks.Length);
        var names = round.Names.ToList();
        foreach (var tuck in tucks)
        {
            Assert.Equal(names.IndexOf(tuck.After) + 1, names.IndexOf(tuck.Before));
            Assert.Equal((tuck.After.EndMm + tuck.Before.StartMm) / 2, tuck.AtMm, 9);
            Assert.True(tuck.Before.StartMm - tuck.After.EndMm >= (2 * tuck.WidthMm) + 2);
            Assert.DoesNotContain(names, n => n.EndMm > tuck.AtMm - tuck.WidthMm - 1 && n.StartMm < tuck.AtMm + tuck.WidthMm + 1);
        }
    }

    /// <summary>Estimated the other way, from the hooping that sews the name before it.</summary>
    [Theory]
    [InlineData(null)]
    [InlineData(900.0)]
    public void On_the_cloth_it_lies_where_its_names_are_sewn(double? pieceMm)
    {
        var plan = Tight(j => j with { Layout = j.Layout with { Piece = pieceMm is { } mm ? Length.FromMm(mm) : null } });
        var tucks = RoundTucks.Of(plan, plan.Rounds[0]);
        Assert.NotEmpty(tucks);
        foreach (var tuck in tucks)
        {
            var (hooping, hooped) = plan.Hoopings.SelectMany(h => h.Segments.Select(s => (h, s)))
                .Single(p => p.s.Segment.Names.Contains(tuck.After));
            double nameMm = StripPlan.OnClothMm(hooping, hooped) + plan.OnClothMm(tuck.After.EndMm - hooped.Segment.StartMm);
            Assert.Equal(nameMm + plan.OnClothMm(tuck.AtMm - tuck.After.EndMm), tuck.OnClothMm, 6);
        }
    }

    [Fact]
    public void No_tuck_lies_on_a_join_or_in_a_place_that_is_kept_clear()
    {
        var zone = new ClearPlace(Length.FromMm(1000), Length.FromMm(30));
        var plan = Tight(j => j with { Layout = j.Layout with { Piece = Length.FromMm(900), KeepClear = [zone], GivenEaseLimitPart = 0 } });
        var tucks = RoundTucks.Of(plan, plan.Rounds[0]);
        Assert.True(tucks.Length > 20);
        double[] joins = [.. plan.Cloths.SelectMany(c => c.Pieces).Select(p => p.StartMm).Where(s => s > 0)];
        Assert.True(joins.Length > 2);
        Assert.All(tucks, t => Assert.DoesNotContain(joins, j => j > t.After.EndMm && j < t.Before.StartMm));
        double at = 1000 * plan.Rounds[0].LengthMm / 3652;
        Assert.DoesNotContain(tucks, t => t.After.EndMm < at + 15 && t.Before.StartMm > at - 15);
    }

    [Fact]
    public void No_tuck_is_folded_into_a_motif()
    {
        var motif = MotifMaker.Make(Sample.Job with { Motif = new MotifSettings(MotifKind.Dot) }, null!, null!).Value!;
        var job = Sample.Job.WithHem(3652).WithHeight(10) with { Layout = new LayoutSettings { HasTucks = true } };
        job = job with { Hem = job.Hem with { Turn = 0.75 } };
        var plan = LayoutPlanner.Plan(
            job, Sample.Hem(job), Sample.Lettered(Enumerable.Repeat(10.4, 30)) with { Motif = motif }, Cotton).Value!;
        var motifs = plan.Rounds[0].Segments.SelectMany(s => s.Motifs).ToList();
        Assert.NotEmpty(motifs);
        Assert.All(
            RoundTucks.Of(plan, plan.Rounds[0]),
            t => Assert.DoesNotContain(motifs, m => m.StartMm < t.Before.StartMm && m.EndMm > t.After.EndMm));
    }

    /// <summary>Gaps of 5 mm beside long names bear no tuck at all.</summary>
    [Fact]
    public void Where_the_gaps_bear_none_it_still_needs_a_person_and_says_why()
    {
        var plan = Tight(j => j with { Lettering = j.Lettering with { Gap = Length.FromMm(5) } }, lengthMm: (30 * 104) + 150 + 14);
        Assert.Equal(EaseVerdict.WantsShaping, plan.Easing[0].Verdict);
        Assert.Contains("tucks cannot take it up either", plan.Easing[0].InWords().English, StringComparison.Ordinal);
    }
}
