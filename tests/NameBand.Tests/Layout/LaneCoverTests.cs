using System.Collections.Immutable;
using System.Numerics;
using Google.OrTools.LinearSolver;
using NameBand.Layout;
using NameBand.Layout.Pieces;
using NameBand.Layout.Planning;
using Xunit;

namespace NameBand.Tests.Layout;

/// <summary>
/// Hoopings for strips side by side cost the least work: held against trying everything where lists are short, and against
/// Google OR-Tools, which nobody here made, where they are longer.
/// </summary>
public class LaneCoverTests
{
    private const double FieldMm = 150;
    private const double Slight = 1e-6;

    private readonly record struct Ink(int Lane, double LeftMm, double RightMm, bool IsName = true);

    private static List<Ink> Drawn(Random random, int lanes, int names)
    {
        var inks = new List<Ink>();
        for (int lane = 0; lane < lanes; lane++)
        {
            double at = random.NextDouble() * 100;
            for (int i = 0; i < names; i++)
            {
                double left = at + 8 + (random.NextDouble() * 20);
                at = left + 15 + (random.NextDouble() * 80);
                inks.Add(new Ink(lane, left, at));
            }
        }

        return inks;
    }

    private static HoopingLane[] Lanes(List<Ink> inks, double fieldMm = FieldMm) =>
    [
        .. inks.GroupBy(i => i.Lane).Select(g => new HoopingLane(
            [.. g.Select(i => i.LeftMm)], [.. g.Select(i => i.RightMm)], fieldMm, (_, _) => true, [.. g.Select(i => i.IsName)])),
    ];

    private static double Work(ImmutableArray<ImmutableArray<LaneCutter.Share>> cut) =>
        cut.Length + (cut.Sum(h => h.Length) * LaneCover.SegmentPart);

    [Fact]
    public void No_other_hoopings_cost_less_on_short_lists()
    {
        var random = new Random(19);
        for (int i = 0; i < 120; i++)
        {
            var inks = Drawn(random, 2 + (i % 2), 2 + random.Next(2) + (1 - (i % 2)));
            var lanes = Lanes(inks);
            var cut = new LaneCover(lanes, FieldMm).Cut();
            Assert.Equal(inks.Count, cut.Sum(h => h.Sum(s => s.Count)));
            Assert.All(cut, h => Assert.True(Span(h, lanes, inks) <= FieldMm + Slight));
            Assert.Equal(LeastOfAll(inks, new CoverField(FieldMm, 3, 1)), Work(cut), 9);
            Assert.True(LaneCover.Bound(lanes) <= Work(cut) + Slight);
        }
    }

    /// <summary>Scouting keeps few places, the most promising of them: it finds little more work than there must be.</summary>
    [Fact]
    public void Scouting_comes_near_the_least_work()
    {
        var random = new Random(23);
        double least = 0, scouted = 0;
        for (int i = 0; i < 20; i++)
        {
            var lanes = Lanes(Drawn(random, 4, 12));
            double best = new LaneCover(lanes, FieldMm).LeastWork(double.PositiveInfinity);
            double quick = new LaneCover(lanes, FieldMm, isScouting: true).LeastWork(double.PositiveInfinity);
            Assert.InRange(quick, best - Slight, best * 1.15);
            (least, scouted) = (least + best, scouted + quick);
        }

        Assert.InRange(scouted, least, least * 1.03);
    }

