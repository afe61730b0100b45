using System.Collections.Immutable;
using Google.OrTools.LinearSolver;
using NameBand.Cloth;
using NameBand.Common;
using NameBand.Garment;
using NameBand.Job;
using NameBand.Layout;
using NameBand.Layout.Pieces;
using NameBand.Layout.Planning;
using Xunit;

namespace NameBand.Tests.Layout;

/// <summary>Curved strips nested on one cloth, several under one placing of the hoop.</summary>
public sealed class NestedArcsTests
{
    private static readonly Fabric Cotton = FabricTable.Find("quilting cotton")!;

    private static BandJob Curved(Reader reader, int rounds = 1, double across = 200, double along = 300) =>
        Sample.Job.WithRounds(rounds).WithHeight(8) with
        {
            Hem = Sample.Job.Hem with { Lengths = [Length.FromMm(2600)], Turn = 0.75, Closed = false },
            Strip = Sample.Job.Strip with { Rounds = rounds, ReadBy = reader },
            Hoop = Sample.Job.Hoop with { Across = Length.FromMm(across), Along = Length.FromMm(along) },
            Layout = Sample.Job.Layout with { IsCurved = true, Lanes = 2 },
        };

    private static Sizing SizingOf(BandJob job) => new(
        "boxes", Sample.Hem(job), job.Hoop.Along.Mm, job.Hoop.Across.Mm, job.Hoop.Spare.Mm, 0, job.Strip.Shortening, null)
    { MarkReachMm = 20.7 };

    private static StripPlan Lay(BandJob job, int names, int seed) =>
        LayoutPlanner.Plan(job, HemPlanner.Plan(job).Value!, Sample.Lettered(Sample.RandomWidths(seed, names, least: 5)), Cotton).Value!;

    /// <summary>Cut edges as points, held against each other by the way to the other arcs' centre.</summary>
    [Theory]
    [InlineData(true, 551, 551, 700, 650)]
    [InlineData(false, 551, 551, 700, 700)]
    [InlineData(true, 510, 551, 500, 900)]
    [InlineData(false, 551, 510, 300, 700)]
    [InlineData(true, 400, 551, 500, 600)]
    public void Cut_strips_touch_each_other_and_nowhere_lie_over_each_other(bool isAbove, double upperMm, double lowerMm,
        double upperFlatMm, double lowerFlatMm)
    {
        const double width = 50.8, end = 12;
        var (upper, lower) = (Piece(upperMm, upperFlatMm), Piece(lowerMm, lowerFlatMm));
        double pitch = NestedArcs.ApartMm(upper, lower, width);
        double nearest = double.PositiveInfinity;
        for (int i = -500; i <= 500; i++)
        {
            // The middle of the lower strip is the origin; where the other strip has ended there is nothing to lie over.
            var (over, beyond) = On(lower, Edge(upper, upper.ReachRad * i / 500, -width / 2, pitch), 0);
            nearest = beyond ? nearest : Math.Min(nearest, over - (width / 2));
            var (under, isPast) = On(upper, Edge(lower, lower.ReachRad * i / 500, width / 2, 0), pitch);
            nearest = isPast ? nearest : Math.Min(nearest, (-width / 2) - under);
        }

        bool areAlike = Math.Abs(upper.ReachRad - lower.ReachRad) < 0.001;
        Assert.InRange(nearest, -1e-6, areAlike ? 0.01 : 4);
        Assert.True(pitch >= width - 1e-9);

        // How far above the other strip's centre line, and whether past its end.
        (double YMm, bool IsPast) On(ArcPiece piece, Point at, double middle)
        {
            double sign = piece.Curve.CentreIsAbove ? 1 : -1;
            var from = at - new Point(0, middle + (sign * piece.Curve.CentreRadiusMm));
            return (sign * (piece.Curve.CentreRadiusMm - from.DistanceTo(default)),
                Math.Abs(Math.Atan2(from.XMm, -sign * from.YMm)) > piece.ReachRad);
        }

        ArcPiece Piece(double radius, double flat) => new(new StripCurve(radius, radius - 12.7, isAbove), flat, end);

        Point Edge(ArcPiece piece, double angle, double y, double middle)
        {
            double sign = piece.Curve.CentreIsAbove ? 1 : -1;
            double radius = piece.Curve.RadiusAtMm(y);
            return new Point(radius * Math.Sin(angle), middle + (sign * (piece.Curve.CentreRadiusMm - (radius * Math.Cos(angle)))));
        }
    }

