using NameBand.Cloth;
using NameBand.Common;
using NameBand.Job;
using NameBand.Layout;
using NameBand.Layout.Planning;
using Xunit;

namespace NameBand.Tests.Layout;

/// <summary>Strips side by side, pieces and joins.</summary>
public class LanesTests
{
    private static readonly Fabric Cotton = FabricTable.Find("quilting cotton")!;

    private static BandJob With(int? lanes, int rounds = 1, double? piece = null) => Sample.Job.WithHeight(8).WithRounds(rounds) with
    {
        Layout = Sample.Job.Layout with { Lanes = lanes, Piece = piece is { } mm ? Length.FromMm(mm) : null },
    };

    private static Result<StripPlan> Lay(BandJob job, int names = 34, int seed = 1) =>
        LayoutPlanner.Plan(job, Sample.Hem(job), Sample.Lettered(Sample.RandomWidths(seed, names)), Cotton);

    [Fact]
    public void A_field_100_mm_across_holds_two_lanes_25_point_4_mm_off_its_middle()
    {
        var plan = Lay(With(null)).Value!;
        var cloth = Assert.Single(plan.Cloths);
        Assert.Equal(2, cloth.Lanes);
        Assert.Equal(25.4, cloth.LaneYMm(1), 9);
        Assert.Equal(-25.4, cloth.LaneYMm(2), 9);
    }

    [Theory]
    [InlineData(1, 2)]
    [InlineData(2, 2)]
    [InlineData(3, 2)]
    public void All_ink_of_a_hooping_lies_in_the_field_and_every_name_is_sewn_once(int rounds, int lanes)
    {
        for (int seed = 0; seed < 12; seed++)
        {
            var plan = Lay(With(lanes, rounds), 34 * rounds, seed).Value!;
            foreach (var hooping in plan.Hoopings)
            {
                Assert.Equal((0.0, 0.0), (hooping.Segments[0].XMm, hooping.Segments[0].YMm));
                var ink = hooping.Segments.SelectMany(s => s.Segment.Names.Select(n =>
                    (Left: s.XMm + plan.OnClothMm(n.StartMm - s.Segment.StartMm), n.WidthMm))).ToList();
                Assert.True(ink.Max(i => i.Left + i.WidthMm) - ink.Min(i => i.Left) <= 150 + 1e-6);
                Assert.True(hooping.Segments.Max(s => s.XMm + plan.OnClothMm(s.Segment.LengthMm)) - hooping.Segments.Min(s => s.XMm) <= 150
                    + 1e-6);
                Assert.All(hooping.Segments, s => Assert.True(s.XMm >= 0 && plan.OnClothMm(s.Segment.LengthMm) <= 150 + 1e-6));
                Assert.Equal(hooping.Segments.Length, hooping.Segments.Select(s => s.YMm).Distinct().Count());
                Assert.True(hooping.Segments.Max(s => s.YMm) - hooping.Segments.Min(s => s.YMm) <= 50.8 + 1e-9);
            }

            var sewn = plan.Hoopings.SelectMany(h => h.Segments).SelectMany(s => s.Segment.Names).Select(n => n.Order);
            Assert.Equal(Enumerable.Range(1, 34 * rounds), sewn.Order());
            Assert.Equal(Enumerable.Range(1, plan.Hoopings.Length), plan.Cloths.SelectMany(c => c.Hoopings));
        }
    }

    [Fact]
    public void Two_lanes_need_far_fewer_hoopings_than_one()
    {
        for (int seed = 0; seed < 8; seed++)
        {
            int one = Lay(With(1, 2), 68, seed).Value!.Hoopings.Length;
            int two = Lay(With(2, 2), 68, seed).Value!.Hoopings.Length;
            Assert.True(two < 0.72 * one, $"{two} of {one}");
        }
    }