    /// <summary>A motif goes with the name on its left or on its right, never by itself; some names leave room for none.</summary>
    [Fact]
    public void No_other_hoopings_of_names_and_motifs_cost_less_on_short_lists()
    {
        const double narrowMm = 96;
        var random = new Random(29);
        int withMotifs = 0, tight = 0;
        for (int i = 0; i < 500; i++)
        {
            var names = Drawn(random, 2, 3);
            List<Ink> inks = [.. names.SelectMany((n, k) => k + 1 < names.Count && names[k + 1].Lane == n.Lane && random.Next(4) > 0
                ? [n, new Ink(n.Lane, Middle(n, names[k + 1]) - 1.5, Middle(n, names[k + 1]) + 1.5, IsName: false)] : new[] { n })];
            double least = LeastOfAll(inks, new CoverField(narrowMm, 2, 1));
            if (double.IsInfinity(least))
            {
                continue;
            }

            var lanes = Lanes(inks, narrowMm);
            var cut = new LaneCover(lanes, narrowMm).Cut();
            Assert.Equal(inks.Count, cut.Sum(h => h.Sum(s => s.Count)));
            Assert.All(cut, h => Assert.True(Span(h, lanes, inks) <= narrowMm + Slight));
            Assert.All(cut.SelectMany(h => h), s =>
                Assert.Contains(inks.Where(k => k.Lane == s.Lane).Skip(s.First).Take(s.Count), k => k.IsName));
            Assert.Equal(least, Work(cut), 9);
            withMotifs += inks.Exists(k => !k.IsName) ? 1 : 0;
            tight += inks.Zip(inks.Skip(1)).Any(p => p.First.Lane == p.Second.Lane && p.First.IsName != p.Second.IsName
                && p.Second.RightMm - p.First.LeftMm > narrowMm) ? 1 : 0;
        }

        Assert.True(withMotifs > 80 && tight > 20, $"{withMotifs} {tight}");

        static double Middle(Ink one, Ink next) => (one.RightMm + next.LeftMm) / 2;
    }

    /// <summary>A large frame that holds all strips, and a quick small one that holds one or two of them.</summary>
    [Fact]
    public void No_other_hoopings_in_two_frames_cost_less_on_short_lists()
    {
        var random = new Random(23);
        int mixed = 0;
        for (int i = 0; i < 60; i++)
        {
            var inks = Drawn(random, 2 + (i % 2), 2 + random.Next(2) + (1 - (i % 2)));
            CoverField[] fields =
                [new(FieldMm, 3, 1), new(60 + (random.NextDouble() * 60), 1 + random.Next(2), 0.3 + (random.NextDouble() * 0.5))];
            var lanes = Lanes(inks);
            var cut = new LaneCover(lanes, [.. fields]).CutInFields();
            Assert.Equal(inks.Count, cut.Sum(h => h.Shares.Sum(s => s.Count)));
            Assert.All(cut, h => Assert.True(Span(h.Shares, lanes, inks) <= fields[h.Field].LengthMm + Slight));
            Assert.All(cut, h => Assert.True(h.Shares.Max(s => s.Lane) - h.Shares.Min(s => s.Lane) < fields[h.Field].Lanes));
            Assert.Equal(LeastOfAll(inks, fields), cut.Sum(h => fields[h.Field].Work + (h.Shares.Length * LaneCover.SegmentPart)), 9);
            mixed += cut.Select(h => h.Field).Distinct().Count() > 1 ? 1 : 0;
        }

        Assert.True(mixed > 5, $"{mixed}");
    }

    [Theory]
    [InlineData(2, 14)]
    [InlineData(3, 8)]
    public void OR_Tools_finds_none_in_two_frames_that_cost_less(int lanes, int names)
    {
        CoverField[] fields = [new(FieldMm, lanes, 1), new(100, 1, 0.45)];
        for (int seed = 0; seed < 3; seed++)
        {
            var inks = Drawn(new Random(seed), lanes, names);
            double own = new LaneCover(Lanes(inks), [.. fields]).LeastWork(double.PositiveInfinity);
            Assert.Equal(LeastByProgram(inks, lanes, fields), own, 6);
        }
    }

    [Theory]
    [InlineData(2, 16)]
    [InlineData(3, 10)]
    public void OR_Tools_finds_none_that_cost_less_on_longer_lists(int lanes, int names)
    {
        for (int seed = 0; seed < 4; seed++)
        {
            var inks = Drawn(new Random(seed), lanes, names);
            double least = LeastByProgram(inks, lanes, new CoverField(FieldMm, lanes, 1));
            Assert.Equal(least, Work(new LaneCover(Lanes(inks), FieldMm).Cut()), 6);
        }
    }