    /// <summary>Every way to cut up to three strips of a few names into hoopings, whichever segments lie together, crossing ones
    /// too.</summary>
    [Fact]
    public void Hoopings_of_few_names_cost_no_more_than_the_best_of_all_ways_to_cut_them()
    {
        var random = new Random(1902);
        int shared = 0;
        for (int i = 0; i < 60; i++)
        {
            int lanes = 2 + (i % 2);
            var sizing =
                SizingOf(Curved(i % 3 == 0 ? Reader.Wearer : Reader.Viewer, across: 120 + (40 * lanes), along: random.Next(140, 260)));
            var nest = new NestedArcs(
                [.. Enumerable.Range(0, lanes).Select(l => new ArcPiece(StripCurve.Of(sizing.Hem, 1)!, 330 + random.Next(60), 10))],
                    sizing);
            var (left, right) = (new double[lanes][], new double[lanes][]);
            for (int l = 0; l < lanes; l++)
            {
                int names = random.Next(1, lanes == 2 ? 5 : 4);
                double[] ends = [.. Enumerable.Range(0, 2 * names).Select(_ => 330 * random.NextDouble()).Order()];
                left[l] = [.. ends.Where((_, e) => e % 2 == 0).Select(e => nest.AngleRad(l, e))];
                right[l] = [.. ends.Where((_, e) => e % 2 == 1).Select(e => nest.AngleRad(l, e))];
            }

            ImmutableArray<ArcField> fields =
                [ArcField.Of(sizing, 1),
                    .. i % 4 == 0 ? [ArcField.Of(sizing with { FieldAlongMm = 120, FieldAcrossMm = 100 }, 0.6)]
                        : ImmutableArray<ArcField>.Empty];
            var cover = new BentCover(nest, left, right, fields);
            double least = Exhaustive(nest, left, right, fields);
            var cut = cover.Cut();
            Assert.Equal(least, cover.LeastWork(), 9);
            Assert.Equal(least, cut.Sum(c => fields[c.Field].Work + (c.Shares.Length * LaneCover.SegmentPart)), 9);
            Assert.Equal(left.Sum(l => l.Length), cut.Sum(c => c.Shares.Sum(s => s.Count)));
            shared += cut.Count(c => c.Shares.Length > 1);
        }

        Assert.True(shared > 40, $"{shared} hoopings hold several strips");
    }

    /// <summary>Longer lists, against Google OR-Tools, which nobody here made: of all hoopings that the field holds those that have every
    /// name once and cost least, crossing ones too.</summary>
    [Theory]
    [InlineData(2, 8)]
    [InlineData(3, 5)]
    public void OR_Tools_finds_no_hoopings_of_nested_strips_that_cost_less(int lanes, int names)
    {
        for (int seed = 0; seed < 3; seed++)
        {
            var random = new Random(seed);
            var sizing = SizingOf(Curved(Reader.Viewer, across: 120 + (40 * lanes), along: random.Next(140, 220)));
            var nest = new NestedArcs(
                [.. Enumerable.Range(0, lanes).Select(_ => new ArcPiece(StripCurve.Of(sizing.Hem, 1)!, 60 * names, 10))], sizing);
            double[][] ends = [.. Enumerable.Range(0, lanes).Select(l => Enumerable.Range(0, 2 * names)
                .Select(_ => 60 * names * random.NextDouble()).Order().Select(e => nest.AngleRad(l, e)).ToArray())];
            double[][] left = [.. ends.Select(l => l.Where((_, e) => e % 2 == 0).ToArray())];
            double[][] right = [.. ends.Select(l => l.Where((_, e) => e % 2 == 1).ToArray())];
            var field = ArcField.Of(sizing, 1);
            Assert.Equal(LeastByProgram(nest, left, right, field), new BentCover(nest, left, right, [field]).LeastWork(), 6);
        }
    }

