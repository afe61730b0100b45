using NameBand.Cloth;
using NameBand.Common;
using NameBand.Garment;
using NameBand.Job;
using NameBand.Layout;
using NameBand.Layout.Planning;
using NameBand.Lettering;
using Xunit;

namespace NameBand.Tests.Layout;

/// <summary>Strips cut to the curve of the hem.</summary>
public class StripCurveTests
{
    private static readonly Fabric Cotton = FabricTable.Find("quilting cotton")!;

    private static BandJob Curved(double hemMm = 3660, double turn = 0.75, int rounds = 1, Reader reader = Reader.Viewer) =>
        Sample.Job.WithRounds(rounds) with
        {
            Hem = Sample.Job.Hem with { Lengths = [Length.FromMm(hemMm)], Turn = turn },
            Strip = Sample.Job.Strip with { Rounds = rounds, ReadBy = reader },
            Layout = Sample.Job.Layout with { IsCurved = true },
        };

    private static Result<StripPlan> Lay(BandJob job, int names = 30, int seed = 1) =>
        LayoutPlanner.Plan(job, HemPlanner.Plan(job).Value!, Sample.Lettered(Sample.RandomWidths(seed, names)), Cotton);

    [Fact]
    public void An_arc_of_160_mm_at_a_radius_of_777_bows_by_4_point_1_mm() =>
        Assert.Equal(4.1, StripCurve.BowMm(160, 777), 1);

    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public void A_place_on_the_arc_is_found_again_and_the_segment_begins_at_the_origin(bool isAbove)
    {
        var frame = new StripCurve(500, 488, isAbove).Frame(140);
        Assert.Equal(0, frame.At(0, 0).DistanceTo(new Point(0, 0)), 9);
        Assert.Equal(0, frame.At(140, 0).DistanceTo(new Point(frame.ChordMm, 0)), 9);
        Assert.Equal(isAbove ? -frame.BowMm : frame.BowMm, frame.At(70, 0).YMm, 9);
        for (double along = 0; along <= 140; along += 14)
        {
            for (double y = -20; y <= 20; y += 8)
            {
                var (backAlong, backY) = frame.Unbent(frame.At(along, y));
                Assert.Equal((along, y), (Math.Round(backAlong, 6), Math.Round(backY, 6)));
                Assert.Equal(frame.At(along, y).YMm, frame.YAtMm(y, frame.At(along, y).XMm), 6);
            }
        }

        // A letter's upright is the direction across the strip there.
        var up = frame.At(20, 1) - frame.At(20, 0);
        Assert.Equal(frame.TurnRad(20), Math.Atan2(-up.XMm, up.YMm), 9);
    }

    [Theory]
    [InlineData(3660, 0.75, 100, Reader.Viewer)]
    [InlineData(3660, 0.75, 100, Reader.Wearer)]
    [InlineData(1200, 1, 100, Reader.Viewer)]
    [InlineData(1200, 1, 45, Reader.Wearer)]
    [InlineData(1100, 1.5, 44, Reader.Viewer)]
    public void Names_and_marks_of_every_hooping_lie_in_the_field(double hem, double turn, double across, Reader reader)
    {
        var wish = Curved(hem, turn, reader: reader).WithHeight(6);
        var job = wish with { Hoop = wish.Hoop with { Across = Length.FromMm(across) } };
        for (int seed = 0; seed < 5; seed++)
        {
            var plan = Lay(job, (int)(hem / 130), seed).Value!;
            foreach (var hooped in plan.Hoopings.Select(h => Assert.Single(h.Segments)))
            {
                var frame = plan.FrameOf(hooped)!.Value;
                double arm = hooped.Segment.MarkArmMm;
                double line = plan.RuledLineYMm(hooped);
                var points = hooped.Segment.Names.SelectMany(n =>
                {
                    double from = plan.OnClothMm(n.StartMm - hooped.Segment.StartMm);
                    double zone = plan.Hem.Strip.SewingZoneMm / 2;
                    return new[] { 0, 0.25, 0.5, 0.75, 1 }
                        .SelectMany(t => new[] { frame.At(from + (t * n.WidthMm), zone), frame.At(from + (t * n.WidthMm), -zone) });
                }).Append(new Point(0, line - arm)).Append(new Point(plan.RightMarkMm(hooped) + arm, line + arm)).ToList();
                double middle = frame.MiddleYMm;
                Assert.All(points, p => Assert.InRange(p.XMm - (frame.ChordMm / 2), -80, 80));
                Assert.All(points, p => Assert.InRange(p.YMm - middle, -across / 2, across / 2));
                Assert.InRange(plan.OnClothMm(hooped.Segment.LengthMm), 0, 150 + 1e-6);
            }
        }
    }