    /// <summary>Beginning at the leftmost name left over is the fewest for lanes that lie fast: held against trying every start.</summary>
    [Fact]
    public void No_other_starts_of_hoopings_need_fewer_of_them()
    {
        for (int seed = 0; seed < 10; seed++)
        {
            var plan = Lay(With(2, 1), 30, seed).Value!;
            var names = plan.Cloths[0].Pieces.SelectMany(p => plan.Rounds[0].Names
                .Where(n => n.StartMm >= p.StartMm && n.EndMm <= p.EndMm)
                .Select(n => (Left: p.OnClothMm + plan.OnClothMm(n.StartMm - p.StartMm), WidthMm: plan.OnClothMm(n.WidthMm)))).ToList();
            Assert.Equal(30, names.Count);
            Assert.True(Fewest(names, 150) <= plan.Hoopings.Length);
            Assert.True(plan.Hoopings.Length <= Fewest(names, 150) + 1);
        }

        // Windows over intervals: a lower bound from names no two of which share a window.
        static int Fewest(List<(double Left, double WidthMm)> names, double window)
        {
            int apart = 0;
            double end = double.NegativeInfinity;
            foreach (var (left, width) in names.OrderBy(n => n.Left))
            {
                if (left + width > end)
                {
                    apart++;
                    end = left + window;
                }
            }

            return apart;
        }
    }

    [Fact]
    public void Pieces_are_no_longer_than_wished_and_joined_in_gaps()
    {
        var plan = Lay(With(2, 2, piece: 1000), 68).Value!;
        Assert.Equal(8, plan.Cloths.Sum(c => c.Pieces.Length));
        Assert.Equal(8, plan.Joins);
        foreach (var piece in plan.Cloths.SelectMany(c => c.Pieces))
        {
            Assert.True(piece.LengthMm <= 1000);
            Assert.DoesNotContain(plan.Rounds[piece.Round - 1].Names, n => n.StartMm < piece.StartMm && n.EndMm > piece.StartMm);
            Assert.True(piece.OnClothMm >= 80);
        }

        foreach (var round in plan.Rounds)
        {
            Assert.Equal(round.LengthMm, plan.Cloths.SelectMany(c => c.Pieces).Where(p => p.Round == round.Number).Sum(p => p.LengthMm), 6);
        }
    }

    [Fact]
    public void More_lanes_than_the_field_holds_are_answered_with_the_number_that_fits()
    {
        var result = Lay(With(5));
        Assert.Equal(2, result.Value!.Cloths[0].Lanes);
        var problem = Assert.Single(result.Problems, p => p.Where.Key == "strip.stripsSideBySide");
        Assert.Contains("\"stripsSideBySide\": 2", problem.Mend.English, StringComparison.Ordinal);
        Assert.DoesNotContain(Lay(With(2)).Problems, p => p.Where.Key == "strip.stripsSideBySide");
    }

    [Fact]
    public void The_worksheet_says_where_each_segment_lies_on_its_cloth_and_how_far_apart_its_marks_are()
    {
        var plan = Lay(With(2, 2), 60).Value!;
        var figures = plan.Hoopings.Select(h => new NameBand.Estimating.HoopingFigures(h.Number, 1, 0, 0, 0, 0, 0, 1));
        using var stream = new MemoryStream();
        NameBand.Output.Worksheet.Write(stream, plan, NameBand.Estimating.Estimator.Make(With(2, 2), plan, [.. figures]));
        var rows = System.Text.Encoding.UTF8.GetString(stream.ToArray()).TrimStart('\uFEFF')
            .Split("\r\n", StringSplitOptions.RemoveEmptyEntries)
            .Select(l => l.Split(',')).ToList();
        int Column(string name) => Array.IndexOf(rows[0], name);
        Assert.Equal(plan.Rounds.Sum(r => r.Segments.Length), rows.Count - 1);
        foreach (var row in rows.Skip(1))
        {
            double Number(string name) => double.Parse(row[Column(name)], System.Globalization.CultureInfo.InvariantCulture);
            var segment = plan.Rounds.SelectMany(r => r.Segments).Single(s => s.Number == (int)Number("segment"));
            var piece = plan.Cloths[(int)Number("cloth") - 1].Pieces.Single(p => p.Round == (int)Number("round"));
            Assert.Equal(piece.OnClothMm + plan.OnClothMm(segment.StartMm - piece.StartMm), Number("on_cloth_mm"), 0.051);
            Assert.Equal(segment.LengthMm - 6, Number("marks_apart_mm"), 0.051);
            Assert.Equal(5, Number("spare_mm"));
        }
    }
}
