using System.Text;
using System.Text.Json.Nodes;
using NameBand.Estimating;
using NameBand.PlanFile;
using NameBand.Tests.House;
using Xunit;

namespace NameBand.Tests.PlanFileRoom;

/// <summary>A plan that does not agree with itself says in what, one sentence for each.</summary>
public sealed class PlanAgreementTests
{
    private const string Whole = "tests/NameBand.Tests/Data/version-0.1/changed/out/plan.json";

    [Fact]
    public void A_plan_that_was_written_agrees() =>
        Assert.Empty(PlanAgreement.Faults(PlanJson.Read(Encoding.UTF8.GetBytes(Repository.Read(Whole)))));

    [Theory]
    [InlineData("names", "stand in the rounds, and the totals say")]
    [InlineData("hoopings", "stand in the list, and the totals say")]
    [InlineData("stitches", "stand in the list, and the totals say")]
    public void A_total_that_is_one_too_many_is_told(string total, string says)
    {
        var plan = JsonNode.Parse(Repository.Read(Whole))!;
        plan["totals"]![total] = plan["totals"]![total]!.GetValue<int>() + 1;
        var fault = Assert.Single(PlanAgreement.Faults(PlanJson.Read(Encoding.UTF8.GetBytes(plan.ToJsonString()))));
        Assert.Contains(says, fault.English, StringComparison.Ordinal);
    }

    [Fact]
    public void What_was_measured_is_read_back_and_a_row_of_another_length_is_none()
    {
        var figures = new HoopingFigures(7, 1320, 2, 3, 1, 3.4976817867846597, 2.162609072070796, 3.8018333333332808)
        {
            StitchingMinutes = 2.2204999999999475,
            Snips = 4,
            Names = [new NameThread(1, 1.1, 0.7), new NameThread(31, 2.3, 1.4)],
        };
        double[] row = [.. MeasuredHooping.Row(figures)];

        var read = MeasuredHooping.Read(7, row)!;
        Assert.Equal([.. figures.Names], read.Names.ToArray());
        Assert.Equal(figures with { Names = [] }, read with { Names = [] });
        Assert.All(new[] { 0, 8, 10, 11, row.Length - 1 }, length => Assert.Null(MeasuredHooping.Read(7, row.AsSpan(0, length))));
        Assert.Null(MeasuredHooping.Read(7, (double[])[.. row, 1]));
    }
}
