using NameBand.Cloth;
using NameBand.Common;
using NameBand.Garment;
using NameBand.Job;
using NameBand.Layout;
using NameBand.Layout.Planning;
using NameBand.Load;
using NameBand.MachineLetters.Alphabets;
using NameBand.Names;
using Xunit;

namespace NameBand.Tests.Garment;

/// <summary>The limits that the verdicts go by, each from both sides and with the values that hold where the job says nothing.</summary>
public sealed class VerdictLimitTests
{
    /// <summary>A round of 1000 mm with 500 mm of gaps, whose strip is 20 mm wide.</summary>
    private static EaseVerdict Eased(double lostPart, bool isBias)
    {
        var layout = new LayoutSettings { IsBias = isBias };
        var rule = new EaseRule(layout.LiesFlatPart, layout.EaseLimitPart, layout.EasedPart, isBias);
        return RoundEase.Judge(1, 1000, 20, lostPart * 500 / 20, new RoundGaps(500, 1000, 50), rule).Verdict;
    }

    [Theory]
    [InlineData(0.0198, false, EaseVerdict.LiesFlat)]
    [InlineData(0.0202, false, EaseVerdict.CanBeEased)]
    [InlineData(0.0999, false, EaseVerdict.CanBeEased)]
    [InlineData(0.1001, false, EaseVerdict.WantsShaping)]
    [InlineData(0.1999, true, EaseVerdict.CanBeEased)]
    [InlineData(0.2001, true, EaseVerdict.WantsShaping)]
    public void Gaps_give_a_tenth_and_on_the_bias_a_fifth(double lostPart, bool isBias, EaseVerdict verdict) =>
        Assert.Equal(verdict, Eased(lostPart, isBias));

    [Theory]
    [InlineData(0.799, LoadVerdict.Fine)]
    [InlineData(0.801, LoadVerdict.SewSwatch)]
    [InlineData(0.999, LoadVerdict.SewSwatch)]
    [InlineData(1.001, LoadVerdict.Overworked)]
    public void Cloth_is_overworked_from_what_it_bears_and_worked_hard_from_four_fifths(double part, LoadVerdict verdict) =>
        Assert.All(FabricTable.All, f => Assert.Equal(verdict, LoadMeter.VerdictOf(part * f.MostPenetrationsPerMm2, f)));

    [Theory]
    [InlineData(5.95, VerdictKind.NeedsAPerson)]
    [InlineData(6, null)]
    public void Letters_under_six_millimetres_need_a_person(double heightMm, VerdictKind? kind)
    {
        var job = Sample.Job.WithHeight(heightMm);
        var laid = LayoutPlanner.Plan(job, Sample.Hem(job), Sample.Lettered(8, 7, 9), FabricTable.Find("quilting cotton")!);
        Assert.Equal(kind, laid.Problems.Select(p => p.Judged).FirstOrDefault(v => v is { About: Fact.Letters })?.Kind);
    }

    /// <summary>Of a job that says nothing of it.</summary>
    [Theory]
    [InlineData(400, 6)]
    [InlineData(1200, 6)]
    [InlineData(3600, 18)]
    public void A_strip_may_be_six_millimetres_off_or_half_a_percent(double hemMm, double allowedMm)
    {
        using var folder = new TemporaryFolder().With("names.csv", "name\nBo Reed\n")
            .With("job.json",
                FormattableString.Invariant(
                    $"{{ \"format\": 1, \"lists\": [\"names.csv\"], \"hem\": {{ \"length\": {hemMm}, \"turn\": 0 }} }}"));
        var hem = HemPlanner.Plan(JobReader.Read(folder.FullPath).Value!).Value!;
        Assert.Equal(allowedMm, hem.Tolerance.OfMm(hemMm), 9);
    }

    /// <summary>No row is held; a fact with a verdict of its own waits in that one.</summary>
    [Fact]
    public void One_thing_in_the_job_waits_even_where_no_row_does()
    {
        var open = Problem.NeedsPerson(new Where("job.json"), "Something is not settled.", "Settle it.");
        Assert.Equal(VerdictKind.NeedsAPerson, Needs.Of(null, [open]).Waiting().Kind);
        var judged = new Verdict(Fact.Hem, 1, VerdictKind.NeedsAPerson, "Too long.").Told(new Where(), "Shorten it.");
        Assert.Equal(VerdictKind.Good, Needs.Of(null, [judged]).Waiting().Kind);
    }
}
