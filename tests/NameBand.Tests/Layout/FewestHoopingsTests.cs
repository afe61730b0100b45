using CsCheck;
using NameBand.Cloth;
using NameBand.Layout;
using NameBand.Layout.Pieces;
using NameBand.Layout.Planning;
using Xunit;

namespace NameBand.Tests.Layout;

/// <summary>Strips side by side: the hoopings that cost least, and, where segments are to be the fewest, the fewest of those.</summary>
public class FewestHoopingsTests
{
    private const double FieldMm = 150;

    private static readonly Gen<(double Gap, double Width)[]> Names = Gen.Select(Gen.Double[8, 40], Gen.Double[15, 110]).Array[0, 7];

    private static readonly Gen<(double Offset, (double Gap, double Width)[] Names)[]> Lanes =
        Gen.Select(Gen.Double[0, 150], Names).Array[2, 3];

    private static (double LeftMm, double RightMm)[] Laid(double offset, (double Gap, double Width)[] names)
    {
        double at = offset;
        return [.. names.Select(n =>
        {
            double left = at + n.Gap;
            at = left + n.Width;
            return (left, at);
        })];
    }

    private static HoopingLane Lane((double LeftMm, double RightMm)[] names) =>
        new([.. names.Select(n => n.LeftMm)], [.. names.Select(n => n.RightMm)], FieldMm, (_, _) => true);

    [Fact]
    public void No_other_cuts_into_fewest_segments_need_fewer_hoopings() => Lanes.Sample(
        made =>
        {
            var names = made.Select(m => Laid(m.Offset, m.Names)).ToList();
            var cut = new HoopingSearch([.. names.Select(Lane)], FieldMm).Cut();
            for (int l = 0; l < names.Count; l++)
            {
                var shares = cut.SelectMany(h => h).Where(s => s.Lane == l).ToList();
                Assert.Equal(Enumerable.Range(0, names[l].Length), shares.SelectMany(s => Enumerable.Range(s.First, s.Count)));
                Assert.Equal(FewestCuts(names[l])[0].Count, shares.Count);
            }

            foreach (var hooping in cut)
            {
                Assert.Equal(hooping.Length, hooping.Select(s => s.Lane).Distinct().Count());
                double left = hooping.Min(s => names[s.Lane][s.First].LeftMm);
                Assert.True(hooping.Max(s => names[s.Lane][s.First + s.Count - 1].RightMm) - left <= FieldMm + 1e-6);
            }

            Assert.Equal(FewestOfAll(names), cut.Length);
        },
        seed: "0000KOz4wLkd", iter: 1500);

    /// <summary>
    /// On strips that lie as they do, no hoopings cost less: for two strips side by side held against every place that both can
    /// stand at, for more against strips sewn one by one, each in its fewest segments.
    /// </summary>
    [Theory]
    [InlineData(1, 2)]
    [InlineData(2, 2)]
    [InlineData(3, 2)]
    [InlineData(4, 4)]
    public void The_hoopings_of_a_cloth_cost_the_least_of_all_for_two_strips_and_less_than_one_by_one_for_more(int rounds, int lanes)
    {
        for (int seed = 0; seed < 25; seed++)
        {
            var job = Sample.Job.WithHeight(8).WithRounds(rounds);
            job = job with
            {
                Layout = job.Layout with { Lanes = lanes },
                Hoop = job.Hoop with { Across = Common.Length.FromMm(lanes * 50.8) },
            };
            var plan = LayoutPlanner.Plan(
                job, Sample.Hem(job), Sample.Lettered(Sample.RandomWidths(seed, 34 * rounds)), FabricTable.Find("quilting cotton")!).Value!;
            Assert.Contains(plan.Hoopings, h => h.Segments.Length > 1);
            foreach (var cloth in plan.Cloths)
            {
                var hoopings = plan.Hoopings.Where(h => h.Cloth == cloth.Number).ToList();
                double cost = hoopings.Count + (hoopings.Sum(h => h.Segments.Length) * LaneCover.SegmentPart);
                var strips = cloth.Pieces.Select(p => OnCloth(plan, hoopings, p)).ToList();
                if (strips.Count <= 2)
                {
                    Assert.Equal(LeastCost(strips[0], strips.Count == 2 ? strips[1] : []), cost, 9);
                }
                else
                {
                    Assert.True(cost < strips.Sum(s => LeastCost(s, [])));
                }
            }
        }
    }

    /// <summary>Three strips, short enough to try how they lie, one against the others both ways.</summary>
    [Fact]
    public void No_place_of_three_strips_beside_each_other_needs_a_hooping_less_than_the_one_that_is_found()
    {
        int better = 0;
        for (int seed = 0; seed < 8; seed++)
        {
            List<HoopingLane> lanes =
                [.. Enumerable.Range(0, 3)
                .Select(l => Lane(Laid(0, [.. Sample.RandomWidths((3 * seed) + l, 6, 20, 95).Select(w => (24.0, w))])))];
            double WorkAt(params double[] shifts) =>
                new LaneCover([.. lanes.Select((l, i) => l.MovedTo(shifts[i]))], FieldMm).LeastWork(double.PositiveInfinity);
            double[] found = new LaneShifts(lanes, FieldMm).Best();
            Assert.Equal(0, found.Min());
            Assert.All(found, s => Assert.InRange(s, 0, FieldMm));
            double work = WorkAt(found);
            double least = double.PositiveInfinity;
            for (double one = 0; one < 2 * FieldMm; one += 7.5)
            {
                for (double two = 0; two < 2 * FieldMm; two += 7.5)
                {
                    least = Math.Min(least, WorkAt(FieldMm, one, two));
                }
            }

            Assert.True(work <= least + LaneCover.SegmentPart + 1e-9, $"{work} {least}");
            better += work < WorkAt(0, 0, 0) - 1e-9 ? 1 : 0;
        }

        Assert.True(better > 0, $"{better}");
    }