    private static double LeastByProgram(NestedArcs nest, double[][] left, double[][] right, ArcField field)
    {
        using var solver = Solver.CreateSolver("SCIP");
        var objective = solver.Objective();
        objective.SetMinimization();
        var once = left.Select(l => l.Select(_ => solver.MakeConstraint(1, 1, "")).ToArray()).ToArray();
        Add(0, [], []);
        Assert.Equal(Solver.ResultStatus.OPTIMAL, solver.Solve());
        return objective.Value();

        void Add(int lane, ImmutableArray<ArcSpan> spans, ImmutableArray<(int First, int Last)> names)
        {
            if (lane == left.Length)
            {
                bool isOneName = spans.Length == 1 && names[spans[0].Lane] is var (first, last) && first == last;
                if (spans.IsEmpty || (!isOneName && nest.Extent(spans, field) is null))
                {
                    return;
                }

                var hooping = solver.MakeBoolVar("");
                objective.SetCoefficient(hooping, field.Work + (spans.Length * LaneCover.SegmentPart));
                foreach (var span in spans)
                {
                    for (int n = names[span.Lane].First; n <= names[span.Lane].Last; n++)
                    {
                        once[span.Lane][n].SetCoefficient(hooping, 1);
                    }
                }

                return;
            }

            Add(lane + 1, spans, names.Add((0, -1)));
            for (int first = 0; first < left[lane].Length; first++)
            {
                for (int last = first; last < left[lane].Length; last++)
                {
                    Add(lane + 1, spans.Add(new ArcSpan(lane, left[lane][first], right[lane][last])), names.Add((first, last)));
                }
            }
        }
    }

    private static double Exhaustive(NestedArcs nest, double[][] left, double[][] right, ImmutableArray<ArcField> fields)
    {
        double best = double.PositiveInfinity;
        Segments(0, []);
        return best;

        // Each lane into segments in every way; then each segment into a hooping that there is, or one of its own.
        void Segments(int lane, ImmutableArray<ArcSpan> spans)
        {
            if (lane == left.Length)
            {
                Share(spans, 0, []);
                return;
            }

            int names = left[lane].Length;
            for (int cuts = 0; cuts < 1 << (names - 1); cuts++)
            {
                var own = ImmutableArray.CreateBuilder<ArcSpan>();
                int first = 0;
                for (int n = 0; n < names; n++)
                {
                    if (n == names - 1 || (cuts & (1 << n)) != 0)
                    {
                        own.Add(new ArcSpan(lane, left[lane][first], right[lane][n]));
                        first = n + 1;
                    }
                }

                Segments(lane + 1, spans.AddRange(own));
            }
        }

        void Share(ImmutableArray<ArcSpan> spans, int next, ImmutableArray<ImmutableArray<ArcSpan>> hoopings)
        {
            if (next == spans.Length)
            {
                double work = hoopings.Sum(h => Field(h) + (h.Length * LaneCover.SegmentPart));
                best = Math.Min(best, work);
                return;
            }

            for (int h = 0; h < hoopings.Length; h++)
            {
                if (hoopings[h].All(s => s.Lane != spans[next].Lane))
                {
                    Share(spans, next + 1, hoopings.SetItem(h, hoopings[h].Add(spans[next])));
                }
            }

            Share(spans, next + 1, hoopings.Add([spans[next]]));
        }

        double Field(ImmutableArray<ArcSpan> hooping) => fields
            .Where(f => nest.Extent(hooping, f) is not null || (f == fields[0] && IsOneName(hooping)))
            .Select(f => f.Work).DefaultIfEmpty(double.PositiveInfinity).Min();

        bool IsOneName(ImmutableArray<ArcSpan> hooping) =>
            hooping.Length == 1
                && Array.IndexOf(left[hooping[0].Lane], hooping[0].FromRad) == Array.IndexOf(right[hooping[0].Lane], hooping[0].ToRad);
    }

