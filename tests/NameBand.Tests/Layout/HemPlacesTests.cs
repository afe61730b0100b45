using NameBand.Cloth;
using NameBand.Common;
using NameBand.Garment;
using NameBand.Job;
using NameBand.Layout;
using NameBand.Layout.Planning;
using Xunit;

namespace NameBand.Tests.Layout;

/// <summary>Places that names keep out of, where the list begins, what is kept free, and the widest gap.</summary>
public class HemPlacesTests
{
    private static readonly Fabric Cotton = FabricTable.Find("quilting cotton")!;

    private static StripPlan Lay(BandJob job, int names = 24, int seed = 1) =>
        LayoutPlanner.Plan(job, Sample.Hem(job), Sample.Lettered(Sample.RandomWidths(seed, names)), Cotton).Value!;

    private static BandJob With(Func<LayoutSettings, LayoutSettings> change) => Sample.Job with { Layout = change(Sample.Job.Layout) };

    private static ClearPlace Place(double atMm, double widthMm) => new(Length.FromMm(atMm), Length.FromMm(widthMm));

    [Fact]
    public void No_name_lies_on_a_seam_and_the_strip_still_matches_the_hem()
    {
        var job = With(l => l with { KeepClear = [Place(0, 80), Place(1830, 60), Place(900, 30)] }).WithHeight(8);
        var plan = Lay(job);
        Assert.True(plan.MatchesHem);
        Assert.Equal(24, plan.NameCount);
        foreach (var (from, to) in new[] { (0.0, 40.0), (3620, 3660), (1800, 1860), (885, 915) })
        {
            Assert.DoesNotContain(plan.Rounds[0].Names, n => n.StartMm < to - 1e-9 && n.EndMm > from + 1e-9);
        }

        Assert.Equal(Enumerable.Range(1, 24), plan.Rounds[0].Names.Select(n => n.Order));
        Assert.All(
            plan.Rounds[0].Names.Zip(plan.Rounds[0].Names.Skip(1)),
            p => Assert.True(p.Second.StartMm - p.First.EndMm >= plan.Rounds[0].GapMm - 1e-6));
    }

    [Fact]
    public void The_list_begins_where_it_is_told_to_and_goes_on_past_the_strips_end()
    {
        var plan = Lay(With(l => l with { Start = Length.FromMm(1830) }).WithHeight(8));
        var first = plan.Rounds[0].Names.Single(n => n.Order == 1);
        Assert.True(first.StartMm >= 1830 && first.StartMm < 1830 + 60);
        var ordered = plan.Rounds[0].Names.OrderBy(n => n.Order).Select(n => n.StartMm).ToList();
        Assert.Equal(1, ordered.Zip(ordered.Skip(1)).Count(p => p.Second < p.First));
        Assert.DoesNotContain(plan.Rounds[0].Names, n => n.StartMm < 0 || n.EndMm > 3660);
    }

    [Fact]
    public void On_a_higher_shorter_round_a_seam_lies_at_the_same_part_of_its_length()
    {
        var job = With(l => l with { KeepClear = [Place(1830, 60)] }).WithHeight(6).WithRounds(2);
        job = job with { Hem = job.Hem with { Turn = 0.75 } };
        var hem = Sample.Hem(job);
        foreach (int k in new[] { 1, 2 })
        {
            var stretches = FreeInterval.Of(hem, k);
            Assert.Equal(2, stretches.Length);
            Assert.Equal(hem.RoundMm(k) / 2, (stretches[0].EndMm + stretches[1].StartMm) / 2, 6);
            Assert.Equal(60, stretches[1].StartMm - stretches[0].EndMm, 6);
        }
    }

    [Fact]
    public void What_is_kept_free_stays_blank_at_the_end_of_the_round()
    {
        var plan = Lay(Sample.Job.WithHeight(8) with { KeepFree = Length.FromMm(500) });
        Assert.True(plan.Rounds[0].Names.Max(n => n.EndMm) <= 3160);
        Assert.True(plan.MatchesHem);
    }

    [Fact]
    public void A_place_off_the_hem_and_places_that_leave_no_room_are_refused_with_a_mend()
    {
        foreach (var layout in new[]
        {
            new LayoutSettings { KeepClear = [Place(4000, 60)] },
            new LayoutSettings { KeepClear = [Place(1800, 3650)] },
            new LayoutSettings { Start = Length.FromMm(5000) },
        })
        {
            var result = HemPlanner.Plan(Sample.Job with { Layout = layout });
            Assert.False(result.IsUsable);
            Assert.All(result.Problems, p => Assert.NotEmpty(p.Mend.English));
        }
    }

    [Fact]
    public void Gaps_are_never_wider_than_the_widest_allowed_and_what_is_blank_is_said_with_what_would_fill_it()
    {
        var job = With(l => l with { MostGap = Length.FromMm(30) }).WithHeight(8);
        var result = LayoutPlanner.Plan(job, Sample.Hem(job), Sample.Lettered(Sample.RandomWidths(1, 20)), Cotton);
        Assert.Equal(30, result.Value!.Rounds[0].GapMm, 9);
        Assert.True(result.Value.MatchesHem);
        var blank = Assert.Single(result.Problems, p => p.Where.Key == "lettering.mostGap");
        Assert.Equal(Severity.NeedsPerson, blank.Severity);
        string gap = System.Text.RegularExpressions.Regex.Match(blank.Mend.English, @"gaps of ([0-9.]+) mm").Groups[1].Value;
        var mended = With(l => l with { MostGap = Length.FromMm(double.Parse(gap, System.Globalization.CultureInfo.InvariantCulture)) })
            .WithHeight(8);
        Assert.Empty(LayoutPlanner.Plan(mended, Sample.Hem(mended), Sample.Lettered(Sample.RandomWidths(1, 20)), Cotton).Problems);
    }
}