    [Fact]
    public void Marks_stand_at_least_100_mm_apart_outside_the_finished_strip()
    {
        var plan = Lay(Curved()).Value!;
        foreach (var hooped in plan.Hoopings.SelectMany(h => h.Segments))
        {
            Assert.True(plan.RightMarkMm(hooped) - hooped.Segment.LeftMarkMm >= 100 - 1e-6);
            var (_, y) = plan.FrameOf(hooped)!.Value.Unbent(new Point(hooped.Segment.LeftMarkMm, plan.RuledLineYMm(hooped)));
            Assert.Equal(plan.MarkYMm, y, 6);
            Assert.Equal(hooped.Segment.LengthMm, plan.MarksAlongMm(hooped).LeftMm + plan.MarksAlongMm(hooped).RightMm, 9);
        }
    }

    [Fact]
    public void Gaps_are_equal_on_the_base_line_and_never_under_the_least()
    {
        var job = Curved(hemMm: 2000).WithHeight(null);
        var plan = Lay(job, 24).Value!;
        var round = Assert.Single(plan.Rounds);
        var curve = StripCurve.Of(plan.Hem, 1)!;
        var names = round.Names.ToList();
        double[] gaps = [.. names.Zip(names.Skip(1), (a, b) =>
        {
            double apart = (b.StartMm + (b.WidthMm / 2) - a.StartMm - (a.WidthMm / 2)) / curve.AlongFactor(plan.BaselineYMm);
            return apart - ((a.WidthMm + b.WidthMm) / 2) + plan.InsetMm(a) + plan.InsetMm(b);
        })];
        Assert.All(gaps, g => Assert.Equal(gaps[0], g, 2));
        Assert.True(gaps[0] >= (1.5 * plan.LetterHeightMm) - 0.01, $"{gaps[0]} for letters {plan.LetterHeightMm}");
        Assert.Equal(round.HemMm, round.LengthMm, 9);
        Assert.All(names, n => Assert.True(plan.InsetMm(n) > 0));
    }

    [Fact]
    public void A_straight_edge_other_ways_and_the_bias_are_answered_with_what_would_do()
    {
        Assert.Contains("\"circlePart\": 0.75", Refusal(Curved(turn: 0)), StringComparison.Ordinal);
        Assert.Contains("needlePath", Refusal(Curved() with { Ways = [Way.Traced] }), StringComparison.Ordinal);
        var bias = Curved();
        Assert.Contains(
            "\"grain\": \"straight\"", Refusal(bias with { Layout = bias.Layout with { IsBias = true } }), StringComparison.Ordinal);
        Assert.Contains("at most", Refusal(Curved(hemMm: 400, turn: 1)), StringComparison.Ordinal);

        static string Refusal(BandJob job)
        {
            var problem = HemPlanner.Plan(job).Problems.Single(p => p.Severity == Severity.CannotUse);
            Assert.Equal("strip.shape", problem.Where.Key);
            return problem.Mend.English;
        }
    }

    [Fact]
    public void Lanes_are_answered_and_a_piece_that_bends_too_far_gets_a_length_that_would_do()
    {
        var job = Curved().WithHeight(8);
        var lanes = Lay(job with { Layout = job.Layout with { Lanes = 4 } });
        Assert.Contains(
            lanes.Problems,
            p => p.Where.Key == "strip.stripsSideBySide" && p.Mend.English.Contains("\"stripsSideBySide\": 2", StringComparison.Ordinal));

        var whole = Lay(job with { Layout = job.Layout with { Piece = Length.FromMm(3660) } });
        var problem = Assert.Single(whole.Problems, p => p.Where.Key == "strip.piece");
        string length = problem.Mend.English.Split('"')[3];
        Assert.True(Length.TryParse(length, out var piece, out _), problem.Mend.English);
        var mended = Lay(job with { Layout = job.Layout with { Piece = piece } });
        Assert.DoesNotContain(mended.Problems, p => p.Where.Key == "strip.piece");
        Assert.True(mended.Value!.Cloths.Length > 1);
    }

    [Fact]
    public void The_strip_is_said_to_lie_flat()
    {
        var ease = Assert.Single(Lay(Curved()).Value!.Easing);
        Assert.Equal(EaseVerdict.LiesFlat, ease.Verdict);
        Assert.Contains("cut to the curve", ease.InWords().English, StringComparison.Ordinal);
    }
}