    /// <summary>The names of a piece, each with both its edges on the cloth.</summary>
    private static (double LeftMm, double RightMm)[] OnCloth(StripPlan plan, IEnumerable<Hooping> hoopings, StripPiece piece) =>
    [
        .. from hooping in hoopings
           from hooped in hooping.Segments
           where hooped.Round.Number == piece.Round
           from name in hooped.Segment.Names
           where name.StartMm >= piece.StartMm && name.StartMm < piece.EndMm
           orderby name.StartMm
           let left = plan.OnClothMm(hooping, hooped, name)
           select (left, left + plan.OnClothMm(name.WidthMm)),
    ];

    /// <summary>Least cost from every place at which two strips can stand, whatever of them a hooping takes.</summary>
    private static double LeastCost((double LeftMm, double RightMm)[] one, (double LeftMm, double RightMm)[] other)
    {
        var least = new double[one.Length + 1, other.Length + 1];
        for (int i = one.Length; i >= 0; i--)
        {
            for (int j = other.Length; j >= 0; j--)
            {
                double best = i == one.Length && j == other.Length ? 0 : double.PositiveInfinity;
                for (int a = i; a <= one.Length; a++)
                {
                    for (int b = a == i ? j + 1 : j; b <= other.Length; b++)
                    {
                        (double LeftMm, double RightMm)[] held = [.. one[i..a], .. other[j..b]];
                        if (held.Max(n => n.RightMm) - held.Min(n => n.LeftMm) > FieldMm + 1e-6)
                        {
                            break;
                        }

                        int segments = (a > i ? 1 : 0) + (b > j ? 1 : 0);
                        best = Math.Min(best, 1 + (segments * LaneCover.SegmentPart) + least[a, b]);
                    }

                    if (a < one.Length && one[a].RightMm - one[i].LeftMm > FieldMm + 1e-6)
                    {
                        break;
                    }
                }

                least[i, j] = best;
            }
        }

        return least[0, 0];
    }

    /// <summary>Thousands of names on lanes that could wait for each other at every hooping.</summary>
    [Fact]
    public void Very_long_lists_are_cut_into_fewest_segments_too()
    {
        for (int lanes = 2; lanes <= 8; lanes *= 2)
        {
            var names = Enumerable.Range(0, lanes)
                .Select(l => Laid(17 * l, [.. Sample.RandomWidths(l, 3000 / lanes, 15, 90).Select(w => (14.0, w))])).ToList();
            var beside = names.ConvertAll(Lane);
            var cut = new HoopingSearch(beside, FieldMm).Cut();
            Assert.Equal(beside.Sum(l => l.Least(0)), cut.Sum(h => h.Length));
            Assert.True(cut.Length >= HoopingSearch.Bound(beside) && cut.Length < beside.Sum(l => l.Least(0)));
        }
    }

    /// <summary>Every way to cut a lane into its fewest segments, each segment as where it begins and ends.</summary>
    private static List<List<(double LeftMm, double RightMm)>> FewestCuts((double LeftMm, double RightMm)[] names)
    {
        var all = From(0).ToList();
        int least = all.Min(c => c.Count);
        return [.. all.Where(c => c.Count == least)];

        IEnumerable<List<(double LeftMm, double RightMm)>> From(int first)
        {
            if (first == names.Length)
            {
                yield return [];
            }

            for (int last = first; last < names.Length && names[last].RightMm - names[first].LeftMm <= FieldMm + 1e-6; last++)
            {
                foreach (var rest in From(last + 1))
                {
                    yield return [(names[first].LeftMm, names[last].RightMm), .. rest];
                }
            }
        }
    }

    /// <summary>Every choice of cuts and every way to put their segments together in hoopings.</summary>
    private static int FewestOfAll(List<(double LeftMm, double RightMm)[]> names)
    {
        var cuts = names.Select(FewestCuts).ToList();
        int fewest = int.MaxValue;
        Choose([]);
        return fewest;

        void Choose(List<(int Lane, double LeftMm, double RightMm)> chosen, int lane = 0)
        {
            if (lane == cuts.Count)
            {
                fewest = Math.Min(fewest, Together(chosen));
                return;
            }

            foreach (var cut in cuts[lane])
            {
                Choose([.. chosen, .. cut.Select(s => (lane, s.LeftMm, s.RightMm))], lane + 1);
            }
        }
    }

    /// <summary>Fewest groups of segments, no two of one lane, that lie within one field: every grouping is tried.</summary>
    private static int Together(List<(int Lane, double LeftMm, double RightMm)> segments)
    {
        int fewest = int.MaxValue;
        Put(0, []);
        return fewest;

        void Put(int next, List<List<(int Lane, double LeftMm, double RightMm)>> groups)
        {
            if (groups.Count >= fewest)
            {
                return;
            }

            if (next == segments.Count)
            {
                fewest = groups.Count;
                return;
            }

            var segment = segments[next];
            for (int g = 0; g < groups.Count; g++)
            {
                var group = groups[g];
                if (group.TrueForAll(s => s.Lane != segment.Lane)
                    && Math.Max(segment.RightMm, group.Max(s => s.RightMm)) - Math.Min(segment.LeftMm, group.Min(s => s.LeftMm)) <= FieldMm
                        + 1e-6)
                {
                    group.Add(segment);
                    Put(next + 1, groups);
                    group.RemoveAt(group.Count - 1);
                }
            }

            groups.Add([segment]);
            Put(next + 1, groups);
            groups.RemoveAt(groups.Count - 1);
        }
    }
}
