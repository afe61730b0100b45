using NameBand.Common;
using NameBand.Garment;
using Xunit;

namespace NameBand.Tests.Garment;

/// <summary>Whether a strip meets its hem: within 6 mm or 0.5 % of that round's hem, whichever is more.</summary>
public sealed class RoundFitTests
{
    private static readonly HemTolerance Unsaid = new(6, 0.005);

    [Theory]
    [InlineData(400, 406, true)]
    [InlineData(400, 406.1, false)]
    [InlineData(400, 394, true)]
    [InlineData(400, 393.9, false)]
    [InlineData(1200, 1206, true)]
    [InlineData(1200, 1206.1, false)]
    [InlineData(3600, 3618, true)]
    [InlineData(3600, 3618.1, false)]
    [InlineData(3600, 3582, true)]
    [InlineData(3600, 3581.9, false)]
    public void The_more_of_the_two_holds_both_ways(double hemMm, double lengthMm, bool meets)
    {
        var fit = new RoundFit(2, lengthMm, hemMm, Unsaid.OfMm(hemMm));
        Assert.Equal(meets, fit.Meets);
        Assert.Equal(!meets && lengthMm > hemMm, fit.RunsOver);
        var judged = fit.Judged();
        Assert.Equal((Fact.Hem, 2, meets ? VerdictKind.Good : VerdictKind.NeedsAPerson), (judged.About, judged.Round, judged.Kind));
    }

    [Theory]
    [InlineData(3620, "The names need 3.62 m and the garment has 3.6 m there: the strip is 20 mm too long.")]
    [InlineData(3580, "The strip is 3.58 m long and the garment has 3.6 m there: it is 20 mm too short.")]
    [InlineData(3610, "The strip of round 1 is 3610.0 mm long and meets its hem of 3600.0 mm; 18 mm is allowed.")]
    public void It_is_told_by_how_much(double lengthMm, string told) =>
        Assert.Equal(told, new RoundFit(1, lengthMm, 3600, Unsaid.OfMm(3600)).Judged().Text);

    [Fact]
    public void What_is_allowed_is_told_once_for_all_rounds()
    {
        Assert.Equal("6 mm", Unsaid.InWords([900, 1000]));
        Assert.Equal("17.1 to 18.3 mm", Unsaid.InWords([3660, 3500, 3420]));
        Assert.Equal("2 mm", new HemTolerance(2, 0).InWords([3660, 3420]));
    }
}
