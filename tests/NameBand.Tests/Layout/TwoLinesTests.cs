using System.Globalization;
using NameBand.Cloth;
using NameBand.Common;
using NameBand.Job;
using NameBand.Layout;
using NameBand.Layout.Lines;
using NameBand.Layout.Planning;
using NameBand.Lettering;
using Xunit;

namespace NameBand.Tests.Layout;

/// <summary>Names paired by length, one above the other on one strip.</summary>
public class TwoLinesTests
{
    private static readonly Fabric Cotton = FabricTable.Find("quilting cotton")!;

    private static BandJob Job(double cutMm = 76, double? heightMm = null, int rounds = 1) =>
        Sample.Job.WithHeight(heightMm).WithRounds(rounds) with
        {
            Strip = Sample.Job.Strip with { CutWidth = Length.FromMm(cutMm), Rounds = rounds },
            Layout = Sample.Job.Layout with { Lines = 2, Lanes = 1 },
        };

    private static List<LetteredName> Names(int seed, int count)
    {
        var random = new Random(seed);
        return
        [
            .. Enumerable.Range(0, count).Select(i => Sample.Boxed(
                "name " + i.ToString(CultureInfo.InvariantCulture), 3 + (random.NextDouble() * 8),
                random.Next(3) switch { 0 => 1, 1 => 1.06, _ => 1.34 }, random.Next(2) == 0 ? 0 : -0.3, i + 2)),
        ];
    }

    private static Result<StripPlan> Lay(BandJob job, List<LetteredName> names) =>
        LayoutPlanner.Plan(job, Sample.Hem(job), new LetteredList("boxes", [.. names], []), Cotton);

    [Fact]
    public void No_other_pairing_takes_less_cloth()
    {
        for (int seed = 0; seed < 20; seed++)
        {
            var names = Names(seed, 7 + (seed % 2));
            var (pairs, _) = NamePairing.Pair(names, null);
            Assert.Equal(names.OrderBy(n => n.Name.Text), pairs.SelectMany(p => p.Names).OrderBy(n => n.Name.Text));
            Assert.Equal(Least([.. names.Select(n => n.Ink.WidthMm)]), pairs.Sum(p => p.Names.Max(n => n.Ink.WidthMm)), 9);
        }
    }

    /// <summary>By trying every partner of the first one left; one of an odd number may be alone.</summary>
    private static double Least(List<double> widths)
    {
        if (widths.Count == 0)
        {
            return 0;
        }

        var rest = widths.Skip(1).ToList();
        double least = widths.Count % 2 == 1 ? widths[0] + Least(rest) : double.PositiveInfinity;
        for (int i = 0; i < rest.Count; i++)
        {
            least = Math.Min(least, Math.Max(widths[0], rest[i]) + Least([.. rest.Where((_, j) => j != i)]));
        }

        return least;
    }

    [Fact]
    public void No_other_choice_of_who_stands_above_is_lower()
    {
        for (int seed = 0; seed < 30; seed++)
        {
            var names = Names(seed, 12);
            var (pairs, step) = NamePairing.Pair(names, null);
            double ours = pairs.Max(p => p.Upper.Ink.TopMm) + step - Math.Min(0, pairs.Min(p => p.Lower!.Ink.BottomMm));
            double least = Enumerable.Range(0, 1 << pairs.Length).Min(turned =>
            {
                double top = 0, between = 1.25, bottom = 0;
                for (int i = 0; i < pairs.Length; i++)
                {
                    var (upper, lower) = (turned & (1 << i)) == 0 ? (pairs[i].Upper, pairs[i].Lower!) : (pairs[i].Lower!, pairs[i].Upper);
                    top = Math.Max(top, upper.Ink.TopMm);
                    bottom = Math.Min(bottom, lower.Ink.BottomMm);
                    between = Math.Max(between, lower.Ink.TopMm - upper.Ink.BottomMm + 0.25);
                }

                return top + between - bottom;
            });
            Assert.InRange(ours, least - 1e-9, least + 0.02);
            Assert.All(pairs, p => Assert.True(p.Lower!.Ink.TopMm - p.Upper.Ink.BottomMm + 0.25 <= step + 1e-9));
        }
    }

    [Fact]
    public void Both_names_of_a_pair_stand_in_one_hooping_clear_of_each_other_and_inside_the_sewing_zone()
    {
        for (int seed = 0; seed < 12; seed++)
        {
            var names = Names(seed, 41);
            var plan = Lay(Job(rounds: 1 + (seed % 2)), names).Value!;
            double h = plan.LetterHeightMm, pull = plan.PullCompensationMm;
            Assert.Equal(41, plan.NameCount);
            Assert.Equal(Enumerable.Range(1, 41), plan.Rounds.SelectMany(r => r.Names).Select(n => n.Order));
            foreach (var name in plan.Rounds.SelectMany(r => r.Names))
            {
                Assert.InRange(name.BaselineYMm + (name.Lettered.Ink.TopMm * h) + pull, -100, (plan.Hem.Strip.SewingZoneMm / 2) + 1e-6);
                Assert.InRange(name.BaselineYMm + (name.Lettered.Ink.BottomMm * h) - pull, -(plan.Hem.Strip.SewingZoneMm / 2) - 1e-6, 100);
            }

            foreach (var place in plan.Rounds.SelectMany(r => r.Segments).SelectMany(s => PlacesAlong.Of(s.Names))
                .Where(p => p.Length == 2))
            {
                Assert.Equal((1, 2), (place[0].Line, place[1].Line));
                Assert.Equal(place[0].StartMm + (place[0].WidthMm / 2), place[1].StartMm + (place[1].WidthMm / 2), 6);
                double clear = place[0].BaselineYMm + (place[0].Lettered.Ink.BottomMm * h) - place[1].BaselineYMm
                    - (place[1].Lettered.Ink.TopMm * h);
                Assert.True(clear >= (0.25 * h) - 1e-6, $"{clear}");
                Assert.Equal(plan.LineStepMm, place[0].BaselineYMm - place[1].BaselineYMm, 6);
            }

            foreach (var round in plan.Rounds)
            {
                var places = round.Places;
                Assert.Equal((round.Names.Count() + 1) / 2, places.Length);
                Assert.All(places.Zip(places.Skip(1)), p => Assert.True(p.Second.StartMm - p.First.EndMm >= round.GapMm - 1e-6));
            }
        }
    }