    /// <summary>Each hooping goes across a whole cloth: the sum of the cloths' longest pieces is what hoopings are counted by.</summary>
    [Theory]
    [InlineData(2, 7)]
    [InlineData(3, 8)]
    [InlineData(4, 10)]
    public void Pieces_are_shared_out_so_that_the_cloths_longest_ones_add_up_to_the_least(int lanes, int pieces)
    {
        for (int seed = 0; seed < 3; seed++)
        {
            var random = new Random(seed);
            ImmutableArray<RoundPart> parts = [.. Enumerable.Range(0, pieces).Select(i => new RoundPart(
                new LaidRound(i + 1, 4000, 4000, 10, [], []), 0, 300 + random.Next(3500), []))];
            var cloths = FreeLanes.Share(parts, lanes);
            Assert.Equal(
                parts.Order(Comparer<RoundPart>.Create((a, b) => a.Round.Number - b.Round.Number)),
                cloths.SelectMany(c => c).OrderBy(p => p.Round.Number));
            Assert.All(cloths, c => Assert.InRange(c.Count, 1, lanes));
            Assert.Equal(LeastSumOfLongest([.. parts.Select(p => p.LengthMm)], lanes), cloths.Sum(c => c.Max(p => p.LengthMm)), 3);
        }
    }

    private static double Span(ImmutableArray<LaneCutter.Share> hooping, HoopingLane[] lanes, List<Ink> inks)
    {
        var held = hooping.SelectMany(s => inks.Where(i => i.Lane == s.Lane).Skip(s.First).Take(s.Count)).ToList();
        Assert.All(hooping, s => Assert.True(s.Lane < lanes.Length));
        return held.Max(i => i.RightMm) - held.Min(i => i.LeftMm);
    }

    /// <summary>Over all ways to part the names into hoopings, in whatever order: a segment is a run of names of a lane without
    /// one left out.</summary>
    private static double LeastOfAll(List<Ink> inks, params CoverField[] fields)
    {
        int all = (1 << inks.Count) - 1;
        var cost = new double[all + 1];
        for (int set = 1; set <= all; set++)
        {
            cost[set] = fields.Min(f => OneHooping(set, inks, f, isLargest: f == fields[0]));
        }

        var least = new double[all + 1];
        for (int set = 1; set <= all; set++)
        {
            int lowest = set & -set;
            least[set] = double.PositiveInfinity;
            for (int sub = set; sub > 0; sub = (sub - 1) & set)
            {
                if ((sub & lowest) != 0 && least[set ^ sub] + cost[sub] < least[set])
                {
                    least[set] = least[set ^ sub] + cost[sub];
                }
            }
        }

        return least[all];
    }

    private static double OneHooping(int set, List<Ink> inks, CoverField field, bool isLargest)
    {
        double left = double.PositiveInfinity;
        double right = double.NegativeInfinity;
        int segments = 0;
        bool hasName = true;
        var held = inks.Where((_, i) => (set & (1 << i)) != 0).Select(i => i.Lane).ToList();
        for (int i = 0; i < inks.Count; i++)
        {
            if ((set & (1 << i)) != 0)
            {
                (left, right) = (Math.Min(left, inks[i].LeftMm), Math.Max(right, inks[i].RightMm));
                bool goesOn = i > 0 && inks[i - 1].Lane == inks[i].Lane && (set & (1 << (i - 1))) != 0;
                segments += goesOn ? 0 : 1;
                if (!goesOn && !hasName)
                {
                    return double.PositiveInfinity;
                }

                hasName = inks[i].IsName || (goesOn && hasName);
            }
        }

        bool isAlone = isLargest && BitOperations.PopCount((uint)set) == 1;
        return hasName && held.Max() - held.Min() < field.Lanes && (right - left <= field.LengthMm + Slight || isAlone)
            ? field.Work + (segments * LaneCover.SegmentPart) : double.PositiveInfinity;
    }

