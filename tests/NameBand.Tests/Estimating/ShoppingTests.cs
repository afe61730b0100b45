using System.Collections.Immutable;
using NameBand.Cloth;
using NameBand.Common;
using NameBand.Estimating;
using NameBand.Job;
using NameBand.Layout;
using NameBand.Layout.Planning;
using Xunit;

namespace NameBand.Tests.Estimating;

public class ShoppingTests
{
    private static readonly StripPlan Plan = LayoutPlanner.Plan(
        Sample.Job, Sample.Hem(Sample.Job), Sample.Lettered(Sample.RandomWidths(1, 30)), FabricTable.All[0]).Value!;

    private static Estimate Estimate(double needleM, double bobbinM, double hours) =>
        new(
        [], new Work([new WorkRow("stitching", Doer.Machine, WorkTime.EachHooping, "stitches", 1, hours * 60, WorkCause.MachinePace)]),
        needleM, bobbinM)
        { Bobbins = 4 };

    /// <summary>Waste of 15 %: 540 m become 621 m. 15 % is common practice, no source.</summary>
    [Fact]
    public void Thread_is_bought_in_whole_spools_with_the_published_waste()
    {
        var job = Sample.Job with { Shop = new ShopSettings(SpoolM: 621), Prices = new PriceSettings("€", Spool: 6.5) };
        var thread = Shopping.For(job, Plan, Estimate(540, 300, 5)).Lines[0];
        Assert.Equal((1.0, 6.5, "621 m"), (thread.Amount, thread.Price!.Value, thread.Needed));
        job = job with { Shop = new ShopSettings(SpoolM: 620.9) };
        Assert.Equal(2, Shopping.For(job, Plan, Estimate(540, 300, 5)).Lines[0].Amount);
    }

    [Fact]
    public void Cloth_is_as_long_as_the_strips_that_lie_beside_each_other()
    {
        // One round 3660 mm finished is 3660 / 0.99 on the cloth; overlap 25.4, and 80 for the hoop at each end.
        double band = (3660 / 0.99) + 25.4 + 160;
        var metric = Shopping.For(Sample.Job, Plan, Estimate(1, 1, 1)).Lines.Single(l => l.What == "cloth");
        Assert.Equal(Math.Ceiling(band * 1.05 / 100) / 10, metric.Amount, 9);
        Assert.Equal("4.1 m", metric.InShop);

        var yards = Shopping.For(
            Sample.Job with { Shop = new ShopSettings(Metric: false) }, Plan, Estimate(1, 1, 1)).Lines.Single(l => l.What == "cloth");
        Assert.Equal(Math.Ceiling(band * 1.05 / 914.4 * 8) / 8, yards.Amount, 9);
        Assert.Equal("4 1/2 yd", yards.InShop);
    }

    [Fact]
    public void Backing_is_one_piece_for_each_hooping()
    {
        // Pieces are 240 × 180 mm (field and 40 mm all round): a roll of 500 mm takes two, with 240 across, every 180 mm.
        var backing = Shopping.For(Sample.Job, Plan, Estimate(1, 1, 1)).Lines.Single(l => l.What == "backing");
        Assert.Equal(Math.Ceiling(Math.Ceiling(Plan.Hoopings.Length / 2.0) * 180 / 100) / 10, backing.Amount, 9);
    }

    [Fact]
    public void Needles_go_by_hours_and_money_is_summed_only_where_a_price_is_known()
    {
        var job = Sample.Job with { Prices = new PriceSettings("kr", Needle: 12, Hour: 100) };
        var list = Shopping.For(job, Plan, Estimate(1, 1, 16.5));
        Assert.Equal(3, list.Lines.Single(l => l.What == "needles").Amount);
        Assert.Equal(36, list.Total);
        Assert.Equal(1650, list.Worth);
        Assert.Equal(["needle thread", "bobbin thread", "cloth", "backing"], list.WithoutPrice);
        Assert.Null(Shopping.For(Sample.Job, Plan, Estimate(1, 1, 1)).Total);
    }

    [Theory]
    [InlineData(2.375, "2 3/8")]
    [InlineData(0.5, "1/2")]
    [InlineData(4, "4")]
    [InlineData(0, "0")]
    public void Eighths_of_a_yard_read_as_on_a_tape(double number, string text) => Assert.Equal(text, Shopping.Eighths(number));

    /// <summary>What is to be bought is listed, and nothing of which none is needed.</summary>
    [Theory]
    [InlineData("", "needle thread, bobbin thread, cloth, backing, needles")]
    [InlineData(", \"way\": \"traced\", \"traced\": { \"sewn\": \"byHand\" }", "needle thread, bobbin thread, cloth, backing")]
    [InlineData(", \"lettering\": { \"height\": \"60 mm\" }", "cloth")]
    public void Only_what_is_needed_is_bought(string more, string things)
    {
        using var job = new TemporaryFolder()
            .With("names.csv", "name\nOttilie Marsh\nBram Penhale\n")
            .With("job.json", $$"""{ "format": 1, "lists": ["names.csv"], "hem": { "length": "900 mm", "turn": 0 }{{more}} }""");
        var lines = Bander.Hours(job.FullPath).Shopping!.Lines;
        Assert.Equal(things, string.Join(", ", lines.Select(l => l.What.English)));
        Assert.All(lines, l => Assert.True(l.Amount > 0));
    }
}