    [Fact]
    public void Two_lines_are_attached_as_a_strip_of_the_wider_name_of_each_pair_would_be()
    {
        var names = Names(3, 40);
        var two = Lay(Job(heightMm: 7) with { Hem = Sample.Job.Hem with { Turn = 0.75 } }, names).Value!;
        var (pairs, _) = NamePairing.Pair(names, null);
        var wider = pairs.Select(p => p.Names.MaxBy(n => n.Ink.WidthMm)!).ToList();
        var one = Lay(
            Job(heightMm: 7) with { Layout = Job().Layout with { Lines = 1 }, Hem = Sample.Job.Hem with { Turn = 0.75 } }, wider).Value!;
        Assert.Equal(one.Rounds[0].GapMm, two.Rounds[0].GapMm, 9);
        Assert.Equal(one.Easing[0].GapsPart, two.Easing[0].GapsPart, 9);
        Assert.Equal(one.Hoopings.Length, two.Hoopings.Length);
        Assert.Equal(20, two.Rounds[0].Places.Length);
    }

    [Fact]
    public void A_strip_too_narrow_for_two_lines_is_refused_with_the_width_that_does_and_with_the_letters_that_do()
    {
        var names = Names(5, 30);
        var refused = Lay(Job(cutMm: 50.8), names);
        var problem = Assert.Single(refused.Problems);
        Assert.Null(refused.Value);
        Assert.Equal((Severity.CannotUse, "strip.lines"), (problem.Severity, problem.Where.Key));

        double width = Said(problem.Mend.English, "\"cutWidth\": \"");
        Assert.NotNull(Lay(Job(cutMm: width), names).Value);
        Assert.Null(Lay(Job(cutMm: width - 1), names).Value);
        double letters = Said(problem.Mend.English, "or letters ");
        Assert.NotNull(Lay(Job(cutMm: 50.8, heightMm: letters), names).Value);
        Assert.Null(Lay(Job(cutMm: 50.8, heightMm: letters + 0.1), names).Value);

        static double Said(string text, string after)
        {
            string rest = text[(text.IndexOf(after, StringComparison.Ordinal) + after.Length)..];
            return double.Parse(rest[..rest.IndexOf(' ', StringComparison.Ordinal)], CultureInfo.InvariantCulture);
        }
    }

    [Fact]
    public void It_is_told_how_many_stand_elsewhere_than_in_their_order()
    {
        var random = new Random(2);
        for (int trial = 0; trial < 50; trial++)
        {
            int[] places = [.. Enumerable.Range(0, 9).OrderBy(_ => random.Next())];
            int most = Enumerable.Range(0, 1 << 9).Where(s => IsGrowing([.. places.Where((_, i) => (s & (1 << i)) != 0)]))
                .Max(s => System.Numerics.BitOperations.PopCount((uint)s));
            Assert.Equal(most, LineAdvice.LongestInOrder(places));
        }

        // Widths 9, 3, 9, 3: the first stands with the third, the second with the fourth; one of them has moved.
        var names = new[] { 9.0, 3, 9, 3 }
            .Select((w, i) => Sample.Boxed("name " + i.ToString(CultureInfo.InvariantCulture), w, line: i + 2)).ToList();
        var note = Assert.Single(Lay(Job(), names).Problems, p => p.Where.Key == "strip.lines");
        Assert.Contains("4 names stand in two lines", note.Found.English, StringComparison.Ordinal);
        Assert.Contains(": 1 of them", note.Found.English, StringComparison.Ordinal);

        static bool IsGrowing(int[] some) => some.Zip(some.Skip(1)).All(p => p.First < p.Second);
    }

    [Theory]
    [InlineData("""{ "strip": { "lines": 2, "shape": "curved" }, "hem": { "length": "3 m", "turn": 0.75 } }""", "cut to the curve")]
    [InlineData("""{ "strip": { "lines": 3 }, "hem": { "length": "3 m" } }""", "from 1 to 2")]
    public void What_two_lines_do_not_go_with_is_refused_before_any_work_is_done(string job, string why)
    {
        using var folder = new TemporaryFolder();
        folder.With("names.csv", "name\nWren Alder\n");
        folder.With("job.json", """{ "lists": ["names.csv"], """ + job.TrimStart('{', ' '));
        var read = JobReader.Read(folder.FullPath);
        Assert.Contains(
            read.Problems,
            p => p.Severity == Severity.CannotUse && p.Where.Key == "strip.lines" && (p.Found + p.Mend).English
            .Contains(why, StringComparison.Ordinal));
    }
}
