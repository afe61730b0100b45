using CsCheck;
using NameBand.Cloth;
using NameBand.Common;
using NameBand.Job;
using NameBand.Layout;
using NameBand.Layout.Planning;
using NameBand.Lettering;
using Xunit;

namespace NameBand.Tests.Layout;

/// <summary>Names with a place of their own, and how all others give way.</summary>
public class OwnPlacesTests
{
    private static readonly Fabric Cotton = FabricTable.Find("quilting cotton")!;

    private static NameWish For(int i) => new("name " + i, null, null);

    private static PinPlace AtMm(double mm) => new(Length.FromMm(mm), IsFront: false);

    private static readonly PinPlace Front = new(null, IsFront: true);

    private static LetteredList Wished(IEnumerable<double> widths, params NameWish[] wishes)
    {
        var list = Sample.Lettered(widths);
        return list with
        {
            Names = [.. list.Names.Select(n => Array.Find(wishes, w => w.Name == n.Name.Text) is { } wish
                ? n with { Name = n.Name with { Wish = wish } } : n)],
        };
    }

    private static StripPlan Lay(BandJob job, LetteredList names) => LayoutPlanner.Plan(job, Sample.Hem(job), names, Cotton).Value!;

    private static List<(int Round, string Text, PlacedName Name)> Along(StripPlan plan) =>
        [.. plan.Rounds.SelectMany(r => r.Names.OrderBy(n => n.StartMm).Select(n => (r.Number, n.Lettered.Name.Text, n)))];

    private static double MiddleMm(StripPlan plan, int name) =>
        Along(plan).Where(n => n.Text == "name " + name).Select(n => n.Name.StartMm + (n.Name.WidthMm / 2)).Single();

    [Fact]
    public void Pinned_names_stand_at_their_place_and_all_others_keep_order_gap_height_and_hem() =>
        Gen.Select(Gen.Int[0, 1000], Gen.Int[12, 60], Gen.Int[1, 3], Gen.Double[0.15, 0.85], Gen.Bool).Sample(
            (seed, count, rounds, part, closed) =>
        {
            var job = Sample.Job.WithHem(3660, closed).WithRounds(rounds);
            var wishes = new[] { For(3) with { Pin = AtMm(3660 * part), Round = rounds }, For(count - 1) with { Round = 1 } };
            var names = Wished(Sample.RandomWidths(seed, count), wishes);
            var plan = Lay(job, names);
            var along = Along(plan);
            Assert.Equal(count, along.Count);
            Assert.Equal(rounds, along.Single(n => n.Text == "name 3").Round);
            Assert.Equal(3660 * part, MiddleMm(plan, 3), 1.0);
            Assert.Equal(1, along.Single(n => n.Text == wishes[1].Name).Round);
            var others = along.Select(n => n.Text).Where(t => wishes.All(w => w.Name != t)).ToList();
            Assert.Equal(names.Names.Select(n => n.Name.Text).Where(others.Contains), others);
            foreach (var round in plan.Rounds)
            {
                var placed = round.Names.OrderBy(n => n.StartMm).ToList();
                double least = placed.Zip(placed.Skip(1), (a, b) => b.StartMm - a.EndMm).DefaultIfEmpty(round.GapMm).Min();
                Assert.True(least >= (1.5 * plan.LetterHeightMm) - 1e-6, $"{least} at {plan.LetterHeightMm}");
                Assert.True(placed.Count == 0 || placed[^1].EndMm <= round.HemMm + 1e-6);
            }

            // The next tenth of a millimetre does not do.
            var taller = Lay(job.WithHeight(plan.LetterHeightMm + 0.1), names);
            bool isOver = taller.Rounds.Any(r => r.LengthMm > r.HemMm + 1e-6) || !taller.Held.IsEmpty
                || taller.Rounds.SelectMany(r => r.Names).Any(
                    n => n.Lettered.Ink.HeightMm * taller.LetterHeightMm > 17.4 - (2 * Cotton.PullCompensationMm) + 1e-6);
            Assert.True(isOver, $"{plan.LetterHeightMm}");
        }, iter: 150, seed: "0N0XIzNsQ0O2");

    [Fact]
    public void Centre_front_is_the_middle_of_the_round_and_both_halves_have_gaps_alike()
    {
        var plan = Lay(Sample.Job.WithHeight(8), Wished(Sample.RandomWidths(5, 41), For(0) with { Pin = Front }));
        Assert.Equal(3660 / 2.0, MiddleMm(plan, 0), 1.0);
        var along = Along(plan);
        var gaps = along.Zip(along.Skip(1), (a, b) => b.Name.StartMm - a.Name.EndMm).ToList();
        Assert.True(gaps.Max() / gaps.Min() < 1.35, $"{gaps.Min()} to {gaps.Max()}");
        Assert.Equal(gaps.Min(), plan.Rounds[0].GapMm, 6);
    }

    [Fact]
    public void A_pin_where_something_is_kept_clear_or_pinned_moves_the_shortest_way()
    {
        var clear = Sample.Job with
        {
            Layout = Sample.Job.Layout with
            {
                KeepClear = [new ClearPlace(Length.FromMm(1830),
            Length.FromMm(60))]
            }
        };
        var plan = Lay(clear.WithHeight(8), Wished(Sample.RandomWidths(5, 20), For(0) with { Pin = Front }, For(7) with { Pin = Front }));
        double[] off = [.. new[] { 0, 7 }.Select(n => Math.Abs(MiddleMm(plan, n) - 1830))];
        Assert.All(off, o => Assert.InRange(o, 30, 30 + 100));
        Assert.True((MiddleMm(plan, 0) - 1830) * (MiddleMm(plan, 7) - 1830) < 0, "one on each side");
    }

    [Fact]
    public void Names_go_after_and_before_others_and_the_rest_stays_in_order()
    {
        var plan = Lay(Sample.Job.WithHeight(8), Wished(
            Sample.RandomWidths(5, 12), For(1) with { After = "name 9" }, For(8) with { Before = "name 2" }, For(
                5) with
            { After = "nobody" }));
        Assert.Equal([0, 8, 2, 3, 4, 5, 6, 7, 9, 1, 10, 11], Along(plan).Select(
            n => int.Parse(n.Text[5..], System.Globalization.CultureInfo.InvariantCulture)));
    }

    [Fact]
    public void Of_as_many_rounds_as_needed_one_that_is_not_there_is_not_made_for_a_wish()
    {
        var job = Sample.Job.WithRounds(null).WithHeight(10);
        var widths = Sample.RandomWidths(5, 60);
        int rounds = Lay(job, Sample.Lettered(widths)).Rounds.Length;
        Assert.True(rounds > 1);
        var plan = Lay(job, Wished(widths, For(0) with { Round = rounds }, For(1) with { Round = rounds + 1 }, For(
            59) with
        { Pin = Front }));
        var along = Along(plan);
        Assert.Equal((rounds, 1, 1), (Round(0), Round(1), Round(59)));
        Assert.Equal(rounds, plan.Rounds.Length);
        Assert.Equal(60, along.Count);

        int Round(int name) => along.Single(n => n.Text == "name " + name).Round;
    }
}