    /// <summary>
    /// What lies in one hooping lies so on the cloth too: places read off the sheets, laid along each strip's own arc about its own
    /// centre, are as far from each other as in the hooping, and all of it lies in the field.
    /// </summary>
    [Theory]
    [InlineData(Reader.Viewer, 1, 200, 2)]
    [InlineData(Reader.Wearer, 1, 200, 2)]
    [InlineData(Reader.Viewer, 2, 110, 2)]
    [InlineData(Reader.Wearer, 2, 260, 3)]
    public void Names_and_marks_lie_in_the_field_as_they_do_on_the_cloth(Reader reader, int rounds, double across, int lanes)
    {
        int nested = 0;
        for (int seed = 0; seed < 4; seed++)
        {
            var job = Curved(reader, rounds, across, along: 200 + (40 * seed));
            var plan = Lay(job with { Layout = job.Layout with { Lanes = lanes } }, 22 * rounds, seed);
            Assert.Equal(22 * rounds, plan.Hoopings.Sum(h => h.Segments.Sum(s => s.Segment.Names.Length)));
            foreach (var hooping in plan.Hoopings)
            {
                var band = plan.Cloths.Single(c => c.Number == hooping.Cloth).Band!;
                var points = hooping.Segments.SelectMany(s => Points(plan, hooping, s, band)).ToList();
                foreach (var (one, other) in points.Zip(points.Skip(1).Append(points[0])))
                {
                    Assert.Equal(one.OnCloth.DistanceTo(other.OnCloth), one.Hooped.DistanceTo(other.Hooped), 6);
                }

                var box = points.Aggregate(Box.Empty, (all, p) => all.Include(p.Hooped));
                Assert.InRange(box.WidthMm, 0, job.Hoop.Along.Mm - (2 * job.Hoop.Spare.Mm) + 1e-6);
                Assert.InRange(box.HeightMm, 0, across + 1e-6);
                nested += hooping.Segments.Length > 1 ? 1 : 0;
                Assert.Single(hooping.Segments.Select(s => Math.Round(plan.FrameOf(s)!.Value.TurnRad(0), 9)).Distinct());
            }

            // Where each strip is measured from: there its lower edge meets the cut left end, which runs to the cloth's own centre.
            foreach (var (band, lane) in plan.Cloths.Select(c => c.Band!).SelectMany(b => b.Lanes.Select(l => (b, l))))
            {
                double sign = lane.Curve.CentreIsAbove ? 1 : -1;
                double y = lane.CentreMm - (sign * lane.Curve.RadiusMm * Math.Cos(lane.LeftRad));
                Assert.Equal(-band.AngleRad / 2, Math.Atan2(lane.Curve.RadiusMm * Math.Sin(lane.LeftRad), -sign * y), 9);
            }

            foreach (var piece in plan.Cloths.SelectMany(c => c.Pieces))
            {
                Assert.True(piece.OnClothMm - piece.StartAllowanceMm >= job.Layout.EndCloth.Mm - 1e-6);
            }
        }

        Assert.True(nested > 4, $"{nested} hoopings hold several strips");

        static IEnumerable<(Point Hooped, Point OnCloth)> Points(StripPlan plan, Hooping hooping, HoopedSegment hooped, ClothBand band)
        {
            var frame = plan.FrameOf(hooped)!.Value;
            var piece = plan.Cloths.SelectMany(c => c.Pieces)
                .Last(p => p.Cloth == hooping.Cloth && p.Round == hooped.Round.Number && p.StartMm <= hooped.Segment.Names[0].StartMm);
            var lane = band.LaneOf(piece);
            double sign = lane.Curve.CentreIsAbove ? 1 : -1;
            double zone = plan.Hem.Strip.SewingZoneMm / 2;
            var (left, right) = plan.CrossesOf(hooped);
            double to = plan.OnClothMm(hooped.Segment.Names[^1].EndMm - hooped.Segment.StartMm);
            foreach (var (along, y) in new[] { 0, 0.3, 0.6, 1 }.SelectMany(t => new[] { (t * to, zone), (t * to, -zone) })
                .Concat(new[] { left, right }.Select(c => frame.Unbent(c - new Point(hooped.XMm, hooped.YMm)))))
            {
                double angle = lane.LeftRad + ((StripPlan.OnClothMm(hooping, hooped) + along) / lane.Curve.RadiusMm);
                double radius = lane.Curve.RadiusAtMm(y);
                yield return (
                    new Point(hooped.XMm, hooped.YMm) + frame.At(along, y),
                    new Point(radius * Math.Sin(angle), lane.CentreMm - (sign * radius * Math.Cos(angle))));
            }
        }
    }
}
