using System.Collections.Immutable;
using NameBand.Common;
using NameBand.Load;
using NameBand.Stitching;
using Xunit;

namespace NameBand.Tests.LoadRoom;

public class LoadMapTests
{
    /// <summary>A column of crossings 3 mm wide along x.</summary>
    private static NeedlePath Column(double fromMm, double lengthMm, double spacingMm)
    {
        var steps = ImmutableArray.CreateBuilder<NeedleStep>();
        steps.Add(new NeedleStep(NeedleAction.Jump, StitchKind.None, new Point(fromMm, 0)));
        int count = (int)Math.Round(lengthMm / (spacingMm / 2));
        for (int i = 0; i <= count; i++)
        {
            steps.Add(new NeedleStep(NeedleAction.Stitch, StitchKind.Satin, new Point(fromMm + (i * spacingMm / 2), i % 2 * 3)));
        }

        return new NeedlePath(steps.ToImmutable());
    }

    /// <summary>Columns one above the other have 2 holes and 2 crossings on each 0.4 × 3 mm: 5/3 holes and 5 mm of thread to the
    /// mm².</summary>
    [Fact]
    public void Over_cloth_sewn_full_the_mean_is_what_arithmetic_gives()
    {
        var steps = Enumerable.Range(0, 8)
            .SelectMany(n => Column(0, 30, 0.4).Steps.Select(s => s with { At = s.At + new Point(0, 3 * n) }));
        var map = LoadMap.Of(new NeedlePath([.. steps]), 0.4)!;
        var middle = Enumerable.Range(0, map.Columns).SelectMany(c => Enumerable.Range(0, map.Rows).Select(r => (Column: c, Row: r)))
            .Where(p => map.At(p.Column, p.Row) is { XMm: > 9 and < 21, YMm: > 6 and < 18 })
            .Select(p => map.Spot(p.Column, p.Row)).ToList();

        Assert.True(middle.Count > 400);
        Assert.InRange(middle.Average(s => s.PenetrationsPerMm2), 5.0 / 3 * 0.97, 5.0 / 3 * 1.03);
        Assert.InRange(middle.Average(s => s.ThreadPerMm2), 5 * 0.97, 5 * 1.03);
    }

    [Fact]
    public void The_worst_place_lies_where_the_crossings_are_closest()
    {
        var path = new NeedlePath([.. Column(0, 20, 0.6).Steps, .. Column(40, 20, 0.2).Steps]);

        var worst = LoadMap.Of(path, 0.4)!.Worst(3, 8);

        Assert.InRange(worst[0].At.XMm, 39, 61);
        Assert.True(worst[0].At.DistanceTo(worst[1].At) >= 8);
    }

    [Fact]
    public void Where_it_lies_on_the_cloth_changes_nothing()
    {
        var path = Column(0, 20, 0.3);
        var moved = new NeedlePath([.. path.Steps.Select(s => s with { At = s.At + new Point(-13, 41) })]);

        var (here, there) = (LoadMap.Of(path, 0.4)!.Worst(1, 8)[0], LoadMap.Of(moved, 0.4)!.Worst(1, 8)[0]);

        Assert.Equal(here.PenetrationsPerMm2, there.PenetrationsPerMm2, 1e-6);
        Assert.Equal(here.ThreadPerMm2, there.ThreadPerMm2, 1e-6);
        Assert.Equal(0, there.At.DistanceTo(here.At + new Point(-13, 41)), 1e-6);
    }

    [Fact]
    public void Twice_over_is_twice_as_much()
    {
        var once = LoadMap.Of(Column(0, 20, 0.4), 0.4)!.Worst(1, 8)[0];
        var twice = LoadMap.Of(new NeedlePath([.. Column(0, 20, 0.4).Steps, .. Column(0, 20, 0.4).Steps]), 0.4)!.Worst(1, 8)[0];

        Assert.Equal(2 * once.PenetrationsPerMm2, twice.PenetrationsPerMm2, 6);
        Assert.Equal(2 * once.ThreadPerMm2, twice.ThreadPerMm2, 6);
    }

    [Fact]
    public void Marks_and_empty_paths_have_no_map()
    {
        Assert.Null(LoadMap.Of(new NeedlePath([]), 0.4));
        Assert.Null(LoadMap.Of(new NeedlePath([new NeedleStep(NeedleAction.Stitch, StitchKind.Mark, new Point(0, 0))]), 0.4));
    }
}
