using NameBand.Cloth;
using NameBand.Common;
using NameBand.Garment;
using NameBand.Job;
using NameBand.Layout;
using NameBand.Layout.Planning;
using Xunit;

namespace NameBand.Tests.Layout;

/// <summary>Diagonal joins and the blank where the ends meet.</summary>
public class JoinTests
{
    private static readonly Fabric Cotton = FabricTable.Find("quilting cotton")!;

    private static BandJob With(Func<LayoutSettings, LayoutSettings> change, int rounds = 1, bool closed = true)
    {
        var job = Sample.Job.WithHem(3660, closed).WithHeight(7).WithRounds(rounds);
        return job with { Layout = change(job.Layout), Hem = job.Hem with { Turn = 0 } };
    }

    private static StripPlan Lay(BandJob job, int names = 24, int seed = 3) =>
        LayoutPlanner.Plan(job, HemPlanner.Plan(job).Value!, Sample.Lettered(Sample.RandomWidths(seed, names)), Cotton).Value!;

    [Theory]
    [InlineData(1000, 1, 1)]
    [InlineData(1000, 2, 2)]
    [InlineData(null, 1, 2)]
    public void Names_keep_40_mm_off_a_slanting_seam(int? piece, int rounds, int lanes)
    {
        var clear = new ClearPlace(Length.FromMm(915), Length.FromMm(60));
        var job = With(l =>
            l with { IsJoinedDiagonally = true, Piece = piece is { } mm ? Length.FromMm(mm) : null, Lanes = lanes, KeepClear = [clear] },
            rounds);
        var plan = Lay(job, 20 * rounds);
        Assert.True(plan.MatchesHem);
        var joins = plan.Cloths.SelectMany(c => c.Pieces).Where(p => p.StartMm > 0).ToList();
        Assert.True(joins.Count >= (piece is null ? 1 : 3 * rounds));
        double slant = plan.Hem.Strip.FinishedWidthMm / 2;
        foreach (var join in joins)
        {
            Assert.All(plan.Rounds[join.Round - 1].Names, n => Assert.True(
                n.EndMm <= join.StartMm - slant - 40 + 1e-6 || n.StartMm >= join.StartMm + slant + 40 - 1e-6,
                $"a name lies at a join at {join.StartMm}"));
            double seam = 915 * plan.Hem.RoundMm(join.Round) / plan.Hem.EdgeLengthMm;
            Assert.True(Math.Abs(join.StartMm - seam) >= 30 + slant);
            Assert.Equal((50.8 / 2) + (10 * Math.Sqrt(2)), join.StartAllowanceMm, 6);
        }

        // The ends meet in such a join too.
        Assert.All(plan.Rounds, r => Assert.True(r.Names.First().StartMm >= slant + 40 && r.LengthMm - r.Names.Last().EndMm >= slant + 40));
    }

    [Fact]
    public void The_ends_meet_in_a_blank_only_where_one_is_asked_for()
    {
        var without = Assert.Single(Lay(With(l => l)).Rounds);
        Assert.Equal(without.GapMm / 2, without.Names.First().StartMm, 6);
        var with = Assert.Single(Lay(With(l => l with { ClosingBlank = Length.FromMm(50) })).Rounds);
        Assert.Equal(25 + (with.GapMm / 2), with.Names.First().StartMm, 6);
        Assert.Equal(25 + (with.GapMm / 2), with.LengthMm - with.Names.Last().EndMm, 6);
    }

    [Fact]
    public void A_blank_at_an_open_end_and_joins_that_leave_no_room_are_answered()
    {
        var open = HemPlanner.Plan(With(l => l with { ClosingBlank = Length.FromMm(50) }, closed: false));
        Assert.Equal("strip.closingBlank", open.Problems.Single(p => p.Severity == Severity.CannotUse).Where.Key);
        var crowded = With(l => l with { IsJoinedDiagonally = true, Piece = Length.FromMm(200), JoinClear = Length.FromMm(80) });
        var problem = HemPlanner.Plan(crowded).Problems.Single(p => p.Severity == Severity.CannotUse);
        Assert.Equal("strip.join", problem.Where.Key);
        Assert.True(Length.TryParse(problem.Mend.English.Split('"')[3], out var piece, out _), problem.Mend.English);
        Assert.NotNull(HemPlanner.Plan(crowded with { Layout = crowded.Layout with { Piece = piece } }).Value);
    }
}
