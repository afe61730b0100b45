using NameBand.Tests.StitchQuality;
using Xunit;

namespace NameBand.Tests.StitchingRoom;

/// <summary>The sheet of cloth by which pull is judged behaves as cloth is known to: Radavičienė and Jucienė (2012) measured the
/// first two.</summary>
public class MembraneTests
{
    private const double ThreadNewton = 0.5;
    private const double ThreadStiffness = 3;

    /// <summary>A woven cloth: stiff along both threads, soft aslant. From memory.</summary>
    private static readonly MembraneCloth Woven = new(20, 12, 1.5, 0.15);

    [Fact]
    public void Narrowing_grows_with_the_length_of_the_stitches()
    {
        double[] narrower = [.. new[] { 1.0, 2.0, 4.0, 7.0 }.Select(w => Narrower(Woven, 0, w, ThreadNewton))];
        Assert.True(narrower[0] > 0);
        Assert.True(narrower.Zip(narrower.Skip(1)).All(p => p.Second > 1.3 * p.First), string.Join(", ", narrower));
    }

    [Fact]
    public void Narrowing_is_largest_on_the_bias()
    {
        double[] narrower = [.. new[] { 0.0, 22.5, 45, 67.5, 90 }.Select(a => Narrower(Woven, a, 3, ThreadNewton))];
        Assert.True(narrower[2] > narrower[1] && narrower[2] > narrower[3], string.Join(", ", narrower));
        Assert.True(narrower[1] > narrower[0] && narrower[3] > narrower[4], string.Join(", ", narrower));
    }

    [Fact]
    public void Narrowing_vanishes_with_the_tension()
    {
        Assert.Equal(0, Narrower(Woven, 30, 3, 0), 12);
        Assert.Equal(Narrower(Woven, 30, 3, ThreadNewton) / 10, Narrower(Woven, 30, 3, ThreadNewton / 10), 6);
    }

    /// <summary>Cloth that is alike in all directions narrows alike, whatever the angle; and a column grows as it gets narrower.</summary>
    [Fact]
    public void Cloth_without_a_grain_has_no_bias()
    {
        var felt = new MembraneCloth(10, 10, 10 / (2 * 1.3), 0.3);
        Assert.Equal(Narrower(felt, 0, 3, ThreadNewton), Narrower(felt, 45, 3, ThreadNewton), 9);
        Assert.True(new Membrane(felt, 0, 3, ThreadNewton, ThreadStiffness).Solved().LongerMm > 0);
    }

    private static double Narrower(MembraneCloth cloth, double degrees, double widthMm, double newton) =>
        new Membrane(cloth, degrees * Math.PI / 180, widthMm, newton, ThreadStiffness).Solved().NarrowerMm;
}