    /// <summary>
    /// A hooping may begin at any name, in each field and over each of the lanes beside each other that lie in it; each name goes
    /// into one that holds it, and each lane in a hooping has a segment.
    /// </summary>
    private static double LeastByProgram(List<Ink> inks, int lanes, params CoverField[] fields)
    {
        using var solver = Solver.CreateSolver("SCIP");
        var windows = (from ink in inks
                       from field in fields
                       from top in Enumerable.Range(0, Math.Max(1, lanes - field.Lanes + 1))
                       select (ink.LeftMm, Field: field, Top: top, Hooped: solver.MakeBoolVar(""),
                           Segments: Enumerable.Range(0, lanes).Select(_ => solver.MakeBoolVar("")).ToArray()))
            .ToList();
        var objective = solver.Objective();
        objective.SetMinimization();
        foreach (var window in windows)
        {
            objective.SetCoefficient(window.Hooped, window.Field.Work);
            foreach (var lane in window.Segments)
            {
                objective.SetCoefficient(lane, LaneCover.SegmentPart);
                var needs = solver.MakeConstraint(double.NegativeInfinity, 0, "");
                needs.SetCoefficient(lane, 1);
                needs.SetCoefficient(window.Hooped, -1);
            }
        }

        foreach (var ink in inks)
        {
            var once = solver.MakeConstraint(1, double.PositiveInfinity, "");
            foreach (var window in windows.Where(w => ink.Lane >= w.Top && ink.Lane < w.Top + w.Field.Lanes
                && ink.LeftMm >= w.LeftMm && ink.RightMm <= w.LeftMm + w.Field.LengthMm + Slight))
            {
                // Covered by the segment of its lane in that hooping, which needs the hooping.
                once.SetCoefficient(window.Segments[ink.Lane], 1);
            }
        }

        Assert.Equal(Solver.ResultStatus.OPTIMAL, solver.Solve());
        return objective.Value();
    }

    private static double LeastSumOfLongest(double[] lengthsMm, int lanes)
    {
        using var solver = Solver.CreateSolver("SCIP");
        int cloths = (lengthsMm.Length + lanes - 1) / lanes;
        var longest = Enumerable.Range(0, cloths).Select(_ => solver.MakeNumVar(0, 5000, "")).ToArray();
        var lies = lengthsMm.Select(_ => Enumerable.Range(0, cloths).Select(_ => solver.MakeBoolVar("")).ToArray()).ToArray();
        for (int cloth = 0; cloth < cloths; cloth++)
        {
            var full = solver.MakeConstraint(0, lanes, "");
            for (int piece = 0; piece < lengthsMm.Length; piece++)
            {
                full.SetCoefficient(lies[piece][cloth], 1);
                var reaches = solver.MakeConstraint(0, double.PositiveInfinity, "");
                reaches.SetCoefficient(longest[cloth], 1);
                reaches.SetCoefficient(lies[piece][cloth], -lengthsMm[piece]);
            }
        }

        // Which cloth is called the first does not matter: without an order the solver tries each order of them.
        foreach (var (one, next) in longest.Zip(longest.Skip(1)))
        {
            var order = solver.MakeConstraint(0, double.PositiveInfinity, "");
            order.SetCoefficient(one, 1);
            order.SetCoefficient(next, -1);
        }

        foreach (var piece in lies)
        {
            var once = solver.MakeConstraint(1, 1, "");
            foreach (var on in piece)
            {
                once.SetCoefficient(on, 1);
            }
        }

        var objective = solver.Objective();
        objective.SetMinimization();
        foreach (var most in longest)
        {
            objective.SetCoefficient(most, 1);
        }

        Assert.Equal(Solver.ResultStatus.OPTIMAL, solver.Solve());
        return objective.Value();
    }
}
