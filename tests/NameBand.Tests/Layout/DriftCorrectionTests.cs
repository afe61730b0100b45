using System.Collections.Immutable;
using NameBand.Cloth;
using NameBand.Common;
using NameBand.Job;
using NameBand.Layout;
using NameBand.Layout.Drift;
using NameBand.Layout.Planning;
using Xunit;

namespace NameBand.Tests.Layout;

/// <summary>After a measured end the rest is set out so that the strip still ends at its hem.</summary>
public class DriftCorrectionTests
{
    private const double HemMm = 2000;

    [Theory]
    [InlineData(true, true, 12)]
    [InlineData(true, false, -9)]
    [InlineData(false, true, -14)]
    [InlineData(false, false, 7)]
    public void The_rest_ends_at_the_hem_with_equal_gaps(bool closed, bool forward, double offMm)
    {
        var plan = Plan(closed);
        var names = InTurn(plan, forward);
        double planned = EndOf(names[7], forward);
        var corrected = Apply(plan, new MeasuredEnd(8, names[7].Lettered.Name.Text, planned + offMm, 2), forward).Value!;
        var after = InTurn(corrected, forward);
        double[] ends = [.. after.Select(n => EndOf(n, forward))];
        double[] starts = [.. after.Select((n, i) => ends[i] - n.WidthMm)];
        Assert.Equal(planned + offMm, ends[7], 6);
        double gap = starts[8] - ends[7];
        Assert.All(Enumerable.Range(8, after.Count - 9), i => Assert.Equal(gap, starts[i + 1] - ends[i], 6));
        Assert.Equal(closed ? gap / 2 : 4, HemMm - ends[^1], 6);
        Assert.True(corrected.MatchesHem);
        Assert.Equal(8, corrected.Rounds[0].Sewn!.SewnNames);
        Assert.Equal(plan.Rounds[0].Names.Select(n => n.Order), corrected.Rounds[0].Names.Select(n => n.Order));
    }

    /// <summary>
    /// Cloth that comes out 1.5 % longer than planned. Without measuring the last name ends 30 mm behind its place; with
    /// three ends measured on the way it ends within 3 mm of the hem.
    /// </summary>
    [Theory]
    [InlineData(1.015)]
    [InlineData(0.985)]
    public void Measuring_on_the_way_brings_a_drifting_strip_to_its_hem(double truth)
    {
        var plan = Plan(closed: false);
        var ends = new List<MeasuredEnd>();
        double at = 0;
        double planned = 0;
        for (int i = 0; i < 15; i++)
        {
            var now = ends.Count == 0 ? plan : DriftCorrection.Apply(plan, [.. ends], true, true).Value!;
            var names = InTurn(now, true);

            // From what is sewn, the next start and the name itself come out by the cloth's own factor, whatever was planned.
            double expected = now.Rounds[0].Sewn is { } sewn && i >= sewn.SewnNames ? sewn.Factor : 1;
            at += (names[i].StartMm - planned) / expected * truth;
            at += names[i].WidthMm / expected * truth;
            planned = names[i].EndMm;
            if (i is 3 or 7 or 11)
            {
                ends.Add(new MeasuredEnd(i + 1, "", at, 2));
                planned = at;
            }
        }

        Assert.Equal(HemMm - 4, at, 3.0);
    }

    [Fact]
    public void A_wrong_line_is_told()
    {
        var plan = Plan(closed: true);
        var first = InTurn(plan, true)[0];
        Assert.Contains("There is no name 99", Refusal(new MeasuredEnd(99, "", 500, 2)));
        Assert.Contains("is “name 0” now and not “Someone”", Refusal(new MeasuredEnd(1, "Someone", first.EndMm, 2)));
        Assert.Contains("too far from that to be drift", Refusal(new MeasuredEnd(1, "", first.EndMm + 400, 2)));

        string Refusal(MeasuredEnd end)
        {
            var result = Apply(plan, end, true);
            Assert.Null(result.Value);
            return result.Problems.Single(p => p.Severity == Severity.CannotUse).Found.English;
        }
    }

    [Fact]
    public void Names_that_no_longer_fit_are_told_and_run_over()
    {
        var plan = Plan(closed: true, widths: Enumerable.Repeat(12.0, 18));
        var names = InTurn(plan, true);
        var result = Apply(plan, new MeasuredEnd(9, "", names[8].EndMm + 120, 2), true);
        Assert.Contains(result.Problems, p => p.Severity == Severity.NeedsPerson && p.Mend.English.Contains("another round"));
    }

    [Theory]
    [InlineData("number,end_mm\n0,500\n", 2, "number of a name")]
    [InlineData("number,end_mm\n3,\n", 2, "where the name ended")]
    [InlineData("number,end_mm\n3,500\n4,far\n", 3, "not a number")]
    [InlineData("name,end_mm\nA,500\n", 1, "no column number")]
    public void A_wrong_file_is_refused_by_line(string text, int line, string found)
    {
        using var folder = new TemporaryFolder().With(DriftFile.FileName, text);
        var read = DriftFile.Read(folder.FullPath);
        Assert.Null(read.Value);
        Assert.Equal(line, read.Problems[0].Where.Line);
        Assert.Contains(found, read.Problems[0].Found.English);
    }

    private static Result<StripPlan> Apply(StripPlan plan, MeasuredEnd end, bool forward) =>
        DriftCorrection.Apply(plan, [end], forward, spread: true);

    private static StripPlan Plan(bool closed, IEnumerable<double>? widths = null)
    {
        var job = Sample.Job.WithHem(HemMm, closed).WithHeight(8) with
        {
            Hoop = new HoopSettings(Length.FromMm(1_000_000), Length.FromMm(50.8), Length.FromMm(0)),
        };
        var names = Sample.Lettered([.. widths ?? Sample.RandomWidths(8, 15)]);
        return LayoutPlanner.Plan(job, Sample.Hem(job), names, FabricTable.Find("quilting cotton")! with { PullCompensationMm = 0 }).Value!;
    }

    private static List<PlacedName> InTurn(StripPlan plan, bool forward) =>
        [.. forward ? plan.Rounds[0].Names : plan.Rounds[0].Names.Reverse()];

    private static double EndOf(PlacedName name, bool forward) => forward ? name.EndMm : HemMm - name.StartMm;
}
