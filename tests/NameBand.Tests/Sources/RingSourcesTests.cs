using NameBand.Garment;
using NameBand.Layout;
using NetTopologySuite.Geometries;
using Xunit;

namespace NameBand.Tests.Sources;

/// <summary>Curved strips against plane geometry and against polygons measured by NetTopologySuite.</summary>
public class RingSourcesTests
{
    /// <summary>Arc less arc: a ring of angle θ and width w has edges that differ by θ·w, whatever the radius.</summary>
    [Theory]
    [InlineData(1, 30, 188.5)]
    [InlineData(1, 25.4, 159.6)]
    [InlineData(0.75, 25.4, 119.7)]
    public void The_upper_edge_is_shorter_by_the_angle_times_the_width(double turn, double widthMm, double shorterMm)
    {
        double angle = 2 * Math.PI * turn;
        foreach (double hem in new double[] { 1500, 3660 })
        {
            var job = Sample.Job.WithHem(hem) with { Layout = Sample.Job.Layout with { IsCurved = true } };
            job = job with
            {
                Hem = job.Hem with { Turn = turn },
                Strip = job.Strip with { CutWidth = Common.Length.FromMm(widthMm), TurnIn = Common.Length.FromMm(0) },
            };
            var plan = HemPlanner.Plan(job).Value!;
            Assert.Equal(shorterMm, plan.RoundMm(1) - (angle * (plan.RadiusMm(1) - widthMm)), 1);
            Assert.Equal(shorterMm, plan.UpperEdgeShorterMm, 1);
        }
    }

    /// <summary>Sagitta s = r − √(r² − (c/2)²) of a chord c (plane geometry, Pythagoras).</summary>
    [Theory]
    [InlineData(777, 160)]
    [InlineData(549, 147)]
    [InlineData(200, 150)]
    public void The_bow_is_the_sagitta_of_its_chord(double radius, double chord)
    {
        double arc = 2 * radius * Math.Asin(chord / 2 / radius);
        Assert.Equal(radius - Math.Sqrt((radius * radius) - (chord * chord / 4)), StripCurve.BowMm(arc, radius), 9);
    }

    [Theory]
    [InlineData(777, 1200, 180)]
    [InlineData(500, 900, 180)]
    [InlineData(300, 700, 50.8)]
    public void Area_and_rectangle_of_a_band_are_those_of_its_polygon(double radius, double arc, double width)
    {
        var band = new ClothBand(new StripCurve(radius, radius - 12.7, true), arc, width);
        var polygon = Polygon(band, 0);
        Assert.InRange(band.AreaMm2 / polygon.Area, 1 - 1e-5, 1 + 1e-5);
        Assert.Equal(polygon.EnvelopeInternal.Width, band.LengthMm, 1);
        Assert.Equal(polygon.EnvelopeInternal.Height, band.HeightMm, 1);
    }

    [Theory]
    [InlineData(777, 777)]
    [InlineData(777, 729)]
    [InlineData(729, 777)]
    public void Nested_bands_touch_and_do_not_lie_over_each_other(double lower, double upper)
    {
        var below = new ClothBand(new StripCurve(lower, lower - 12.7, true), 1200, 180);
        var above = new ClothBand(new StripCurve(upper, upper - 12.7, true), 1150, 180);
        double lift = below.NestedMm(above);
        Assert.True(Polygon(below, 0).Intersection(Polygon(above, lift + 0.1)).Area < 1);
        Assert.True(Polygon(below, 0).Intersection(Polygon(above, lift - 2)).Area > 1);
        Assert.True(lift < below.HeightMm);
    }

    private static Polygon Polygon(ClothBand band, double liftMm)
    {
        const int steps = 2000;
        double half = band.AngleRad / 2;
        var outer = Enumerable.Range(0, steps + 1).Select(i => At(band.OuterRadiusMm, half - (2 * half * i / steps)));
        var inner = Enumerable.Range(0, steps + 1).Select(i => At(band.InnerRadiusMm, (2 * half * i / steps) - half));
        Coordinate[] ring = [.. outer, .. inner];
        return new Polygon(new LinearRing([.. ring, ring[0]]));

        Coordinate At(double radius, double angle) => new(radius * Math.Sin(angle), (radius * Math.Cos(angle)) - band.FootMm + liftMm);
    }
}
