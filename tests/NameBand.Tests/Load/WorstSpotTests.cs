using System.Collections.Immutable;
using NameBand.Cloth;
using NameBand.Common;
using NameBand.Load;
using NameBand.Stitching;
using Xunit;

namespace NameBand.Tests.LoadRoom;

/// <summary>The densest disc of 1 mm and the most layers of thread; what they come to is at most a note.</summary>
public sealed class WorstSpotTests
{
    private static readonly Fabric Cotton = FabricTable.Find("quilting cotton")!;

    private const double DiscMm2 = Math.PI / 4;

    private static NeedlePath Path(params IEnumerable<Point> holes) =>
        new([new NeedleStep(NeedleAction.Jump, StitchKind.None, new Point(0, 0)),
            .. holes.Select(p => new NeedleStep(NeedleAction.Stitch, StitchKind.Satin, p))]);

    /// <summary>Seven holes near one place, far from fifty that stand 1 mm apart.</summary>
    [Fact]
    public void The_densest_disc_is_found_among_holes_that_stand_apart()
    {
        var spread = Enumerable.Range(0, 50).Select(i => new Point(i % 10, 10 + (i / 10)));
        var close = Enumerable.Range(0, 7).Select(i => new Point(30.2 + (0.3 * Math.Cos(i)), 5.1 + (0.3 * Math.Sin(i))));
        Assert.Equal(7 / DiscMm2, LoadMeter.Measure(Path(spread.Concat(close)), Cotton).Spot.HolesPerMm2, 9);
    }

    /// <summary>Beside a search on a lattice of 0.02 mm over everything.</summary>
    [Fact]
    public void It_is_at_most_a_hole_in_ten_less_than_a_thorough_search_finds()
    {
        var random = new Random(77);
        for (int run = 0; run < 8; run++)
        {
            Point[] holes = [.. Enumerable.Range(0, 300).Select(_ => new Point(random.NextDouble() * 8, random.NextDouble() * 5))];
            int most = 0;
            for (double x = 0; x <= 8; x += 0.02)
            {
                for (double y = 0; y <= 5; y += 0.02)
                {
                    most = Math.Max(most, holes.Count(h => ((h.XMm - x) * (h.XMm - x)) + ((h.YMm - y) * (h.YMm - y)) <= 0.25));
                }
            }

            double found = LoadMeter.Measure(Path(holes), Cotton).Spot.HolesPerMm2 * DiscMm2;
            Assert.InRange(found, most - Math.Max(1, most / 10.0) - 1e-9, most + 1e-9);
        }
    }

    /// <summary>Five lines of stitches over one another, and one that crosses them.</summary>
    [Fact]
    public void Layers_are_counted_where_most_lie_over_one_another()
    {
        var over = Enumerable.Range(0, 6).Select(i => new Point(i % 2 * 6, 0));
        Point[] across = [new(6, 3), new(3, 3), new(3, -3)];
        Assert.Equal(6, LoadMeter.Measure(Path(over.Concat(across)), Cotton).Spot.Layers);
        Assert.Equal(1, LoadMeter.Measure(Path(new Point(0, 0), new Point(5, 0)), Cotton).Spot.Layers);
    }

    [Theory]
    [InlineData(11.9, VerdictKind.Good)]
    [InlineData(12.1, VerdictKind.Note)]
    [InlineData(400, VerdictKind.Note)]
    public void It_is_a_note_where_it_is_more_than_the_cloth_bears_and_never_stops_anybody(double perMm2, VerdictKind kind)
    {
        HoopingLoad[] loads = [new(1, 3, new WorstSpot(2, 2)), new(2, 3, new WorstSpot(perMm2, 7))];
        var verdict = LoadAdvice.JudgeSpot(Cotton, loads)!;
        Assert.Equal((kind, Fact.Load), (verdict.Kind, verdict.About));
        Assert.Contains("7 layers", verdict.Text.English, StringComparison.Ordinal);
        Assert.Equal([VerdictKind.Good, kind], LoadAdvice.All(Cotton, loads).Select(v => v.Kind));
        var told = LoadAdvice.For(Cotton, loads).ToImmutableArray();
        Assert.Equal(kind == VerdictKind.Good ? 0 : 1, told.Length);
        Assert.All(told, p => Assert.Equal((Severity.Note, "hooping 2"), (p.Severity, p.Where.Key)));
    }
}
