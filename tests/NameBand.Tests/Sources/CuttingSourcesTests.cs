using NameBand.Cloth;
using NameBand.Common;
using NameBand.Job;
using NameBand.Layout;
using NameBand.Layout.Planning;
using Xunit;

namespace NameBand.Tests.Sources;

/// <summary>Cloth for strips, straight and on the bias, against worked examples and plane geometry.</summary>
public class CuttingSourcesTests
{
    private static StripPlan Plan(int rounds, double? pieceMm = null, int lanes = 1)
    {
        var job = Sample.Job.WithHeight(6).WithRounds(rounds) with
        {
            Layout = new LayoutSettings { Lanes = lanes, Piece = pieceMm is { } mm ? Length.FromMm(mm) : null },
        };
        return NameBand.Layout.Planning.LayoutPlanner.Plan(
            job, Sample.Hem(job), Sample.Lettered(Sample.RandomWidths(1, 30 * rounds)), FabricTable.Find("quilting cotton")!).Value!;
    }

    /// <summary>Straight strips across cloth = usable width / strip width, rounded down; n pieces need n − 1 joins, n if closed.
    /// Computed.</summary>
    [Theory]
    [InlineData(1100, 6)]
    [InlineData(1079, 5)]
    [InlineData(360, 2)]
    public void As_many_cloths_lie_beside_each_other_as_the_width_holds(double clothWidth, int beside)
    {
        var plan = Plan(7);
        var cut = CutPlan.Of(plan, new ShopSettings(ClothWidthMm: clothWidth), isBias: false);
        Assert.Equal(beside, cut.Cuts.Select(c => c.AcrossMm).Distinct().Count());
        Assert.All(
            cut.Cuts, c =>
                Assert.True(c.AcrossMm + c.Cloth.WidthMm <= clothWidth + 1e-9 && c.AlongMm + c.Cloth.LengthMm <= cut.LengthMm + 1e-9));
        Assert.Equal(Math.Ceiling(7.0 / beside), Math.Round(cut.LengthMm / plan.Cloths[0].LengthMm));
        Assert.Equal(7, plan.Joins);
        Assert.Equal(12, Plan(3, 1000).Joins);
    }

    /// <summary>Cut length = L / (1 − s) for cloth that shrinks by s. Source: wikisum.wiki, "How to calculate fabric shrinkage".</summary>
    [Fact]
    public void Cloth_that_shrinks_in_the_wash_is_bought_longer()
    {
        var cut = CutPlan.Of(Plan(1), new ShopSettings { ClothShrinkagePart = 0.03 }, isBias: false);
        Assert.Equal(cut.LengthMm / 0.97, cut.BoughtMm, 9);
        Assert.Equal(1100 * 0.97, cut.ClothWidthMm, 9);
    }

    /// <summary>
    /// Bias strips cannot be longer in all than area / width: a 20 in square gives at most 200 in of 2 in strip (seen:
    /// mydecozo.co.uk). A 12 in square at 2 in really gives about 60 of its 72 in (seen: ronbd.com); a long cloth of that
    /// width loses its two slanted ends only once, so of it at least that part is used, once there are many strips.
    /// </summary>
    [Theory]
    [InlineData(20, 2, 0)]
    [InlineData(12, 2, 60 / 72.0)]
    public void Bias_strips_take_no_less_cloth_than_their_area_and_not_much_more(double width, double strip, double leastPartUsed)
    {
        double longest = CutPlan.LongestOnBiasMm(width, strip);
        double PartUsed(int strips) => strips * longest * strip / (CutPlan.BiasLengthMm(longest, strip, strips) * width);
        Assert.All(Enumerable.Range(1, 100), n => Assert.InRange(PartUsed(n), double.Epsilon, 1));
        Assert.InRange(PartUsed(100), leastPartUsed, 1);
    }

    /// <summary>The cloth that n strips take holds at least their area, and one strip of the greatest length takes just the
    /// cloth's width along.</summary>
    [Fact]
    public void Strips_on_the_bias_lie_inside_the_cloth()
    {
        double longest = CutPlan.LongestOnBiasMm(1100, 180);
        Assert.Equal(1100, CutPlan.BiasLengthMm(longest, 180, 1), 9);
        var plan = Plan(2, 900, lanes: 2);
        var cut = CutPlan.Of(plan, new ShopSettings(), isBias: true);
        Assert.All(plan.Cloths, c => Assert.True(c.LengthMm <= longest));
        Assert.True(cut.LengthMm * 1100 >= plan.Cloths.Sum(c => c.LengthMm * c.WidthMm));
        Assert.Equal(
            (cut.Cuts.Length - 1) * 180 * Math.Sqrt(2), cut.LengthMm - CutPlan.BiasLengthMm(plan.Cloths.Max(c => c.LengthMm), 180, 1), 6);
    }

    [Fact]
    public void A_strip_too_long_for_the_bias_is_answered_with_the_piece_that_fits()
    {
        var job = Sample.Job.WithHeight(6) with { Layout = new LayoutSettings { IsBias = true } };
        Result<StripPlan> Lay(BandJob j) => NameBand.Layout.Planning.LayoutPlanner.Plan(
            j, Sample.Hem(j), Sample.Lettered(Sample.RandomWidths(1, 30)), FabricTable.Find("quilting cotton")!);
        var problem = Assert.Single(Lay(job).Problems, p => p.Where.Key == "strip.grain");
        string piece = System.Text.RegularExpressions.Regex.Match(problem.Mend.English, @"""piece"": ""([0-9]+ mm)""").Groups[1].Value;
        Assert.True(Length.TryParse(piece, out var length, out _));
        Assert.DoesNotContain(Lay(job with { Layout = job.Layout with { Piece = length } }).Problems, p => p.Where.Key == "strip.grain");
    }
}
